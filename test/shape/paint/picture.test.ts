import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point2 } from '../../../src/shape/flat-polygon.ts';
import { foldNet } from '../../../src/shape/fold.ts';
import { type FoldedShape, foldedPanelOf } from '../../../src/shape/folded-shape.ts';
import { placeInPicture, USUAL_LOOK } from '../../../src/shape/paint/picture.ts';
import { ownNet } from '../../../src/shape/sheets.ts';
import { dot, type Point3 } from '../../../src/shape/space.ts';
import { layersOnPanels } from '../../../src/shape/view/panel-layers.ts';
import { KEEPER, netOf, OPEN_TRAY, shapesOf, sheetOf, TRADE_FACT } from '../boxes.ts';
import { netsOf } from '../forms/building.ts';
import { progressAt } from '../progress.ts';
import { type NamedFace, painted } from './painting.ts';

type Look = typeof USUAL_LOOK;

const shapes = new Map([
  ['keeper', netOf(KEEPER)],
  ['trade-fact box', netOf(TRADE_FACT)],
  ['open tray', netOf(OPEN_TRAY)],
  ['tuck-end box', netsOf('tuck-end box', { settings: { inside: '2 x 1 x 3' } })[0]],
]);

function isInside({ x, y }: Point2, polygon: readonly Point2[]): boolean {
  let inside = false;
  for (const [index, a] of polygon.entries()) {
    const b = polygon[(index + 1) % polygon.length] ?? a;
    if (a.y > y !== b.y > y && x < ((b.x - a.x) * (y - a.y)) / (b.y - a.y) + a.x) inside = !inside;
  }
  return inside;
}

/** The ray of sight through a point of the picture: towards the viewer, worked out from the angles of the view alone. */
function sight({ turn, tilt }: Look): { right: Point3; up: Point3; back: Point3 } {
  const [a, b] = [(turn * Math.PI) / 180, (tilt * Math.PI) / 180];
  const right = { x: Math.cos(a), y: 0, z: Math.sin(a) };
  const ahead = { x: -Math.sin(a), y: 0, z: Math.cos(a) };
  const up = { x: -ahead.x * Math.sin(b), y: Math.cos(b), z: -ahead.z * Math.sin(b) };
  const back = { x: ahead.x * Math.cos(b), y: Math.sin(b), z: ahead.z * Math.cos(b) };
  return { right, up, back };
}

/** How near the viewer a panel's plane is under a point of the picture. */
function nearness(shape: FoldedShape, panel: string, point: Point2, view: Look): number {
  const { normal, offset } = foldedPanelOf(shape, panel).plane;
  const { right, up, back } = sight(view);
  return (offset - point.x * dot(normal, right) + point.y * dot(normal, up)) / dot(normal, back);
}

/** Points of the picture at which something nearer is painted over by something farther. */
function wronglyHidden(shape: FoldedShape, faces: readonly NamedFace[], view: Look): string[] {
  const wrong: string[] = [];
  const points = faces.flatMap(({ points: [a, b, c] }) =>
    a && b && c ? [0.2, 0.5].map((t) => mix(a, b, c, t)) : [],
  );
  for (const point of points) {
    const under = faces.filter(({ points: polygon }) => isInside(point, polygon)).map(({ panel }) => panel);
    const top = under.at(-1);
    const depths = under.map((panel) => nearness(shape, panel, point, view));
    const nearest = Math.max(...depths);
    if (top !== undefined && nearness(shape, top, point, view) < nearest - 0.01) {
      wrong.push(`${top} over ${under[depths.indexOf(nearest)]}`);
    }
  }
  return wrong;
}

function mix(a: Point2, b: Point2, c: Point2, t: number): Point2 {
  const [u, v] = [t, 0.3 * (1 - t)];
  return { x: a.x * (1 - u - v) + b.x * u + c.x * v, y: a.y * (1 - u - v) + b.y * u + c.y * v };
}

describe.each([...shapes])('the picture of a %s', (_, net) => {
  it('hides what lies behind, from any side and at every stage', () => {
    const view = fc.record({
      turn: fc.integer({ min: -180, max: 180 }),
      tilt: fc.integer({ min: -80, max: 80 }),
    });
    const steps = fc.constantFrom(0, 1 / 6, 1 / 3, 1 / 2, 1);
    fc.assert(
      fc.property(view, steps, (look, done) => {
        const at = progressAt(net, done);
        const shape = foldNet(net, { at, caliper: 0.24 });
        expect(wronglyHidden(shape, painted(net, { at, look }), look)).toEqual([]);
      }),
      { seed: 2718, numRuns: 40 },
    );
  });

  it('paints every panel that is not seen from its edge, whole', () => {
    const faces = painted(net);
    expect(new Set(faces.map(({ panel }) => panel))).toEqual(new Set(net.panels.map(({ id }) => id)));
    expect(faces.every(({ sides, points }) => sides.length === points.length)).toBe(true);
    expect(faces.every(({ shade }) => shade >= 0 && shade <= 1)).toBe(true);
  });
});

