import { foldSteps } from './fold-order.ts';
import type { Fold, Mate, Net } from './net.ts';
import { pathBetween } from './panel-tree.ts';
import { cornersOf, reachFrom, type Tube, tubesOf } from './tube.ts';

/** One move of the folding, caught on its way. */
export type FoldMove = {
  /** What turns. */
  readonly folds: ReadonlySet<Fold>;
  /** How far each fold of the net is made, `more` of the way (0 to 1) later. */
  readonly at: (fold: Fold, more?: number) => number;
  /** What is stuck when the move is done. */
  readonly glued: readonly Mate[];
};

/** The move into a stage: what comes before is made, of the stage the folds that come first are further on. */
export function moveInto(net: Net, stage: number): FoldMove | undefined {
  const steps = foldSteps(net);
  const own = steps.filter((step) => step.stage === stage);
  if (own.length === 0) return undefined;
  const before = new Set(steps.flatMap((step) => (step.stage < stage ? step.folds : [])));
  const shares = new Map(
    own.flatMap(({ folds }, index) =>
      folds.map((fold) => [fold, 1 - (index + 1) / (own.length + 1)] as const),
    ),
  );
  return {
    folds: new Set(shares.keys()),
    at: (fold, more = 0) => {
      const share = shares.get(fold);
      return share === undefined ? (before.has(fold) ? 1 : 0) : Math.min(1, share + more);
    },
    glued: net.glue.filter((mate) => stageOf(net, mate) === stage),
  };
}

/** The stage after which two panels that are stuck together lie on one another. */
function stageOf(net: Net, { from, to }: Mate): number {
  const steps = foldSteps(net);
  const stages = (pathBetween(net, from, to) ?? []).map(
    ({ fold }) => steps.find(({ folds }) => folds.includes(fold))?.stage ?? 0,
  );
  return Math.max(1, ...stages);
}

/** How far the two sides of a tube have come that are folded over: the one with the tab lies down first. */
const UNDER = 0.8;
const OVER = 0.36;
const HALF_TURN = 180;
/** Millimeters; halves that differ by less lie on one another. */
const SLIP = 1.6;

/**
 * A tube on its way to be stuck while it lies flat: two lines opposite each other are folded over, the others not.
 * Undefined of a net without one glued tube, or with one that no two of its lines fold flat.
 */
export function moveFlat(net: Net): FoldMove | undefined {
  const [tube, ...others] = net.strips ? [] : tubesOf(net);
  const folded = tube?.isGlued && others.length === 0 ? foldedOver(net, tube) : undefined;
  if (!tube || !folded) return undefined;
  const [over, under] = folded;
  return {
    folds: new Set(folded),
    at: (fold, more = 0) => {
      if (fold !== over && fold !== under) return 0;
      return (Math.min(1, (fold === over ? OVER : UNDER) + more) * HALF_TURN) / fold.angle;
    },
    glued: [tube.mate],
  };
}

/** Two folds opposite each other, of which none is the tab's, with as much paper on one side of them as on the other. */
function foldedOver(net: Net, tube: Tube): readonly [Fold, Fold] | undefined {
  const { sides, lines } = tube;
  const corners = cornersOf(tube).map(({ fold }) => fold);
  const half = sides.length / 2;
  if (corners.length !== sides.length || half < 2) return undefined;
  const widths = sides.map((side) => side.reduce((sum, wall) => sum + reachFrom(lines, net, wall).mm, 0));
  const sum = (from: number, to: number): number => widths.slice(from, to).reduce((all, one) => all + one, 0);
  for (let first = 0; first < half - 1; first++) {
    const [over, under] = [corners[first], corners[first + half]];
    const between = sum(first + 1, first + half + 1);
    if (over && under && Math.abs(2 * between - sum(0, widths.length)) < SLIP) return [over, under];
  }
  return undefined;
}
