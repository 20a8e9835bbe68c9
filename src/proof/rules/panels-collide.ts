import type { Length } from '../../measure/length.ts';
import { foldedLength, roundDecimals } from '../../measure/round.ts';
import { type Collision, collisions } from '../../shape/closure/collisions.ts';
import { allMeet } from '../../shape/closure/glue.ts';
import { pierced } from '../../shape/closure/pierced.ts';
import { tolerance } from '../../shape/closure/tolerance.ts';
import { panelsTooLong } from '../../shape/closure/too-long.ts';
import { foldNet } from '../../shape/fold.ts';
import { afterStage, stageCount } from '../../shape/fold-order.ts';
import { type FoldedShape, foldIn } from '../../shape/folded-shape.ts';
import type { Fold, Net } from '../../shape/net.ts';
import { gather } from '../../shape/pairs.ts';
import { foldsOf, panelForest } from '../../shape/panel-tree.ts';
import { perNet } from '../../shape/per-net.ts';
import { distanceFromLine } from '../../shape/space.ts';
import { isOneLine, lineOf, reachFrom, signedAngle } from '../../shape/tube.ts';
import {
  type Better,
  closedSheets,
  type FoldedSheet,
  foldPlace,
  type OfPiece,
  refoldedLine,
  sayRefold,
  writtenFold,
} from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';
import { sayLength, sayPanels } from '../words.ts';

/** Panels that are in each other's way, the deepest by so much: one cause. */
type Facts = OfPiece & {
  readonly panels: readonly string[];
  readonly by: Length;
  /** The score line that is folded by too much or too little for them, and how it would have to be. */
  readonly refold?: Better & { readonly fold: string };
  /** The line behind it, where that is folded back by as much. */
  readonly back?: string;
};

export const panelsCollide: Rule<Facts> = {
  severity: 'error',
  summary: 'No panel passes through another, neither at the end nor between the stages of folding.',
  why: 'Two panels cannot be in one place. Where the folds would take one through another, the paper buckles or tears instead.',
  fails: { box: { bottom: '1 1/4, 5 3/8, 6 1/8' }, blames: '5 3/8' },
  passes: { box: {} },
  *check(context) {
    for (const sheet of closedSheets(context)) {
      // What lands where it cannot be glued is not where it is meant to be.
      if (!allMeet(sheet.shape, sheet.caliper)) continue;
      for (const { pairs, panels, by } of causesIn(collisionsOf(sheet.net, sheet))) {
        const odd = oddLine(sheet, panels);
        const line = odd ?? roofLine(sheet, panels);
        const at = line?.at ?? foldPlace(sheet, foldOf(sheet, pairs[0] ?? panels));
        const refold = line && { refold: { fold: line.name, ...line.better } };
        const back = line && !odd && backLine(sheet, panels);
        yield { at, facts: { ...sheet.of, panels, by: foldedLength(by), ...refold, ...(back && { back }) } };
      }
    }
  },
  say: ({ piece, panels, by, refold, back, unit }) => {
    const each = panels.length > 2 ? 'one another by up to' : 'each other by';
    const shorter = 'make one of them shorter, or change how they fold';
    return {
      message: `${sayPanels(piece, panels)} would pass through ${each} ${sayLength(by, unit)}`,
      remedy: refold
        ? sayRefold(refold.fold, refold) + (back ? `, and fold ${back} back as far` : '')
        : shorter,
    };
  },
};

/**
 * At the end, and after each stage on the way; each pair once, and of a net once: its layers ask again. What another
 * rule says of a flap that is too long is left out.
 */
