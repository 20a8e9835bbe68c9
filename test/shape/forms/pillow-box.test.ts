import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Length } from '../../../src/measure/length.ts';
import { foldNet } from '../../../src/shape/fold.ts';
import { type FoldedShape, foldedPanelOf } from '../../../src/shape/folded-shape.ts';
import { arcPoints } from '../../../src/shape/forming/arc.ts';
import type { Net } from '../../../src/shape/net.ts';
import { bounds, distance, type Point3 } from '../../../src/shape/space.ts';
import { sixteenths } from './any.ts';
import { exact, inches, netsOf } from './building.ts';

const chords = fc.tuple(sixteenths(16, 128), sixteenths(1, 16)).filter(([chord, rise]) => rise * 4 < chord);

/** c²/8s + s/2, the usual formula for the radius of a circle through a chord and its rise. */
function radiusOf(chord: Length, rise: Length): Length {
  const { numerator, denominator } = chord.over(rise);
  return chord.times(numerator, 8n * denominator).plus(rise.half());
}

describe('an arc', () => {
  it('has every point at its radius from its middle, exactly', () => {
    fc.assert(
      fc.property(chords, ([chordCount, riseCount]) => {
        const [chord, rise] = [inches(chordCount, 16), inches(riseCount, 16)];
        const radius = exact(radiusOf(chord, rise));
        for (const point of arcPoints(chord, rise, 13)) {
          const across = exact(point.along.minus(chord.half()));
          const up = exact(point.rise.minus(rise)).add(radius);
          expect(across.mul(across).add(up.mul(up)).equals(radius.mul(radius))).toBe(true);
        }
      }),
    );
  });

  it('begins and ends on its chord', () => {
    const points = arcPoints(inches(3), inches(1, 2), 13);
    expect([points[0], points.at(-1)].map((point) => [String(point?.along), String(point?.rise)])).toEqual([
      ['0 in', '0 in'],
      ['3 in', '0 in'],
    ]);
  });

  it('is nowhere further from its straight stretches than a pencil line', () => {
    const [chord, rise] = [inches(4), inches(4, 5)];
    const points = arcPoints(chord, rise, 13);
    const radius = radiusOf(chord, rise).mm;
    for (const [index, to] of points.slice(1).entries()) {
      const from = points[index] ?? to;
      const half = Math.hypot(to.along.mm - from.along.mm, to.rise.mm - from.rise.mm) / 2;
      expect(radius - Math.sqrt(radius ** 2 - half ** 2)).toBeLessThan(0.15);
    }
  });
});

/** Size and depth of a pillow, in sixteenths. */
const pillows = sixteenths(32, 128).chain((width) =>
  fc.tuple(fc.constant(width), sixteenths(2 * width, 3 * width), sixteenths(4, Math.floor((2 * width) / 5))),
);

function pillow([width, length, depth]: readonly number[]): Net {
  const settings = { size: `${width}/16 x ${length}/16`, depth: `${depth}/16` };
  return netsOf('pillow box', { settings })[0];
}

function ends(shape: FoldedShape, panel: string, x: Length, ys: readonly Length[]): Point3[] {
  return ys.map((y) => foldedPanelOf(shape, panel).place({ x, y }));
}

describe('a pillow box with its ends pressed in', () => {
  it('holds together: strips that share a line on the sheet share it in space', () => {
    fc.assert(
      fc.property(pillows, (size) => {
        const shape = foldNet(pillow(size));
        const edges = new Map<string, Point3[]>();
        for (const { panel, corners } of shape.panels.values()) {
          for (const [index, point] of panel.outline.entries()) {
            const corner = corners[index];
            // The tab lies under the front; its own lines are not the front's.
            if (!corner || panel.id.startsWith('tab')) continue;
            const key = `${point.x},${point.y}`;
            edges.set(key, [...(edges.get(key) ?? []), corner]);
          }
        }
        for (const [first, ...others] of edges.values()) {
          for (const other of others) expect(first && distance(first, other)).toBeLessThan(1e-6);
        }
      }),
      { numRuns: 25 },
    );
  });

  it('is as thick in the middle as asked for, and its flaps reach from wall to wall', () => {
    fc.assert(
      fc.property(pillows, (size) => {
        const shape = foldNet(pillow(size));
        const corners = (id: string): readonly Point3[] => foldedPanelOf(shape, id).corners;
        const { most } = bounds(corners('front'));
        const { least } = bounds(corners('back'));
        const depth = ((size[2] ?? 0) / 16) * 25.4;
        // The middle strip is flat where the true wall still rises: never thicker than asked, and at most 1/40 less.
        expect(most.z - least.z).toBeLessThanOrEqual(depth + 1e-9);
        expect(most.z - least.z).toBeGreaterThan(depth * 0.975);
        const flap = bounds(corners('front-top'));
        expect(flap.most.z - flap.least.z).toBeCloseTo(most.z - least.z, 6);
        expect(flap.most.y - flap.least.y).toBeLessThan(1e-6);
      }),
      { numRuns: 25 },
    );
  });

  it('lies with its tab on the front, bent as the front is', () => {
    fc.assert(
      fc.property(pillows, (size) => {
        const net = pillow(size);
        const shape = foldNet(net);
        const tab = foldedPanelOf(shape, 'tab');
        const { left, top, bottom } = tab.panel.box;
        const atFold = ends(shape, 'tab', left, [top, bottom]);
        const atEdge = ends(shape, 'front-strip-1', Length.zero, [top, bottom]);
        for (const [index, point] of atFold.entries()) {
          const other = atEdge[index];
          expect(other && distance(point, other)).toBeLessThan(1e-6);
        }
      }),
      { numRuns: 25 },
    );
  });

  it('hides its tab behind the front: no corner of it reaches past the circles of the ends', () => {
    fc.assert(
      fc.property(pillows, sixteenths(4, 32), (size, tabCount) => {
        const [width = 0, length = 0, depth = 0] = size;
        const tabWidth = Math.min(tabCount, width);
        const settings = { size: `${width}/16 x ${length}/16`, depth: `${depth}/16`, tab: `${tabWidth}/16` };
        const [net] = netsOf('pillow box', { settings });
        const tab = net.panels.find(({ id }) => id === 'tab');
        const radius = radiusOf(inches(width, 16), inches(depth, 32)).mm;
        for (const { x, y } of tab?.outline ?? []) {
          // Turned over, what lies at some way from the tab's fold lies as far from the left of the front.
          const across = x.mm - (tab?.box.left.mm ?? 0) - (width * 25.4) / 32;
          const down = Math.min(y.mm - (tab?.box.top.mm ?? 0), (tab?.box.bottom.mm ?? 0) - y.mm);
          const beyond = Math.hypot(across, down + radius - (depth * 25.4) / 32) - radius;
          // A curve 8 in wide and a fifth as high, cut in 13 straight stretches, lies up to 0.3 mm inside its circle.
          expect(beyond).toBeGreaterThan(-0.3);
        }
        expect(tab?.outline.length).toBeGreaterThanOrEqual(4);
      }),
      { numRuns: 60 },
    );
  });
});
