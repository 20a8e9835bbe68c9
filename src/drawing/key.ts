import { boxCorners } from '../shape/outline.ts';
import type { Canvas } from './canvas.ts';
import { extentOf, LINE_HEIGHT, widthOf, wrapped } from './lettering.ts';
import type { DrawingStyle, DrawnNet } from './style.ts';

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

/** The least width that the key can have: words go on below, but none is broken. */
export function leastKeyWidth({ lettering, style }: Canvas, entries: readonly KeyEntry[]): number {
  const widths = entries.flatMap((entry) =>
    wrapped(keyWords(entry, style), 0).map((word) => besideSample(entry) + widthOf(word) * lettering),
  );
  return Math.max(0, ...widths);
}

function keyWords(entry: KeyEntry, { say }: DrawingStyle): string {
  return say(`drawing-key-${entry}`);
}

function besideSample(entry: KeyEntry): number {
  return sampleWidth(entry) + 1.5;
}

/** Draws the key in rows from a top left corner. @returns where it ends. */
export function drawKey(
  canvas: Canvas,
  entries: readonly KeyEntry[],
  { left, top, width }: { readonly left: number; readonly top: number; readonly width: number },
): number {
  const { lettering: size, style } = canvas;
  const rowHeight = Math.max(size * 1.35, 6);
  let [x, y] = [left, top + rowHeight / 2];
  let below = 0;
  for (const entry of entries) {
    const beside = besideSample(entry);
    const words = wrapped(keyWords(entry, style), (width - beside) / size);
    const extent = extentOf(words);
    const own = beside + extent.width * size;
    if (x > left && x + own > left + width) [x, y, below] = [left, y + rowHeight + below, 0];
    drawSample(canvas, entry, x, y);
    const under = (words.length - 1) * LINE_HEIGHT * size;
    canvas.label(words, { x: x + beside, y: y + under / 2 }, { anchor: 'start' });
    below = Math.max(below, under);
    x += own + 4;
  }
  return y + rowHeight / 2 + below;
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
