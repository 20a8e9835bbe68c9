/** Lengths one kind of blank can take along an axis, and how many of that kind there are. */
export type Supply = { readonly lengths: readonly number[]; readonly most: number };

export type Positions = {
  /** Rising, from 0 to `end`, both included. */
  readonly at: readonly number[];
  /** False when there were more than `most`, and those that take most blanks to reach were left out. */
  readonly complete: boolean;
};

/** More than this are not even looked at. */
const FAR_TOO_MANY = 40_000;

/**
 * The distances from an edge at which a cut can make sense: sums of lengths of blanks laid end to end (the normal
 * patterns of N. Christofides and C. Whitlock, Operations Research 25, 1977), 0 and `end`.
 */
export function normalPositions(supplies: readonly Supply[], end: number, most: number): Positions {
  const pieces = new Map([[0, 0]]);
  for (const supply of supplies) addMultiples(pieces, supply, end);
  pieces.delete(end);
  const found = [...pieces].sort(([a, fewer], [b, more]) => fewer - more || a - b);
  const kept = found.slice(0, most).map(([position]) => position);
  return {
    at: [...kept, end].sort((a, b) => a - b),
    complete: found.length <= most && pieces.size < FAR_TOO_MANY,
  };
}

/** Adds every position that can be reached from those there are with one kind more. */
function addMultiples(pieces: Map<number, number>, { lengths, most }: Supply, end: number): void {
  let edge = [...pieces];
  for (let copy = 0; copy < most && edge.length > 0; copy += 1) {
    const next: [number, number][] = [];
    for (const [position, count] of edge) {
      for (const length of lengths) {
        const reached = position + length;
        if (reached > end || pieces.has(reached) || pieces.size >= FAR_TOO_MANY) continue;
        pieces.set(reached, count + 1);
        next.push([reached, count + 1]);
      }
    }
    edge = next;
  }
}
