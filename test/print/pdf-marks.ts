import { OPS } from './pdfjs.ts';

/** A point on the page in millimeters from its top left corner, y growing downwards. */
export type Point = { readonly x: number; readonly y: number };

/** From one point of an outline to the next. The chords a curve was cut into are marked as curved. */
export type Edge = { readonly from: Point; readonly to: Point; readonly curved: boolean };

/** One outline as the page draws it: a run of edges without lifting the pen. */
export type Mark = {
  readonly kind: 'stroke' | 'fill';
  /** `#rrggbb`, or the name of a pattern's kind. */
  readonly color: string;
  /** Of the pen, in millimeters; zero for a fill. */
  readonly width: number;
  readonly edges: readonly Edge[];
  /** Marks with one number were drawn by one operator: an element's outline, or all the dashes of a line. */
  readonly operator: number;
};

/** Where a picture lies on the page, in millimeters; turned ones by the box around them. */
export type Box = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

/** A PDF matrix: x' = a·x + c·y + e, y' = b·x + d·y + f (ISO 32000-1, 8.3.3). */
type Matrix = readonly [number, number, number, number, number, number];

type State = { matrix: Matrix; width: number; stroke: string; fill: string };

export type Operators = { readonly fnArray: readonly number[]; readonly argsArray: readonly unknown[] };

/** How pdf.js writes a path: a stream of numbers, each of these codes followed by its points. */
const MOVE = 0;
const LINE = 1;
const CURVE = 2;
const QUADRATIC = 3;
const CLOSE = 4;

const STROKES = new Set([
  OPS.stroke,
  OPS.closeStroke,
  OPS.fillStroke,
  OPS.eoFillStroke,
  OPS.closeFillStroke,
  OPS.closeEOFillStroke,
]);
const FILLS = new Set([
  OPS.fill,
  OPS.eoFill,
  OPS.fillStroke,
  OPS.eoFillStroke,
  OPS.closeFillStroke,
  OPS.closeEOFillStroke,
]);
const PICTURES = new Set([OPS.paintImageXObject, OPS.paintInlineImageXObject, OPS.paintImageMaskXObject]);

/** A curve becomes this many chords: an arc of 5 mm radius and a quarter turn is then right to a hundredth. */
const CHORDS = 16;

/** The matrix that applies `inner` first. */
function times(outer: Matrix, inner: Matrix): Matrix {
  const [a, b, c, d, e, f] = outer;
  const [p, q, r, s, t, u] = inner;
  return [a * p + c * q, b * p + d * q, a * r + c * s, b * r + d * s, a * t + c * u + e, b * t + d * u + f];
}

function apply([a, b, c, d, e, f]: Matrix, x: number, y: number): Point {
  return { x: a * x + c * y + e, y: b * x + d * y + f };
}

/** How much a matrix enlarges a pen, which is exact where it enlarges both directions alike. */
function enlargement([a, b, c, d]: Matrix): number {
  return Math.sqrt(Math.abs(a * d - b * c));
}

function onCurve(points: readonly Point[], t: number): Point {
  let rest = points;
  while (rest.length > 1) {
    rest = rest.slice(1).map((point, index) => {
      const before = rest[index] ?? point;
      return { x: before.x + (point.x - before.x) * t, y: before.y + (point.y - before.y) * t };
    });
  }
  return rest[0] ?? { x: Number.NaN, y: Number.NaN };
}

/** Follows a path and gives the edges of each of its outlines. */
function outlines(path: ArrayLike<number>, matrix: Matrix): Edge[][] {
  const all: Edge[][] = [];
  let edges: Edge[] = [];
  let start: Point = { x: 0, y: 0 };
  let here = start;
  let at = 0;
  const point = (): Point => apply(matrix, path[at++] ?? Number.NaN, path[at++] ?? Number.NaN);
  const lineTo = (to: Point, curved: boolean): void => {
    if (to.x !== here.x || to.y !== here.y) edges.push({ from: here, to, curved });
    here = to;
  };
  const curveTo = (...controls: Point[]): void => {
    const points = [here, ...controls];
    for (let i = 1; i <= CHORDS; i++) lineTo(onCurve(points, i / CHORDS), true);
  };
  while (at < path.length) {
    const code = path[at++];
    if (code === MOVE) {
      if (edges.length > 0) all.push(edges);
      edges = [];
      start = here = point();
    } else if (code === LINE) lineTo(point(), false);
    else if (code === CURVE) curveTo(point(), point(), point());
    else if (code === QUADRATIC) curveTo(point(), point());
    else if (code === CLOSE) lineTo(start, false);
    else throw new Error(`a path holds ${code}, which is no path operator of pdf.js`);
  }
  return edges.length > 0 ? [...all, edges] : all;
}

