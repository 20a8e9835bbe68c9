import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestPacking, type Triple, tightest } from '../../../src/shape/closure/packing.ts';
import { depthOver, pocketsOf } from '../../../src/shape/closure/pocket.ts';
import { roomsOf } from '../../../src/shape/closure/rooms.ts';
import { foldNet } from '../../../src/shape/fold.ts';
import type { Net } from '../../../src/shape/net.ts';
import type { Point3 } from '../../../src/shape/space.ts';
import { netOf } from '../boxes.ts';
import { sixteenths } from '../forms/any.ts';
import { inches, netsOf } from '../forms/building.ts';

/** What is left of a net's room by so many things, in its tightest direction, in inches; snugly where it can be asked. */
function leftOf(net: Net, item: Triple, count = 1): number {
  const [room] = roomsOf(net);
  if (!room) throw new Error('there is no room in it');
  return tightest(bestPacking(item, count, room.cavity, room.snugly ?? room.leave)).mm / 25.4;
}

const envelope = (outside: string): Net => netsOf('envelope', { settings: { outside } })[0];

describe('an envelope', () => {
  // US announcement envelopes with their usual largest insert: thoughtco.com/envelope-design-styles-4122796. An insert
  // is a folded card of 80 lb cover here, twice 9.5 points thick (a trade chart, "guide only").
  it.each([
    ['A1', '5 1/8 x 3 5/8', inches(19, 4), inches(7, 2)],
    ['A2', '5 3/4 x 4 3/8', inches(11, 2), inches(33, 8)],
    ['A6', '6 1/2 x 4 3/4', inches(25, 4), inches(9, 2)],
    ['A7', '7 1/4 x 5 1/4', inches(7), inches(5)],
    ['A8', '8 1/8 x 5 1/2', inches(63, 8), inches(21, 4)],
    ['A9', '8 3/4 x 5 3/4', inches(17, 2), inches(11, 2)],
    ['A10', '9 1/2 x 6', inches(37, 4), inches(23, 4)],
  ])('%s takes its insert, either way round, but not the next size', (_, outside, width, height) => {
    const net = envelope(outside);
    const card = inches(19, 1000);
    expect(leftOf(net, [width, height, card])).toBeGreaterThan(0);
    expect(leftOf(net, [height, card, width])).toBeGreaterThan(0);
    expect(leftOf(net, [width.plus(inches(1, 2)), height, card])).toBeLessThan(0);
    expect(leftOf(net, [width, height.plus(inches(1, 2)), card])).toBeLessThan(0);
  });

  it('takes less of what is thick: its girth does not stretch', () => {
    const net = netsOf('envelope', { settings: { card: '6 x 4' } })[0];
    const [pocket] = pocketsOf(net);
    const spare = (pocket?.width.extent.mm ?? 0) / 25.4 - 6;
    expect(leftOf(net, [inches(6), inches(4), inches(1, 16)], 2)).toBeCloseTo(spare - 1 / 8, 9);
    expect(leftOf(net, [inches(6), inches(4), inches(1, 16)], 9)).toBeCloseTo(spare - 9 / 16, 9);
  });
});

describe('a flat band', () => {
  const band = netsOf('belly band', { settings: { around: '4 1/4 x 1/16' } })[0];

  it('goes round what it is made for, however high that is', () => {
    expect(leftOf(band, [inches(17, 4), inches(9), inches(1, 16)])).toBeGreaterThan(0);
  });

  it('is too short for anything wider, or thicker by as much', () => {
    expect(leftOf(band, [inches(21, 4), inches(7), inches(1, 16)])).toBeLessThan(0);
    expect(leftOf(band, [inches(17, 4), inches(7), inches(1, 16)], 6)).toBeLessThan(0);
  });
});

