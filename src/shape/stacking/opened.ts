import type { Fold, Net } from '../net.ts';
import { branchOf, type PanelTree, panelForest } from '../panel-tree.ts';
import { perNet } from '../per-net.ts';
import { isOneLine } from '../tube.ts';

/**
 * A net with all unfolded that can be opened without tearing: every fold, with all that hangs on it, that no glue joins
 * to the rest of the paper. A lid, a flap, a card lies flat; the walls of a glued box stay where they are.
 */
export const openedNet: (net: Net) => Net = perNet((net) => {
  const [first] = net.panels;
  const { trees, rings } = first ? panelForest(net, first.id) : { trees: [], rings: [] };
  const [tree] = trees;
  if (!tree) return net;
  const free = new Set(tree.joints.filter(({ child }) => isFree(net, tree, child)).map(({ fold }) => fold));
  const opens = (fold: Fold): boolean =>
    free.has(fold) && alongside(tree, rings, fold).every((each) => free.has(each));
  if (!net.folds.some(opens)) return net;
  // What closes a ring lies flat once all the ring does, as the fold of a card beside its pop-up.
  const lies = (ring: Fold): boolean =>
    tree.joints.every(({ fold, child }) => !isCut(tree, child, ring) || opens(fold));
  const folds = net.folds.map(
    (fold): Fold =>
      (rings.includes(fold) ? lies(fold) : opens(fold)) ? { ...fold, direction: 'flat', angle: 0 } : fold,
  );
  return { ...net, folds };
});

/** Whether no glue joins what hangs on a panel to the rest. */
function isFree({ glue }: Net, tree: PanelTree, panel: string): boolean {
  const branch = branchOf(tree, panel);
  return glue.every(({ from, to }) => branch.has(from) === branch.has(to));
}

/** Folds of one line with another which must open with it, for a crease across the line joins what hangs on them. */
function alongside(tree: PanelTree, rings: readonly Fold[], fold: Fold): readonly Fold[] {
  const line = tree.joints.filter((joint) => isOneLine(joint.fold, fold));
  const own = line.find((joint) => joint.fold === fold);
  const crease = rings.filter((ring) => own && !isOneLine(ring, fold) && isCut(tree, own.child, ring));
  return line
    .filter((joint) => crease.some((ring) => isCut(tree, joint.child, ring)))
    .map((joint) => joint.fold);
}

/** Whether one of a fold's panels hangs on a panel and the other does not. */
function isCut(tree: PanelTree, panel: string, { panels: [one, other] }: Fold): boolean {
  const branch = branchOf(tree, panel);
  return branch.has(one) !== branch.has(other);
}
