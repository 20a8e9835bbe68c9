import { languageName } from '../language-name.ts';
import type { Rule } from '../rule.ts';

type Facts = {
  readonly language: string;
  /** The labels that have no words yet. */
  readonly keys: readonly string[];
};

export const missingLabel: Rule<Facts> = {
  severity: 'note',
  summary: 'A language has a text for every label.',
  why: 'A translation may be older than the program. What it has no text for yet is printed in English, so that nothing is missing from a sheet, and is named once for each language.',
  fails: { head: 'lang: de', blames: 'de' },
  passes: { with: 'en', insteadOf: 'de' },
  say: ({ language, keys }) => ({
    message: `${languageName(language)} has no text yet for ${keys.join(', ')}: ${keys.length === 1 ? 'it is' : 'they are'} printed in English`,
    remedy: 'translate them: see docs/adding-a-language.md',
  }),
};
