/** What one kind of blank can measure along an axis, and how many of that kind there are. */
export type Lengths = { readonly lengths: readonly number[]; readonly most: number };

export type Positions = {
  /** Rising, from 0 to `end`, both included. */
  readonly at: readonly number[];
  /** False when there were more than `most`, and some were left out. */
  readonly complete: boolean;
};

/** More than this are not even looked at. */
const FAR_TOO_MANY = 40_000;

/**
 * The distances from an edge at which a cut can make sense: sums of lengths of blanks laid end to end (the normal
 * patterns of N. Christofides and C. Whitlock, Operations Research 25, 1977), 0 and `end`.
 */
export function normalPositions(kinds: readonly Lengths[], end: number, most: number): Positions {
  const reached = new Map([[0, 0]]);
  for (const kind of kinds) addMultiples(reached, kind, end);
  reached.delete(end);
  const complete = reached.size <= most && reached.size < FAR_TOO_MANY;
  const kept = complete ? [...reached.keys()] : selection(reached, end, most);
  return { at: [...kept, end].sort((a, b) => a - b), complete };
}

/** Half of them those that take fewest blanks, half spread evenly, so that little is lost wherever a part ends. */
function selection(reached: ReadonlyMap<number, number>, end: number, most: number): readonly number[] {
  const half = Math.floor(most / 2);
  const byCount = [...reached].sort(([a, fewer], [b, more]) => fewer - more || a - b);
  const first = byCount.slice(0, half).map(([position]) => position);
  const spread = new Map(
    byCount.map(([position]) => [Math.floor((position / end) * (most - half)), position]),
  );
  return [...new Set([...first, ...spread.values()])];
}

/** Adds every position that can be reached from those there are with one kind more. */
function addMultiples(reached: Map<number, number>, { lengths, most }: Lengths, end: number): void {
  let edge = [...reached];
  for (let copy = 0; copy < most && edge.length > 0; copy += 1) {
    const next: [number, number][] = [];
    for (const [position, count] of edge) {
      for (const length of lengths) {
        const there = position + length;
        if (there > end || reached.has(there) || reached.size >= FAR_TOO_MANY) continue;
        reached.set(there, count + 1);
        next.push([there, count + 1]);
      }
    }
    edge = next;
  }
}
