import { readFileSync } from 'node:fs';
import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { parse } from 'yaml';
import type { DrawingStyle } from '../../src/drawing/style.ts';
import type { Edition, Editions } from '../../src/edition/editions.ts';
import { mergeFindings } from '../../src/proof/tell.ts';
import { buildShapes } from '../../src/shape/build.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';
import { type Say, speaker } from '../../src/words/labels.ts';
import { wordsOfOutlines } from '../../src/words/outlines.ts';

/** A project's editions from its measurements in inches, and in millimeters where the two differ in more than unit. */
export function editionsOf(inches: string, millimeters: string = inches): Editions {
  return {
    own: 'inch',
    printed: 'both',
    inch: editionOf(inches),
    metric: editionOf(millimeters),
    settled: [],
    others: [],
  };
}

function editionOf(measurements: string): Edition {
  const indented = measurements.replaceAll('\n', '\n  ');
  const text = `---\ntitle: Paper\nmeasurements:\n  ${indented}\n---\n\nA text.\n`;
  const [project] = readWorkspaceFromTexts({ 'paper/sheet.md': text }).projects;
  if (!project) throw new Error('the test has no project');
  const shapes = buildShapes(project);
  const wrong = mergeFindings([...project.findings, ...shapes.findings]).map(({ message }) => message);
  if (wrong.length > 0) throw new Error(`the test's own measurements are wrong: ${wrong.join('; ')}`);
  return { project, shapes };
}

const OWN = /^(?:drawing-|corners-|outline-|quoted|labeled|exclaimed|hour-and|clock)/u;

/** The English words, those of drawings, corners, outlines and typography alone: whatever else they said would be missing. */
export const say: Say = speaker({ language: 'en', texts: drawingTexts() });

export const inchStyle: DrawingStyle = { shown: ['inch', 'metric'], say };
export const metricStyle: DrawingStyle = { shown: ['metric', 'inch'], say };

function drawingTexts(): ReadonlyMap<string, string> {
  const file = new URL('../../templates/labels/en.yaml', import.meta.url);
  const lines = readFileSync(file, 'utf8').split('\n');
  const own = lines.filter((line) => OWN.test(line)).join('\n');
  return new Map([...Object.entries(parse(own) as Record<string, string>), ...wordsOfOutlines()]);
}

export type Point = { readonly x: number; readonly y: number };

/** One element of a drawing as an XML parser that isn't ours reads it. */
export type Element = {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  /** All text in it, markup dropped. */
  readonly text: string;
  /** The classes of the elements it stands in, outermost first. */
  readonly inside: readonly string[];
};

type Node = { readonly ':@'?: Record<string, string>; readonly [name: string]: unknown };

/** Every element of a drawing, in order. @throws when it is no well-formed XML. */
export function elementsOf(svg: string): readonly Element[] {
  const valid = XMLValidator.validate(svg);
  if (valid !== true) throw new Error(valid.err.msg);
  const parser = new XMLParser({
    preserveOrder: true,
    ignoreAttributes: false,
    attributeNamePrefix: '',
    trimValues: false,
    parseTagValue: false,
    parseAttributeValue: false,
  });
  return walk(parser.parse(svg) as Node[], []);
}

function walk(nodes: readonly Node[], inside: readonly string[]): Element[] {
  return nodes.flatMap((node) => {
    const name = Object.keys(node).find((key) => key !== ':@' && key !== '#text' && !key.startsWith('?'));
    if (name === undefined) return [];
    const attributes = node[':@'] ?? {};
    const children = node[name] as Node[];
    const own: Element = { name, attributes, text: textOf(children), inside };
    return [own, ...walk(children, [...inside, attributes.class ?? ''])];
  });
}

function textOf(nodes: readonly Node[]): string {
  return nodes
    .map((node) => {
      if ('#text' in node) return String(node['#text']);
      const name = Object.keys(node).find((key) => key !== ':@');
      return name === undefined ? '' : textOf(node[name] as Node[]);
    })
    .join('');
}

/** The stretches of every path of a class, as its data says: absolute moves and lines only. */
export function linesOf(svg: string, kind: string): readonly (readonly Point[])[] {
  return elementsOf(svg)
    .filter(({ name, attributes }) => name === 'path' && attributes.class?.split(' ').includes(kind))
    .flatMap(({ attributes }) => subpathsOf(attributes.d ?? ''));
}

function subpathsOf(data: string): Point[][] {
  return [...data.matchAll(/M[^M]*/gu)].map(([subpath]) => {
    const points = [...subpath.matchAll(/[ML]([^,MLZ]+),([^,MLZ]+)/gu)].map(([, x, y]) => ({
      x: Number(x),
      y: Number(y),
    }));
    const [first] = points;
    return subpath.endsWith('Z') && first ? [...points, first] : points;
  });
}

