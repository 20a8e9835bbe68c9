import type { Editions } from '../edition/editions.ts';
import type { Ref } from '../project/ref.ts';
import { columnName } from '../shape/cells.ts';
import { pieceNamed, refNamed } from '../words/names.ts';
import { capital } from '../words/typographic.ts';
import type { Canvas } from './canvas.ts';
import { widthOf, wrapped } from './lettering.ts';
import { type Pile, type PiledLayer, pileOn } from './pile.ts';
import { spokenReveals } from './reveals.ts';
import type { DrawingStyle } from './style.ts';
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

/** A layer's letter, name and size, and what is stamped on it: the names would not find room on the drawing itself. */
export function drawLegend(canvas: Canvas, pile: Pile, { names, stamped }: StackWords, width: number): void {
  const size = canvas.lettering;
  const left = canvas.ink.left;
  let y = canvas.ink.bottom + size * 1.6;
  const addStamps = (words: string | undefined): void => {
    for (const line of words === undefined ? [] : wrapped(words, LEGEND / size)) {
      canvas.label(
        [line],
        { x: left + size * 2, y: y - size * 0.25 },
        { size: size * 0.85, anchor: 'start' },
      );
      y += size * 1.2;
    }
    if (words !== undefined) y += size * 0.4;
  };
  addStamps(stamped[0]);
  for (const [index, placed] of pile.placed.entries()) {
    const { inch, metric } = placed.layer;
    const [first = [], second] = sizeLabel({ inch: inch.size, metric: metric.size }, canvas.style);
    const own = [{ text: `${names[index] ?? ''}: ` }, ...first];
    const whole = second ? [...own, { text: ' · ', unit: 'both' as const }, ...second] : own;
    const isNarrow = size * (widthOf(whole) + 2) > width;
    canvas.badge(columnName(index), { x: left + size * 0.75, y });
    for (const line of isNarrow && second ? [own, second] : [whole]) {
      canvas.label([line], { x: left + size * 2, y }, { anchor: 'start' });
      y += size * 1.4;
    }
    y += size * 0.35;
    addStamps(stamped[index + 1]);
  }
}

/** How wide a line of the legend may be, in millimeters. */
const LEGEND = 50;

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
