/** Lengths one kind of blank can take along an axis, and how many of that kind there are. */
export type Supply = { readonly lengths: readonly number[]; readonly most: number };

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
export function normalPositions(supplies: readonly Supply[], end: number, most: number): Positions {
  const pieces = new Map([[0, 0]]);
  for (const supply of supplies) addMultiples(pieces, supply, end);
  pieces.delete(end);
  const complete = pieces.size <= most && pieces.size < FAR_TOO_MANY;
  const kept = complete ? [...pieces.keys()] : selection(pieces, end, most);
  return { at: [...kept, end].sort((a, b) => a - b), complete };
}

/** Half of them those that take fewest blanks, half spread evenly, so that little is lost wherever a part ends. */
function selection(pieces: ReadonlyMap<number, number>, end: number, most: number): readonly number[] {
  const half = Math.floor(most / 2);
  const byPieces = [...pieces].sort(([a, fewer], [b, more]) => fewer - more || a - b);
  const first = byPieces.slice(0, half).map(([position]) => position);
  const spread = new Map(
    byPieces.map(([position]) => [Math.floor((position / end) * (most - half)), position]),
  );
  return [...new Set([...first, ...spread.values()])];
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
