import type { Move } from './moves.ts';
import type { Stack } from './stack.ts';

/** So many moves are tried in every order there is: 120 orders. */
const FEW = 5;

/** Moves made one after another, and the stack before the first and after each. */
type TriedOrder = { readonly moves: readonly Move[]; readonly stacks: readonly [Stack, ...Stack[]] };

/** Folds a sheet, one move after another. */
type Folder = { readonly flat: Stack; after(stack: Stack, move: Move): Stack };

/** Looks for an order of moves in which nothing hinders any. Where nobody has said when a move comes, it is free. */
export class OrderSearch {
  readonly #folder: Folder;
  readonly #isHindered: (stack: Stack) => boolean;

  constructor(folder: Folder, isHindered: (stack: Stack) => boolean) {
    this.#folder = folder;
    this.#isHindered = isHindered;
  }

  /** The stack once all is folded, in an order as near to the usual as can be; undefined when there is none. */
  find(usual: readonly Move[]): Stack | undefined {
    const { flat } = this.#folder;
    let done: TriedOrder = { moves: [], stacks: [flat] };
    for (const move of usual) {
      const next = this.#withNext(done, move);
      if (!next) return this.#inAnyOrder(flat, usual);
      done = next;
    }
    return done.stacks.at(-1);
  }

  /** One more move made, at the end or as little before it as nothing hinders. */
  #withNext({ moves, stacks }: TriedOrder, move: Move): TriedOrder | undefined {
    for (let at = moves.length; at >= 0; at -= 1) {
      const passed = moves.slice(at);
      if (!passed.every((each) => isFree(move, each))) return undefined;
      const [first, ...others] = stacks.slice(0, at + 1);
      const before: TriedOrder = { moves: moves.slice(0, at), stacks: [first ?? stacks[0], ...others] };
      const made = this.#made(before, [move, ...passed]);
      if (made) return made;
    }
    return undefined;
  }

  #made(way: TriedOrder, moves: readonly Move[]): TriedOrder | undefined {
    let { stacks } = way;
    for (const move of moves) {
      const stack = this.#folder.after(stacks.at(-1) ?? stacks[0], move);
      if (this.#isHindered(stack)) return undefined;
      stacks = [...stacks, stack];
    }
    return { moves: [...way.moves, ...moves], stacks };
  }

  /** The first order there is in which nothing hinders any, of a few moves. */
  #inAnyOrder(stack: Stack, waiting: readonly Move[]): Stack | undefined {
    if (waiting.length === 0) return stack;
    if (waiting.length > FEW) return undefined;
    for (const move of waiting) {
      const rest = waiting.filter((each) => each !== move);
      if (rest.some((each) => each.step < move.step && !isFree(move, each))) continue;
      const next = this.#folder.after(stack, move);
      const found = this.#isHindered(next) ? undefined : this.#inAnyOrder(next, rest);
      if (found) return found;
    }
    return undefined;
  }
}

/** Whether a move may come before another that it would come after: nobody has said otherwise. */
function isFree(move: Move, other: Move): boolean {
  const isUnsaid = [move, other].every(({ folds }) => folds.every(({ stage }) => stage === undefined));
  return isUnsaid || move.step === other.step;
}
