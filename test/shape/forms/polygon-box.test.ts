import { describe, expect, it } from 'vitest';
import { foldNet } from '../../../src/shape/fold.ts';
import type { Net, Panel } from '../../../src/shape/net.ts';
import type { Point3 } from '../../../src/shape/space.ts';
import { foldedByThree } from '../three-fold.ts';
import { netsOf } from './building.ts';

const SIDES = [3, 4, 5, 6, 7, 8];
const SIDE = 50;
const HEIGHT = 80;

const boxOf = (sides: number): Net => {
  const settings = { sides: String(sides), side: String(SIDE), height: String(HEIGHT), lid: '25' };
  return netsOf('polygon box', { settings, unit: 'mm' })[0];
};

const panelIn = (net: Net, id: string): Panel => {
  const panel = net.panels.find((each) => each.id === id);
  if (!panel) throw new Error(`no panel ${id}`);
  return panel;
};

const apart = (a: Point3, b: Point3): number => Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z);

/**
 * A regular polygon of n sides s: interior angles (n − 2)·180°/n, apothem s / (2 tan(180°/n)), area n·s·apothem/2;
 * Weisstein, "Regular Polygon", MathWorld.
 */
describe.each(SIDES)('the floor of a polygon box with %i sides', (sides) => {
  const { outline, box } = panelIn(boxOf(sides), 'floor');
  const points = outline.map(({ x, y }) => ({ x: x.mm, y: y.mm }));
  const round = points.map((point, index) => {
    const [before, after] = [points.at(index - 1) ?? point, points[(index + 1) % sides] ?? point];
    const [a, b] = [
      Math.atan2(before.y - point.y, before.x - point.x),
      Math.atan2(after.y - point.y, after.x - point.x),
    ];
    const angle = (((((a - b) * 180) / Math.PI) % 360) + 360) % 360;
    return { length: Math.hypot(after.x - point.x, after.y - point.y), angle };
  });
  const apothem = SIDE / (2 * Math.tan(Math.PI / sides));

  it('has equal sides and equal angles', () => {
    for (const { length, angle } of round) {
      expect(length).toBeCloseTo(SIDE, 5);
      expect(angle).toBeCloseTo(((sides - 2) * 180) / sides, 5);
    }
  });

  it('has the area of its apothem and is as deep as that says', () => {
    const area = points.reduce((sum, { x, y }, index) => {
      const next = points[(index + 1) % sides] ?? { x, y };
      return sum + (x * next.y - next.x * y) / 2;
    }, 0);
    expect(area).toBeCloseTo((sides * SIDE * apothem) / 2, 2);
    const corner = SIDE / (2 * Math.sin(Math.PI / sides));
    const deep = box.bottom.minus(box.top).mm;
    expect(deep).toBeCloseTo(sides % 2 === 0 ? 2 * apothem : apothem + corner, 4);
  });
});

describe.each(SIDES)('a polygon box with %i sides, folded', (sides) => {
  const net = boxOf(sides);

  it('stands as three.js folds it', () => {
    const { base, panels } = foldNet(net, { base: 'front' });
    const expected = foldedByThree(net, base);
    for (const [id, { corners }] of panels) {
      for (const [index, corner] of corners.entries()) {
        expect(apart(corner, expected.get(id)?.[index] ?? corner)).toBeLessThan(1e-6);
      }
    }
  });

  it('has the foot of every wall on an edge of its floor', () => {
    const { panels } = foldNet(net);
    const floor = panels.get('floor')?.corners ?? [];
    const feet = net.folds
      .filter(({ panels: [, hung] }) => hung.endsWith('-tab'))
      .map(({ panels: [wall], from, to }) => [from, to].map((end) => panels.get(wall)?.place(end)));
    expect(feet).toHaveLength(sides - 1);
    for (const foot of feet) {
      for (const end of foot) {
        const nearest = Math.min(...floor.map((corner) => (end ? apart(corner, end) : Infinity)));
        expect(nearest).toBeLessThan(1e-4);
      }
    }
  });

  it('has a lid that is wider than the box by its paper, its play and no more than its ruler asks', () => {
    const settings = { sides: String(sides), side: '50', height: '80', lid: '25' };
    const [, lid] = netsOf('polygon box', { settings, unit: 'mm' });
    const longer = lid ? panelIn(lid, 'lid-front').box : undefined;
    const growth = longer ? longer.right.minus(longer.left).mm - SIDE : 0;
    const wider = growth / Math.tan(Math.PI / sides);
    // Three thicknesses of 0.2413 mm and 2 mm of play; a whole millimeter is the step of the side.
    expect(wider).toBeGreaterThanOrEqual(3 * 0.2413 + 2);
    expect(wider - 1 / Math.tan(Math.PI / sides)).toBeLessThan(3 * 0.2413 + 2);
  });
});
