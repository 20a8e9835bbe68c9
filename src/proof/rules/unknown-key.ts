import { nearestName } from '../../shape/nearest.ts';
import type { Rule } from '../rule.ts';
import { quote, sayPlace } from '../words.ts';

type Facts = {
  readonly key: string;
  /** The keys allowed there. */
  readonly known: readonly string[];
  /** Names the map: `pieces.box`. */
  readonly where: string;
};

export const unknownKey: Rule<Facts> = {
  severity: 'error',
  summary: 'Every word before a colon is one that a sheet knows.',
  why: 'A slip such as `corner:` for `corners:` would be passed over in silence, and the sheet printed without the rounded corners. In the measurement block that is an error; elsewhere, where someone may keep a word of their own, a warning.',
  fails: { pieces: 'front: { stock: cream, cut: 3 x 4, corner: 1/4 }', blames: 'corner' },
  passes: { with: 'corners', insteadOf: 'corner' },
  say: ({ key, known, where }) => {
    const nearest = nearestName(key, known);
    return {
      severity: MEASURED.test(where) ? 'error' : 'warning',
      message: `${quote(key)} means nothing in ${sayPlace(where)}`,
      remedy:
        nearest === undefined ? `take it out; known here: ${known.join(', ')}` : `write ${quote(nearest)}`,
    };
  },
};

/** Where a word passed over would change what is cut. */
const MEASURED = /^(?:measurements|pieces|stock|holds|score)\b/u;
