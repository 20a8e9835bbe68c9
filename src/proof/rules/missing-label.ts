import { languageName } from '../language-name.ts';
import type { Rule } from '../rule.ts';

type Facts = {
  readonly language: string;
  /** The labels that have no words yet. */
  readonly keys: readonly string[];
};

export const missingLabel: Rule<Facts> = {
  severity: 'note',
  summary: 'A language has a word for every label.',
  why: 'A translation may be older than the program. What it has no word for yet stands in English, so that nothing is missing from a sheet, and is named once for each language.',
  fails: { head: 'lang: de', blames: 'de' },
  passes: { with: 'en', insteadOf: 'de' },
  say: ({ language, keys }) => ({
    message: `there is no ${languageName(language)} yet for ${keys.join(', ')}: English stands there`,
    remedy: 'translate them as docs/adding-a-language.md tells',
  }),
};
