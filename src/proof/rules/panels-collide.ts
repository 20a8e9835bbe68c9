import type { Length } from '../../measure/length.ts';
import { type Collision, collisions } from '../../shape/closure/collisions.ts';
import { endMisfits } from '../../shape/closure/end-cover.ts';
import { longFlaps, tubeEnds } from '../../shape/closure/ends.ts';
import { lengthOf } from '../../shape/closure/suspects.ts';
import { tolerance } from '../../shape/closure/tolerance.ts';
import { foldNet } from '../../shape/fold.ts';
import { afterStage, stageCount } from '../../shape/fold-order.ts';
import type { Fold, Net } from '../../shape/net.ts';
import { panelForest } from '../../shape/panel-tree.ts';
import { perNet } from '../../shape/per-net.ts';
import { closedSheets, type FoldedSheet, foldPlace, type OfPiece } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

type Facts = OfPiece & {
  readonly panels: readonly [string, string];
  readonly by: Length;
};

export const panelsCollide: Rule<Facts> = {
  severity: 'error',
  summary: 'No panel passes through another, neither in the end nor between the stages of folding.',
  why: 'Two panels cannot be in one place. Where the folds would take one through another, the paper buckles or tears instead.',
  fails: { box: { bottom: '1 1/4, 5 3/8, 6 1/8' }, blames: '5 3/8' },
  passes: { box: {} },
  *check(context) {
    for (const sheet of closedSheets(context)) {
      for (const { panels, by } of collisionsOf(sheet.net, sheet)) {
        const at = foldPlace(sheet, foldOf(sheet, panels));
        yield { at, facts: { ...sheet.of, panels, by: lengthOf(by) } };
      }
    }
  },
  say: ({ piece, panels, by, unit }) => {
    const [first, second] = panels.map((panel) => `${piece}.${panel}`);
    return {
      message: `${first} and ${second} would pass through each other by ${sayLength(by, unit)}`,
      remedy: 'make one of them shorter, or fold it the other way',
    };
  },
};

/**
 * At the end, and after each stage on the way; each pair once, and of a net once: its layers ask again. What another
 * rule says of a long flap is left out.
 */
const collisionsOf: (net: Net, sheet: FoldedSheet) => readonly Collision[] = perNet(
  (net: Net, { shape, caliper }: FoldedSheet) => {
    const allowed = tolerance(caliper).mm;
    const poses = Array.from({ length: Math.max(0, stageCount(net) - 1) }, (_, index) =>
      foldNet(net, { at: afterStage(net, index + 1), caliper: caliper.mm }),
    );
    const long = new Set(
      tubeEnds(net).flatMap((end) => {
        const sticking = endMisfits(shape, end, caliper);
        const beyond = sticking.flatMap((misfit) => (misfit.kind === 'sticks out' ? [misfit.flap] : []));
        return [...longFlaps(end, caliper), ...beyond].map(({ panel }) => panel);
      }),
    );
    const found = new Map<string, Collision>();
    for (const pose of [shape, ...poses]) {
      for (const collision of collisions(pose, allowed)) {
        const key = collision.panels.join('|');
        if (!found.has(key) && !collision.panels.some((panel) => long.has(panel))) found.set(key, collision);
      }
    }
    return [...found.values()];
  },
);

/** The fold that brought the later of the two where it is; the one on the base's side where that is the base. */
function foldOf({ net, shape }: FoldedSheet, [first, second]: Collision['panels']): Fold {
  const joints = panelForest(net, shape.base).trees[0]?.joints ?? [];
  const joint = joints.findLast(({ child }) => child === first || child === second);
  if (!joint) throw new Error(`${first} and ${second} have no fold`);
  return joint.fold;
}
