import { Length } from './length.ts';
import { METER_WORDS, UNIT_WORDS } from './unit-words.ts';

/** One of each unit in which supplies are sold by length, by its spellings in lowercase letters. */
const UNITS: ReadonlyMap<string, Length> = new Map(
  [
    { spellings: ['in', 'in.', 'inch', 'inches', '"', '″', '”', "''", '′′'], one: Length.of(1, 1, 'in') },
    { spellings: ['ft', 'ft.', 'foot', 'feet', "'", '′'], one: Length.of(12, 1, 'in') },
    { spellings: ['yd', 'yd.', 'yds', 'yard', 'yards'], one: Length.of(36, 1, 'in') },
    { spellings: ['mm'], one: Length.of(1, 1, 'mm') },
    { spellings: ['cm'], one: Length.of(1, 1, 'cm') },
    { spellings: ['m', ...METER_WORDS], one: Length.of(100, 1, 'cm') },
  ].flatMap(({ spellings, one }) => spellings.map((spelling) => [spelling, one] as const)),
);

/** Every word for a unit of supplies, in any of our languages, in lowercase letters. */
export const SUPPLY_UNIT_WORDS: readonly string[] = [...UNITS.keys(), ...UNIT_WORDS.keys()].filter((word) =>
  /^\p{L}+$/u.test(word),
);

/** One of the unit that a word stands for in any of our languages: `yd`, `Zentimeter`. */
export function supplyUnit(word: string): Length | undefined {
  const spelling = word.toLowerCase();
  const unit = UNIT_WORDS.get(spelling);
  return UNITS.get(spelling) ?? (unit && Length.of(1, 1, unit));
}
