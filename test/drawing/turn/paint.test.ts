import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { foldPaper, type PaperSheet, sharesAfter } from '../../../src/shape/paint/paper-sheet.ts';
import { type PaintedFace, paint, USUAL_LOOK } from '../../../src/shape/paint/picture.ts';
import type { Point3 } from '../../../src/shape/space.ts';
import { KEEPER } from '../../shape/boxes.ts';
import { replayedByThree } from './by-three.ts';
import { editionOf, type Pair, SHAPES, type Triple, twofolds } from './paper.ts';

type Look = typeof USUAL_LOOK;

/** A face with its corners as pairs. */
type Painted = Omit<PaintedFace, 'points'> & { readonly points: readonly Pair[] };

function painted(sheet: PaperSheet, done: number, look: Look): readonly Painted[] {
  const { tree } = foldPaper(sheet, sharesAfter(done, sheet));
  return paint(tree, look).map((face) => ({ ...face, points: face.points.map(({ x, y }): Pair => [x, y]) }));
}

/** Points of a picture this near an edge, in millimeters, are not looked at: there two faces are both right. */
const EDGE = 0.2;

/** Turned about the upright, then tilted about the level: as a hand would, one after the other. */
function lookedAt([x, y, z]: Triple, { turn, tilt }: Look): Triple {
  const [a, b] = [(turn * Math.PI) / 180, (tilt * Math.PI) / 180];
  const [across, towards] = [x * Math.cos(a) + z * Math.sin(a), z * Math.cos(a) - x * Math.sin(a)];
  return [across, y * Math.cos(b) - towards * Math.sin(b), y * Math.sin(b) + towards * Math.cos(b)];
}

/** How far inside a polygon a point is: negative outside. By the winding number of the angles it is seen under. */
function depthInside([x, y]: Pair, polygon: readonly Pair[]): number {
  let angles = 0;
  let nearest = Number.POSITIVE_INFINITY;
  for (const [index, [ax, ay]] of polygon.entries()) {
    const [bx, by] = polygon[(index + 1) % polygon.length] ?? [ax, ay];
    const [px, py, qx, qy] = [ax - x, ay - y, bx - x, by - y];
    angles += Math.atan2(px * qy - py * qx, px * qx + py * qy);
    const along = Math.max(
      0,
      Math.min(1, -(px * (bx - ax) + py * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2 || 1)),
    );
    nearest = Math.min(nearest, Math.hypot(px + along * (bx - ax), py + along * (by - ay)));
  }
  return Math.abs(angles) > Math.PI ? nearest : -nearest;
}

/** A panel as three.js has it: its corners in the picture, how near it is to the viewer, how squarely it is seen. */
type Seen = {
  readonly polygon: readonly Pair[];
  readonly nearness: (point: Pair) => number;
  readonly cosine: number;
};

function seenPanels(sheet: PaperSheet, done: number, look: Look): readonly Seen[] {
  return replayedByThree(sheet, done).map((panel) => {
    const corners = panel.map((corner) => lookedAt(corner, look));
    const normal = normalOf(corners);
    const [cx, cy, cz] = corners[0] ?? [0, 0, 0];
    return {
      polygon: corners.map(([px, py]): Pair => [px, -py]),
      nearness: ([px, py]) => cz - (normal[0] * (px - cx) + normal[1] * (-py - cy)) / normal[2],
      cosine: Math.abs(normal[2]),
    };
  });
}

/** The direction a flat polygon faces: the sum of its corners' cross products, of length 1 (Newell's method). */
function normalOf(corners: readonly Triple[]): Triple {
  let [x, y, z] = [0, 0, 0];
  for (const [index, a] of corners.entries()) {
    const b = corners[(index + 1) % corners.length] ?? a;
    x += (a[1] - b[1]) * (a[2] + b[2]);
    y += (a[2] - b[2]) * (a[0] + b[0]);
    z += (a[0] - b[0]) * (a[1] + b[1]);
  }
  const length = Math.hypot(x, y, z);
  return [x / length, y / length, z / length];
}

/** Points spread evenly over a picture, at no regular distances (Halton's sequence). */
function spots(faces: readonly Painted[], count: number): Pair[] {
  const points = faces.flatMap((face) => face.points);
  const range = (axis: 0 | 1): readonly [number, number] => {
    const values = points.map((point) => point[axis]);
    return [Math.min(...values), Math.max(...values)];
  };
  const [[left, right], [top, bottom]] = [range(0), range(1)];
  const halton = (index: number, base: number): number => {
    let [sum, share] = [0, 1];
    for (let rest = index; rest > 0; rest = Math.floor(rest / base)) {
      share /= base;
      sum += share * (rest % base);
    }
    return sum;
  };
  return Array.from(
    { length: count },
    (_, index): Pair => [
      left + (right - left) * halton(index + 1, 2),
      top + (bottom - top) * halton(index + 1, 3),
    ],
  );
}

type Check = { readonly looked: number; readonly wrong: readonly string[] };

/** Whether at each spot the face painted last is the nearest one, as far as paper goes. */
function checkNearest(sheet: PaperSheet, done: number, look: Look, faces: readonly Painted[]): Check {
  const panels = seenPanels(sheet, done, look);
  const wrong: string[] = [];
  let looked = 0;
  for (const spot of spots(faces, 40)) {
    const inside = panels.map(({ polygon }) => depthInside(spot, polygon));
    if (inside.some((depth) => Math.abs(depth) < EDGE)) continue;
    looked += 1;
    const covering = panels.filter((_, index) => (inside[index] ?? 0) > 0);
    const nearest = Math.max(...covering.map(({ nearness }) => nearness(spot)));
    const top = faces.findLast(({ points }) => depthInside(spot, points) > 0);
    const shown = top && panels[top.panel];
    // Panels that lie on one another are stacked by rule; they may lie a little this side or that of one another, and
    // what lies a little behind is seen far behind where it is not looked at squarely.
    const allowed = sheet.near / Math.max(0.05, shown?.cosine ?? 1);
    const right =
      covering.length === 0
        ? top === undefined
        : shown !== undefined && nearest - shown.nearness(spot) <= allowed;
    if (!right) wrong.push(`${done} ${look.turn}/${look.tilt} at ${spot}: panel ${top?.panel}`);
  }
  return { looked, wrong };
}

