import { Length } from '../../measure/length.ts';
import type { CutEdge } from '../guillotine/blank.ts';
import type { Box } from '../plan.ts';
import type { Ruler } from '../ruler.ts';
import { along, type Part } from './part.ts';

/** A part of a sheet where it lies, in true lengths. Strips lie one kerf apart. */
export type Laid = {
  readonly box: Box;
  readonly content:
    | { readonly kind: 'piece'; readonly blank: number; readonly turned: boolean }
    | { readonly kind: 'waste' }
    | { readonly kind: 'strips'; readonly from: CutEdge; readonly parts: readonly Laid[] };
};

/** Measures a part out on the sheet, its top left corner at the box's. */
export function layOut(part: Part, box: Box, ruler: Ruler): Laid {
  if (part.kind === 'piece') {
    return { box, content: { kind: 'piece', blank: part.blank, turned: part.turned } };
  }
  if (part.kind === 'waste') return { box, content: { kind: 'waste' } };
  const { from } = part;
  let before = 0;
  const parts = part.parts.map((each) => {
    const steps = along(each, from);
    const start = ruler.offset(before);
    before += steps;
    return layOut(each, stretch(box, from, start, atLeastNothing(ruler.extent(steps))), ruler);
  });
  return { box, content: { kind: 'strips', from, parts } };
}

/**
 * A sheet whose four edges are trimmed off first, by so much each; `inside` lays out what is left.
 */
export function trimEdges(sheet: Box, margin: Length, kerf: Length, inside: (box: Box) => Laid): Laid {
  if (margin.sign === 0) return inside(sheet);
  const lead = margin.plus(kerf);
  const cutOff = (box: Box, from: CutEdge, rest: (box: Box) => Laid): Laid => {
    const length = from === 'left' ? box.width : box.height;
    const edge: Laid = { box: stretch(box, from, Length.zero, margin), content: { kind: 'waste' } };
    return strips(box, from, [edge, rest(stretch(box, from, lead, length.minus(lead)))]);
  };
  const keep = (box: Box, from: CutEdge, rest: (box: Box) => Laid): Laid => {
    const length = (from === 'left' ? box.width : box.height).minus(lead);
    const end = stretch(box, from, length.plus(kerf), margin);
    const edge: Laid = { box: end, content: { kind: 'waste' } };
    return strips(box, from, [rest(stretch(box, from, Length.zero, length)), edge]);
  };
  return cutOff(sheet, 'left', (one) =>
    cutOff(one, 'top', (two) => keep(two, 'left', (three) => keep(three, 'top', inside))),
  );
}

function strips(box: Box, from: CutEdge, parts: readonly Laid[]): Laid {
  return { box, content: { kind: 'strips', from, parts } };
}

/** A stretch of a box away from one of its edges. */
export function stretch(box: Box, from: CutEdge, start: Length, length: Length): Box {
  return from === 'left'
    ? { ...box, left: box.left.plus(start), width: length }
    : { ...box, top: box.top.plus(start), height: length };
}

/** Waste narrower than the blade is no waste: the blade takes all of it. */
function atLeastNothing(length: Length): Length {
  return Length.max(Length.zero, length);
}
