import { XMLParser, XMLValidator } from 'fast-xml-parser';
import svgpath from 'svgpath';
import { Length, type Unit } from '../measure/length.ts';
import { roundMillimetres } from '../measure/round.ts';
import type { OutlinePoints } from './outline-grammar.ts';

/** What keeps an outline from being taken from a drawing, with what the words about it need. */
export type DrawingProblem =
  | {
      readonly kind: 'no svg' | 'no size' | 'other element' | 'transform' | 'no path data';
      readonly what: string;
    }
  | { readonly kind: 'paths' | 'parts'; readonly count: number }
  | { readonly kind: 'stretched'; readonly across: Length; readonly down: Length }
  | { readonly kind: 'open'; readonly gap: Length }
  | { readonly kind: 'crosses' | 'size'; readonly x: Length; readonly y: Length };

type Point = { readonly x: number; readonly y: number };

/** Millimeters by which straight stretches miss a curve at most, and by which the ends of a path may be apart. */
const MISS = 0.03;

/** Our judgment: no outline for the hand is smaller, and nothing is larger than a meter. Millimeters. */
const [SMALLEST, LARGEST] = [5, 1000];

/** The one closed path of an SVG drawing, at its real size. */
export function readSvgOutline(svg: string): OutlinePoints | DrawingProblem {
  const valid = XMLValidator.validate(svg);
  if (valid !== true) return { kind: 'no svg', what: valid.err.msg };
  const parser = new XMLParser({ preserveOrder: true, ignoreAttributes: false, attributeNamePrefix: '' });
  const root = elementsIn(parser.parse(svg)).find(({ name }) => name === 'svg');
  if (!root) return { kind: 'no svg', what: 'it has no <svg>' };
  const scale = scaleOf(root.attributes);
  if ('kind' in scale) return scale;
  const path = onlyPath(root);
  if ('kind' in path) return path;
  return outlineOf(path.data, scale.perUnit);
}

type XmlElement = {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly XmlElement[];
};