const collisionsOf: (net: Net, sheet: Pick<FoldedSheet, 'shape' | 'caliper'>) => readonly Collision[] =
  perNet((net: Net, { shape, caliper }: Pick<FoldedSheet, 'shape' | 'caliper'>) => {
    const allowed = tolerance(caliper).mm;
    const poses = Array.from({ length: Math.max(0, stageCount(net) - 1) }, (_, index) =>
      foldNet(net, { at: afterStage(net, index + 1), caliper: caliper.mm }),
    );
    const long = panelsTooLong(shape, caliper);
    const found = new Map<string, Collision>();
    const met = [shape, ...poses].flatMap((pose) => collisions(pose, allowed));
    for (const collision of [...met, ...pierced(shape, allowed)]) {
      const key = collision.panels.join('|');
      if (!found.has(key) && !collision.panels.some((panel) => long.has(panel))) found.set(key, collision);
    }
    return [...found.values()];
  });

type Cause = Pick<Facts, 'panels'> & { readonly pairs: readonly Collision['panels'][]; readonly by: number };

/** Collisions by what they have in common: panels that are in one another's way. */
function causesIn(found: readonly Collision[]): readonly Cause[] {
  const panelsOf = (group: readonly Collision[]): readonly string[] => group.flatMap(({ panels }) => panels);
  const causes = gather(
    found.map((each) => [each]),
    (one, other) => panelsOf(one).some((panel) => panelsOf(other).includes(panel)),
  );
  return causes.map((group) => ({
    panels: [...new Set(panelsOf(group))],
    pairs: group.map(({ panels }) => panels),
    by: Math.max(...group.map(({ by }) => by)),
  }));
}

type OddLine = ReturnType<typeof refoldedLine>;

function isOdd({ angle }: Fold): boolean {
  return angle !== 0 && angle !== 90 && angle !== 180;
}

/** The line that is to blame, where one is folded neither square nor flat and would do if it were. */
function oddLine(sheet: FoldedSheet, panels: readonly string[]): OddLine {
  const { net, caliper } = sheet;
  const isRight = (shape: FoldedShape): boolean =>
    allMeet(shape, caliper) && collisionsOf(shape.net, { shape, caliper }).length === 0;
  // The other way round a roof points outward: it collides with nothing, and is none.
  const mayBlame = (fold: Fold, { direction }: Better): boolean =>
    isOdd(fold) && fold.direction === direction;
  return net.folds.some(isOdd) ? refoldedLine(sheet, panels, isRight, mayBlame) : undefined;
}

/**
 * The line of two slopes of one length that lean together too far: the angle at which they just meet has half their
 * distance for its sine, over their length.
 */
function roofLine(sheet: FoldedSheet, [one = '', other = '', ...more]: readonly string[]): OddLine {
  const { net, shape } = sheet;
  const [first, second] = [foldOf(sheet, [one]), foldOf(sheet, [other])];
  const isRoof = more.length === 0 && isOneLine(first, second) && signedAngle(first) === signedAngle(second);
  const long = [first, second].map((fold, index) => reachFrom(lineOf(fold), net, index === 0 ? one : other));
  const [slope, facing] = long;
  if (!isRoof || !slope || !facing || !slope.equals(facing) || !isOdd(first)) return undefined;
  const apart = distanceFromLine(foldIn(shape, first), foldIn(shape, second)[0]);
  const angle = (Math.asin(Math.min(1, apart / 2 / slope.mm)) * 180) / Math.PI;
  const written = writtenFold(sheet, first);
  return written && { ...written, better: { direction: first.direction, angle: roundDecimals(angle, 1) } };
}

/** The line by which the first of two slopes goes on, as far the other way: what stands on a roof. */
function backLine(sheet: FoldedSheet, [slope = '']: readonly string[]): string | undefined {
  const hinge = foldOf(sheet, [slope]);
  const back = foldsOf(sheet.net, slope).find((fold) => signedAngle(fold) === -signedAngle(hinge));
  return isOdd(hinge) && back ? writtenFold(sheet, back)?.name : undefined;
}

/** The fold that brought the later of the two where it is; the one on the base's side where that is the base. */
function foldOf({ net, shape }: FoldedSheet, [first, second]: readonly string[]): Fold {
  const joints = panelForest(net, shape.base).trees[0]?.joints ?? [];
  const joint = joints.findLast(({ child }) => child === first || child === second);
  if (!joint) throw new Error(`${first} and ${second} have no fold`);
  return joint.fold;
}
