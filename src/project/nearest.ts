import { distance } from 'fastest-levenshtein';

/**
 * The name most like the one written, if any is like it at all: no more than two in five characters differ. Of several,
 * the one whose number is nearest: `wall-6` for `wall-7`.
 */
export function nearestName(name: string, among: Iterable<string>): string | undefined {
  let nearest: { name: string; apart: number; counts: number } | undefined;
  for (const other of among) {
    const apart = distance(name.toLowerCase(), other.toLowerCase());
    const limit = Math.max(1, Math.ceil(Math.max(name.length, other.length) * 0.4));
    const counts = numbersApart(name, other);
    const isNearer =
      !nearest || apart < nearest.apart || (apart === nearest.apart && counts < nearest.counts);
    if (apart <= limit && isNearer) nearest = { name: other, apart, counts };
  }
  return nearest?.name;
}

/** Whether one word is the other with one slip in it, two in a long one: a letter more, less, another, or two that changed places. */
export function isSlipOf(written: string, meant: string): boolean {
  const [one, other] = [written.toLowerCase(), meant.toLowerCase()];
  if (Math.abs(one.length - other.length) > 2) return false;
  const apart = distance(one, other);
  return apart <= (other.length < LONG ? 1 : 2) || (apart === 2 && sorted(one) === sorted(other));
}

const LONG = 8;

function sorted(word: string): string {
  return [...word].toSorted().join('');
}

/** How far apart the numbers are that two names end in; 0 of names without. */
function numbersApart(...names: readonly [string, string]): number {
  const [one, other] = names.map((name) => /\d+$/u.exec(name)?.[0]);
  return one === undefined || other === undefined ? 0 : Math.abs(Number(one) - Number(other));
}

/**
 * `write "front"`, the remedy for a name that isn't there: the nearest one, else all that are; each behind what stands
 * before it in the words to be put right, such as `box.`
 */
export function nameRemedy(name: string, among: readonly string[], before = ''): string {
  const nearest = nearestName(name, among);
  if (nearest !== undefined) return `write "${before}${nearest}"`;
  if (among.length === 0) return 'take it out';
  return `write one of: ${among.map((each) => before + each).join(', ')}`;
}
