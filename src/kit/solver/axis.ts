/** The positions along one edge of a sheet at which it is worth cutting. */
export type CutAxis = {
  /** Rising, from 0 to the sheet's edge. */
  readonly at: Float64Array;
  /** For a part that reaches to position `i`, cut at position `c`: the last position that what lies beyond reaches. */
  readonly beyond: readonly Int32Array[];
  /** False when there were too many positions, and some were left out. */
  readonly isComplete: boolean;
};

/** What one kind of blank can measure along an axis, and how many of that kind there are. */
export type BlankLengths = { readonly lengths: readonly number[]; readonly most: number };

/** More than this are not even looked at. */
const FAR_TOO_MANY = 40_000;

/**
 * The distances from an edge at which a cut can make sense: sums of lengths of blanks laid end to end (the normal
 * patterns of N. Christofides and C. Whitlock, Operations Research 25, 1977), 0 and `end`; about `most` at most.
 */
export function cutAxis(kinds: readonly BlankLengths[], end: number, most: number): CutAxis {
  const reached = new Map([[0, 0]]);
  for (const kind of kinds) addMultiples(reached, kind, end);
  reached.delete(end);
  const isComplete = reached.size <= most && reached.size < FAR_TOO_MANY;
  const kept = isComplete ? [...reached.keys()] : selection(reached, end, most);
  const at = Float64Array.from([...kept, end]).sort();
  return { at, beyond: Array.from(at, (part) => reachesBeyond(at, part)), isComplete };
}

/** Half of them those that take fewest blanks, half spread evenly, so that little is lost wherever a part ends. */
function selection(reached: ReadonlyMap<number, number>, end: number, most: number): Iterable<number> {
  const half = Math.floor(most / 2);
  const byCount = [...reached].sort(([a, fewer], [b, more]) => fewer - more || a - b).map(([at]) => at);
  const spread = new Map(byCount.map((at) => [Math.floor((at / end) * (most - half)), at]));
  return new Set([...byCount.slice(0, half), ...spread.values()]);
}

/** Adds every position that can be reached from those there are with one kind more. */
function addMultiples(reached: Map<number, number>, { lengths, most }: BlankLengths, end: number): void {
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

function reachesBeyond(at: Float64Array, part: number): Int32Array {
  const beyond: number[] = [];
  let last = at.length - 1;
  for (const cut of at) {
    if (cut > part) break;
    while ((at[last] ?? 0) > part - cut) last -= 1;
    beyond.push(last);
  }
  return Int32Array.from(beyond);
}

/** The index of the last position that a length reaches. */
export function lastWithin({ at }: CutAxis, length: number): number {
  let [low, high] = [0, at.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((at[middle] ?? 0) <= length) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** The index of the position that is exactly `length`; undefined where there is none. */
export function indexOf(axis: CutAxis, length: number): number | undefined {
  const last = lastWithin(axis, length);
  return axis.at[last] === length ? last : undefined;
}
