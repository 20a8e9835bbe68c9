import type { CutEdge } from '../guillotine/blank.ts';
import { across, along, type Part, type Strips, stretched, wasteLike } from './part.ts';

/** Strips without the waste they all end in, and that waste as one part. */
export type Apart = { readonly inner: Part; readonly waste: Part; readonly from: CutEdge };

/**
 * When every strip ends in waste, the least of it can be cut off all of them at once, as one part that is worth
 * keeping, before the strips are cut apart. Undefined where they do not, or the cut would be too long.
 */
export function commonWaste(part: Strips, longest: number): Apart | undefined {
  const { from, parts } = part;
  const other = across(from);
  const common = along(part, from) > longest ? 0 : Math.min(...parts.map((each) => wasteAtEnd(each, other)));
  if (common === 0) return undefined;
  const shorter = parts.map((each) => withoutEnd(each, other, common));
  return {
    inner: stretched({ ...part, parts: shorter }, other, along(part, other) - common),
    waste: stretched(wasteLike(part), other, common),
    from: other,
  };
}

/**
 * The other way round: waste that is cut off first is left on the strips, where it often comes off with a cut that is
 * made anyway. Undefined where there is no such waste, or the cuts would be too long.
 */
export function sinkWaste(part: Part, longest: number): Strips | undefined {
  if (part.kind !== 'strips' || part.parts.length !== 2 || along(part, part.from) > longest) return undefined;
  const [inner, waste] = part.parts;
  if (inner?.kind !== 'strips' || waste?.kind !== 'waste') return undefined;
  const end = along(waste, part.from);
  return { ...part, from: inner.from, parts: inner.parts.map((each) => withEnd(each, part.from, end)) };
}

/** How much waste a part ends in, away from an edge. Waste alone ends in as much as one likes, up to itself. */
function wasteAtEnd(part: Part, from: CutEdge): number {
  if (part.kind === 'waste') return along(part, from);
  const last = part.kind === 'strips' && part.from === from ? part.parts.at(-1) : undefined;
  return last?.kind === 'waste' ? along(last, from) : 0;
}

function withoutEnd(part: Part, from: CutEdge, end: number): Part {
  const rest = along(part, from) - end;
  if (part.kind !== 'strips') return stretched(part, from, rest);
  const last = part.parts.at(-1);
  const left = last ? along(last, from) - end : 0;
  const ending = last && left > 0 ? [stretched(last, from, left)] : [];
  const parts = [...part.parts.slice(0, -1), ...ending];
  const [only] = parts;
  return only && parts.length === 1 ? only : stretched({ ...part, parts }, from, rest);
}

/** A part with waste beyond it. */
function withEnd(part: Part, from: CutEdge, end: number): Part {
  const longer = stretched(wasteLike(part), from, along(part, from) + end);
  if (part.kind === 'waste') return longer;
  const { width, height } = longer;
  const isSame = part.kind === 'strips' && part.from === from;
  const parts = isSame ? part.parts : [part];
  return { width, height, kind: 'strips', from, parts: [...parts, stretched(longer, from, end)] };
}
