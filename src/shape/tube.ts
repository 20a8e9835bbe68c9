import { Length } from '../measure/length.ts';
import { isBracketed } from './bracketed-row.ts';
import { boxSize, type Fold, type Mate, type Net } from './net.ts';
import { boxArea } from './panel-area.ts';
import { foldsOf, type Joint, otherSide, panelOf, pathBetween } from './panel-tree.ts';
import { perNet } from './per-net.ts';

/**
 * A row of walls side by side that closes into a tube when its last panel, the tab, is stuck to the first wall:
 * the body of a box, a sleeve, a belly band.
 */
export type Tube = {
  readonly mate: Mate;
  /** Whether the net has that mark; else nothing joins its ends. */
  readonly isGlued: boolean;
  /** From the wall the tab sticks to, to the one the tab hangs on. */
  readonly walls: readonly string[];
  /** The walls by the side they make up: those with a fold between them that stays flat make one. */
  readonly sides: readonly TubeSide[];
  readonly tab: string;
  /** From wall to wall, the tab's own last. */
  readonly joints: readonly Joint[];
  /** The way all its score lines run on the flat paper. */
  readonly lines: 'upright' | 'across';
  /** The sum of its folds' angles, mountain counted positive: 360 when it comes full circle. */
  readonly turn: number;
};

/** One side of a tube: a wall, or two with a gusset's crease between them. */
export type TubeSide = readonly string[];

/** Beyond three quarter turns somebody means it to close. */
const LEAST_TURN = 225;
const FULL_CIRCLE = 360;
/** Ends further apart than this are meant to be. Common practice, no source: two grooves of a score board. */
const SLIP = Length.of(1, 4, 'in');
/** A corner of three walls; leaves folded flat on each other are no tube unless they are glued into one. */
const SHARPEST = 120;

/**
 * Every tube of a net, in the order of its glue marks. Where none is glued into one, a row of panels whose folds come
 * full circle is one all the same: its smaller end is the tab.
 */
export const tubesOf: (net: Net) => readonly Tube[] = perNet((net) => {
  const glued = net.glue.flatMap((mate) => tubeOf(net, mate) ?? []).filter((tube) => !isAstray(net, tube));
  return glued.length > 0 ? glued : unglued(net);
});

function unglued(net: Net): readonly Tube[] {
  for (const row of rowsOf(net)) {
    const [from, to] = [row[0]?.parent, row.at(-1)?.child];
    const isRound = Math.abs(Math.abs(turnOf(row)) - FULL_CIRCLE) < 1;
    const tube = isRound && from !== undefined && to !== undefined && tubeOf(net, { from, to });
    if (tube && endsMeet(net, tube) && !isBracketed(net, [...tube.walls, tube.tab])) return [tube];
  }
  return [];
}

/** Whether a tab is stuck to a wall too early in a row that comes round as a whole: its mate is wrong, and not the row. */
function isAstray(net: Net, { tab, turn }: Tube): boolean {
  return Math.abs(Math.abs(turn) - FULL_CIRCLE) >= 1 && comesRound(net, tab);
}

/** Whether the tab's fold comes down at the free edge of the first wall; the returns of a frame end short of each other. */
function endsMeet(net: Net, { joints, lines }: Tube): boolean {
  let heading = 0;
  const end = { x: 0, y: 0 };
  for (const { fold, parent } of joints) {
    const width = reachFrom(lines, net, parent).mm;
    end.x += width * Math.cos(heading);
    end.y += width * Math.sin(heading);
    heading += (signedAngle(fold) * Math.PI) / 180;
  }
  return Math.hypot(end.x, end.y) <= SLIP.mm;
}

/** Whether a panel is the last of a row that comes full circle, be it flat: what it is stuck to is at the row's beginning. */
export function comesRound(net: Net, panel: string): boolean {
  return (['upright', 'across'] as const).some((lines) => {
    const row = rowFrom(
      panel,
      net.folds.filter((fold) => lineOf(fold) === lines),
    );
    return Math.abs(Math.abs(turnOf(row)) - FULL_CIRCLE) < 1;
  });
}

/** Rows of panels that turn so far one way that their ends may meet, though there is no tab to join them. */
export function bentRows(net: Net): readonly (readonly Joint[])[] {
  return rowsOf(net).filter((row) => {
    const turn = Math.abs(turnOf(row));
    return turn >= LEAST_TURN && turn < FULL_CIRCLE - 1;
  });
}

/** Rows of panels without a sharp fold, each from either of its ends. */
function rowsOf(net: Net): readonly (readonly Joint[])[] {
  return (['upright', 'across'] as const).flatMap((lines) => {
    const folds = net.folds.filter((fold) => lineOf(fold) === lines);
    const rows = net.panels.map(({ id }) => rowFrom(id, folds));
    return rows.filter((row) => row.length > 0 && row.every(({ fold }) => fold.angle <= SHARPEST));
  });
}

function turnOf(joints: readonly Joint[]): number {
  return joints.reduce((sum, { fold }) => sum + signedAngle(fold), 0);
}

/** The panels passed from one that hangs by a single fold to the other end of its row; none from any other. */
function rowFrom(start: string, folds: readonly Fold[]): Joint[] {
  const row: Joint[] = [];
  let panel = start;
  let onward = folds.filter(({ panels }) => panels.includes(panel));
  while (onward.length === 1 && onward[0]) {
    const [fold] = onward;
    const child = otherSide(fold, panel) ?? panel;
    row.push({ fold, parent: panel, child });
    panel = child;
    onward = folds.filter((each) => each !== fold && each.panels.includes(child));
  }
  return row;
}

