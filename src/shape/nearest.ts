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
