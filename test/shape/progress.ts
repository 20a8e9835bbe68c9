import { foldSteps } from '../../src/shape/fold-order.ts';
import type { Fold, Net } from '../../src/shape/net.ts';

/** How far each fold is when a share of the folding, 0 to 1, is done, all steps taking equally long. */
export function progressAt(net: Net, share: number): (fold: Fold) => number {
  const steps = foldSteps(net);
  return (fold) => {
    const index = steps.findIndex(({ folds }) => folds.includes(fold));
    return index < 0 ? 0 : Math.min(1, Math.max(0, share * steps.length - index));
  };
}
