import type { Point2 } from '../shape/flat-polygon.ts';
import { Canvas, MARGIN } from './canvas.ts';
import { drawKey, type KeyEntry, keyEntries, leastKeyWidth } from './key.ts';
import { type Label, plain, widthOf, wrapped } from './lettering.ts';
import type { Numbered } from './panel-names.ts';
import { scaleWords } from './scales.ts';
import type { DrawingStyle, DrawnNet } from './style.ts';

/** In heights of the letters: a line under a narrow drawing; the least one at the side; how far from the side of a net. */
const LINE = { under: 70 / 3, aside: 9 };
const ASIDE = { least: 0.75, rather: 2 };

/**
 * Draws what is told of a net: the key, the names that found no room in it, and the scale. All of it stands under the net or,
 * where that makes the drawing less high, the key at its side, and the rest too where lines have room there.
 *
 * @param widest how wide the drawing may be, in millimeters; as wide as the net when absent
 */
export function tellNet(
  canvas: Canvas,
  net: DrawnNet,
  numbered: readonly Numbered[],
  { reduction, widest }: { readonly reduction: number; readonly widest: number | undefined },
): void {
  const { ink, lettering: size } = canvas;
  const entries = keyEntries(net);
  const width =
    widest === undefined ? Math.max(ink.right - ink.left, LINE.under * size) : widest - 2 * MARGIN;
  const under = { left: ink.left, top: ink.bottom + size, width };
  const linesIn = (room: number): Label => [
    ...numberedNames(numbered, room, size),
    ...footWords(reduction, canvas.style, room / size),
  ];
  const below = new Canvas(canvas.style);
  drawLines(below, linesIn(width), { x: ink.left, y: drawKey(below, entries, under) });
  const beside = toldBeside(canvas, entries, width, linesIn);
  canvas.group('telling', beside && beside.ink.bottom < below.ink.bottom ? beside : below);
}

/** With the key at the side of a net; undefined where it has no room there. */
function toldBeside(
  canvas: Canvas,
  entries: readonly KeyEntry[],
  whole: number,
  linesIn: (room: number) => Label,
): Canvas | undefined {
  const { ink, lettering: size, style } = canvas;
  const end = ink.left + whole;
  const aside = Math.min(ASIDE.rather, (end - ink.right - leastKeyWidth(canvas, entries)) / size);
  if (aside < ASIDE.least) return undefined;
  const left = ink.right + aside * size;
  const told = new Canvas(style);
  const y = drawKey(told, entries, { left, top: ink.top, width: end - left });
  if (end - left >= LINE.aside * size) drawLines(told, linesIn(end - left), { x: left, y });
  else drawLines(told, linesIn(whole), { x: ink.left, y: Math.max(y, ink.bottom) });
  return told;
}

/** `Scale 1:2 · inches over millimeters`, the latter only for who sees both. @param room the width of a line, in heights of its letters */
function footWords(reduction: number, { say, shown }: DrawingStyle, room: number): Label {
  const scale = wrapped(scaleWords(reduction, say), room);
  const [own = [], ...more] = scale;
  if (shown.length === 1) return scale;
  const order = say(shown[0] === 'inch' ? 'drawing-inch-over-mm' : 'drawing-mm-over-inch');
  const beside = [...own, { text: ` · ${order}`, unit: 'both' as const }];
  if (more.length === 0 && widthOf(beside) <= room) return [beside];
  const below = wrapped(order, room).map((line) => line.map((run) => ({ ...run, unit: 'both' as const })));
  return [...scale, ...below];
}

/** A name is not torn from its number, nor apart where a line holds it. */
export function numberedNames(numbered: readonly Numbered[], width: number, size: number): Label {
  if (numbered.length === 0) return [];
  const names = numbered.map(({ sign, name }) => {
    const whole = `${sign} ${name}`.replaceAll(' ', '\u00a0');
    return widthOf(plain(whole)) * size <= width ? whole : `${sign}\u00a0${name}`;
  });
  return wrapped(names.join(', '), width / size);
}

/** Draws lines of text from a point at their left. */
export function drawLines(canvas: Canvas, lines: Label, { x, y: top }: Point2): void {
  const size = canvas.lettering;
  for (const [index, line] of lines.entries()) {
    const y = top + size * 0.6 + Math.max(size * 1.35, 4.8) * index;
    canvas.label([line], { x, y }, { anchor: 'start', sits: 'under' });
  }
}
