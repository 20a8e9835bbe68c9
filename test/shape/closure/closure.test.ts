import { describe, expect, it } from 'vitest';
import { Length } from '../../../src/measure/length.ts';
import { collisions } from '../../../src/shape/closure/collisions.ts';
import { endGap, tubeEnds } from '../../../src/shape/closure/ends.ts';
import { glueFits } from '../../../src/shape/closure/glue.ts';
import { unequalRims } from '../../../src/shape/closure/rims.ts';
import { bodyOf } from '../../../src/shape/closure/room.ts';
import { seamFit } from '../../../src/shape/closure/seam.ts';
import { brokenRings } from '../../../src/shape/closure/sound.ts';
import { suspectLines } from '../../../src/shape/closure/suspects.ts';
import { tolerance } from '../../../src/shape/closure/tolerance.ts';
import { foldNet } from '../../../src/shape/fold.ts';
import type { Net } from '../../../src/shape/net.ts';
import { tubesOf } from '../../../src/shape/tube.ts';
import { KEEPER, netOf, OPEN_TRAY, TRADE_FACT } from '../boxes.ts';
import { CARDSTOCK, inches } from '../forms/building.ts';

const seam = (net: Net): ReturnType<typeof seamFit> | undefined => {
  const [tube] = tubesOf(net);
  return tube && seamFit(foldNet(net), tube, CARDSTOCK);
};

describe('a box by its score lines', () => {
  it.each([
    ['keeper', KEEPER, '7/2 in, 19/4 in, 1 in'],
    ['trade-fact box', TRADE_FACT, '5/2 in, 17/4 in, 5/4 in'],
  ])('%s closes', (_, box, size) => {
    const net = netOf(box);
    const shape = foldNet(net);
    expect(seam(net)).toEqual({ kind: 'closes' });
    expect(glueFits(shape, CARDSTOCK).map(({ verdict }) => verdict)).toEqual(Array(4).fill('meets'));
    expect(tubeEnds(net).map((end) => endGap(net, end, CARDSTOCK))).toEqual([undefined, undefined]);
    expect(collisions(shape, tolerance(CARDSTOCK).mm)).toEqual([]);
    expect(brokenRings(shape)).toEqual([]);
    const body = bodyOf(net);
    expect([body?.width, body?.height, body?.depth].join(', ')).toBe(size);
  });

  it('has a tab that sticks in its full width, and bottom flaps over the whole bottom', () => {
    const fits = glueFits(foldNet(netOf(KEEPER)), CARDSTOCK);
    const inInches = fits.map(({ mate, overlap }) => [
      mate.from,
      overlap.width / 25.4,
      overlap.height / 25.4,
    ]);
    const expected = [
      ['tab', 0.5, 4.75],
      ['A4', 1, 1],
      ['C4', 1, 1],
      ['B4', 3.5, 1],
    ];
    for (const [index, [name, width, height]] of expected.entries()) {
      expect(inInches[index]?.[0]).toBe(name);
      expect(inInches[index]?.[1]).toBeCloseTo(Number(width), 9);
      expect(inInches[index]?.[2]).toBeCloseTo(Number(height), 9);
    }
  });

  it('knows which score line is to blame, where only one can be', () => {
    const net = netOf(KEEPER.replace('5 1/2, 9]', '5 1/2, 9 1/8]'));
    const [tube] = tubesOf(net);
    expect(
      tube && suspectLines(net, tube, CARDSTOCK).map(({ position, better }) => `${position} ${better}`),
    ).toEqual(['73/8 in 9 in']);
  });

  it('names every line whose moving would do, where more than one would', () => {
    const net = netOf(KEEPER.replace('[1, 4 1/2', '[1 1/8, 4 1/2'));
    const [tube] = tubesOf(net);
    expect(
      tube && suspectLines(net, tube, CARDSTOCK).map(({ position, better }) => `${position} ${better}`),
    ).toEqual(['9/8 in 1 in', '11/2 in 45/8 in']);
  });

  it('does not close when its folds do not come full circle', () => {
    expect(seam(netOf(KEEPER.replace('1|2: valley 90', '1|2: valley 90, C|D: mountain 80')))).toEqual({
      kind: 'turn',
      degrees: 350,
    });
  });

  it('closes with three walls as with four', () => {
    const prism = `
  cut: 6 1/2 x 3
  score: [{ from: left, at: [2, 4, 6] }]
  panels: { tab: D1 }
  folds: { A|B: mountain 120, B|C: mountain 120, C|D: mountain 120 }
  glue: { tab: A1 }`;
    expect(seam(netOf(prism))).toEqual({ kind: 'closes' });
    const wrong = seam(netOf(prism.replace('[2, 4, 6]', '[2, 4, 6 1/8]')));
    expect(wrong?.kind).toBe('misses');
  });
});

