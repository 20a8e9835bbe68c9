import { columnName } from '../shape/cells.ts';
import type { Net } from '../shape/net.ts';
import type { Canvas } from './canvas.ts';
import { plain, widthOf } from './lettering.ts';
import { type DrawingFrame, sheetBox } from './outline.ts';
import { spread } from './spread.ts';
import type { DrawnNet } from './style.ts';

/** How far from the sheet the middles of the letters and numbers stand, in sizes of the lettering. */
const AWAY = 0.9;

/**
 * The letters of the columns above a sheet and the numbers of its rows to the left of it, as a project's file names its
 * cells; neither where there is but one, or where nobody speaks of cells.
 */
export function drawCellNames(canvas: Canvas, { drawn, hasCells }: DrawnNet, frame: DrawingFrame): void {
  if (!hasCells) return;
  const size = canvas.lettering * 0.85;
  const { left, top } = sheetBox(drawn, frame);
  const [across, down] = [middlesOf(drawn, 'width'), middlesOf(drawn, 'height')];
  const letters = across.map((_, column) => plain(columnName(column)));
  const columns = letters.map((letter, column) => ({
    at: left + (across[column] ?? 0) * frame.scale,
    size: widthOf(letter) * size,
  }));
  for (const [column, x] of spread(columns, 0.3).entries())
    canvas.label([letters[column] ?? []], { x, y: top - canvas.lettering * AWAY }, { size });
  const rows = down.map((middle) => ({ at: top + middle * frame.scale, size: size * 0.8 }));
  for (const [row, y] of spread(rows, 0.3).entries())
    canvas.label([plain(String(row + 1))], { x: left - canvas.lettering * AWAY, y }, { size });
}

/** The middles of the columns (across the width) or rows, if there are several, in millimeters from the left or the top. */
function middlesOf({ size, scores }: Net, side: 'width' | 'height'): readonly number[] {
  const whole = size[side].mm;
  const [near, far] = side === 'width' ? ['left', 'right'] : ['top', 'bottom'];
  const positions = scores.flatMap(({ from, at }) =>
    from === near ? at.map(({ mm }) => mm) : from === far ? at.map(({ mm }) => whole - mm) : [],
  );
  if (positions.length === 0) return [];
  const lines = [0, ...new Set(positions.toSorted((a, b) => a - b)), whole];
  return lines.slice(1).map((line, index) => (line + (lines[index] ?? 0)) / 2);
}
