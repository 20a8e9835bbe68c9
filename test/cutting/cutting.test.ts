import { createRequire } from 'node:module';
import type { DxfParser, IEntity, ILineEntity, IPolylineEntity } from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import { planCutting } from '../../src/cutting/cutting-plan.ts';
import { cuttingSvg } from '../../src/cutting/cutting-svg.ts';
import { cuttingDxf } from '../../src/cutting/dxf.ts';
import { layOnMats } from '../../src/cutting/mats.ts';
import { Length } from '../../src/measure/length.ts';
import { speaker } from '../../src/words/labels.ts';
import { elementsOf } from '../drawing/drawn.ts';
import { labels, sampleOf } from '../handout/sample.ts';

/** Its bundle is the class itself, which its types don't say. */
const Reader: typeof DxfParser = createRequire(import.meta.url)('dxf-parser');

const INCH = 25.4;
const say = speaker(labels);
const mat = { width: Length.of(12, 1, 'in'), height: Length.of(12, 1, 'in') };

function planOf(measurements: string, scores: 'solid' | 'perforated' = 'solid') {
  const plan = planCutting(sampleOf(measurements).editions, { mat, scores }, say);
  if (!plan) throw new Error('nothing to be cut');
  return plan;
}

/** What an independent reader, dxf-parser, finds in the file: millimeters, y downwards again. */
function readBack(measurements: string, scores?: 'solid' | 'perforated') {
  const read = new Reader().parseSync(cuttingDxf(planOf(measurements, scores)));
  if (!read) throw new Error('not read');
  const on = (layer: string): readonly Line[] =>
    read.entities.filter((each) => each.layer === layer).map(lineOf);
  return { header: read.header, cuts: on('CUT'), scores: on('SCORE'), entities: read.entities };
}

type Point = readonly [x: number, y: number];
type Line = { readonly points: readonly Point[]; readonly closed: boolean };

function lineOf(entity: IEntity): Line {
  const { vertices = [], shape = false } = entity as ILineEntity & IPolylineEntity;
  return { points: vertices.map(({ x, y }): Point => [x, -y]), closed: shape };
}

/** Area by the shoelace formula, and the length all round. */
function measure({ points }: Line): { readonly area: number; readonly round: number } {
  const pairs = points.map((from, index) => [from, points[(index + 1) % points.length] ?? from] as const);
  const twice = pairs.reduce((sum, [[x, y], [u, v]]) => sum + x * v - u * y, 0);
  return { area: Math.abs(twice) / 2, round: pairs.reduce((sum, [a, b]) => sum + distance(a, b), 0) };
}

function distance([x, y]: Point, [u, v]: Point): number {
  return Math.hypot(u - x, v - y);
}

const TRAY = `unit: in
stock:
  moss: { name: Moss cardstock, sheet: 12 x 12 }
  cream: { name: Crème, sheet: 8 1/2 x 11 }
pieces:
  tray:
    stock: moss
    cut: 6 x 5
    score:
      - { from: left, at: [1, 5] }
      - { from: bottom, at: [1, 4] }
    slit: [A|B 1, A|B 3, B|C 1, B|C 3]
    glue: { A1: B1, A3: B3, C1: B1, C3: B3 }
  seal: { stock: cream, cut: 2 x 2, shape: circle, count: 3 }
`;

