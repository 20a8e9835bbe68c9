import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Canvas, type Drawing } from '../../src/drawing/canvas.ts';
import { drawnNetOf } from '../../src/drawing/drawn-net.ts';
import { drawKey, keyEntries } from '../../src/drawing/key.ts';
import { boxOf } from '../../src/drawing/region.ts';
import { templateDrawing, templateReduction } from '../../src/drawing/template.ts';
import { templateSvg } from '../../src/drawing/template-file.ts';
import { writeName } from '../../src/project/ref.ts';
import { caliperOf } from '../../src/shape/caliper.ts';
import { contains } from '../../src/shape/flat-polygon.ts';
import { forms } from '../../src/shape/forms/index.ts';
import type { FlatPoint } from '../../src/shape/net.ts';
import { ownNet, sheetsOf } from '../../src/shape/sheets.ts';
import { glueAreas } from '../../src/shape/stacking/glue-areas.ts';
import { speaker } from '../../src/words/labels.ts';
import { labels, sampleOf } from '../handout/sample.ts';
import {
  BOX,
  BOX_METRIC,
  editionsOf,
  elementsOf,
  inchStyle,
  lengthOf,
  linesOf,
  metricStyle,
  say,
  stretchesOf,
  textsOf,
  touching,
} from './drawn.ts';

const editions = editionsOf(BOX, BOX_METRIC);

function template(reduction: number, style = inchStyle, from = editions, id = 'box'): Drawing {
  const drawing = templateDrawing(from, id, reduction, style);
  if (!drawing) throw new Error(`no template of ${id}`);
  return drawing;
}

function flat(area: readonly FlatPoint[]): { x: number; y: number }[] {
  return area.map(({ x, y }) => ({ x: x.mm, y: y.mm }));
}

/** Positions of the upright stretches of a kind of line, each once. */
function columns(svg: string, kinds: readonly string[]): number[] {
  const upright = kinds
    .flatMap((kind) => stretchesOf(linesOf(svg, kind)))
    .filter(([from, to]) => from.x === to.x);
  return [...new Set(upright.map(([{ x }]) => x))].sort((a, b) => a - b);
}

