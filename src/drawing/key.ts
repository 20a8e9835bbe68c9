import { boxCorners } from '../shape/outline.ts';
import type { Canvas } from './canvas.ts';
import { plain, widthOf } from './lettering.ts';
import type { DrawnNet } from './style.ts';

/** What a template can show that a reader must be told the meaning of. */
export type KeyEntry =
  | 'cut'
  | 'mountain'
  | 'valley'
  | 'flat'
  | 'waste'
  | 'glue-outside'
  | 'glue-inside'
  | 'motif'
  | 'image';

/** The entries for what a net really has, in reading order. */
export function keyEntries({ drawn: net, glued }: DrawnNet): readonly KeyEntry[] {
  const directions = new Set(net.folds.map(({ direction }) => direction));
  const faces = (['outside', 'inside'] as const).filter((face) => glued.some((each) => each.face === face));
  const folds = (['mountain', 'valley', 'flat'] as const).filter((direction) => directions.has(direction));
  return [
    'cut',
    ...folds,
    ...(net.waste.length > 0 || net.openings?.some(({ how }) => how === 'cut') ? (['waste'] as const) : []),
    ...faces.map((face) => `glue-${face}` as const),
    ...(net.rows ? (['motif'] as const) : []),
    ...(net.impressions ? (['image'] as const) : []),
  ];
}

/** How wide samples are: of a line, which has to show all its dashes, and of anything else. */
const LINE = 11;
const AREA = 7;

function sampleWidth(entry: KeyEntry): number {
  return entry === 'cut' || entry === 'mountain' || entry === 'valley' || entry === 'flat' ? LINE : AREA;
}

/** Draws the key in rows from a top left corner. @returns where it ends. */
export function drawKey(
  canvas: Canvas,
  entries: readonly KeyEntry[],
  { left, top, width }: { readonly left: number; readonly top: number; readonly width: number },
): number {
  const size = canvas.lettering;
  const rowHeight = Math.max(size * 1.35, 6);
  let [x, y] = [left, top + rowHeight / 2];
  for (const entry of entries) {
    const words = plain(canvas.style.say(`drawing-key-${entry}`));
    const sample = sampleWidth(entry) + 1.5;
    const own = sample + widthOf(words) * size;
    if (x > left && x + own > left + width) [x, y] = [left, y + rowHeight];
    drawSample(canvas, entry, x, y);
    canvas.label([words], { x: x + sample, y }, { anchor: 'start' });
    x += own + 4;
  }
  return y + rowHeight / 2;
}

function drawSample(canvas: Canvas, entry: KeyEntry, x: number, y: number): void {
  const width = sampleWidth(entry);
  const area = boxCorners({ left: x, top: y - 2.2, right: x + width, bottom: y + 2.2 });
  if (entry === 'waste') {
    canvas.hatch(area);
    canvas.line('blank', area, true);
  } else if (entry === 'glue-outside' || entry === 'glue-inside') {
    canvas.glue(entry === 'glue-outside' ? 'outside' : 'inside', area);
    canvas.line('blank', area, true);
  } else if (entry === 'image') {
    canvas.line('image', area, true);
  } else if (entry === 'motif') {
    for (const middle of [0.2, 0.5, 0.8]) drawMotif(canvas, x + width * middle, y);
  } else {
    canvas.line(entry, [
      { x, y },
      { x: x + width, y },
    ]);
  }
}

/** A half-round motif on a level edge. */
function drawMotif(canvas: Canvas, x: number, y: number): void {
  const angles = Array.from({ length: 9 }, (_, step) => (step * Math.PI) / 8);
  canvas.line(
    'motif',
    angles.map((angle) => ({ x: x - Math.cos(angle) * 1.3, y: y - 1 + Math.sin(angle) * 2 })),
  );
}
