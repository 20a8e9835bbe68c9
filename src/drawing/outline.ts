import { edgesOf, type Point2 } from '../shape/flat-polygon.ts';
import type { FlatPoint, FlatSegment, Net, Opening } from '../shape/net.ts';
import { type DrawnBox, type Segment, samePoint, without } from './region.ts';

/** From exact lengths on the flat sheet to millimeters on the drawing: scaled, and moved to where the sheet lies. */
export type DrawingFrame = { readonly scale: number; readonly left: number; readonly top: number };

export const AT_ORIGIN = { left: 0, top: 0 } as const;

export function place({ x, y }: FlatPoint, { scale, left, top }: DrawingFrame): Point2 {
  return { x: left + x.mm * scale, y: top + y.mm * scale };
}

export function placeAll(points: readonly FlatPoint[], frame: DrawingFrame): Point2[] {
  return points.map((point) => place(point, frame));
}

export function placeSegment({ from, to }: FlatSegment, frame: DrawingFrame): Segment {
  return [place(from, frame), place(to, frame)];
}

/** The whole cut sheet. */
export function sheetBox({ size }: Net, { scale, left, top }: DrawingFrame): DrawnBox {
  return { left, top, right: left + size.width.mm * scale, bottom: top + size.height.mm * scale };
}

/**
 * Everything that is cut, once: the edges of all panels but for the stretches on which they are folded, the slits and the
 * openings. As lines through as many points as follow one another.
 */
export function cutLines(net: Net, frame: DrawingFrame): Point2[][] {
  const done: Segment[] = net.folds.map((fold) => placeSegment(fold, frame));
  const lines: Point2[][] = [];
  for (const panel of net.panels) {
    const parts = edgesOf(placeAll(panel.outline, frame)).flatMap((edge) => without(edge, done));
    lines.push(...chained(parts));
    done.push(...parts);
  }
  for (const slit of net.slits) lines.push(...chained(without(placeSegment(slit, frame), done)));
  return [...lines, ...(net.openings ?? []).map((opening) => openingLine(opening, frame))];
}

/** The edge of an opening, back to where it begins; a slit from end to end. */
function openingLine({ outline, how }: Opening, frame: DrawingFrame): Point2[] {
  return placeAll(how === 'slit' ? outline : [...outline, ...outline.slice(0, 1)], frame);
}

/**
 * The outer edges of the waste, where the sheet ended before it was trimmed: neither edges of panels nor those between
 * two cells of waste.
 */
export function blankLines(net: Net, frame: DrawingFrame): Point2[][] {
  const panels = net.panels.flatMap((panel) => edgesOf(placeAll(panel.outline, frame)));
  const waste = net.waste.map((outline) => edgesOf(placeAll(outline, frame)));
  return waste.flatMap((edges) => {
    const others = [...panels, ...waste.filter((each) => each !== edges).flat()];
    return chained(edges.flatMap((edge) => without(edge, others)));
  });
}

function chained(segments: readonly Segment[]): Point2[][] {
  const chains: Point2[][] = [];
  for (const [from, to] of segments) {
    const chain = chains.at(-1);
    const end = chain?.at(-1);
    if (chain && end && samePoint(end, from)) chain.push(to);
    else chains.push([from, to]);
  }
  return closedUp(chains);
}

/** An outline walked from the middle of a cut edge: its last stretch leads back into its first. */
function closedUp(chains: Point2[][]): Point2[][] {
  const [first, ...rest] = chains;
  const last = rest.at(-1);
  const [start, end] = [first?.at(0), last?.at(-1)];
  if (!first || !last || !start || !end || !samePoint(start, end)) return chains;
  return [[...last, ...first.slice(1)], ...rest.slice(0, -1)];
}
