import { SUPPLY_UNIT_WORDS, supplyUnit } from '../measure/supply-units.ts';
import { isSlipOf, nearestName } from './nearest.ts';

/** Words that are a letter away from one of a unit and name a thing of their own that supplies may be counted in. */
const THINGS: ReadonlySet<string> = new Set(['felt', 'felts', 'food', 'pouch', 'pouches', 'yarn', 'yarns']);

/** From here on a word is told from others by its letters though one of them is another. */
const LONG = 4;

/** The unit that a word is a slip of: `inches` for `inchs`, `in` for `inn`. Undefined of what may well be a thing. */
export function unitMeant(word: string): string | undefined {
  const typed = word.toLowerCase();
  if (supplyUnit(typed) || THINGS.has(typed)) return undefined;
  return nearestName(
    typed,
    SUPPLY_UNIT_WORDS.filter((unit) => isSlip(typed, unit)),
  );
}

/** Things such as cards and pins are a letter away from yards and inches, too: a slip begins as the unit does. */
function isSlip(typed: string, unit: string): boolean {
  if (!isSlipOf(typed, unit)) return false;
  return unit.length < LONG ? lettersOf(typed) === lettersOf(unit) : typed[0] === unit[0];
}

function lettersOf(word: string): string {
  return [...new Set(word)].toSorted().join('');
}
