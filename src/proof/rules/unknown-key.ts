import { nearestName } from '../../project/nearest.ts';
import { EDGES } from '../../project/net-as-written.ts';
import type { Place } from '../../project/source.ts';
import { runOnFrom } from '../../project/yaml/yaml-node.ts';
import type { Rule } from '../rule.ts';
import type { Words } from '../told.ts';
import { quote, sayPlace } from '../words.ts';

type Facts = {
  readonly key: string;
  /** The keys allowed there. */
  readonly known: readonly string[];
  /** The way to the map: `pieces`, `box`. */
  readonly where: readonly string[];
  /** The key that it was read as. */
  readonly meant?: string;
};

export const unknownKey: Rule<Facts> = {
  severity: 'error',
  summary: 'Every word before a colon is one that Sheetwright knows.',
  why: 'A slip such as `corner:` for `corners:` would be silently ignored, and the sheet printed without the rounded corners. In the measurement block and the supplies that is an error; elsewhere, where someone may keep a word of their own, a warning.',
  fails: { pieces: 'front: { stock: cream, cut: 3 x 4, corner: 1/4 }', blames: 'corner' },
  passes: { with: 'corners', insteadOf: 'corner' },
  say: ({ key, known, where, meant }, at) => {
    const runOn = hasColon(at) ? undefined : sayRunOn(key, known);
    if (runOn) return runOn;
    const whole = wordsCutIn(at);
    if (whole !== undefined) {
      return {
        message: `a comma cuts ${quote(key)} off from the words before it`,
        remedy: `put the whole value in quotes: ${quote(whole)}`,
      };
    }
    return {
      severity: [where[0], meant].some((each) => MEASURED.has(each ?? '')) ? 'error' : 'warning',
      message: `${quote(key)} is not a setting of ${sayPlace(where)}`,
      remedy: remedyFor(key, known, at, meant),
    };
  },
};

/** A key that runs on into its value, since its colon, or the space after that, was left out. */
function sayRunOn(text: string, known: readonly string[]): Words | undefined {
  const key = known.find((each) => runOnFrom(each, text) !== undefined);
  const value = key && runOnFrom(key, text);
  if (!key || !value) return undefined;
  const lack = text.startsWith(`${key}:`) ? 'there is no space after the colon' : 'there is no colon';
  return { message: `${lack} in ${quote(text)}`, remedy: `write ${quote(`${key}: ${value}`)}` };
}

function remedyFor(
  key: string,
  known: readonly string[],
  at: Place,
  meant = nearestName(key, known),
): string {
  const isDistance = EDGES.some((edge) => edge === key) && known.includes('at');
  if (isDistance) return `write ${quote(`at: { ${key}: ${valueBehind(at)} }`)}`;
  if (key === 'cut' && known.includes('form')) return 'delete it: its form works out what it is cut to';
  if (key === 'cut' && known.includes('drawn')) return 'delete it: its drawing gives the size';
  return meant === undefined ? `delete it; known here: ${known.join(', ')}` : `write ${quote(meant)}`;
}

/** What follows a key, as written. */
function valueBehind({ file: { text }, end }: Place): string {
  return /^["']?\s*:\s*([^,{}[\]\n]+)/u.exec(text.slice(end))?.[1]?.trim() ?? '1/2';
}

function hasColon({ file: { text }, end }: Place): boolean {
  return /^["']?\s*:/u.test(text.slice(end));
}

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

/** In braces a value ends at a comma: the value together with what follows the comma and has no colon. */
function wordsCutIn(at: Place): string | undefined {
  const { file, start, end } = at;
  const { text } = file;
  const [before] = /[^{}[\]:\n]+,\s*$/u.exec(text.slice(Math.max(start - MOST_CUT, 0), start)) ?? [];
  return before === undefined || hasColon(at) ? undefined : before.trimStart() + text.slice(start, end);
}
