import { overlapOf } from '../closure/overlap.ts';
import { foldNet } from '../fold.ts';
import { type FoldedShape, lieAlike } from '../folded-shape.ts';
import type { Fold, Mate, Net } from '../net.ts';
import { pairsOf } from '../pairs.ts';
import { type PanelTree, panelForest } from '../panel-tree.ts';
import { sideWhereMet } from './contact.ts';
import { crossingsOf } from './crossings.ts';
import type { Move } from './moves.ts';
import { Sides } from './sides.ts';
import { nearness, type Stack, TOUCHING } from './stack.ts';

/** How much of a move is left when it is looked where its panels come from. */
const LAST = 0.01;

/** Stacks the panels of a sheet, move by move. */
export class Stacker {
  readonly sheet: Net;
  /** What is glued, by whole panels where the sheet is one of strips. */
  readonly mates: readonly Mate[];
  readonly caliper: number;
  /** Millimetres: what lies closer lies on one another. */
  readonly near: number;
  readonly #ways: ReadonlyMap<string, ReadonlySet<Fold>>;

  constructor(sheet: Net, mates: readonly Mate[], caliper: number) {
    this.sheet = sheet;
    this.mates = mates;
    this.caliper = caliper;
    this.near = nearness(caliper);
    this.#ways = waysFrom(this.tree());
  }

  /** The sheet laid flat. */
  laidFlat(): Stack {
    const shape = this.#folded(() => 0);
    return { shape, sides: new Sides(), met: new Sides(), made: new Set(), crossings: [] };
  }

  /** The panels as they hang on the one that stays put. */
  tree(): PanelTree {
    const [tree] = panelForest(this.sheet, this.#folded(() => 0).base).trees;
    if (!tree) throw new Error('a net without panels has no tree');
    return tree;
  }

  /** The stack after one more move. */
  after(stack: Stack, move: Move): Stack {
    const made = new Set([...stack.made, ...move.folds]);
    let before: FoldedShape | undefined;
    const moment = {
      move,
      before: (): FoldedShape => {
        before ??= this.#folded((fold) => (move.folds.includes(fold) ? 1 - LAST : made.has(fold) ? 1 : 0));
        return before;
      },
      after: this.#folded((fold) => (made.has(fold) ? 1 : 0)),
      near: this.near,
      mates: this.mates,
    };
    let { sides, met } = stack;
    for (const [first, second] of pairsOf([...moment.after.panels.values()])) {
      const panels = [first.panel.id, second.panel.id] as const;
      const hinges = this.#hingesBetween(...panels, move);
      if (hinges.length === 0) continue;
      const liesOn = lieAlike(first, second, this.near) && overlapOf(first, second).area >= TOUCHING;
      const side = liesOn ? sideWhereMet(moment, { panels, hinges }) : undefined;
      if (side !== sides.of(...panels)) sides = sides.with(first, second, side);
      if (side !== undefined) met = met.with(first, second, side);
    }
    const next = { shape: moment.after, sides, met, made };
    // What comes after a fold that could not be closed says nothing of its own.
    const crossings =
      stack.crossings.length > 0 ? stack.crossings : crossingsOf({ ...next, near: this.near });
    return { ...next, crossings };
  }

  #folded(at: (fold: Fold) => number): FoldedShape {
    return foldNet(this.sheet, { at, caliper: this.caliper });
  }

  /** The folds of a move on the way from one panel to another: those that lie on the way to one of them only. */
  #hingesBetween(first: string, second: string, { folds }: Move): Fold[] {
    return folds.filter((fold) => this.#ways.get(first)?.has(fold) !== this.#ways.get(second)?.has(fold));
  }
}

/** The folds on the way from the panel that stays put to every other. */
function waysFrom({ root, joints }: PanelTree): ReadonlyMap<string, ReadonlySet<Fold>> {
  const ways = new Map<string, ReadonlySet<Fold>>([[root, new Set()]]);
  for (const { fold, parent, child } of joints) ways.set(child, new Set([...(ways.get(parent) ?? []), fold]));
  return ways;
}