describe('a box however its glue is written', () => {
  const wrong = KEEPER.replace('5 1/2, 9]', '5 1/2, 9 1/8]');

  it.each([
    ['the other way round', 'tab: A3, ', 'A3: tab, '],
    ['not at all', /glue:.*/u, ''],
  ])('closes, or not, with its glue written %s', (_, from, to) => {
    expect(seam(netOf(KEEPER.replace(from, to)))).toEqual({ kind: 'closes' });
    expect(seam(netOf(wrong.replace(from, to)))?.kind).toBe('unequal');
  });

  it('has a tray’s walls compared whichever way round its tabs are glued', () => {
    const reversed = OPEN_TRAY.replace(/glue:.*/u, 'glue: { back: A1, front: C3 }');
    expect(unequalRims(netOf(reversed), CARDSTOCK)).toEqual([]);
    const lower = netOf(reversed.replace('left, at: [1 1/2', 'left, at: [1 1/4'));
    expect(unequalRims(lower, CARDSTOCK).map(({ wall, others }) => [wall, ...others].join(' '))).toEqual([
      'A2 back',
    ]);
  });

  it('closes folded to the other side, all valleys for mountains', () => {
    const inward = KEEPER.replace(
      '1|2: valley 90',
      '1|2: mountain 90, 2|3: valley, 3|4: valley, A|B: valley, B|C: valley, C|D: valley, D|E: valley',
    );
    expect(seam(netOf(inward))).toEqual({ kind: 'closes' });
    expect(tubeEnds(netOf(inward)).map(({ flaps }) => flaps.length)).toEqual([4, 4]);
  });
});

describe('a sheet folded in half and in half again', () => {
  it('has a ring of panels that meets', () => {
    const map = `
  cut: 8 x 6
  score: [{ from: left, at: [4] }, { from: top, at: [3] }]
  folds: { A|B: mountain 180, 1|2: flat }`;
    expect(brokenRings(foldNet(netOf(map)))).toEqual([]);
  });

  it('has one that tears where both lines are folded square', () => {
    const corner = '\n  cut: 8 x 6\n  score: [{ from: left, at: [4] }, { from: top, at: [3] }]';
    expect(brokenRings(foldNet(netOf(corner)))).toHaveLength(1);
  });
});

describe('panels in each other’s way', () => {
  it('are found where one cuts through another', () => {
    // Two flaps of 3 in lean towards each other from 2 in apart and cross 2 in up their length.
    const crossed = netOf(
      '\n  cut: 8 x 3\n  score: [{ from: left, at: [3, 5] }]\n  folds: { A|B: mountain 120, B|C: mountain 120 }',
    );
    const [found, ...others] = collisions(foldNet(crossed), tolerance(CARDSTOCK).mm);
    expect(others).toEqual([]);
    expect(found?.panels).toEqual(['A1', 'C1']);
    // An inch beyond the crossing, leaning 60° to the other: sin 60° of it sticks out.
    expect((found?.by ?? 0) / 25.4).toBeCloseTo(Math.sin(Math.PI / 3), 9);
  });

  it('are none where flaps only lie on one another', () => {
    expect(collisions(foldNet(netOf(OPEN_TRAY)), tolerance(CARDSTOCK).mm)).toEqual([]);
  });
});

/**
 * The open tray of every calculus book: squares of side x cut from the corners of a sheet, V = x (a − 2x)(b − 2x),
 * greatest at x = (a + b − √(a² − ab + b²)) / 6. Published for 8.5 × 11 in: height about 1.585 in, volume about
 * 66.1482 cubic inches (math.answers.com), and 47.712 at 0.7 in (algebra.com, question 198713).
 */
describe('the textbook open tray from a sheet of 8 1/2 × 11 in', () => {
  const volumeAt = (thousandths: number): number => {
    const x = `${thousandths}/1000`;
    const body = bodyOf(
      netOf(`
  cut: 8 1/2 x 11
  score: [{ from: left, at: [${x}] }, { from: right, at: [${x}] }, { from: top, at: [${x}] }, { from: bottom, at: [${x}] }]
  trim: [A1, C1, A3, C3]`),
    );
    const inInches = (length: Length | undefined): number => (length?.mm ?? 0) / 25.4;
    return inInches(body?.width) * inInches(body?.height) * inInches(body?.depth);
  };

  it('holds 66.148 cubic inches at 1.585 in, and 47.712 at 0.7 in', () => {
    expect(volumeAt(1585)).toBeCloseTo(66.1482, 4);
    expect(volumeAt(700)).toBeCloseTo(47.712, 6);
  });

  it('holds less at any other height, to a thousandth of an inch', () => {
    const heights = [...Array(33).keys()].map((step) => 100 + step * 120);
    for (const other of [1584, 1586, ...heights]) expect(volumeAt(other)).toBeLessThan(volumeAt(1585));
    const [a, b] = [8.5, 11];
    expect((a + b - Math.sqrt(a * a - a * b + b * b)) / 6).toBeCloseTo(1.5854, 4);
  });

  it('is the same when its walls are folded up and measured', () => {
    const net = netOf(`
  cut: 8 1/2 x 11
  score: [{ from: left, at: [1585/1000] }, { from: right, at: [1585/1000] }, { from: top, at: [1585/1000] }, { from: bottom, at: [1585/1000] }]
  trim: [A1, C1, A3, C3]`);
    const points = [...foldNet(net).panels.values()].flatMap(({ corners }) => corners);
    const extent = (['x', 'y', 'z'] as const).map((axis) => {
      const values = points.map((point) => point[axis]);
      return (Math.max(...values) - Math.min(...values)) / 25.4;
    });
    expect(extent.reduce((product, each) => product * each, 1)).toBeCloseTo(66.1482, 4);
  });
});

describe('what paper forgives', () => {
  it('is two thicknesses and a tenth of a millimeter, far under the eighth of an inch of a score board', () => {
    expect(tolerance(Length.of(3, 10, 'mm')).mm).toBeCloseTo(0.7, 12);
    expect(tolerance(CARDSTOCK).lessThan(inches(1, 16))).toBe(true);
  });
});
