import { overlapOf } from '../closure/overlap.ts';
import { type FoldProgress, folderOf } from '../fold.ts';
import { type FoldedShape, foldedPanelOf, lieAlike } from '../folded-shape.ts';
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

/** Two panels, and the folds of a move about which one turns against the other. */
type TurnedHinges = { readonly panels: readonly [string, string]; readonly hinges: readonly Fold[] };

/** Stacks the panels of a sheet, move by move. */
export class Stacker {
  readonly sheet: Net;
  /** What is glued, by whole panels where the sheet is one of strips. */
  readonly mates: readonly Mate[];
  readonly caliper: number;
  /** The sheet laid flat, and its panels as they hang on the one that stays put. */
  readonly flat: Stack;
  readonly tree: PanelTree;
  /** Millimeters: what lies closer lies on one another. */
  readonly near: number;
  readonly #fold: (at: FoldProgress) => FoldedShape;
  readonly #ways: ReadonlyMap<string, ReadonlySet<Fold>>;
  readonly #known = new WeakMap<Stack, Map<Move, Stack>>();
  readonly #pairs = new Map<Move, readonly TurnedHinges[]>();

  constructor(sheet: Net, mates: readonly Mate[], caliper: number) {
    this.sheet = sheet;
    this.mates = mates;
    this.caliper = caliper;
    this.near = nearness(caliper);
    this.#fold = folderOf(sheet, { caliper });
    const shape = this.#fold(0);
    this.flat = { shape, sides: new Sides(), met: new Sides(), made: new Set(), crossings: [] };
    this.tree = treeOf(shape);
    this.#ways = waysFrom(this.tree);
  }

  /** The stack after one more move; the same one whenever it is asked for. */
  after(stack: Stack, move: Move): Stack {
    const known = this.#known.get(stack) ?? new Map<Move, Stack>();
    const next = known.get(move) ?? this.#moved(stack, move);
    this.#known.set(stack, known.set(move, next));
    return next;
  }

  #moved(stack: Stack, move: Move): Stack {
    const made = new Set([...stack.made, ...move.folds]);
    let before: FoldedShape | undefined;
    const moment = {
      move,
      before: (): FoldedShape => {
        before ??= this.#fold((fold) => (move.folds.includes(fold) ? 1 - LAST : made.has(fold) ? 1 : 0));
        return before;
      },
      after: this.#fold((fold) => (made.has(fold) ? 1 : 0)),
      near: this.near,
      mates: this.mates,
    };
    let { sides, met } = stack;
    for (const { panels, hinges } of this.#turned(move)) {
      const [first, second] = [
        foldedPanelOf(moment.after, panels[0]),
        foldedPanelOf(moment.after, panels[1]),
      ];
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

  /** Every two panels that a move turns against one another. */
  #turned(move: Move): readonly TurnedHinges[] {
    const known = this.#pairs.get(move);
    if (known) return known;
    const pairs = pairsOf(this.sheet.panels.map(({ id }) => id)).map((panels) => ({
      panels,
      hinges: this.#hingesBetween(panels, move),
    }));
    const turned = pairs.filter(({ hinges }) => hinges.length > 0);
    this.#pairs.set(move, turned);
    return turned;
  }

  /** The folds of a move on the way from one panel to another: those that lie on the way to one of them only. */
  #hingesBetween([first, second]: TurnedHinges['panels'], { folds }: Move): Fold[] {
    const [one, other] = [this.#ways.get(first), this.#ways.get(second)];
    return folds.filter((fold) => one?.has(fold) !== other?.has(fold));
  }
}

function treeOf({ net, base }: FoldedShape): PanelTree {
  const [tree] = panelForest(net, base).trees;
  if (!tree) throw new Error('a net without panels has no tree');
  return tree;
}

/** The folds on the way from the panel that stays put to every other. */
function waysFrom({ root, joints }: PanelTree): ReadonlyMap<string, ReadonlySet<Fold>> {
  const ways = new Map<string, ReadonlySet<Fold>>([[root, new Set()]]);
  for (const { fold, parent, child } of joints) ways.set(child, new Set([...(ways.get(parent) ?? []), fold]));
  return ways;
}