describe('a template', () => {
  it('draws score lines and edges where the net has them, at scale', () => {
    const { svg } = template(2);
    const folds = columns(svg, ['mountain']).filter((x) => x > 0 && x < 120);
    expect(folds).toEqual([1, 4.5, 5.5, 9].map((inches) => expect.closeTo((inches * 25.4) / 2, 3)));
    expect(Math.max(...columns(svg, ['blank', 'cut']))).toBeCloseTo((9.5 * 25.4) / 2, 3);
  });

  it('is the metric edition where that leads', () => {
    const folds = columns(template(2, metricStyle).svg, ['mountain']).filter((x) => x > 0);
    expect(folds).toEqual([12.5, 57, 69.5, 114]);
  });

  it('tells folds by their line: valley dashed, mountain chain', () => {
    const { svg } = template(1);
    // The one valley line, 1/2 in from the top, runs over front and back: 2 × 3 1/2 in.
    const valley = linesOf(svg, 'valley').filter(([from]) => (from?.y ?? 0) < 100);
    expect(lengthOf(valley)).toBeCloseTo(2 * 3.5 * 25.4, 2);
    const dashes = (kind: string): number =>
      elementsOf(svg)
        .find(({ attributes }) => attributes.class === kind)
        ?.attributes['stroke-dasharray']?.split(' ').length ?? 0;
    expect([dashes('valley'), dashes('mountain'), dashes('cut')]).toEqual([2, 4, 0]);
  });

  it('lets dashes run on along a curve', () => {
    const pillow = editionsOf('unit: in\npieces: { box: { form: pillow box, size: 3 x 5 } }');
    const { svg } = template(1, inchStyle, pillow);
    const folds = linesOf(svg, 'mountain');
    // Two straight folds, two arcs at each end, and the sample in the key.
    expect(folds).toHaveLength(7);
    expect(stretchesOf(folds).length).toBeGreaterThan(30);
  });

  it('hatches the waste and dots what is glued', () => {
    const { svg } = template(1);
    const areaOf = (outline: readonly { x: { mm: number }; y: { mm: number } }[]): number =>
      Math.abs(
        outline.reduce((sum, { x, y }, index) => {
          const next = outline[(index + 1) % outline.length];
          return sum + (next ? x.mm * next.y.mm - next.x.mm * y.mm : 0);
        }, 0) / 2,
      );
    const net = ownNet(editions.inch.shapes.nets, 'box');
    const waste = (net?.waste ?? []).reduce((sum, outline) => sum + areaOf(outline), 0);
    // Lines 1.6 mm apart; the sample in the key is hatched too.
    expect(lengthOf(linesOf(svg, 'hatch')) * 1.6).toBeGreaterThan(waste * 0.95);
    expect(lengthOf(linesOf(svg, 'hatch')) * 1.6).toBeLessThan(waste * 1.15);
    const tab = linesOf(svg, 'glue-outside').filter(
      ([dot]) => (dot?.x ?? 0) > 9 * 25.4 && (dot?.y ?? 0) < 140,
    );
    expect(tab.length).toBeGreaterThan(100);
  });

  /** By hand: this box's glue tab is 1/2 in wide at the right and goes behind the far side, so its outside meets paper. */
  it('puts the sign for glue on this side on the tab of a tuck-end box, and no other sign anywhere', () => {
    const tuck = editionsOf('unit: in\npieces: { box: { form: tuck-end box, inside: 2 x 1 x 3, tab: 1/2 } }');
    const { svg } = template(1, inchStyle, tuck);
    const net = ownNet(tuck.inch.shapes.nets, 'box');
    const [right, tab] = [net?.size.width.mm ?? 0, 12.7];
    const [key, marks] = [
      linesOf(svg, 'glue-outside').filter(([dot]) => (dot?.y ?? 0) > (net?.size.height.mm ?? 0)),
      linesOf(svg, 'glue-outside').filter(([dot]) => (dot?.y ?? 0) <= (net?.size.height.mm ?? 0)),
    ];
    expect(key.length).toBeGreaterThan(0);
    const { left, ...reach } = boxOf(marks.flat());
    expect(left).toBeGreaterThan(right - tab);
    expect(left).toBeLessThan(right - tab + 2);
    expect(reach.right).toBeLessThan(right);
    // As tall as the 3 in of its side, less the corners that are cut at a slant.
    expect(reach.bottom - reach.top).toBeGreaterThan(2.6 * 25.4);
    expect(reach.bottom - reach.top).toBeLessThan(3 * 25.4);
    expect(linesOf(svg, 'glue-inside')).toEqual([]);
  });

  /** By hand: the front's bottom is folded in last, over the other three flaps, so that its inside is stuck to them. */
  it('puts the sign for glue on the far side on the front bottom of a clip-top box, and there alone', () => {
    const clip = editionsOf('unit: in\npieces: { box: { form: clip-top box, inside: 3 1/2 x 1 x 4 3/4 } }');
    const { svg } = template(1, inchStyle, clip);
    const net = ownNet(clip.inch.shapes.nets, 'box');
    const box = net?.panels.find(({ name }) => name === 'front-bottom')?.box;
    if (!box) throw new Error('no bottom');
    const own = linesOf(svg, 'glue-inside').filter(([from]) => (from?.y ?? 0) < (net?.size.height.mm ?? 0));
    const { left, top, right, bottom } = boxOf(own.flat());
    expect(left).toBeGreaterThan(box.left.mm);
    expect(right).toBeLessThan(box.right.mm);
    expect(top).toBeGreaterThan(box.top.mm);
    expect(bottom).toBeLessThan(box.bottom.mm);
    expect(right - left).toBeGreaterThan(3.2 * 25.4);
    expect(bottom - top).toBeGreaterThan(0.8 * 25.4);
  });

  it('says score positions as at the board, inches over millimeters of either edition', () => {
    const texts = textsOf(template(2).svg);
    const from = texts.indexOf('from');
    expect(texts[from + 1]).toBe('bottom');
    const figures = texts.slice(from + 2, texts.indexOf('from left'));
    expect(texts.slice(texts.indexOf('1'), from)).toEqual(
      expect.arrayContaining(['1', '25', '5 3/4', '146', '6 1/4', '159']),
    );
    expect(figures).toEqual(['1', '25', '4 1/2', '114', '5 1/2', '139', '9', '228']);
    expect(texts).toContain('9 1/2 in');
    expect(texts).toContain('241 mm');
    expect(texts.at(-1)).toBe('Scale 1:2 · inches above, millimeters below');
    // Who has chosen one unit on the page sees no order of two.
    expect(template(2).svg).toContain('<tspan data-unit="both"> · inches above, millimeters below</tspan>');
    expect(textsOf(template(2, metricStyle).svg).at(-1)).toBe('Scale 1:2 · millimeters above, inches below');
  });

  it('names panels, upright where that fits and by number where nothing does', () => {
    const texts = textsOf(template(2).svg);
    for (const name of ['front', 'back', 'tab']) expect(texts).toContain(name);
    const narrow = editionsOf(`unit: mm
pieces:
  strip:
    cut: 60 x 6
    score: [{ from: left, at: [5] }]
    panels: { longish name: A1 }`);
    const few = textsOf(template(2, inchStyle, narrow, 'strip').svg);
    // The name's number, and the row's.
    expect(few.filter((text) => text === '1')).toHaveLength(1);
    expect(few).toContain('1 longish name');
  });

  it('reads out size, scores, panels, waste and glue', () => {
    const { alternative } = template(2);
    expect(alternative).toContain('Template of Box, scale 1:2: 9½ by 6¾ inches, 241 by 171 millimeters.');
    expect(alternative).toContain(
      'Score lines from the left edge at 1, 4½, 5½ and 9 inches (25, 114, 139 and 228 millimeters).',
    );
    expect(alternative).toContain('Front: 3½ by 4¾ inches, 89 by 121 millimeters.');
    expect(alternative).toContain('Glue on the outside of: tab, A4 and C4. Glue on the inside of: B4.');
  });

  it('is drawn at the largest scale that the room lets it be', () => {
    const net = ownNet(editions.inch.shapes.nets, 'box');
    if (!net) throw new Error('no net');
    const reductions = [300, 170, 130, 120, 60, 30].map((width) =>
      templateReduction(net, { width, height: 1000 }),
    );
    // 9 1/2 in are 241.3 mm, two thirds of which are 160.9.
    expect(reductions).toEqual([1, 1.5, 2, 3, 5, 9]);
    expect(textsOf(template(1.5, inchStyle).svg).at(-1)).toContain('Two-thirds of actual size');
  });

  it('has its key at its side where its page leaves room, and under it where not, never wider than the page', () => {
    const [under, beside, narrow] = [undefined, 220, 160].map((widest) =>
      templateDrawing(editions, 'box', 2, inchStyle, widest),
    );
    if (!under || !beside || !narrow) throw new Error('no template');
    // 9 1/2 in at half size are 121 mm: of 220 its labels leave as much as "mountain fold" takes, of 160 they do not.
    expect(beside.width).toBeLessThanOrEqual(220);
    expect(under.height - beside.height).toBeGreaterThan(5);
    expect(narrow.width).toBeLessThanOrEqual(160);
    expect(narrow.height).toBeCloseTo(under.height, 0);
    const wordsOf = ({ svg }: Drawing): readonly string[] =>
      textsOf(svg)
        .join(' ')
        .split(/[\s·]+/u)
        .toSorted();
    expect(wordsOf(beside)).toEqual(wordsOf(narrow));
    for (const { svg } of [beside, narrow]) expect(touching(svg)).toEqual([]);
  });

  it('has letters over its columns and numbers beside its rows, as the file names its cells', () => {
    const { svg } = template(2);
    const at = (name: string): { x: number; y: number }[] =>
      elementsOf(svg)
        .filter((each) => each.name === 'text' && each.text === name)
        .map(({ attributes }) => ({ x: Number(attributes.x), y: Number(attributes.y) }));
    // Columns are 1, 3 1/2, 1, 3 1/2 and 1/2 in wide, rows 1/2, 1/2, 4 3/4 and 1 in high.
    const middles = [0.5, 2.75, 5, 7.25, 9.25].map((inches) => (inches * 25.4) / 2);
    for (const [index, middle] of middles.entries())
      expect(at('ABCDE'.charAt(index))).toEqual([{ x: expect.closeTo(middle, 2), y: expect.any(Number) }]);
    const rows = ['1', '2', '3', '4'].map((row) => at(row).filter(({ x }) => x < 0 && x > -4));
    expect(rows.map((each) => each.length)).toEqual([1, 1, 1, 1]);
    expect(textsOf(svg)).toEqual(expect.arrayContaining(['A2', 'C2', 'A4', 'B4', 'D4']));
    expect(textsOf(svg)).not.toContain('A1');
  });

  it('never lets labels touch, however close the score lines', () => {
    const positions = fc.uniqueArray(fc.integer({ min: 1, max: 87 }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(positions, positions, (across, down) => {
        const eighths = (list: readonly number[]): string =>
          list
            .toSorted((a, b) => a - b)
            .map((each) => `${each}/8`)
            .join(', ');
        const crowded = editionsOf(`unit: in
pieces:
  sheet:
    cut: 11 x 11
    score:
      - { from: left, at: [${eighths(across)}] }
      - { from: bottom, at: [${eighths(down)}] }`);
        const { svg } = template(5, inchStyle, crowded, 'sheet');
        expect(touching(svg)).toEqual([]);
      }),
      { seed: 3, numRuns: 40 },
    );
  });
});

describe('glue on every form', () => {
  /** What meets its mate is checked spot by spot in test/shape/stacking; here, that it is drawn there and nowhere else. */
  it.each(forms.map(({ name, example }) => [name, example.settings.join(', ')]))(
    'of a %s',
    (name, settings) => {
      const all = editionsOf(`unit: in\npieces: { box: { form: ${name}, ${settings} } }`);
      for (const { name, net } of sheetsOf(all.inch.shapes.nets, 'box')) {
        const areas = glueAreas(net, caliperOf(undefined).thickness.mm).map(({ from }) => from);
        const { svg } = template(1, inchStyle, all, writeName({ piece: 'box', part: name }));
        for (const face of ['outside', 'inside'] as const) {
          const marks = linesOf(svg, `glue-${face}`).flat();
          const own = marks.filter(({ y }) => y < net.size.height.mm);
          const outlines = areas.filter((each) => each.face === face).flatMap((each) => each.areas.map(flat));
          expect(own.filter((mark) => !outlines.some((area) => contains(area, mark)))).toEqual([]);
          for (const area of outlines) expect(own.some((mark) => contains(area, mark))).toBe(true);
          expect(marks.length > 0).toBe(outlines.length > 0);
        }
      }
    },
  );
});

describe('a name without room', () => {
  const explained = (form: string): string => {
    const made = editionsOf(`unit: in\npieces: { box: { form: ${form} } }`);
    return textsOf(template(4, inchStyle, made).svg)
      .join(' ')
      .replaceAll('\u00a0', ' ');
  };

  it('is told by a number', () => {
    expect(explained('tuck-end box, inside: 1 x 1 x 3')).toMatch(/\b1 [a-z]+/u);
  });

  it('is told by a letter where panels are called by numbers themselves', () => {
    expect(explained('polygon box, sides: 6, side: 1 1/2, height: 4')).toMatch(
      /\ba wall \d tab, b wall \d tab/u,
    );
  });
});

describe('a key', () => {
  it('explains what the net has, and nothing else', () => {
    const net = drawnNetOf(editions, 'inch', 'box');
    // The tab goes behind the front; the dust flaps lie under the bottom flap that is folded over them.
    expect(net && keyEntries(net)).toEqual([
      'cut',
      'mountain',
      'valley',
      'waste',
      'glue-outside',
      'glue-inside',
    ]);
    const front = drawnNetOf(editions, 'inch', 'front');
    expect(front && keyEntries(front)).toEqual(['cut']);
  });

  it('has a sample and a word for each, in the width it is given', () => {
    const canvas = new Canvas(inchStyle);
    const entries = ['cut', 'mountain', 'valley', 'flat', 'waste', 'glue-outside', 'glue-inside'] as const;
    drawKey(canvas, entries, { left: 0, top: 0, width: 60 });
    const drawing = canvas.drawing('key', 'Key');
    expect(textsOf(drawing.svg)).toHaveLength(7);
    expect(drawing.width).toBeLessThan(62);
    expect(drawing.svg).toContain(say('drawing-key-mountain'));
    for (const kind of ['cut', 'mountain', 'valley', 'flat', 'hatch', 'glue-outside', 'glue-inside'])
      expect(linesOf(drawing.svg, kind).length).toBeGreaterThan(0);
  });
});

describe('what is punched and stamped on a piece', () => {
  /** By hand: 17 motifs of 1/8 in every 1/4 in on 4 1/2 in begin 3/16 in from each end; the image is 1 × 2 in once turned. */
  const { editions: decorated } = sampleOf(
    `
unit: in
pieces:
  mat:
    cut: 3 1/2 x 4 1/2
    edge: { along: [left, right], pitch: 1/4, hole: 1/8, depth: 3/8 }
    impressions: [{ stamp: wheat, size: 2 x 1, turn: 90, at: { left: 1/2, top: 3/4 } }]
`,
    '',
    'supplies: [{ item: Wheat stamp, kind: stamp }]\n',
  );
  const svg = templateSvg(decorated, 'mat', { ...inchStyle, say: speaker(labels) }) ?? '';
  const inches = (mm: number): number => Math.round((mm / 25.4) * 100) / 100;

  it('is drawn in place at actual size, each motif once', () => {
    const motifs = linesOf(svg, 'motif').map((points) => boxOf(points));
    expect(motifs).toHaveLength(34);
    const left = motifs
      .filter(({ left: from }) => from < 1)
      .map(({ top, bottom }) => [top, bottom].map(inches));
    const expected = Array.from({ length: 17 }, (_, index) => [0.1875 + index / 4, 0.3125 + index / 4]);
    expect(left).toEqual(expected.map((ends) => ends.map((end) => Math.round(end * 100) / 100)));
    expect(new Set(motifs.map(({ left: from, right }) => [from, right].map(inches).join(' to ')))).toEqual(
      new Set(['0 to 0.38', '3.13 to 3.5']),
    );
  });

  it('has the outline of the image, turned, and its name', () => {
    const [image] = linesOf(svg, 'image').map((points) => boxOf(points));
    expect(image && [image.left, image.top, image.right, image.bottom].map(inches)).toEqual([
      0.5, 0.75, 1.5, 2.75,
    ]);
    expect(svg).toContain('Wheat stamp');
  });
});
