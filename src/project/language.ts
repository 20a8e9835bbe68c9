import type { Unit } from '../measure/length.ts';
import type { Spelling } from '../measure/scan.ts';
import { languageWords } from './language-words.ts';
import type { Project, Site } from './model.ts';
import { membersOf } from './prose/word-finder.ts';

/** The language a project is written in, by its BCP 47 tag. */
export function languageOf({ lang }: Project, { language }: Site): string {
  return lang?.value ?? language;
}

/** What a label says in a language, or in the nearest that its tag begins with; nothing where we have no words in it. */
export function wordsIn(language: string, label: string): string {
  const own = languageWords.get(language)?.[label];
  const wider = language.split('-').slice(0, -1).join('-');
  return own ?? (wider === '' ? '' : wordsIn(wider, label));
}

const UNITS: readonly (readonly [unit: Unit, label: string])[] = [
  ['in', 'reads-inches'],
  ['cm', 'reads-centimeters'],
  ['mm', 'reads-millimeters'],
];

const spellings: Map<string, Spelling> = new Map<string, Spelling>();

/** How a language writes a measurement in a sentence: `2,5 cm`, `6 Zoll`. */
export function spellingIn(language: string): Spelling {
  const spelling = spellings.get(language) ?? spellingOf(language);
  spellings.set(language, spelling);
  return spelling;
}

function spellingOf(language: string): Spelling {
  const units = UNITS.flatMap(([unit, label]) =>
    membersOf(wordsIn(language, label)).map((word) => [word.toLowerCase(), unit] as const),
  );
  const mark = new Intl.NumberFormat(language).formatToParts(1.5).find(({ type }) => type === 'decimal');
  return {
    hasComma: mark?.value === ',',
    units: new Map(units),
    between: ['by', ...membersOf(wordsIn(language, 'reads-by'))],
  };
}