const looks = fc.record({
  turn: fc.integer({ min: -180, max: 180 }),
  tilt: fc.integer({ min: -90, max: 90 }),
});

describe.each(SHAPES)('the picture of the %s', (_, edition) => {
  it('shows the nearest panel everywhere, from wherever and however far it is folded', () => {
    let looked = 0;
    for (const { sheet, steps } of twofolds(edition)) {
      const [first, last] = steps;
      const anywhere = fc.double({ min: first, max: last, noNaN: true });
      fc.assert(
        fc.property(fc.oneof(anywhere, fc.integer({ min: first, max: last })), looks, (done, look) => {
          const check = checkNearest(sheet, done, look, painted(sheet, done, look));
          looked += check.looked;
          expect(check.wrong).toEqual([]);
        }),
        { seed: 2024, numRuns: 30 },
      );
    }
    expect(looked).toBeGreaterThan(300);
  });
});

describe('the comparison', () => {
  it('would notice two faces painted in the wrong order', () => {
    const [keeper] = twofolds(editionOf(KEEPER));
    if (!keeper) throw new Error('no keeper');
    const backwards = painted(keeper.sheet, 6, USUAL_LOOK).toReversed();
    expect(checkNearest(keeper.sheet, 6, USUAL_LOOK, backwards).wrong.length).toBeGreaterThan(10);
  });
});

describe('paper that passes through paper', () => {
  // A square of 20 mm, and another that stands on edge across its middle, from 10 mm behind it to 10 mm before it.
  // Turned by 30°, what stands 5 mm before or behind comes to 5 · sin 30° = 2.5 mm right or left of the middle.
  const square = [-10, -10, 10, -10, 10, 10, -10, 10];
  const [x, y, z]: readonly [Point3, Point3, Point3] = [
    { x: 1, y: 0, z: 0 },
    { x: 0, y: 1, z: 0 },
    { x: 0, y: 0, z: 1 },
  ];
  const sheet: PaperSheet = {
    rest: { right: x, up: y, outside: z, origin: { x: 0, y: 0, z: 0 } },
    near: 0.5,
    panels: [
      { outline: square },
      { outline: square, hinge: { on: 0, line: [0, -10, 0, 10], angle: 90, step: 0 } },
    ],
    layers: [],
    stacked: [],
    outside: '#ffffff',
    inside: '#ffffff',
  };

  it('is seen before it and hidden behind it, worked by hand', () => {
    const faces = painted(sheet, 1, { turn: 30, tilt: 0 });
    const topAt = (x: number): number | undefined =>
      faces.findLast(({ points }) => depthInside([x, 0], points) > 0)?.panel;
    expect([-7, -2.5, 2.5, 7].map(topAt)).toEqual([0, 0, 1, 0]);
    // Where it was cut is no edge of the paper.
    expect(faces.map(({ sides }) => sides.filter((side) => !side).length).sort()).toEqual([0, 1, 1]);
  });
});

describe('layers', () => {
  const layered = editionOf(KEEPER, 'front: { stock: moss, cut: 3 1/4 x 4 1/2, on: box.front }');
  const [keeper] = twofolds(layered);
  const levelAt = (look: Look, done: number): number | undefined => {
    if (!keeper) throw new Error('no keeper');
    const faces = painted(keeper.sheet, done, look);
    const middle = lookedAt([69.85, -85.725, 0], look);
    return faces.findLast(({ points }) => depthInside([middle[0], -middle[1]], points) > 0)?.level;
  };

  it('are seen from outside and hidden from inside', () => {
    for (const done of [0, 3, 6]) expect(levelAt({ turn: 0, tilt: 0 }, done)).toBe(1);
    expect(levelAt({ turn: 180, tilt: 0 }, 0)).toBe(0);
  });

  // Folded shut, the two leaves of a gate-fold card lie side by side; a seal on one reaches over the other.
  it('that reach past their panel lie over the panel beside it', () => {
    const seal = 'seal: { stock: moss, cut: 2 x 2, on: box.left, at: { left: 1 1/2 }, overhang: yes }';
    const [card] = twofolds(editionOf('\n  form: gate-fold card\n  size: 5 x 7', seal));
    if (!card) throw new Error('no card');
    for (const turn of [-40, 0, 40]) {
      const faces = painted(card.sheet, 1, { turn, tilt: 20 });
      const whole = faces.filter(({ level }) => level === 1);
      expect(whole).toHaveLength(1);
      const at = spots(whole, 60).filter((spot) => depthInside(spot, whole[0]?.points ?? []) > EDGE);
      const tops = at.map((spot) => faces.findLast(({ points }) => depthInside(spot, points) > 0));
      expect(new Set(tops.map((top) => top?.level))).toEqual(new Set([1]));
      const others = at.filter((spot) =>
        faces.some(
          ({ level, panel, points }) =>
            level === 0 && card.ids[panel] === 'right' && depthInside(spot, points) > 0,
        ),
      );
      expect(others.length).toBeGreaterThan(10);
    }
  });
});
