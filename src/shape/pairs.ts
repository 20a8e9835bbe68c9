/** Every two of some things, the earlier one first. */
export function pairsOf<T>(items: readonly T[]): (readonly [T, T])[] {
  return items.flatMap((first, index) => items.slice(index + 1).map((second) => [first, second] as const));
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