function boxOf(matrix: Matrix): Box {
  const corners = [apply(matrix, 0, 0), apply(matrix, 1, 0), apply(matrix, 0, 1), apply(matrix, 1, 1)];
  const x = Math.min(...corners.map((corner) => corner.x));
  const y = Math.min(...corners.map((corner) => corner.y));
  const width = Math.max(...corners.map((corner) => corner.x)) - x;
  return { x, y, width, height: Math.max(...corners.map((corner) => corner.y)) - y };
}

/** Follows the graphics state of a page (ISO 32000-1, 8.4) and keeps what is drawn. */
class Pen {
  readonly marks: Mark[] = [];
  readonly pictures: Box[] = [];
  readonly #saved: State[] = [];
  #state: State;

  constructor(matrix: Matrix) {
    this.#state = { matrix, width: 1, stroke: '#000000', fill: '#000000' };
  }

  do(operation: number, args: readonly unknown[], index: number): void {
    const state = this.#state;
    if (operation === OPS.save) this.#saved.push({ ...state });
    else if (operation === OPS.restore || operation === OPS.paintFormXObjectEnd) {
      this.#state = this.#saved.pop() ?? state;
    } else if (operation === OPS.transform) this.#transform(args);
    else if (operation === OPS.paintFormXObjectBegin) {
      this.#saved.push({ ...state });
      if (args[0]) this.#transform(args[0] as number[]);
    } else if (operation === OPS.setLineWidth) state.width = Number(args[0]);
    else if (operation === OPS.setGState) this.#set(args[0] as [string, unknown][]);
    else if (operation === OPS.setStrokeRGBColor) state.stroke = String(args[0]);
    else if (operation === OPS.setFillRGBColor) state.fill = String(args[0]);
    else if (operation === OPS.setStrokeColorN) state.stroke = String(args[0]);
    else if (operation === OPS.setFillColorN) state.fill = String(args[0]);
    else if (operation === OPS.constructPath) this.#draw(args, index);
    else if (PICTURES.has(operation)) this.pictures.push(boxOf(state.matrix));
  }

  #transform(numbers: readonly unknown[]): void {
    const [a, b, c, d, e, f] = numbers.map(Number) as unknown as Matrix;
    this.#state.matrix = times(this.#state.matrix, [a, b, c, d, e, f]);
  }

  #set(entries: readonly (readonly [string, unknown])[]): void {
    for (const [key, value] of entries) if (key === 'LW') this.#state.width = Number(value);
  }

  #draw([paint, data]: readonly unknown[], operator: number): void {
    const { matrix, width, stroke, fill } = this.#state;
    const path = (data as readonly (ArrayLike<number> | null)[])[0];
    if (!path) return;
    const pen = width * enlargement(matrix);
    for (const edges of outlines(path, matrix)) {
      if (STROKES.has(Number(paint)))
        this.marks.push({ kind: 'stroke', color: stroke, width: pen, edges, operator });
      if (FILLS.has(Number(paint))) this.marks.push({ kind: 'fill', color: fill, width: 0, edges, operator });
    }
  }
}

/** One point of PDF is 1/72 in (ISO 32000-1, 8.3.2.3), and 1 in is 25.4 mm. */
export const MM_PER_POINT: number = 25.4 / 72;

/**
 * What a page draws, from its operators as pdf.js lists them.
 * @param view The page's box in points: left, bottom, right, top.
 */
export function readMarks(operators: Operators, view: readonly number[]): { marks: Mark[]; pictures: Box[] } {
  const [left = 0, , , top = 0] = view;
  const toPaper: Matrix = [MM_PER_POINT, 0, 0, -MM_PER_POINT, -left * MM_PER_POINT, top * MM_PER_POINT];
  const pen = new Pen(toPaper);
  operators.fnArray.forEach((operation, index) => {
    pen.do(operation, (operators.argsArray[index] ?? []) as readonly unknown[], index);
  });
  return { marks: pen.marks, pictures: pen.pictures };
}
