import { type Bounds, boundsOf, gapBetween, type Point2 } from './flat-polygon.ts';

/** Every two of some things, the earlier one first. */
export function pairsOf<T>(items: readonly T[]): (readonly [T, T])[] {
  const pairs: (readonly [T, T])[] = [];
  for (const [index, first] of items.entries()) {
    for (const second of items.slice(index + 1)) pairs.push([first, second]);
  }
  return pairs;
}

/** Every two of some things whose outlines' bounds are no more than `within` millimeters apart, the earlier one first. */
export function* nearPairs<T extends { readonly outline: readonly Point2[] }>(
  items: readonly T[],
  within: number,
): Generator<readonly [T, T]> {
  const bounded = items.map((item): readonly [T, Bounds] => [item, boundsOf(item.outline)]);
  for (const [index, [first, bounds]] of bounded.entries()) {
    for (const [second, others] of bounded.slice(index + 1)) {
      if (gapBetween(bounds, others) <= within) yield [first, second];
    }
  }
}

/** Groups joined for as long as any two belong together. */
export function gather<T>(
  groups: readonly (readonly T[])[],
  belong: (one: readonly T[], other: readonly T[]) => boolean,
): readonly (readonly T[])[] {
  let found: readonly (readonly T[])[] = [];
  for (const group of groups) {
    const near = found.filter((each) => belong(each, group));
    found = [...found.filter((each) => !near.includes(each)), [...near.flat(), ...group]];
  }
  return found;
}
