import type { Fold, Net } from '../net.ts';
import { branchOf, panelForest } from '../panel-tree.ts';
import { perNet } from '../per-net.ts';

/**
 * A net with all unfolded that can be opened without tearing: every fold, with all that hangs on it, that no glue joins
 * to the rest of the paper. A lid, a flap, a card lies flat; the walls of a glued box stay where they are.
 */
export const openedNet: (net: Net) => Net = perNet((net) => {
  const [first] = net.panels;
  const [tree] = first ? panelForest(net, first.id).trees : [];
  const opens = (fold: Fold): boolean => {
    const joint = tree?.joints.find((each) => each.fold === fold);
    if (!tree || !joint) return false;
    const branch = branchOf(tree, joint.child);
    return net.glue.every(({ from, to }) => branch.has(from) === branch.has(to));
  };
  if (!net.folds.some(opens)) return net;
  const folds = net.folds.map(
    (fold): Fold => (opens(fold) ? { ...fold, direction: 'flat', angle: 0 } : fold),
  );
  return { ...net, folds };
});
