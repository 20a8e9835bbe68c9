import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { foldNet } from '../../src/shape/fold.ts';
import { afterStage, finishedProgress, foldSteps, stageCount } from '../../src/shape/fold-order.ts';
import { type FoldedPanel, type FoldedShape, foldedPanelOf } from '../../src/shape/folded-shape.ts';
import { forms } from '../../src/shape/forms/index.ts';
import type { Net } from '../../src/shape/net.ts';
import { panelForest } from '../../src/shape/panel-tree.ts';
import { distance, height, type Point3 } from '../../src/shape/space.ts';
import { KEEPER, netOf, OPEN_TRAY, TRADE_FACT } from './boxes.ts';
import { netsOf } from './forms/building.ts';
import { progressAt } from './progress.ts';
import { foldedByThree, greatestDifference } from './three-fold.ts';

const INCH = 25.4;

/** Every net we know: three by their score lines, and every sheet of every form's own example. */
const nets: (readonly [string, Net])[] = [
  ['keeper', netOf(KEEPER)],
  ['trade-fact box', netOf(TRADE_FACT)],
  ['open tray', netOf(OPEN_TRAY)],
  ...forms.flatMap(({ name, example }) => {
    const settings = Object.fromEntries(example.settings.map((line) => line.split(/:\s*(.*)/u)));
    return netsOf(name, { settings }).map((net, index) => [`${name} ${index + 1}`, net] as const);
  }),
];

const share = fc.double({ min: 0, max: 1, noNaN: true });

/** A clip-top box of any size, in eighths of an inch. */
const boxes = fc
  .record({
    width: fc.integer({ min: 8, max: 40 }),
    depth: fc.integer({ min: 2, max: 8 }).map((half) => 2 * half),
    tall: fc.integer({ min: 8, max: 40 }),
    tab: fc.integer({ min: 2, max: 6 }),
  })
  .map(({ width, depth, tall, tab }) => {
    const eighths = (...counts: number[]): string => counts.map((count) => `${count}/8`).join(', ');
    const [a, b, c, d] = [depth, depth + width, 2 * depth + width, 2 * (depth + width)];
    return TRADE_FACT.replace('8 x 6 3/4', `${d + tab}/8 x ${2 * depth + tall}/8`)
      .replace('1 1/4, 3 3/4, 5, 7 1/2', eighths(a, b, c, d))
      .replace('1 1/4, 5 1/2, 6 1/8', eighths(depth, depth + tall, depth + tall + depth / 2));
  });

function sides(points: readonly Point3[]): number[] {
  return points.map((point, index) => distance(point, points[(index + 1) % points.length] ?? point));
}

function flatSides({ panel }: FoldedPanel): number[] {
  return sides(panel.outline.map(({ x, y }) => ({ x: x.mm, y: y.mm, z: 0 })));
}

describe.each(nets)('folding the %s', (_, net) => {
  it('puts every corner where three.js does, flat, halfway, step by step and in the end', () => {
    const sheet = net.strips ?? net;
    const { base } = foldNet(net);
    for (const at of [0, 0.37, 1, progressAt(net, 0.6)]) {
      const held = foldNet(net, { base: otherPanel(sheet, base), at });
      expect(greatestDifference(held, foldedByThree(sheet, otherPanel(sheet, base), at))).toBeLessThan(1e-9);
    }
  });

  it('keeps every side as long and every panel as flat as it was', () => {
    fc.assert(
      fc.property(share, (at) => {
        for (const panel of foldNet(net, { at }).panels.values()) {
          const [before, after] = [flatSides(panel), sides(panel.corners)];
          for (const [index, side] of after.entries()) expect(side).toBeCloseTo(before[index] ?? 0, 9);
          for (const corner of panel.corners)
            expect(Math.abs(height(panel.plane, corner))).toBeLessThan(1e-9);
        }
      }),
      { seed: 33, numRuns: 10 },
    );
  });

  it('tears no fold open', () => {
    const shape = foldNet(net, { at: 0.8 });
    const { trees } = panelForest(shape.net, shape.base);
    for (const { fold } of trees[0]?.joints ?? []) {
      const [first, second] = fold.panels.map((id) => foldedPanelOf(shape, id));
      for (const end of [fold.from, fold.to]) {
        expect(first && second && distance(first.place(end), second.place(end))).toBeLessThan(1e-9);
      }
    }
  });
});

/** A panel that is not the one the net rests on: only then do both hold the flat sheet's own axes. */
function otherPanel({ panels }: Net, base: string): string {
  return panels.find(({ id }) => id !== base)?.id ?? base;
}

describe('the comparison with three.js', () => {
  it('would notice a fold that is one part in a thousand off', () => {
    const net = netOf(KEEPER);
    const held = foldNet(net, { base: 'back', at: 0.999 });
    expect(greatestDifference(held, foldedByThree(net, 'back', 1))).toBeGreaterThan(0.1);
  });
});

