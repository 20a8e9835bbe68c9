import type { Length } from '../../measure/length.ts';
import type { Place } from '../../project/source.ts';
import { type Collision, collisions } from '../../shape/closure/collisions.ts';
import { endMisfits } from '../../shape/closure/end-cover.ts';
import { longFlaps, tubeEnds } from '../../shape/closure/ends.ts';
import { glueFits } from '../../shape/closure/glue.ts';
import { protrusions } from '../../shape/closure/protrusion.ts';
import { type Refold, refoldFor } from '../../shape/closure/refold.ts';
import { folded } from '../../shape/closure/sound.ts';
import { lengthOf } from '../../shape/closure/suspects.ts';
import { tolerance } from '../../shape/closure/tolerance.ts';
import { foldNet } from '../../shape/fold.ts';
import { afterStage, stageCount } from '../../shape/fold-order.ts';
import type { FoldedShape } from '../../shape/folded-shape.ts';
import type { Fold, Net } from '../../shape/net.ts';
import { panelForest } from '../../shape/panel-tree.ts';
import { perNet } from '../../shape/per-net.ts';
import { closedSheets, type FoldedSheet, foldPlace, type OfPiece, writtenFold } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';
import { sayLength, sayList } from '../words.ts';

/** Panels that are in each other's way, the deepest by so much: one cause. */
type Facts = OfPiece & {
  readonly panels: readonly string[];
  readonly by: Length;
  /** The score line that is folded by too much or too little for them, and how it would have to be. */
  readonly refold?: Pick<Refold, 'direction' | 'angle'> & { readonly fold: string };
};

export const panelsCollide: Rule<Facts> = {
  severity: 'error',
  summary: 'No panel passes through another, neither in the end nor between the stages of folding.',
  why: 'Two panels cannot be in one place. Where the folds would take one through another, the paper buckles or tears instead.',
  fails: { box: { bottom: '1 1/4, 5 3/8, 6 1/8' }, blames: '5 3/8' },
  passes: { box: {} },
  *check(context) {
    for (const sheet of closedSheets(context)) {
      // What lands where it cannot be glued is not where it is meant to be.
      if (glueFits(sheet.shape, sheet.caliper).some(({ verdict }) => verdict !== 'meets')) continue;
      for (const { pairs, panels, by } of causesIn(collisionsOf(sheet.net, sheet))) {
        const refold = findRefold(sheet, panels);
        const at = refold?.at ?? foldPlace(sheet, foldOf(sheet, pairs[0] ?? panels));
        const facts = { ...sheet.of, panels, by: lengthOf(by), ...(refold && { refold: refold.refold }) };
        yield { at, facts };
      }
    }
  },
  say: ({ piece, panels, by, refold, unit }) => {
    const each = panels.length > 2 ? 'one another by up to' : 'each other by';
    const shorter = 'make one of them shorter, or fold it the other way';
    return {
      message: `${sayList(panels.map((panel) => `${piece}.${panel}`))} would pass through ${each} ${sayLength(by, unit)}`,
      remedy: refold ? `say "${refold.fold}: ${refold.direction} ${refold.angle}" under "folds:"` : shorter,
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
    const long = tooLong(net, shape, caliper);
    const found = new Map<string, Collision>();
    for (const pose of [shape, ...poses]) {
      for (const collision of collisions(pose, allowed)) {
        const key = collision.panels.join('|');
        if (!found.has(key) && !collision.panels.some((panel) => long.has(panel))) found.set(key, collision);
      }
    }
    return [...found.values()];
  });

/** Flaps and tabs that other rules call too long. */
function tooLong(net: Net, shape: FoldedShape, caliper: Length): ReadonlySet<string> {
  const flaps = tubeEnds(net).flatMap((end) => {
    const beyond = endMisfits(shape, end, caliper).flatMap((misfit) =>
      misfit.kind === 'sticks out' ? [misfit.flap] : [],
    );
    return [...longFlaps(end, caliper), ...beyond].map(({ panel }) => panel);
  });
  return new Set([...flaps, ...protrusions(shape, caliper).map(({ tab }) => tab)]);
}

type Cause = Pick<Facts, 'panels'> & { readonly pairs: readonly Collision['panels'][]; readonly by: number };

/** Collisions by what they have in common: panels that are in one another's way. */
function causesIn(found: readonly Collision[]): readonly Cause[] {
  let causes: readonly Cause[] = [];
  for (const { panels, by } of found) {
    const near = causes.filter((cause) => cause.panels.some((panel) => panels.includes(panel)));
    causes = [
      ...causes.filter((cause) => !near.includes(cause)),
      {
        panels: [...new Set([...near.flatMap((cause) => cause.panels), ...panels])],
        pairs: [...near.flatMap((cause) => cause.pairs), panels],
        by: Math.max(by, ...near.map((cause) => cause.by)),
      },
    ];
  }
  return causes;
}

/** The line that is to blame, where one is folded neither square nor flat and would do if it were. */
function findRefold(
  sheet: FoldedSheet,
  panels: readonly string[],
): { readonly at?: Place; readonly refold: NonNullable<Facts['refold']> } | undefined {
  const { net, shape, caliper } = sheet;
  const isOdd = ({ angle }: Fold): boolean => angle !== 0 && angle !== 90 && angle !== 180;
  const isRight = (each: Net): boolean => {
    const refolded = folded(each, caliper).shape;
    if (glueFits(refolded, caliper).some(({ verdict }) => verdict !== 'meets')) return false;
    return collisionsOf(each, { shape: refolded, caliper }).length === 0;
  };
  if (!net.folds.some(isOdd)) return undefined;
  const better = refoldFor(net, shape.base, panels, isRight);
  const [first] = better?.folds ?? [];
  const written = first && isOdd(first) ? writtenFold(sheet, first) : undefined;
  if (!better || !written) return undefined;
  const { direction, angle } = better;
  return { ...written, refold: { fold: written.name, direction, angle } };
}

/** The fold that brought the later of the two where it is; the one on the base's side where that is the base. */
function foldOf({ net, shape }: FoldedSheet, [first, second]: readonly string[]): Fold {
  const joints = panelForest(net, shape.base).trees[0]?.joints ?? [];
  const joint = joints.findLast(({ child }) => child === first || child === second);
  if (!joint) throw new Error(`${first} and ${second} have no fold`);
  return joint.fold;
}
