import type { Fold, Mate, Net } from '../net.ts';
import { branchOf, type PanelTree, panelOf } from '../panel-tree.ts';

/** What the hands fold at once: the folds between two panels, or between the strips of two bent ones. */
export type Move = {
  /** Which step of the folding it belongs to, from 0. */
  readonly step: number;
  readonly folds: readonly Fold[];
  /** The panels that turn with it while the base stays put. */
  readonly carried: ReadonlySet<string>;
};

/** Every fold of a sheet that is made, move by move, in the order of the steps of its folding. */
export function movesOf(
  sheet: Net,
  tree: PanelTree,
  steps: readonly { readonly folds: readonly Fold[] }[],
): readonly Move[] {
  const childOf = new Map(tree.joints.map(({ fold, child }) => [fold, child]));
  return steps.flatMap(({ folds }, step) => {
    const moves = new Map<string, { step: number; folds: Fold[]; carried: Set<string> }>();
    for (const fold of folds) {
      const child = childOf.get(fold);
      if (child === undefined) continue;
      const between = fold.panels.map((id) => wholeOf(sheet, id)).join('|');
      const move = moves.get(between) ?? { step, folds: [], carried: new Set<string>() };
      move.folds.push(fold);
      for (const panel of branchOf(tree, child)) move.carried.add(panel);
      moves.set(between, move);
    }
    return [...moves.values()];
  });
}

/** The panel that a strip is part of; a whole panel itself. */
export function wholeOf(sheet: Net, id: string): string {
  return panelOf(sheet, id).partOf ?? id;
}

/**
 * Whether of two moves of one step the first comes before the second, if nothing hinders: what hangs further out
 * turns first, and what is stuck under something before that.
 */
export function comesBefore(first: Move, second: Move, mates: readonly Mate[]): boolean {
  if (isWithin(first.carried, second.carried)) return true;
  if (isWithin(second.carried, first.carried)) return false;
  return mates.some(({ from, to }) => first.carried.has(from) && second.carried.has(to));
}

function isWithin(inner: ReadonlySet<string>, outer: ReadonlySet<string>): boolean {
  return inner.size < outer.size && [...inner].every((panel) => outer.has(panel));
}
