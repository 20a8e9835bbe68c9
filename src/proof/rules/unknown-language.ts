import { languageName } from '../language-name.ts';
import type { Rule } from '../rule.ts';

type Facts = {
  readonly language: string;
  /** The languages that have labels. */
  readonly known: readonly string[];
};

export const unknownLanguage: Rule<Facts> = {
  severity: 'note',
  summary: 'The labels of a sheet exist in its language.',
  why: 'A sheet says “Cut”, “Score” and “Let dry” in the language it names. If there are no labels in that language, English ones surround your own words, and a screen reader reads them all as English. Languages are looked up when a workspace is proofed or made.',
  fails: { head: 'lang: vo', blames: 'vo' },
  passes: { with: 'en-GB', insteadOf: 'vo' },
  say: ({ language, known }) => ({
    message: `there are no labels in ${languageName(language)}, so the labels are in English`,
    remedy: `name one of ${known.join(', ')}`,
  }),
};
