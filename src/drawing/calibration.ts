import { Length } from '../measure/length.ts';
import type { Point2 } from '../shape/flat-polygon.ts';
import { boxCorners } from '../shape/outline.ts';
import type { Canvas } from './canvas.ts';
import { lengthLettering, plain } from './lettering.ts';

const INCH = 25.4;
const GAP = 5;
/** What a rule shows: 4 in above, 100 mm below. */
const RULE_INCHES = 4;
const RULE_MILLIMETERS = 100;

/** The room the calibration takes on paper, in millimeters. */
export const CALIBRATION: { readonly width: number; readonly height: number } = {
  width: INCH + GAP + 20 + GAP + RULE_INCHES * INCH + 4,
  height: INCH + 1,
};

/** The square that each edition's own ruler measures. */
const SQUARES = [
  ['inch', Length.of(1, 1, 'in')],
  ['metric', Length.of(20, 1, 'mm')],
] as const;

/**
 * A square of an inch, one of 20 mm and a rule, or those of the one edition that is shown, to be measured before
 * anything is cut: a print that was scaled shows here first.
 */
export function drawCalibration(canvas: Canvas, { x, y }: Point2): void {
  const { say, shown } = canvas.style;
  let left = x;
  for (const [edition, side] of SQUARES) {
    if (!shown.includes(edition)) continue;
    const box = { left, top: y + INCH - side.mm, right: left + side.mm, bottom: y + INCH };
    canvas.line('mark', boxCorners(box), true);
    const middle = { x: left + side.mm / 2, y: box.top + side.mm / 2 };
    canvas.label([lengthLettering(side, edition, say)], middle, {});
    left += side.mm + GAP;
  }
  drawRule(canvas, { x: left, y: y + INCH - 9 });
}

/** Eighths of an inch stand on the line, millimeters hang below it. */
function drawRule(canvas: Canvas, at: Point2): void {
  const { shown } = canvas.style;
  const size = canvas.lettering * 0.85;
  const [inches, millimeters] = [shown.includes('inch'), shown.includes('metric')];
  const { x, y } = at;
  canvas.line('mark', [at, { x: x + (inches ? RULE_INCHES * INCH : RULE_MILLIMETERS), y }]);
  if (inches) drawInches(canvas, at, size);
  if (millimeters) drawMillimeters(canvas, at, size);
}

function drawInches(canvas: Canvas, { x, y }: Point2, size: number): void {
  for (let eighth = 0; eighth <= RULE_INCHES * 8; eighth++)
    tick(canvas, { x: x + (eighth * INCH) / 8, y }, -(eighth % 8 === 0 ? 4 : eighth % 4 === 0 ? 3 : 2));
  for (let inch = 1; inch <= RULE_INCHES; inch++)
    canvas.label([plain(String(inch))], { x: x + inch * INCH, y: y - 4.6 }, { size, sits: 'over' });
}

function drawMillimeters(canvas: Canvas, { x, y }: Point2, size: number): void {
  for (let millimeter = 0; millimeter <= RULE_MILLIMETERS; millimeter++)
    tick(canvas, { x: x + millimeter, y }, millimeter % 10 === 0 ? 4 : millimeter % 5 === 0 ? 3 : 1.8);
  for (let millimeter = 20; millimeter <= RULE_MILLIMETERS; millimeter += 20)
    canvas.label([plain(String(millimeter))], { x: x + millimeter, y: y + 4.6 }, { size, sits: 'under' });
}

function tick(canvas: Canvas, { x, y }: Point2, length: number): void {
  canvas.line('extension', [
    { x, y },
    { x, y: y + length },
  ]);
}
