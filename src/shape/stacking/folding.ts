import { LEAST_GLUE } from '../closure/glue.ts';
import type { Net } from '../net.ts';
import { perNet } from '../per-net.ts';
import { tubesOf } from '../tube.ts';
import { keptApart } from './meeting.ts';
import { comesBefore, type Move, movesOf } from './moves.ts';
import { type Stack, Stacker } from './stack.ts';

/** A net folded move by move while it lies flat otherwise: bent walls are stuck before they are bent. */
export const stackOf: (net: Net, caliper: number) => Stack = perNet((net, caliper: number) => {
  const { strips, ...unbent } = net;
  return new Folding(strips ? unbent : net, net, caliper).best();
});

/** The same of the strips of a bent net, as it is to be looked at. */
export const bentStackOf: (net: Net, caliper: number) => Stack = perNet((net, caliper: number) =>
  net.strips ? new Folding(net.strips, net, caliper).usual() : stackOf(net, caliper),
);

/** Looks for an order in which a net can be folded. Where nobody has said when a move comes, any order will do. */
class Folding {
  readonly #stacker: Stacker;
  readonly #moves: readonly Move[];

  constructor(sheet: Net, { glue }: Net, caliper: number) {
    const seams = tubesOf(sheet).map(({ mate }) => mate);
    this.#stacker = new Stacker(sheet, [...glue, ...seams], caliper);
    this.#moves = this.#inUsualOrder(movesOf(sheet, this.#stacker.tree()));
  }

  /** As it is usually folded, whatever is in the way. */
  usual(): Stack {
    return this.#moves.reduce((stack, move) => this.#stacker.after(stack, move), this.#stacker.laidFlat());
  }

  /** As near to the usual as can be with nothing in the way; as usual where something always is. */
  best(): Stack {
    let done: Way = { moves: [], stacks: [this.#stacker.laidFlat()] };
    for (const move of this.#moves) {
      const next = this.#withNext(done, move);
      if (!next) return this.usual();
      done = next;
    }
    return lastOf(done);
  }

  /** One more move made, at the end or as little before it as nothing hinders. */
  #withNext({ moves, stacks }: Way, move: Move): Way | undefined {
    for (let at = moves.length; at >= 0; at -= 1) {
      const passed = moves.slice(at);
      if (!passed.every((each) => isFree(move, each))) return undefined;
      const made = this.#unhindered({ moves: moves.slice(0, at), stacks: stacks.slice(0, at + 1) }, [
        move,
        ...passed,
      ]);
      if (made) return made;
    }
    return undefined;
  }

  #unhindered(way: Way, moves: readonly Move[]): Way | undefined {
    let { stacks } = way;
    for (const move of moves) {
      const stack = this.#stacker.after(stacks.at(-1) ?? this.#stacker.laidFlat(), move);
      if (this.#isHindered(stack)) return undefined;
      stacks = [...stacks, stack];
    }
    return { moves: [...way.moves, ...moves], stacks };
  }

  #isHindered(stack: Stack): boolean {
    return stack.crossings.length > 0 || keptApart(stack, this.#stacker.mates, LEAST_GLUE.mm).length > 0;
  }

  /** Within a step what hangs further out first, and what is stuck under something before that. */
  #inUsualOrder(moves: readonly Move[]): readonly Move[] {
    const ordered: Move[] = [];
    for (
      let waiting = moves;
      waiting.length > 0;
      waiting = waiting.filter((each) => !ordered.includes(each))
    ) {
      const own = waiting.filter(({ step }) => step === waiting[0]?.step);
      const isNext = (move: Move): boolean =>
        !own.some((each) => each !== move && comesBefore(each, move, this.#stacker.mates));
      const next = own.find(isNext) ?? own[0];
      if (!next) break;
      ordered.push(next);
    }
    return ordered;
  }
}

/** Moves made one after another, and the stack before the first and after each. */
type Way = { readonly moves: readonly Move[]; readonly stacks: readonly Stack[] };

function lastOf({ stacks }: Way): Stack {
  const last = stacks.at(-1);
  if (!last) throw new Error('a way begins with a flat sheet');
  return last;
}

/** Whether a move may come before another that it would come after: nobody has said otherwise. */
function isFree(move: Move, other: Move): boolean {
  const isUnsaid = [move, other].every(({ folds }) => folds.every(({ stage }) => stage === undefined));
  return isUnsaid || move.step === other.step;
}
