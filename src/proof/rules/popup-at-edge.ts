import type { Length, Unit } from '../../measure/length.ts';
import { leastPaper } from '../openings.ts';
import { popUpsOf } from '../pop-ups.ts';
import type { Rule } from '../rule.ts';
import type { Words } from '../told.ts';
import { sayLength } from '../words.ts';

type Facts = { readonly piece: string; readonly opening: string } & (
  | { readonly found: { readonly kind: 'no fold' } }
  | { readonly unit: Unit; readonly found: TooDeep | Past | { readonly kind: 'thin'; readonly left: Length } }
);

/** Slits that reach the far edge of a panel. */
type TooDeep = {
  readonly kind: 'too deep';
  readonly depth: Length;
  readonly panel: string;
  readonly room: Length;
};

/** A strip that runs off its fold: how long that is, and what is left at the end where that is less. */
type Past = {
  readonly kind: 'past';
  readonly width: Length;
  readonly room: Length;
  readonly left: Length;
};

export const popupAtEdge: Rule<Facts> = {
  severity: 'error',
  summary: 'A pop-up is on a fold that closes flat, with card left on all sides of it.',
  why: 'A pop-up is a strip between two slits. If these reach an edge, or leave less than 1/8 in (3 mm) of the fold at its ends, the card comes apart there.',
  fails: {
    pieces:
      'card: { stock: cream, form: single-fold card, size: 4 1/4 x 5 1/2, openings: { step: { pop-up: 5 1/2, depth: 1 } } }',
    blames: '5 1/2',
  },
  passes: { with: 'pop-up: 2', insteadOf: 'pop-up: 5 1/2' },
  *check(context) {
    for (const { of, popUp, written } of popUpsOf(context)) {
      const [left] = popUp.ends.toSorted((a, b) => a.compare(b));
      if (!left?.lessThan(leastPaper(of.unit))) continue;
      yield { at: written.name.at, facts: { ...of, found: { kind: 'thin', left } } };
    }
  },
  say: (facts) => {
    const name = `${facts.piece}.${facts.opening}`;
    return 'unit' in facts
      ? sayFound(name, facts.found, (length) => sayLength(length, facts.unit), leastPaper(facts.unit))
      : {
          message: `${name} has no fold to lie across: nothing in ${facts.piece} is folded by 180°`,
          remedy: `cut it in a card, or take ${facts.opening} out`,
        };
  },
};

function sayFound(
  name: string,
  found: TooDeep | Past | { readonly kind: 'thin'; readonly left: Length },
  say: (length: Length) => string,
  least: Length,
): Words {
  if (found.kind === 'too deep') {
    return {
      message: `${name} is cut ${say(found.depth)} deep into ${found.panel}, which is ${say(found.room)} from the fold to its edge`,
      remedy: `cut it less than ${say(found.room)} deep`,
    };
  }
  if (found.kind === 'thin') {
    return {
      message: `${name} leaves ${say(found.left)} of the fold at one end; ${say(least)} is the least that does not tear`,
      remedy: `move it ${say(least.minus(found.left))} inward, or make it narrower`,
      severity: 'warning',
    };
  }
  const { width, room, left } = found;
  if (!width.lessThan(room)) {
    return {
      message: `${name} is ${say(width)} wide on a fold of ${say(room)}`,
      remedy: `make it less than ${say(room)} wide, with ${say(least)} of the fold left at both ends`,
    };
  }
  return left.sign > 0
    ? {
        message: `${name}, ${say(width)} wide, runs into another pop-up on the same fold`,
        remedy: `leave ${say(least)} between them, or more`,
      }
    : {
        message: `${name} runs ${left.sign < 0 ? `past the end of its fold by ${say(left.abs())}` : 'up to the end of its fold'}: it is ${say(width)} wide on ${say(room)}`,
        remedy: `move it inward by ${say(left.abs().plus(least))}, or make it narrower`,
      };
}
