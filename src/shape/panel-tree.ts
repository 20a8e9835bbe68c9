import type { Fold, Net, Panel } from './net.ts';
import { perNet } from './per-net.ts';

/** A fold as it is met on the way out from the root: the child turns about it with all that hangs on the child. */
export type Joint = { readonly fold: Fold; readonly parent: string; readonly child: string };

/** The panels that hang together, from one of them outward; parents come before their children. */
export type PanelTree = { readonly root: string; readonly joints: readonly Joint[] };

/** A net as trees: one, if it is one piece of paper. */
type PanelForest = {
  readonly trees: readonly PanelTree[];
  /** Folds that close a ring of panels: no flat paper can be folded about them freely. */
  readonly rings: readonly Fold[];
};

/** The panels of a net as trees. The first tree grows from `root`, any other from its first panel. */
export function panelForest(net: Net, root: string): PanelForest {
  const known = forestsOf(net);
  const forest = known.get(root) ?? growForest(net, root);
  known.set(root, forest);
  return forest;
}

/** Those that were grown, by their roots. */
const forestsOf: (net: Net) => Map<string, PanelForest> = perNet(() => new Map());

function growForest(net: Net, root: string): PanelForest {
  const reached = new Set<string>();
  const used = new Set<Fold>();
  const trees: PanelTree[] = [];
  const starts = [root, ...net.panels.map(({ id }) => id)];
  for (const start of starts) {
    if (!reached.has(start)) trees.push(growTree(net, start, reached, used));
  }
  return { trees, rings: net.folds.filter((fold) => !used.has(fold)) };
}

function growTree(net: Net, root: string, reached: Set<string>, used: Set<Fold>): PanelTree {
  const joints: Joint[] = [];
  const waiting = [root];
  reached.add(root);
  for (let parent = waiting.shift(); parent !== undefined; parent = waiting.shift()) {
    for (const fold of foldsOf(net, parent)) {
      const child = otherSide(fold, parent);
      if (child === undefined || reached.has(child)) continue;
      reached.add(child);
      used.add(fold);
      joints.push({ fold, parent, child });
      waiting.push(child);
    }
  }
  return { root, joints };
}

/** The panel on the other side of a fold; undefined when the fold isn't one of this panel's. */
export function otherSide({ panels: [first, second] }: Fold, panel: string): string | undefined {
  if (first === panel) return second;
  return second === panel ? first : undefined;
}

const foldsByPanel: (net: Net) => ReadonlyMap<string, readonly Fold[]> = perNet(({ folds }: Net) => {
  const found = new Map<string, Fold[]>();
  for (const fold of folds) {
    for (const panel of new Set(fold.panels)) {
      const own = found.get(panel);
      if (own) own.push(fold);
      else found.set(panel, [fold]);
    }
  }
  return found;
});

/** The folds of a panel. */
export function foldsOf(net: Net, panel: string): readonly Fold[] {
  return foldsByPanel(net).get(panel) ?? [];
}

/** The fold that joins two panels; undefined where none does. */
export function foldBetween(net: Net, first: string, second: string): Fold | undefined {
  return foldsOf(net, first).find((fold) => otherSide(fold, first) === second);
}

/** Whether a panel is stuck to any other. */
export function isStuck({ glue }: Net, panel: string): boolean {
  return glue.some(({ from, to }) => from === panel || to === panel);
}

/** The joints passed on the way from one panel to another, in order; undefined when they don't hang together. */
export function pathBetween(net: Net, from: string, to: string): readonly Joint[] | undefined {
  const tree = panelForest(net, from).trees[0];
  const path: Joint[] = [];
  for (let panel = to; panel !== from; ) {
    const joint = tree?.joints.find(({ child }) => child === panel);
    if (!joint) return undefined;
    path.unshift(joint);
    panel = joint.parent;
  }
  return path;
}

/** The panels that hang on a panel when the tree is held at `root`, itself included. */
export function branchOf(tree: PanelTree, panel: string): ReadonlySet<string> {
  const branch = new Set([panel]);
  for (const { parent, child } of tree.joints) if (branch.has(parent)) branch.add(child);
  return branch;
}

/** The panel with this id. @throws Error when the net has none: a net's own references always hold. */
export function panelOf(net: Net, id: string): Panel {
  const panel = panelsById(net).get(id);
  if (!panel) throw new Error(`the net has no panel "${id}"`);
  return panel;
}

/** Of two with one id the first. */
const panelsById: (net: Net) => ReadonlyMap<string, Panel> = perNet(
  ({ panels }: Net) => new Map(panels.toReversed().map((panel) => [panel.id, panel])),
);
