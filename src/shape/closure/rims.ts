import { Length } from '../../measure/length.ts';
import { restOf } from '../base-panel.ts';
import type { FlatPoint, Fold, Mate, Net } from '../net.ts';
import { pairsOf } from '../pairs.ts';
import { boxArea } from '../panel-area.ts';
import { foldBetween, panelOf } from '../panel-tree.ts';
import { perNet } from '../per-net.ts';
import { bentRows, tubesOf } from '../tube.ts';
import { type RisingWall, wallsRound } from './room.ts';
import { nearlyEqual } from './tolerance.ts';

/** A wall that rises from the base of a tray and is not as high as those it meets at its corners. */
export type UnequalRim = {
  readonly wall: string;
  readonly others: readonly string[];
  /** Its own height, and that of all the others. */
  readonly heights: readonly [Length, Length];
  /** Where one of the corners is glued. */
  readonly mate?: Mate;
  /** Whether a tab of the higher wall stands up past the lower one. */
  readonly sticksOut: boolean;
  /** Whether they differ by more than a slip, and so may be meant to: a low front. */
  readonly mayBeMeant: boolean;
};

/** Walls further apart than this may be meant to be. Common practice, no source: two grooves of a score board. */
const SLIP: Length = Length.of(1, 4, 'in');

/** The walls of a tray that differ from their neighbors in height; a tube has flaps there, which may. */
export const unequalRims: (net: Net, caliper: Length) => readonly UnequalRim[] = perNet(
  (net: Net, caliper: Length) => {
    if (tubesOf(net).length > 0) return [];
    const corners = cornersOf(net).filter(
      ({ walls: [a, b], mate }) => !nearlyEqual(a.height, b.height, caliper) && !isTabOfFloor(net, mate),
    );
    const found: UnequalRim[] = [];
    for (let left = corners; left.length > 0; ) {
      const odd = oddOneOf(left);
      const own = left.filter(({ walls }) => walls.some(({ panel }) => panel === odd.panel));
      const others = own.flatMap(({ walls }) => walls.filter(({ panel }) => panel !== odd.panel));
      const [first] = others;
      if (!first) break;
      const alike = others.filter(({ height }) => nearlyEqual(height, first.height, caliper));
      const panels = alike.map(({ panel }) => panel);
      const said = own.filter(({ walls }) => walls.some(({ panel }) => panels.includes(panel)));
      const mate = said.find((corner) => corner.mate)?.mate;
      const heights = [odd.height, first.height] as const;
      const sticksOut = said.some((corner) => sticksOutAt(net, corner));
      const mayBeMeant = odd.height.minus(first.height).abs().greaterThan(SLIP);
      // What a tab does that stands far up past a wall is told of the tab.
      if (!(sticksOut && mayBeMeant))
        found.push({
          wall: odd.panel,
          others: panels,
          heights,
          sticksOut,
          mayBeMeant,
          ...(mate && { mate }),
        });
      left = left.filter((corner) => !said.includes(corner));
    }
    return found;
  },
);

/** Whether what a glued corner takes for a wall is smaller than what it is stuck to: a tab that hangs on the floor. */
function isTabOfFloor(net: Net, mate: Mate | undefined): boolean {
  if (!mate) return false;
  const { base } = restOf(net);
  const [one, other] = foldBetween(net, mate.from, base) ? [mate.from, mate.to] : [mate.to, mate.from];
  return boxArea(panelOf(net, one).box) < boxArea(panelOf(net, other).box) - 1e-6;
}

/** Two walls that meet where their folds do, and the glue that joins them there. */
type RimCorner = { readonly walls: readonly [RisingWall, RisingWall]; readonly mate?: Mate };

/** The corners of a tray that are glued; where nothing is, all of them, but for those of a stand or of walls in a row. */
function cornersOf(net: Net): RimCorner[] {
  const { base } = restOf(net);
  const isBare = net.glue.length === 0 && bentRows(net).length === 0;
  const walls = wallsRound(net, base);
  return pairsOf(walls).flatMap(([first, second]): RimCorner[] => {
    if (!meet(first.fold, second.fold) || opensAny(net, [first.panel, second.panel])) return [];
    const mate = net.glue.find((each) => joins(net, each, first.panel, second.panel));
    return mate || (isBare && walls.length > 2) ? [{ walls: [first, second], ...(mate && { mate }) }] : [];
  });
}

function opensAny({ opens = [] }: Net, panels: readonly string[]): boolean {
  return panels.some((panel) => opens.includes(panel));
}

/** Whether what is stuck at a corner is a tab on the higher of its walls. */
function sticksOutAt(net: Net, { walls: [a, b], mate }: RimCorner): boolean {
  const { panel } = a.height.lessThan(b.height) ? b : a;
  return mate !== undefined && [mate.from, mate.to].some((tab) => foldBetween(net, tab, panel));
}

function meet(first: Fold, second: Fold): boolean {
  const isSame = (a: FlatPoint, b: FlatPoint): boolean => a.x.equals(b.x) && a.y.equals(b.y);
  return [first.from, first.to].some((a) => [second.from, second.to].some((b) => isSame(a, b)));
}

/** Whether a mate sticks one of two walls to a tab that hangs on the other. */
function joins(net: Net, { from, to }: Mate, first: string, second: string): boolean {
  const sticks = (tab: string, wall: string): boolean =>
    (wall === first && foldBetween(net, tab, second) !== undefined) ||
    (wall === second && foldBetween(net, tab, first) !== undefined);
  return sticks(from, to) || sticks(to, from);
}

/** The wall that differs at most corners, the lowest of several. */
function oddOneOf(corners: readonly RimCorner[]): RisingWall {
  const walls = corners.flatMap((corner) => corner.walls);
  const count = ({ panel }: RisingWall): number => walls.filter((each) => each.panel === panel).length;
  const [odd] = walls.toSorted((a, b) => count(b) - count(a) || a.height.compare(b.height));
  if (!odd) throw new Error('no corners, no wall');
  return odd;
}
