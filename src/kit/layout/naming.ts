/** Sheets cut alike, and how many pieces of the kind in question each gives. */
type Group = { readonly layout: number; readonly sheets: number; readonly each: number };

/** A group's pieces by name: how many of each name every one of its sheets gives. */
export type Named = { readonly layout: number; readonly sheets: number; readonly counts: readonly number[] };

/**
 * Says which of the pieces of one size is which, so that exactly so many of each name are cut. Sheets of a layout are
 * named alike where that comes out; else as few as need be are named apart.
 * @param groups sheets by layout; their pieces together are as many as are wanted together.
 * @param wanted how many of each name.
 */
export function nameAlike(groups: readonly Group[], wanted: readonly number[]): readonly Named[] {
  const start = groups.map((group): Named & { left: number } => ({ ...group, counts: [], left: group.each }));
  let named = start;
  for (const count of wanted.slice(0, -1)) named = nameNext(named, count);
  return named.map(({ layout, sheets, counts, left }) => ({ layout, sheets, counts: [...counts, left] }));
}

type Open = Named & { readonly left: number };

function nameNext(groups: readonly Open[], count: number): Open[] {
  const shares = sharesOf(groups, count);
  if (shares) {
    return groups.map(({ layout, sheets, counts, left }, index) => {
      const share = shares[index] ?? 0;
      return { layout, sheets, counts: [...counts, share], left: left - share };
    });
  }
  const largest = groups.reduce((most, each) => (each.sheets > most.sheets ? each : most));
  const split = groups.flatMap((group) =>
    group === largest
      ? [
          { ...group, sheets: group.sheets - 1 },
          { ...group, sheets: 1 },
        ]
      : [group],
  );
  if (largest.sheets === 1) throw new Error('more pieces of a name than there are pieces');
  return nameNext(split, count);
}

/**
 * How many of a name each sheet of each group gives, `count` in all; as even a share of each as can be is tried first.
 * Undefined when it cannot come out.
 */
function sharesOf(groups: readonly Open[], count: number): readonly number[] | undefined {
  const total = groups.reduce((sum, { sheets, left }) => sum + sheets * left, 0);
  const dead = new Set<string>();
  const visit = (index: number, rest: number): number[] | undefined => {
    const group = groups[index];
    if (!group) return rest === 0 ? [] : undefined;
    const key = `${index} ${rest}`;
    if (dead.has(key)) return undefined;
    const fair = Math.round((group.left * count) / Math.max(1, total));
    const choices = Array.from({ length: group.left + 1 }, (_, share) => share);
    choices.sort((a, b) => Math.abs(a - fair) - Math.abs(b - fair) || a - b);
    for (const share of choices) {
      if (share * group.sheets > rest) continue;
      const others = visit(index + 1, rest - share * group.sheets);
      if (others) return [share, ...others];
    }
    dead.add(key);
    return undefined;
  };
  return visit(0, count);
}