describe('any clip-top box by its score lines', () => {
  it('has one sheet of paper by Euler’s formula, and one closed box when folded', () => {
    fc.assert(
      fc.property(boxes, (box) => {
        const net = netOf(box);
        expect(net.panels.length - net.folds.length).toBe(1);
        const shape = foldNet(net);
        const corners = distinct(['A3', 'front', 'C3', 'back'].flatMap((id) => foldedPanelOf(shape, id).box));
        // A box: 8 corners − 12 edges + 6 faces = 2, the faces being four walls, top and bottom.
        expect(corners.length - 12 + 6).toBe(2);
        const closes = foldedPanelOf(shape, 'D4').box.map((corner) => nearest(corner, corners));
        expect(Math.max(...closes)).toBeLessThan(1e-9);
      }),
      { seed: 8126, numRuns: 25 },
    );
  });

  it('has panels whose area, folded, is what it was flat', () => {
    fc.assert(
      fc.property(boxes, share, (box, at) => {
        const shape = foldNet(netOf(box), { at });
        const { width, height: tall } = shape.net.size;
        const waste = shape.net.waste.map((part) =>
          areaOf(part.map(({ x, y }) => ({ x: x.mm, y: y.mm, z: 0 }))),
        );
        const total = [...shape.panels.values()].reduce((sum, { corners }) => sum + areaOf(corners), 0);
        expect(total + waste.reduce((a, b) => a + b, 0)).toBeCloseTo(width.mm * tall.mm, 6);
      }),
      { seed: 8126, numRuns: 25 },
    );
  });
});

function distinct(points: readonly Point3[]): Point3[] {
  return points.filter(
    (point, index) => points.findIndex((other) => distance(point, other) < 1e-9) === index,
  );
}

function nearest(point: Point3, others: readonly Point3[]): number {
  return Math.min(...others.map((other) => distance(point, other)));
}

/** The area of a flat polygon in space: half the length of the sum of its cross products. */
function areaOf(points: readonly Point3[]): number {
  let [x, y, z] = [0, 0, 0];
  for (const [index, a] of points.entries()) {
    const b = points[(index + 1) % points.length] ?? a;
    x += a.y * b.z - a.z * b.y;
    y += a.z * b.x - a.x * b.z;
    z += a.x * b.y - a.y * b.x;
  }
  return Math.hypot(x, y, z) / 2;
}

describe('the trade-fact box, worked by hand', () => {
  const shape = foldNet(netOf(TRADE_FACT));
  const corner = (panel: string, index: number): string => {
    const { x, y, z } = foldedPanelOf(shape, panel).box[index] ?? { x: Number.NaN, y: 0, z: 0 };
    return [x, y, z].map((value) => Math.round((value / INCH) * 1e9) / 1e9 + 0).join(' ');
  };

  /*
   * The front stays at z = 0, from x = 1 1/4 to 3 3/4 and y = −1 1/4 to −5 1/2. A mountain fold of 90° at x = a carries
   * (x, y, 0) with x > a to (a, y, −(x − a)); one with x < a to (a, y, −(a − x)); and so on for the fold after.
   */
  it.each([
    ['front', 0, '1.25 -1.25 0'],
    ['front', 2, '3.75 -5.5 0'],
    ['C3', 1, '3.75 -1.25 -1.25'],
    ['back', 0, '3.75 -1.25 -1.25'],
    ['back', 1, '1.25 -1.25 -1.25'],
    ['A3', 0, '1.25 -1.25 -1.25'],
    ['tab', 0, '1.25 -1.25 -1.25'],
    ['tab', 1, '1.25 -1.25 -0.75'],
    // Half the depth from the front, and a flange as high as that.
    ['B2', 0, '1.25 -1.25 -0.625'],
    ['B1', 0, '1.25 -0.625 -0.625'],
    ['D2', 0, '3.75 -1.25 -0.625'],
    ['D1', 0, '3.75 -0.625 -0.625'],
    // The bottom reaches from the back to the front.
    ['D4', 3, '3.75 -5.5 0'],
    ['B4', 3, '1.25 -5.5 -1.25'],
    ['A4', 3, '2.5 -5.5 -1.25'],
  ])('%s, corner %i', (panel, index, expected) => {
    expect(corner(panel, index)).toBe(expected);
  });

  it('is 2 1/2 × 1 1/4 × 4 1/4 in outside, but for its flanges', () => {
    const walls = ['A3', 'front', 'C3', 'back', 'D4', 'B2', 'D2'].flatMap(
      (id) => foldedPanelOf(shape, id).box,
    );
    const extent = (pick: (point: Point3) => number): number =>
      (Math.max(...walls.map(pick)) - Math.min(...walls.map(pick))) / INCH;
    expect(extent(({ x }) => x)).toBeCloseTo(2.5, 12);
    expect(extent(({ z }) => z)).toBeCloseTo(1.25, 12);
    expect(extent(({ y }) => y)).toBeCloseTo(4.25, 12);
  });
});

