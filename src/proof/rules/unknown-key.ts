import type { Place } from '../../project/source.ts';
import { nearestName } from '../../shape/nearest.ts';
import type { Rule } from '../rule.ts';
import { quote, sayPlace } from '../words.ts';

type Facts = {
  readonly key: string;
  /** The keys allowed there. */
  readonly known: readonly string[];
  /** The way to the map: `pieces`, `box`. */
  readonly where: readonly string[];
};

export const unknownKey: Rule<Facts> = {
  severity: 'error',
  summary: 'Every word before a colon is one that a sheet knows.',
  why: 'A slip such as `corner:` for `corners:` would be silently ignored, and the sheet printed without the rounded corners. In the measurement block and the supplies that is an error; elsewhere, where someone may keep a word of their own, a warning.',
  fails: { pieces: 'front: { stock: cream, cut: 3 x 4, corner: 1/4 }', blames: 'corner' },
  passes: { with: 'corners', insteadOf: 'corner' },
  say: ({ key, known, where }, at) => {
    const whole = wordsCutIn(at);
    if (whole !== undefined) {
      return {
        message: `a comma cuts ${quote(key)} off from the words before it`,
        remedy: `put the whole value in quotes: ${quote(whole)}`,
      };
    }
    const isSized = key === 'cut' && known.includes('form');
    const nearest = isSized ? undefined : nearestName(key, known);
    const plain = isSized
      ? 'take it out: its form works out what it is cut to'
      : `take it out; known here: ${known.join(', ')}`;
    return {
      severity: MEASURED.has(where[0] ?? '') ? 'error' : 'warning',
      message: `${quote(key)} means nothing in ${sayPlace(where)}`,
      remedy: nearest === undefined ? plain : `write ${quote(nearest)}`,
    };
  },
};

/** Where a word passed over would change what is cut or bought. */
const MEASURED: ReadonlySet<string> = new Set([
  'measurements',
  'pieces',
  'stock',
  'holds',
  'score',
  'supplies',
]);

/** How far before a comma the value begins at most. */
const MOST_CUT = 100;

/** In braces a value ends at a comma: the value together with what stands behind the comma and has no colon. */
function wordsCutIn({ file: { text }, start, end }: Place): string | undefined {
  const [before] = /[^{}[\]:\n]+,\s*$/u.exec(text.slice(Math.max(start - MOST_CUT, 0), start)) ?? [];
  const hasColon = /^["']?\s*:/u.test(text.slice(end));
  return before === undefined || hasColon ? undefined : before.trimStart() + text.slice(start, end);
}