/** Single stretches between neighboring points. */
export function stretchesOf(lines: readonly (readonly Point[])[]): readonly (readonly [Point, Point])[] {
  return lines.flatMap((line) =>
    line.slice(1).map((to, index): readonly [Point, Point] => [line[index] ?? to, to]),
  );
}

export function lengthOf(lines: readonly (readonly Point[])[]): number {
  return stretchesOf(lines).reduce((sum, [from, to]) => sum + Math.hypot(to.x - from.x, to.y - from.y), 0);
}

/** The texts of a drawing, blanks of every width as plain ones. */
export function textsOf(svg: string): readonly string[] {
  return elementsOf(svg)
    .filter(({ name }) => name === 'text')
    .map(({ text }) => text.replace(/\s/gu, ' '));
}

/**
 * The box (left, top, right, bottom) of a filled or stroked text by the least its letters take: half its height a
 * letter, a fraction's figures a third. Two that overlap by this measure overlap on paper.
 */
export function inkOf({ attributes, text }: Element): readonly [number, number, number, number] {
  const size = Number(attributes['font-size']);
  const fraction = /\d+\/\d+/u.exec(text)?.[0] ?? '';
  const width = ((text.length - fraction.length) * 0.45 + fraction.length * 0.3) * size;
  const [x, y] = [Number(attributes.x), Number(attributes.y)];
  const before = { middle: width / 2, end: width }[attributes['text-anchor'] ?? ''] ?? 0;
  // A quarter turn about its point, to be read from the right.
  if (attributes.transform) return [x - 0.65 * size, y + before - width, x, y + before];
  return [x - before, y - 0.65 * size, x - before + width, y];
}

/** The texts of a drawing that touch another. */
export function touching(svg: string): string[] {
  const texts = elementsOf(svg).filter(({ name }) => name === 'text');
  return texts.flatMap((one, index) => {
    const [x0, y0, x1, y1] = inkOf(one);
    const others = texts.slice(index + 1).filter((other) => {
      const [a0, b0, a1, b1] = inkOf(other);
      return a0 < x1 && x0 < a1 && b0 < y1 && y0 < b1;
    });
    return others.map((other) => `${one.text} on ${other.text}`);
  });
}

/** A box scored and folded, as in the file format's own example of a project. */
export const BOX = `unit: in
stock:
  moss: { name: Moss cardstock, sheet: 8 1/2 x 11, color: "#6b7f5b" }
  cream: { name: Cream cardstock, sheet: 8 1/2 x 11 }
  fern: { name: Fern print, sheet: 12 x 12, print: upright, color: "#3f7f4f" }
pieces:
  box:
    stock: moss
    cut: 9 1/2 x 6 3/4
    score:
      - { from: left, at: [1, 4 1/2, 5 1/2, 9] }
      - { from: bottom, at: [1, 5 3/4, 6 1/4] }
    panels: { front: B3, back: D3, tab: E3 }
    trim: [A1, C1, E1, E2, E4]
    slit: [A|B 1-2, B|C 1-2, C|D 1-2, A|B 4, B|C 4, C|D 4]
    taper: [A2, C2, A4, C4, tab]
    folds: { 1|2: valley 90 }
    glue: { tab: A3, A4: D4, C4: D4, B4: D4 }
  front: { stock: cream, cut: 3 1/4 x 4 1/2, on: box.front }
  strip: { stock: fern, cut: 3/4 x 4 1/2, on: front, at: { left: 1/4 } }
  label: { stock: cream, cut: 2 x 3/4, on: front, at: { left: 1, top: 1 1/2, turn: 30 } }`;

/** The same box re-dimensioned in whole millimeters: not what each length would be by itself. */
export const BOX_METRIC = `unit: mm
stock:
  moss: { name: Moss cardstock, sheet: 8 1/2 in x 11 in, color: "#6b7f5b" }
  cream: { name: Cream cardstock, sheet: 8 1/2 in x 11 in }
  fern: { name: Fern print, sheet: 12 in x 12 in, print: upright, color: "#3f7f4f" }
pieces:
  box:
    stock: moss
    cut: 241 x 171
    score:
      - { from: left, at: [25, 114, 139, 228] }
      - { from: bottom, at: [25, 146, 159] }
    panels: { front: B3, back: D3, tab: E3 }
    trim: [A1, C1, E1, E2, E4]
    slit: [A|B 1-2, B|C 1-2, C|D 1-2, A|B 4, B|C 4, C|D 4]
    taper: [A2, C2, A4, C4, tab]
    folds: { 1|2: valley 90 }
    glue: { tab: A3, A4: D4, C4: D4, B4: D4 }
  front: { stock: cream, cut: 83 x 115, on: box.front }
  strip: { stock: fern, cut: 19 x 115, on: front, at: { left: 6 } }
  label: { stock: cream, cut: 51 x 19, on: front, at: { left: 25, top: 38, turn: 30 } }`;