describe('the place of a point in the picture', () => {
  // By hand: seen from above and with nothing turned, what lies 10 mm nearer the viewer comes 10 mm lower.
  it.each([
    [{ turn: 0, tilt: 0 }, { x: 3, y: 4, z: 10 }, [3, -4]],
    [{ turn: 0, tilt: 90 }, { x: 3, y: 4, z: 10 }, [3, 10]],
    [{ turn: 90, tilt: 0 }, { x: 3, y: 4, z: 10 }, [10, -4]],
    [{ turn: 180, tilt: 0 }, { x: 3, y: 4, z: 10 }, [-3, -4]],
    [{ turn: 0, tilt: 30 }, { x: 0, y: 0, z: 10 }, [0, 5]],
  ])('is as the view is turned and tilted: %o', (look, point, [x = 0, y = 0]) => {
    const place = placeInPicture(look)(point);
    expect(place.x).toBeCloseTo(x, 9);
    expect(place.y).toBeCloseTo(y, 9);
  });
});

describe('the check of what is hidden', () => {
  it('would notice faces painted the other way round', () => {
    const shape = foldNet(netOf(KEEPER));
    const backwards = painted(netOf(KEEPER)).toReversed();
    expect(wronglyHidden(shape, backwards, USUAL_LOOK).length).toBeGreaterThan(10);
  });
});

describe('what lies on one another', () => {
  const order = (box: string, look: Look = USUAL_LOOK): string[] =>
    painted(netOf(box), { look }).map(({ panel }) => panel);

  it('has the glue tab inside the wall it sticks to', () => {
    const seenFromLeft = order(KEEPER, { turn: 60, tilt: 10 });
    expect(seenFromLeft.indexOf('tab')).toBeLessThan(seenFromLeft.indexOf('A3'));
  });

  it('has the bottom flaps in the order they are glued, the outermost last', () => {
    const fromBelow = order(KEEPER, { turn: -30, tilt: -40 });
    const place = (panel: string): number => fromBelow.indexOf(panel);
    // A4 sticks to D4, and B4 too: it can only be on the other side of D4.
    expect(place('A4')).toBeLessThan(place('D4'));
    expect(place('D4')).toBeLessThan(place('B4'));
  });

  it('has a tuck flap behind the wall it goes behind', () => {
    const [net] = netsOf('tuck-end box', { settings: { inside: '2 x 1 x 3' } });
    const faces = painted(net).map(({ panel }) => panel);
    expect(faces.indexOf('lid-tuck')).toBeLessThan(faces.indexOf('front'));
  });

  it('has the pages of an accordion one behind the other', () => {
    const [net] = netsOf('accordion card', { settings: { size: '3 x 4', pages: '4' } });
    const faces = painted(net, { caliper: 0 }).map(({ panel }) => panel);
    expect(faces).toEqual(['page-4', 'page-3', 'page-2', 'page-1']);
  });
});

describe('layers', () => {
  const boxed = shapesOf(
    sheetOf(
      TRADE_FACT,
      'mat: { stock: moss, cut: 2 1/4 x 4, on: box.front }\nlabel: { stock: moss, cut: 1 x 1/2, on: mat, at: { left: 1/8, top: 1/4 } }\nback: { stock: moss, cut: 2 x 2, on: box.back }\nspare: { stock: moss, cut: 2 x 2 }',
    ),
  );

  it('lie on their panels, one through the other, in the sheet’s own coordinates', () => {
    const corners = layersOnPanels(boxed, 'box').map(({ panel, piece, outline: [topLeft] }) => [
      panel,
      piece.id.value,
      `${topLeft?.x} ${topLeft?.y}`,
    ]);
    expect(corners).toEqual([
      ['front', 'mat', '11/8 in 11/8 in'],
      ['front', 'label', '3/2 in 13/8 in'],
      ['back', 'back', '21/4 in 19/8 in'],
    ]);
  });

  it('are painted on the panels whose outside is seen, in the order they are stuck on, else behind them', () => {
    const net = ownNet(boxed.nets, 'box') ?? netOf(TRADE_FACT);
    const faces = painted(net, { layers: layersOnPanels(boxed, 'box') });
    const front = faces.findIndex(({ panel }) => panel === 'front');
    expect(faces.slice(front, front + 3).map(({ layer }) => layer)).toEqual([undefined, 'mat', 'label']);
    const back = faces.filter(({ panel }) => panel === 'back').map(({ layer }) => layer);
    expect(back).toEqual(['back', undefined]);
  });

  it('turn with a turned layer they lie on', () => {
    const turned = shapesOf(
      sheetOf(
        '\n  cut: 4 x 4',
        'mat: { stock: moss, cut: 2 x 1, on: box, at: { turn: 90 } }\ndot: { stock: moss, cut: 1/2 x 1/2, on: mat, at: { left: 0.25, top: 0.25 } }',
      ),
    );
    const dot90 = layersOnPanels(turned, 'box').find(({ piece }) => piece.id.value === 'dot');
    // The mat covers x 1 1/2 to 2 1/2, y 1 to 3; its own top left corner is now at the top right.
    expect(`${dot90?.outline[0]?.x} ${dot90?.outline[0]?.y}`).toBe('9/4 in 5/4 in');
  });
});
