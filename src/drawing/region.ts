import type { Edge } from '../project/net-as-written.ts';
import { boundsOf, contains, distanceToEdges, edgesOf, type Point2 } from '../shape/flat-polygon.ts';

export type Segment = readonly [Point2, Point2];

/** An upright box on paper, in millimeters. */
export type DrawnBox = Readonly<Record<Edge, number>>;

/** Closer than this (in millimeters) is the same point. */
const NEAR = 1e-6;

/** A picture's y runs down: what a plane has lowest is its top. */
export function boxOf(points: readonly Point2[]): DrawnBox {
  const { left, right, bottom: top, top: bottom } = boundsOf(points);
  return { left, top, right, bottom };
}

/**
 * Parallel lines across an outline, `spacing` apart, at `degrees` clockwise from the x axis; even-odd where the outline
 * crosses itself. Real lines, not a pattern, so that they print sharp and need no id.
 */
export function hatchLines(outline: readonly Point2[], spacing: number, degrees: number): Segment[] {
  const turned = outline.map((point) => turn(point, -degrees));
  const { top, bottom } = boxOf(turned);
  const lines: Segment[] = [];
  for (let step = Math.floor(top / spacing) + 0.5; step * spacing < bottom; step++) {
    const y = step * spacing;
    const across = crossings(turned, y);
    for (let index = 0; index + 1 < across.length; index += 2) {
      const [from, to] = [across[index] ?? 0, across[index + 1] ?? 0];
      if (to - from > NEAR) lines.push([turn({ x: from, y }, degrees), turn({ x: to, y }, degrees)]);
    }
  }
  return lines;
}

/**
 * Points of a staggered grid about the middle of an outline that lie in it, at least `inset` from its edges; where it is
 * too narrow for that, all that lie in it.
 */
export function dotGrid(outline: readonly Point2[], spacing: number, inset: number): Point2[] {
  const { left, top, right, bottom } = boxOf(outline);
  const middle = { x: (left + right) / 2, y: (top + bottom) / 2 };
  const high = spacing * 0.75;
  const dots: Point2[] = [];
  for (let row = Math.ceil((top - middle.y) / high); middle.y + row * high <= bottom; row++) {
    const start = middle.x + (row % 2 === 0 ? 0 : spacing / 2);
    for (let step = Math.ceil((left - start) / spacing); start + step * spacing <= right; step++)
      dots.push({ x: start + step * spacing, y: middle.y + row * high });
  }
  const inside = dots.filter((dot) => contains(outline, dot));
  const clear = inside.filter((dot) => distanceToEdges(dot, outline) >= inset);
  return clear.length > 0 ? clear : inside;
}

/** What is left of a stretch when those parts of it that lie on other stretches are taken away. */
export function without(segment: Segment, others: readonly Segment[]): Segment[] {
  const [from, to] = segment;
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length < NEAR) return [];
  const along = (point: Point2): number =>
    ((point.x - from.x) * (to.x - from.x) + (point.y - from.y) * (to.y - from.y)) / length;
  const aside = (point: Point2): number =>
    ((point.x - from.x) * (to.y - from.y) - (point.y - from.y) * (to.x - from.x)) / length;
  const covered = others
    .filter((other) => Math.abs(aside(other[0])) < NEAR && Math.abs(aside(other[1])) < NEAR)
    .map(([start, end]) => [along(start), along(end)].sort((a, b) => a - b) as [number, number])
    .sort(([a], [b]) => a - b);
  const at = (distance: number): Point2 => ({
    x: from.x + ((to.x - from.x) * distance) / length,
    y: from.y + ((to.y - from.y) * distance) / length,
  });
  const left: Segment[] = [];
  let position = 0;
  for (const [start, end] of [...covered, [length, length] as const]) {
    const stop = Math.min(start, length);
    if (stop - position > NEAR)
      left.push([position === 0 ? from : at(position), stop === length ? to : at(stop)]);
    position = Math.max(position, end);
  }
  return left;
}

/** Stretches that follow one another without a corner, as one line: so dashes run on through a curve. */
export function runningOn(segments: readonly Segment[]): Point2[][] {
  const lines: Point2[][] = [];
  for (const [from, to] of segments) {
    const line = lines.find((each) => goesOn(each, from, to));
    if (line) line.push(to);
    else lines.push([from, to]);
  }
  return lines;
}

/** At most this far (the cosine of 30°) a line may turn and still be the same one. */
const SAME_WAY = 0.866;

function goesOn(line: readonly Point2[], from: Point2, to: Point2): boolean {
  const [before, end] = line.slice(-2);
  if (!before || !end || !samePoint(end, from)) return false;
  const [dx, dy] = [end.x - before.x, end.y - before.y];
  const [ex, ey] = [to.x - from.x, to.y - from.y];
  return dx * ex + dy * ey > SAME_WAY * Math.hypot(dx, dy) * Math.hypot(ex, ey);
}

export function samePoint(a: Point2, b: Point2): boolean {
  return Math.hypot(a.x - b.x, a.y - b.y) < NEAR;
}

export function turn({ x, y }: Point2, degrees: number): Point2 {
  const radians = (degrees * Math.PI) / 180;
  const [cosine, sine] = [Math.cos(radians), Math.sin(radians)];
  return { x: x * cosine - y * sine, y: x * sine + y * cosine };
}

/** Where an outline crosses a level line, from the left. */
function crossings(outline: readonly Point2[], y: number): number[] {
  return edgesOf(outline)
    .filter(([from, to]) => from.y > y !== to.y > y)
    .map(([from, to]) => from.x + ((y - from.y) * (to.x - from.x)) / (to.y - from.y))
    .sort((a, b) => a - b);
}
