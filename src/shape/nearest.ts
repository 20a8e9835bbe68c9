import { distance } from 'fastest-levenshtein';

/** The name most like the one written, if any is like it at all: no more than two in five characters differ. */
export function nearestName(name: string, among: Iterable<string>): string | undefined {
  let nearest: { name: string; apart: number } | undefined;
  for (const other of among) {
    const apart = distance(name.toLowerCase(), other.toLowerCase());
    const limit = Math.max(1, Math.ceil(Math.max(name.length, other.length) * 0.4));
    if (apart <= limit && (!nearest || apart < nearest.apart)) nearest = { name: other, apart };
  }
  return nearest?.name;
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