/** The parser gives each element as a map of its name to its children, its attributes beside it under `:@`. */
function elementsIn(parsed: unknown): readonly XmlElement[] {
  const nodes: readonly Readonly<Record<string, unknown>>[] = Array.isArray(parsed) ? parsed : [];
  return nodes.flatMap((node): readonly XmlElement[] => {
    const name = Object.keys(node).find((key) => key !== ':@' && !/^[#?]/u.test(key));
    if (name === undefined) return [];
    const attributes = Object.entries(node[':@'] ?? {}).map(([key, value]) => [key, String(value)] as const);
    return [{ name, attributes: Object.fromEntries(attributes), children: elementsIn(node[name]) }];
  });
}

/** Millimeters in a unit of the drawing. */
function scaleOf({
  width = '',
  height = '',
  viewBox = '',
}: XmlElement['attributes']): { readonly perUnit: number } | DrawingProblem {
  const [wide, high] = [lengthOf(width), lengthOf(height)];
  if (!wide)
    return {
      kind: 'no size',
      what: width ? `its width, "${width}", is in no mm, cm or in` : 'it has no width',
    };
  if (!high)
    return {
      kind: 'no size',
      what: height ? `its height, "${height}", is in no mm, cm or in` : 'it has no height',
    };
  const box = viewBox
    .trim()
    .split(/[\s,]+/u)
    .map(Number);
  const [, , across = 0, down = 0] = box;
  if (box.length !== 4 || !(across > 0 && down > 0))
    return { kind: 'no size', what: 'it has no viewBox of four numbers' };
  const [perUnit, upright] = [wide.mm / across, high.mm / down];
  // A drawing that is not of its viewBox's shape is fitted into it by rules nobody has in mind.
  if (Math.abs(perUnit / upright - 1) > 0.001)
    return { kind: 'stretched', across: wide, down: roundMillimetres(across * upright, 1000) };
  return { perUnit };
}

function lengthOf(text: string): Length | undefined {
  const [, digits = '', unit] = /^\s*(\d{1,5}(?:\.\d{1,9})?)\s*(mm|cm|in)\s*$/u.exec(text) ?? [];
  if (unit === undefined) return undefined;
  const [whole = '', part = ''] = digits.split('.');
  const length = Length.of(BigInt(whole + part), 10n ** BigInt(part.length), unit as Unit);
  return length.sign > 0 ? length : undefined;
}

/** What draws nothing by itself. */
const SILENT: ReadonlySet<string> = new Set(['title', 'desc', 'metadata', 'defs', 'style']);

function onlyPath(root: XmlElement): { readonly data: string } | DrawingProblem {
  const paths: string[] = [];
  const open = [root];
  for (const element of open) {
    const { name, attributes, children } = element;
    if (SILENT.has(name) || name.includes(':')) continue;
    if (attributes.transform !== undefined) return { kind: 'transform', what: name };
    if (name === 'path') paths.push(attributes.d ?? '');
    else if (name === 'g' || element === root) open.push(...children);
    else return { kind: 'other element', what: name };
  }
  const [data] = paths;
  return data === undefined || paths.length > 1 ? { kind: 'paths', count: paths.length } : { data };
}

function outlineOf(data: string, perUnit: number): OutlinePoints | DrawingProblem {
  const path = svgpath(data).scale(perUnit).abs().unshort().unarc();
  const wrong: unknown = Reflect.get(path, 'err');
  if (typeof wrong === 'string' && wrong !== '') return { kind: 'no path data', what: wrong };
  const { points, parts, isClosed } = flattened(path);
  if (parts !== 1) return { kind: 'parts', count: parts };
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last || points.length < 3) return { kind: 'no path data', what: 'it draws nothing' };
  const gap = Math.hypot(first.x - last.x, first.y - last.y);
  if (!isClosed && gap > MISS) return { kind: 'open', gap: roundMillimetres(gap, 100) };
  return checked(gap <= MISS ? points.slice(0, -1) : points);
}

type Flattened = { readonly points: readonly Point[]; readonly parts: number; readonly isClosed: boolean };

/** A path of lines and curves as points in millimeters. */
function flattened(path: ReturnType<typeof svgpath>): Flattened {
  const points: Point[] = [];
  let [parts, isClosed] = [0, false];
  path.iterate((segment, _, x, y) => {
    const from = { x, y };
    if (segment[0] === 'M') parts += 1;
    if (segment[0] === 'M' || segment[0] === 'L') points.push({ x: segment[1], y: segment[2] });
    if (segment[0] === 'H') points.push({ x: segment[1], y });
    if (segment[0] === 'V') points.push({ x, y: segment[1] });
    if (segment[0] === 'Z' || segment[0] === 'z') isClosed = true;
    if (segment[0] === 'Q') {
      const [, a, b, to, down] = segment;
      // A quadratic curve is a cubic one whose inner points are two thirds of the way to its own.
      const inner = (end: Point): Point => ({
        x: end.x + ((a - end.x) * 2) / 3,
        y: end.y + ((b - end.y) * 2) / 3,
      });
      points.push(...curve(from, inner(from), inner({ x: to, y: down }), { x: to, y: down }));
    }
    if (segment[0] === 'C') {
      const [, a, b, c, d, to, down] = segment;
      points.push(...curve(from, { x: a, y: b }, { x: c, y: d }, { x: to, y: down }));
    }
  });
  return { points, parts, isClosed };
}

/** Points of a cubic curve behind its first, as many as keep straight stretches near it: by its second differences. */
function curve(a: Point, b: Point, c: Point, d: Point): Point[] {
  const bend = (p: Point, q: Point, r: Point): number => Math.hypot(p.x - 2 * q.x + r.x, p.y - 2 * q.y + r.y);
  const stretches = Math.min(
    64,
    Math.ceil(Math.sqrt((6 * Math.max(bend(a, b, c), bend(b, c, d))) / (8 * MISS))) || 1,
  );
  return Array.from({ length: stretches }, (_, index) => {
    const t = (index + 1) / stretches;
    const at = (...[p, q, r, s]: readonly [number, number, number, number]): number =>
      (1 - t) ** 3 * p + 3 * (1 - t) ** 2 * t * q + 3 * (1 - t) * t ** 2 * r + t ** 3 * s;
    return { x: at(a.x, b.x, c.x, d.x), y: at(a.y, b.y, c.y, d.y) };
  });
}

/** The points from the left and top of their box, clockwise, if no two of their stretches cross. */
function checked(drawn: readonly Point[]): OutlinePoints | DrawingProblem {
  const points = drawn.filter((point, index) => {
    const before = drawn.at(index - 1);
    return !before || Math.hypot(point.x - before.x, point.y - before.y) > 1e-4;
  });
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const [width, height] = [Math.max(...xs) - left, Math.max(...ys) - top];
  const exact = ({ x, y }: Point): OutlinePoints[number] => ({
    x: roundMillimetres(x - left, 10_000),
    y: roundMillimetres(y - top, 10_000),
  });
  const isFit = Math.min(width, height) >= SMALLEST && Math.max(width, height) <= LARGEST;
  if (!isFit) return { kind: 'size', ...exact({ x: left + width, y: top + height }) };
  const crossing = crossingIn(points);
  if (crossing) return { kind: 'crosses', ...exact(crossing) };
  const area = points.reduce((sum, { x, y }, index) => {
    const next = points[(index + 1) % points.length] ?? { x, y };
    return sum + x * next.y - next.x * y;
  }, 0);
  return (area > 0 ? points : points.toReversed()).map(exact);
}

/** Where two stretches that are no neighbors cross; undefined where none do. */
function crossingIn(points: readonly Point[]): Point | undefined {
  const stretches = points.map((from, index) => [from, points[(index + 1) % points.length] ?? from] as const);
  const side = ([a, b]: readonly [Point, Point], p: Point): number =>
    Math.sign((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x));
  for (const [index, one] of stretches.entries()) {
    for (const other of stretches.slice(index + 2, index === 0 ? -1 : undefined)) {
      const isApart =
        side(one, other[0]) * side(one, other[1]) > 0 || side(other, one[0]) * side(other, one[1]) > 0;
      const isOnLine = side(one, other[0]) === 0 && side(one, other[1]) === 0;
      if (!isApart && !isOnLine) return meetingOf(one, other);
    }
  }
  return undefined;
}

/** Where the lines through two stretches meet that are not parallel. */
function meetingOf([a, b]: readonly [Point, Point], [c, d]: readonly [Point, Point]): Point {
  const [way, other] = [
    { x: b.x - a.x, y: b.y - a.y },
    { x: d.x - c.x, y: d.y - c.y },
  ];
  const share = ((c.x - a.x) * other.y - (c.y - a.y) * other.x) / (way.x * other.y - way.y * other.x);
  return { x: a.x + way.x * share, y: a.y + way.y * share };
}
