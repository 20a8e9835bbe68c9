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
    message: `${languageName(language)} has no text yet for ${firstOf(keys)}: ${keys.length === 1 ? 'it is' : 'they are'} printed in English`,
    remedy: 'translate them: docs/adding-a-language.md says how, and which test lists them all',
  }),
};

/** How many labels a note names: a language that was just begun lacks hundreds. */
const NAMED = 8;

function firstOf(keys: readonly string[]): string {
  const others = keys.length - NAMED;
  return others > 1 ? `${keys.slice(0, NAMED).join(', ')} and ${others} others` : keys.join(', ');
}
