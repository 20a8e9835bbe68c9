import { wordsIn } from '../project/language.ts';
import { membersOf } from '../project/prose/word-finder.ts';

/**
 * The major food allergens of the United States (21 USC 321(qq): eight by FALCPA 2004, sesame by the FASTER Act
 * 2021) and the fourteen of the European Union (Regulation (EU) No 1169/2011, Annex II), by name, each once.
 * "gluten" and "sulphites" stand for the long names that the Annex gives them.
 */
const ALLERGENS: readonly string[] = [
  'milk',
  'eggs',
  'fish',
  'crustacean shellfish',
  'tree nuts',
  'peanuts',
  'wheat',
  'soybeans',
  'sesame',
  'gluten',
  'cereals containing gluten',
  'crustaceans',
  'nuts',
  'celery',
  'mustard',
  'sulphites',
  'sulphur dioxide and sulphites',
  'lupin',
  'molluscs',
];

type AllergenNames = {
  /** What each is called, in the order of the list above. */
  readonly names: readonly string[];
  /** Other names that people give them, and what the Annex names by way of example: `rye`, `almonds`. */
  readonly others: readonly string[];
};

/** What the allergens are called in a language; in English where we have no words in it. */
export function allergensIn(language: string): AllergenNames {
  const names = ALLERGENS.map((name) => wordsIn(language, `allergen-${name.replaceAll(' ', '-')}`) || name);
  return { names: [...new Set(names)], others: membersOf(wordsIn(language, 'reads-allergens')) };
}

/** A name without what differs from one hand to the next: capitals, blanks, the shape of an apostrophe. */
export function plainAllergen(name: string): string {
  return name.trim().toLowerCase().replace(/\s+/gu, ' ').replaceAll("'", '’');
}
