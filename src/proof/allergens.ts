/**
 * The major food allergens of the United States (21 USC 321(qq): eight by FALCPA 2004, sesame by the FASTER Act
 * 2021) and the fourteen of the European Union (Regulation (EU) No 1169/2011, Annex II), by name, each once.
 * "gluten" and "sulphites" stand for the long names that the Annex gives them.
 */
export const ALLERGENS: readonly string[] = [
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