function tubeOf(net: Net, mate: Mate): Tube | undefined {
  const joints = pathBetween(net, ...tabLast(net, mate));
  const lines = joints && joints.length > 0 ? commonDirection(joints) : undefined;
  if (!joints || !lines || !isMonotone(joints, lines)) return undefined;
  const turn = turnOf(joints);
  if (Math.abs(turn) < LEAST_TURN && !isEvenRow(net, joints)) return undefined;
  const walls = joints.map(({ parent }) => parent);
  const tab = joints.at(-1)?.child ?? mate.from;
  const isGlued = net.glue.includes(mate);
  return { mate, isGlued, walls, sides: sidesOf(joints), tab, joints, lines, turn };
}

/** Whether a whole row turns by one angle at every line: it is meant to come round, however small that is. */
function isEvenRow(net: Net, joints: readonly Joint[]): boolean {
  const [first, ...others] = joints;
  if (!first || others.length < 2 || isFlatOn(first.fold)) return false;
  const along = foldsOf(net, first.parent).filter((fold) => lineOf(fold) === lineOf(first.fold));
  const angle = signedAngle(first.fold);
  return along.length === 1 && angle !== 0 && others.every(({ fold }) => signedAngle(fold) === angle);
}

/**
 * The two ends of a glue mark, the tab last: the one on which nothing hangs, where flaps hang on the other; else the
 * one that is not as wide as the wall across from it, where the other is; else the smaller one, and of two alike the
 * one that is said to stick to the other.
 */
function tabLast(net: Net, { from, to }: Mate): [string, string] {
  const bears = (id: string): boolean => foldsOf(net, id).length > 1;
  if (bears(from) !== bears(to)) return bears(from) ? [from, to] : [to, from];
  const path = pathBetween(net, from, to) ?? [];
  const across = path.length === 4 ? path[2] : undefined;
  const isWall = (id: string): boolean => {
    const lines = across && lineOf(across.fold);
    return !!lines && reachFrom(lines, net, id).equals(reachFrom(lines, net, across.parent));
  };
  if (isWall(from) !== isWall(to)) return isWall(from) ? [from, to] : [to, from];
  const area = (id: string): number => boxArea(panelOf(net, id).box);
  return area(to) < area(from) - 1e-6 ? [from, to] : [to, from];
}

function sidesOf(joints: readonly Joint[]): TubeSide[] {
  const sides: string[][] = [];
  for (const [index, { parent }] of joints.entries()) {
    const before = joints[index - 1];
    const last = sides.at(-1);
    if (last && before && signedAngle(before.fold) === 0) last.push(parent);
    else sides.push([parent]);
  }
  return sides;
}

/** The joints where a tube turns a corner, the tab's own last. */
export function cornersOf({ joints }: Tube): readonly Joint[] {
  return joints.filter(({ fold }) => signedAngle(fold) !== 0);
}

/** Degrees, mountain positive, valley negative. */
export function signedAngle({ direction, angle }: Fold): number {
  return direction === 'valley' ? -angle : direction === 'flat' ? 0 : angle;
}

/** Whether a fold lays one panel flat on another. */
export function isFlatOn(fold: Fold): boolean {
  return Math.abs(signedAngle(fold)) > 170;
}

/** How a fold's line runs on the flat paper; `slanted` for any other way. */
export function lineOf({ from, to }: Pick<Fold, 'from' | 'to'>): 'upright' | 'across' | 'slanted' {
  if (from.x.equals(to.x)) return 'upright';
  return from.y.equals(to.y) ? 'across' : 'slanted';
}

/** Where an upright or across line lies: its distance from the left or the top. */
export function positionOf(fold: Pick<Fold, 'from' | 'to'>): Length {
  return lineOf(fold) === 'upright' ? fold.from.x : fold.from.y;
}

/** Whether two folds lie on one upright or across line. */
export function isOneLine(one: Fold, other: Fold): boolean {
  return (
    lineOf(one) === lineOf(other) && lineOf(one) !== 'slanted' && positionOf(one).equals(positionOf(other))
  );
}

/** How long an upright or across line is. */
export function foldLength({ from, to }: Pick<Fold, 'from' | 'to'>): Length {
  return Length.max(from.x.minus(to.x).abs(), from.y.minus(to.y).abs());
}

/** Whether two folds run the same way on different lines, as those at facing edges of a panel do. */
export function areFacing(one: Fold, other: Fold): boolean {
  return lineOf(one) === lineOf(other) && !positionOf(one).equals(positionOf(other));
}

/** How far a panel reaches from its lines that run one way to those on its other side. */
export function reachFrom(lines: ReturnType<typeof lineOf>, net: Net, panel: string): Length {
  const { width, height } = boxSize(panelOf(net, panel).box);
  return lines === 'upright' ? width : height;
}

function commonDirection(joints: readonly Joint[]): 'upright' | 'across' | undefined {
  const [first, ...rest] = joints.map(({ fold }) => lineOf(fold));
  return first !== undefined && first !== 'slanted' && rest.every((each) => each === first)
    ? first
    : undefined;
}

/** Whether the walls follow one another in one direction, each line beyond the last. */
function isMonotone(joints: readonly Joint[], lines: 'upright' | 'across'): boolean {
  const positions = joints.map(({ fold }) => (lines === 'upright' ? fold.from.x : fold.from.y));
  const steps = positions.slice(1).map((position, index) => position.compare(positions[index] ?? position));
  return steps.every((step) => step !== 0 && step === steps[0]);
}