describe('a cutting file', () => {
  it('is DXF of release 12 in millimeters', () => {
    expect(readBack(TRAY).header).toMatchObject({ $ACADVER: 'AC1009', $INSUNITS: 4 });
  });

  it('has the outline as one closed line, slits as cuts and folds as scores, at full size', () => {
    const { cuts, scores } = readBack(TRAY);
    const outlines = cuts.filter(({ closed }) => closed).map(measure);
    // A sheet of 6 × 5 in, and three circles of 2 in: πr² and 2πr, which stretches of a 128th of a turn miss by less than 0.1 %.
    expect(outlines[0]?.area).toBeCloseTo(6 * 5 * INCH ** 2, 3);
    expect(outlines[0]?.round).toBeCloseTo(22 * INCH, 3);
    expect(outlines).toHaveLength(4);
    for (const circle of outlines.slice(1)) {
      expect(Math.abs(circle.area / (Math.PI * INCH ** 2) - 1)).toBeLessThan(0.001);
      expect(Math.abs(circle.round / (2 * Math.PI * INCH) - 1)).toBeLessThan(0.001);
    }
    // Four slits of an inch.
    const slits = cuts.filter(({ closed }) => !closed);
    expect(slits.map(({ points: [a, b] }) => a && b && distance(a, b))).toEqual(
      Array.from({ length: 4 }, () => expect.closeTo(INCH, 3)),
    );
    // Two lines of 6 in across, and two of 3 in between the slits.
    const lengths = scores.map(({ points }) => distance(points[0] ?? [0, 0], points.at(-1) ?? [0, 0]));
    expect(lengths.toSorted((a, b) => a - b)).toEqual([
      expect.closeTo(3 * INCH, 3),
      expect.closeTo(3 * INCH, 3),
      expect.closeTo(6 * INCH, 3),
      expect.closeTo(6 * INCH, 3),
    ]);
    expect(scores.every(({ points }) => points.length === 2)).toBe(true);
  });

  it('says the same as SVG, where a reader of XML finds every line', () => {
    const plan = planOf(TRAY);
    const paths = elementsOf(cuttingSvg(plan, 'Tray')).filter(({ name }) => name === 'path');
    const data = [...plan.cuts, ...plan.scores].map(({ points, closed }) => ({
      corners: points.length,
      closed,
    }));
    expect(
      paths.map(({ attributes: { d = '' } }) => ({
        corners: d.match(/[ML]/gu)?.length,
        closed: d.endsWith('Z'),
      })),
    ).toEqual(data);
  });

  it('scores in short cuts that leave paper at both ends of a line', () => {
    const { scores } = readBack(TRAY, 'perforated');
    const cut = scores.reduce((sum, { points: [a, b] }) => sum + (a && b ? distance(a, b) : 0), 0);
    // Three parts of five of 18 in.
    expect(cut).toBeCloseTo(0.6 * 18 * INCH, 1);
    const corners = readBack(TRAY).scores.flatMap(({ points }) => points);
    for (const end of scores.flatMap(({ points }) => points)) {
      expect(Math.min(...corners.map((corner) => distance(corner, end)))).toBeGreaterThan(0.5);
    }
  });

  it('writes names that ASCII has no signs for as release 12 escapes them', () => {
    const texts = cuttingDxf(planOf(TRAY)).split('\r\n');
    expect(texts).toContain('Cr\\U+00E8me');
    expect(cuttingDxf(planOf(TRAY))).toMatch(/^[\r\n -~]+$/u);
  });
});

describe('a mat', () => {
  it('never has one piece on another, nor one over its edge', () => {
    const sizes = Array.from({ length: 60 }, (_, index) => ({
      width: 10 + ((index * 37) % 140),
      height: 10 + ((index * 53) % 170),
    }));
    const laid = layOnMats(sizes, { width: 200, height: 250 });
    expect(laid).toHaveLength(60);
    for (const { item, mat, x, y } of laid) {
      expect(x + item.width).toBeLessThanOrEqual(200);
      expect(y + item.height).toBeLessThanOrEqual(250);
      const over = laid.filter(
        (other) =>
          other.item !== item &&
          other.mat === mat &&
          other.x < x + item.width &&
          x < other.x + other.item.width &&
          other.y < y + item.height &&
          y < other.y + other.item.height,
      );
      expect(over).toEqual([]);
    }
  });

  it('is given to what is larger than it alone', () => {
    const laid = layOnMats(
      [
        { width: 300, height: 400 },
        { width: 10, height: 10 },
      ],
      { width: 200, height: 250 },
    );
    expect(laid.map(({ mat, x, y }) => [mat, x, y])).toEqual([
      [0, 0, 0],
      [1, 5, 5],
    ]);
  });
});