describe('a pocket folded up and glued at its sides', () => {
  const folder = (pocket: string): Net =>
    netOf(`
  cut: 4 x ${pocket}
  score: [{ from: top, at: [5] }]
  panels: { back: A1 }
  taper: [A2]
  folds: { 1|2: mountain 180 }
  glue: { A2: back }`);

  it('is as wide as its fold, and open above', () => {
    expect(leftOf(folder('7'), [inches(4), inches(9), inches(1, 100)])).toBeCloseTo(-0.01, 9);
    expect(leftOf(folder('7'), [inches(15, 4), inches(9), inches(1, 100)])).toBeCloseTo(0.24, 9);
  });

  it('is none but a hem, if it is low', () => {
    expect(pocketsOf(folder('5 1/2'))).toEqual([]);
  });
});

describe('a pillow box', () => {
  const pillow = (width: number, length: number, depth: number): Net =>
    netsOf('pillow box', { settings: { size: `${width}/16 x ${length}/16`, depth: `${depth}/16` } })[0];
  const pillows = sixteenths(32, 96).chain((width) =>
    fc.tuple(
      fc.constant(width),
      sixteenths(2 * width, 3 * width),
      sixteenths(4, Math.floor((2 * width) / 5)),
    ),
  );

  // Folding it strip by strip is the other way to know: its walls are cut across, and the distance between them measured.
  it('is as deep over its middle as its folded walls are apart', () => {
    const share = fc.integer({ min: 0, max: 95 });
    fc.assert(
      fc.property(pillows, share, ([width = 0, length = 0, depth = 0], percent) => {
        const net = pillow(width, length, depth);
        const [pocket] = pocketsOf(net);
        if (!pocket?.rise) throw new Error('no pillow');
        const front = wallAcross(net, 'front');
        const across = (Math.max(...front.map(({ x }) => x)) - Math.min(...front.map(({ x }) => x))) / 25.4;
        const over = inches(Math.round(across * percent * 10), 1000);
        const apart = heightAt(front, over.mm / 2) - heightAt(wallAcross(net, 'back'), over.mm / 2);
        // Thirteen straight strips lie a little inside the arc: by their own sagitta on each wall.
        expect(Math.abs(depthOver(over, { ...pocket, rise: pocket.rise }).mm - apart)).toBeLessThan(
          (width * 25.4) / 16 / 200,
        );
      }),
      { seed: 12, numRuns: 100 },
    );
  });

  // By hand, for 3 x 4 1/2 in and 1 in deep: 4 1/2 less twice the curves' 1/2 in is left between the flaps; 2 in wide
  // things have 2 (R cos a - R + 1/2) over them, with the arc's R = 3²/(8/2) + 1/4 = 2 1/2 in reckoned along the wall.
  it('takes what lies flat in it between its flaps', () => {
    const net = pillow(48, 72, 16);
    expect(leftOf(net, [inches(2), inches(3), inches(1, 4)])).toBeGreaterThan(0);
    expect(leftOf(net, [inches(2), inches(15, 4), inches(1, 4)])).toBeCloseTo(-0.25, 9);
    expect(leftOf(net, [inches(11, 4), inches(3), inches(1, 2)])).toBeLessThan(0);
    expect(leftOf(net, [inches(2), inches(3), inches(3, 4)])).toBeLessThan(0);
  });
});

/** The corners of a pillow's wall, pressed open, its middle at x = 0. */
function wallAcross(net: Net, wall: 'front' | 'back'): Point3[] {
  const panels = [...foldNet(net).panels.values()].filter(({ panel: { partOf } }) => partOf === wall);
  const corners = panels.flatMap((panel) => panel.corners);
  const xs = corners.map(({ x }) => x);
  const middle = (Math.min(...xs) + Math.max(...xs)) / 2;
  return corners.map(({ x, y, z }) => ({ x: x - middle, y, z })).toSorted((a, b) => a.x - b.x);
}

/** How high a wall is at some way from its middle. */
function heightAt(corners: readonly Point3[], x: number): number {
  const index = corners.findIndex((corner) => corner.x > x);
  const [from, to] = [corners[index - 1], corners[index]];
  if (!from || !to) throw new Error(`the wall does not reach ${x}`);
  return from.z + ((to.z - from.z) * (x - from.x)) / (to.x - from.x);
}
