import { edgesOf, type Point2 } from '../shape/flat-polygon.ts';
import type { PaintedFace } from '../shape/paint/picture.ts';
import type { Canvas } from './canvas.ts';
import { boxOf, type DrawnBox } from './region.ts';
import type { DrawingRoom } from './style.ts';

/** What is seen of one sheet: its faces in the order to paint them, and lines over them. Millimeters. */
export type SheetPicture = {
  readonly faces: readonly PaintedFace[];
  readonly lines: readonly SeenLine[];
};

/** A line through space, and of each of its points whether paper hides it. */
type SeenLine = { readonly points: readonly Point2[]; readonly hidden: readonly boolean[] };

/** Millimeters between sheets of one piece, full size. */
const BETWEEN = 15;

/** Several sheets beside or above one another, whichever shows them larger; at most full size. */
export function arranged(sheets: readonly SheetPicture[], room: DrawingRoom): readonly SheetPicture[] {
  const arrangements = [false, true].map((isUpward) => {
    const inLine = lineUp(sheets, isUpward);
    const { left, top, right, bottom } = boxOf(inLine.flatMap(pointsOf));
    return { inLine, scale: Math.min(1, room.width / (right - left), room.height / (bottom - top)) };
  });
  const { inLine, scale } = arrangements.reduce((row, column) => (column.scale > row.scale ? column : row));
  return inLine.map((sheet) => moved(sheet, ({ x, y }) => ({ x: x * scale, y: y * scale })));
}

/** From left to right, all standing on one line; or upward, the first at the bottom, as a lid is held over its tray. */
function lineUp(sheets: readonly SheetPicture[], isUpward: boolean): readonly SheetPicture[] {
  let start = 0;
  return sheets.map((sheet) => {
    const { left, top, right, bottom }: DrawnBox = boxOf(pointsOf(sheet));
    const by = isUpward ? { x: -left, y: start - bottom } : { x: start - left, y: -bottom };
    start += isUpward ? -(bottom - top + BETWEEN) : right - left + BETWEEN;
    return moved(sheet, ({ x, y }) => ({ x: x + by.x, y: y + by.y }));
  });
}

export function pointsOf({ faces, lines }: SheetPicture): readonly Point2[] {
  return [...faces, ...lines].flatMap(({ points }) => points);
}

function moved({ faces, lines }: SheetPicture, to: (point: Point2) => Point2): SheetPicture {
  return {
    faces: faces.map((face) => ({ ...face, points: face.points.map(to) })),
    lines: lines.map((line) => ({ ...line, points: line.points.map(to) })),
  };
}

/** A face, then those of its sides that are edges of paper. */
export function drawFace(canvas: Canvas, { points, color, shade, sides }: PaintedFace): void {
  canvas.face(points, color, shade);
  const edges = edgesOf(points).filter((_, index) => sides[index]);
  if (edges.length === points.length) canvas.line('edge', points, true);
  else canvas.lines('edge', edges);
}
