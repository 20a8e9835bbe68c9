import type { Rule } from '../rule.ts';
import { quote, sayList, sayPlace } from '../words.ts';

type Facts = {
  readonly key: string;
  /** Other keys, any one of which would do. */
  readonly instead?: readonly string[];
  /** The way to the map that lacks it: `pieces`, `box`. */
  readonly where: readonly string[];
  /** Whether the key is there, with nothing behind it. */
  readonly isWritten: boolean;
};

export const missingValue: Rule<Facts> = {
  severity: 'error',
  summary: 'Everything a sheet needs is there.',
  why: 'A piece without a size cannot be cut, and a sheet without a title cannot be found again. Anything with a sensible default may be left out; these have none.',
  fails: { pieces: 'front: { stock: cream }', blames: 'front' },
  passes: { with: 'cream, cut: 3 x 4 }', insteadOf: 'cream }' },
  say: ({ key, instead = [], where, isWritten }) => {
    const keys = sayList(
      [key, ...instead].map((each) => quote(`${each}:`)),
      'or',
    );
    return {
      message: isWritten ? `there is no value after ${keys}` : `${sayPlace(where)} has no ${keys}`,
      remedy: REMEDIES[key] ?? (isWritten ? `write it after ${keys}, or take the word out` : `add ${keys}`),
    };
  },
};

/** What to write, for what is most often left out. */
const REMEDIES: Readonly<Partial<Record<string, string>>> = {
  cut: 'add its size, such as "cut: 3 1/2 x 4", or a "form:"',
  title: 'add the project\'s name, such as "title: Seed packet keeper"',
  measurements: 'add a "measurements:" block with the unit, the stock and the pieces',
  from: 'say from which edge it is measured, such as "from: left"',
  at: 'add the positions, such as "at: [1, 4 1/2]"',
  in: 'say in which panel it is cut, such as "in: front"',
  depth: 'say how far the slits run into the panels beside the fold, such as "depth: 1"',
  across: 'say across which fold, such as "across: back|front"',
  size: 'add the size, such as "size: 12 x 12"',
};