describe('how a shape is set down', () => {
  const outside = (shape: FoldedShape, panel: string): string => {
    const { normal } = foldedPanelOf(shape, panel).plane;
    return [normal.x, normal.y, normal.z].map((value) => Math.round(value) + 0).join(' ');
  };

  it('has the front of a box towards the viewer', () => {
    expect(outside(foldNet(netOf(KEEPER)), 'front')).toBe('0 0 1');
  });

  it('has a tray on its base, its front wall towards the viewer', () => {
    const tray = foldNet(netOf(OPEN_TRAY));
    expect(tray.base).toBe('base');
    expect(outside(tray, 'base')).toBe('0 -1 0');
    expect(outside(tray, 'front')).toBe('0 0 1');
    expect(outside(tray, 'back')).toBe('0 0 -1');
  });

  it('has a tray’s front towards the viewer wherever it lies on the sheet', () => {
    for (const cell of ['A2', 'C2', 'B1']) {
      const box = OPEN_TRAY.replace('front: B3, back: B1', `front: ${cell}`).replace(/glue:.*/u, '');
      expect(outside(foldNet(netOf(box)), 'front'), cell).toBe('0 0 1');
    }
  });
});

describe('what panels are for', () => {
  const renamed = OPEN_TRAY.replace(/panels:.*/u, 'panels: { voor: B3, achter: B1, vloer: B2 }').replace(
    /glue:.*/u,
    '',
  );

  it('is read from the words of a net by score lines, and from a form’s own, never from a name further on', () => {
    const rolesOf = ({ panels }: Net): string[] =>
      panels.flatMap(({ id, role }) => (role ? [`${id} ${role}`] : []));
    expect(rolesOf(netOf(KEEPER)).sort()).toEqual(['back back', 'front front']);
    expect(rolesOf(netOf(OPEN_TRAY)).sort()).toEqual(['back back', 'base under', 'front front']);
    const [, lid] = netsOf('lidded tray', { settings: { inside: '4 x 3 x 1' } });
    expect(lid && rolesOf(lid).sort()).toEqual(['lid-front front', 'top over']);
  });

  it('leaves a net in other words as it folds, set down by its geometry', () => {
    const shape = foldNet(netOf(renamed));
    expect(shape.base).toBe('vloer');
    expect(Math.round(foldedPanelOf(shape, 'vloer').plane.normal.y)).toBe(-1);
  });
});

describe('the order of folding', () => {
  const said = (net: Net): string[] =>
    foldSteps(net).map(
      ({ stage, folds }) => `${stage}: ${folds.map(({ panels }) => panels.join('|')).join(' ')}`,
    );

  it('makes the body first, then what is glued, inside before outside, then the top', () => {
    expect(said(netOf(KEEPER))).toEqual([
      '1: A3|front front|C3 C3|back back|tab',
      '2: A3|A4 C3|C4',
      // A4 and C4 are glued to D4, so B4 must not lie between.
      '2: back|D4',
      '2: front|B4',
      '3: A2|A3 C2|C3',
      '3: B1|B2 D1|D2 B2|front D2|back',
    ]);
    expect(stageCount(netOf(KEEPER))).toBe(3);
  });

  it('folds a tray’s tabs before its walls', () => {
    expect(said(netOf(OPEN_TRAY))).toEqual([
      '1: A1|A2 C1|C2 A2|A3 C2|C3',
      '2: A2|base base|C2',
      '2: back|base base|front',
    ]);
  });

  it('has as many folds made after a stage as it and those before it have', () => {
    const net = netOf(KEEPER);
    expect(net.folds.map(afterStage(net, 1)).filter((done) => done === 1)).toHaveLength(4);
    expect(net.folds.map(afterStage(net, 2)).filter((done) => done === 1)).toHaveLength(8);
  });

  it('turns the flaps of an envelope to the viewer, all stuck but the one that closes it, which stands off', () => {
    const [net] = netsOf('envelope', { settings: { card: '5 1/2 x 4 1/4' } });
    const open = net.folds.filter((fold) => finishedProgress(net)(fold) < 1);
    expect(open.map(({ panels }) => [...panels].sort())).toEqual([['flap', 'front']]);
    const shape = foldNet(net, { at: finishedProgress(net) });
    const nearest = (id: string): number => Math.max(...foldedPanelOf(shape, id).corners.map(({ z }) => z));
    expect(nearest('flap') - nearest('front')).toBeGreaterThan(10);
    expect(foldedPanelOf(shape, 'front').plane.normal.z).toBeCloseTo(-1, 9);
  });

  it('leaves a card a little open, and a box closed', () => {
    const card = netOf(
      '\n  cut: 8 1/2 x 5 1/2\n  score: [{ from: left, at: [4 1/4] }]\n  folds: { A|B: mountain 180 }',
    );
    expect(card.folds.map(finishedProgress(card))).toEqual([0.88]);
    expect(new Set(netOf(KEEPER).folds.map(finishedProgress(netOf(KEEPER))))).toEqual(new Set([1]));
  });
});
