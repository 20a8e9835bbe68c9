import type { Editions } from '../edition/editions.ts';
import type { Ref } from '../project/ref.ts';
import { columnName } from '../shape/cells.ts';
import type { Point2 } from '../shape/flat-polygon.ts';
import { pieceNamed, refNamed } from '../words/names.ts';
import { capital } from '../words/typographic.ts';
import type { Canvas } from './canvas.ts';
import { type Label, type LabelLine, widthOf, wrapped } from './lettering.ts';
import { type Pile, type PiledLayer, pileOn } from './pile.ts';
import { spokenReveals } from './reveals.ts';
import type { DrawingRoom, DrawingStyle } from './style.ts';
import { listed, sizeLabel, spokenSize } from './words.ts';

/** What is said of a pile: the bases that bear the very same, the names of the layers, what is stamped on each sheet. */
type StackWords = {
  readonly alike: readonly Ref[];
  readonly names: readonly string[];
  readonly stamped: readonly (string | undefined)[];
};

/** How the layers are called, by their place in the pile; on several bases all their names. */
export function namesOn(
  editions: Editions,
  bases: readonly Ref[],
  { say, shown }: DrawingStyle,
): readonly string[] {
  const piles = bases.flatMap((base) => pileOn(editions, base, shown[0]) ?? []);
  const called = piles.map(({ placed }) => placed.map(({ drawn }) => pieceNamed(drawn.piece.id.value, say)));
  return (called[0] ?? []).map((_, index) =>
    listed([...new Set(called.flatMap((each) => each[index] ?? []))], say),
  );
}

/**
 * A layer's letter, name and size, and what is stamped on it: the names would not find room on the drawing itself.
 * @returns where what is told goes on, at its left
 */
export function drawLegend(
  canvas: Canvas,
  editions: Editions,
  pile: Pile,
  words: StackWords,
  room: DrawingRoom,
): Point2 {
  const size = canvas.lettering;
  const lines = pile.placed.map(({ drawn }, index): Label => {
    const own = sizeLabel(editions, drawn.piece.id.value, canvas.style);
    return [[{ text: canvas.style.say('labeled', { label: words.names[index] ?? '' }) }], ...own];
  });
  const { x, y: top, width } = legendSpot(canvas, room, lines);
  let y = top;
  const addStamps = (stamps: string | undefined): void => {
    for (const line of stamps === undefined ? [] : wrapped(stamps, Math.min(LINE, width / size - 2))) {
      canvas.label([line], { x: x + size * 2, y: y - size * 0.25 }, { size: size * 0.85, anchor: 'start' });
      y += size * 1.2;
    }
    if (stamps !== undefined) y += size * 0.4;
  };
  addStamps(words.stamped[0]);
  for (const [index, runs] of lines.entries()) {
    canvas.badge(columnName(index), { x: x + size * 0.75, y });
    for (const line of filled(runs, width / size - 2)) {
      canvas.label([line], { x: x + size * 2, y }, { anchor: 'start' });
      y += size * 1.4;
    }
    y += size * 0.35;
    addStamps(words.stamped[index + 1]);
  }
  return { x, y: y - size * 0.4 };
}

/** Parts, such as `mat:`, `2¾ × 2¼ in` and its other unit, in as few lines as they fit into. @param room the width of a line, in heights of its letters */
function filled(parts: Label, room: number): Label {
  const lines: LabelLine[] = [];
  for (const [index, part] of parts.entries()) {
    const last = lines.at(-1) ?? [];
    const between = index > 1 ? { text: ' · ', unit: 'both' as const } : { text: ' ' };
    const joined = last.length === 0 ? part : [...last, between, ...part];
    if (lines.length > 0 && widthOf(joined) <= room) lines[lines.length - 1] = joined;
    else lines.push(part);
  }
  return lines;
}

/** Where a legend begins, and how wide it may be: at the drawing's side where its parts have room. */
function legendSpot(
  { ink, lettering: size }: Canvas,
  room: DrawingRoom,
  lines: readonly Label[],
): Point2 & { readonly width: number } {
  const width = room.width - (ink.right - ink.left) - size;
  const least = Math.max(...lines.flatMap((parts) => parts.map(widthOf))) + 2;
  if (room.hasSide && size * least <= width) return { x: ink.right + size, y: ink.top + size, width };
  return { x: ink.left, y: ink.bottom + size * 1.6, width: room.width };
}

/** How wide a line of what is stamped may be, in heights of its letters. */
const LINE = 50 / 3;

/** What a stack shows, in words. */
export function describeStack(
  { placed }: Pile,
  { alike, names, stamped: [onBase, ...onLayers] }: StackWords,
  style: DrawingStyle,
): string {
  const { say } = style;
  const stamps = (words: string | undefined): string[] => (words === undefined ? [] : [`${capital(words)}.`]);
  const sentences = placed.flatMap(({ layer, drawn }: PiledLayer, index) => [
    say('drawing-layer', {
      letter: columnName(index),
      name: names[index] ?? '',
      size: spokenSize({ inch: layer.inch.size, metric: layer.metric.size }, style),
      base: refNamed(drawn.on, say),
      reveals: spokenReveals(layer, style),
    }),
    ...stamps(onLayers[index]),
  ]);
  const bases = alike.map((base) => refNamed(base, say));
  const whole = say('drawing-stack', { base: capital(listed(bases, say)) });
  return [whole, ...stamps(onBase), ...sentences].join(' ');
}
