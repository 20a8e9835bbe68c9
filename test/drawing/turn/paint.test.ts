import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TurnSheet } from '../../../src/drawing/turn/model.ts';
import { axonometric, USUAL_VIEW, type View } from '../../../src/shape/view/axonometric.ts';
import { KEEPER } from '../../shape/boxes.ts';
import {
  editionOf,
  type Painted,
  type Pair,
  pagePaper,
  SHAPES,
  type Triple,
  type Twofold,
  twofolds,
} from './paper.ts';

const paper = pagePaper();

/** Points of a picture this near an edge, in millimetres, are not looked at: there two faces are both right. */
const EDGE = 0.2;

/** Turned about the upright, then tilted about the level: as a hand would, one after the other. */
function lookedAt([x, y, z]: Triple, { turn, tilt }: View): Triple {
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

/** A panel of the proof's folding as it is seen: its corners in the picture, and how near it is to the viewer. */
type Seen = { readonly polygon: readonly Pair[]; readonly nearness: (point: Pair) => number };

function seenPanels({ ids, folded }: Twofold, done: number, view: View, centre: Triple): readonly Seen[] {
  const shape = folded(done);
  return ids.map((id) => {
    const panel = shape.panels.get(id);
    const corners = (panel?.corners ?? []).map(({ x, y, z }) =>
      lookedAt([x - centre[0], y - centre[1], z - centre[2]], view),
    );
    const { x, y, z } = panel?.plane.normal ?? { x: 0, y: 0, z: 1 };
    const normal = lookedAt([x, y, z], view);
    const [cx, cy, cz] = corners[0] ?? [0, 0, 0];
    return {
      polygon: corners.map(([px, py]): Pair => [px, -py]),
      nearness: ([px, py]) => cz - (normal[0] * (px - cx) + normal[1] * (-py - cy)) / normal[2],
    };
  });
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
function checkNearest(
  twofold: Twofold,
  done: number,
  view: View,
  faces: readonly Painted[],
  centre: Triple,
): Check {
  const panels = seenPanels(twofold, done, view, centre);
  const wrong: string[] = [];
  let looked = 0;
  for (const spot of spots(faces, 40)) {
    const inside = panels.map(({ polygon }) => depthInside(spot, polygon));
    if (inside.some((depth) => Math.abs(depth) < EDGE)) continue;
    looked += 1;
    const covering = panels.filter((_, index) => (inside[index] ?? 0) > 0);
    const nearest = Math.max(...covering.map(({ nearness }) => nearness(spot)));
    const top = faces.findLast(({ points }) => depthInside(spot, points) > 0);
    const painted = top && panels[top.panel]?.nearness(spot);
    // Panels that lie on one another are stacked by rule; they may lie a little this side or that of one another.
    const allowed = twofold.sheet.near / Math.max(0.05, cosineOf(twofold, done, view, top?.panel));
    const right =
      covering.length === 0 ? top === undefined : painted !== undefined && nearest - painted <= allowed;
    if (!right) wrong.push(`${done} ${view.turn}/${view.tilt} at ${spot}: panel ${top?.panel}`);
  }
  return { looked, wrong };
}

/** How squarely a panel is looked at: what lies a little behind it is seen far behind it when it is not. */
function cosineOf({ ids, folded }: Twofold, done: number, view: View, panel = 0): number {
  const normal = folded(done).panels.get(ids[panel] ?? '')?.plane.normal ?? { x: 0, y: 0, z: 1 };
  return Math.abs(lookedAt([normal.x, normal.y, normal.z], view)[2]);
}

const views = fc.record({
  turn: fc.integer({ min: -180, max: 180 }),
  tilt: fc.integer({ min: -90, max: 90 }),
});

describe.each(SHAPES)('the picture of the %s', (_, edition) => {
  it('shows the nearest panel everywhere, from wherever and however far it is folded', () => {
    let looked = 0;
    for (const twofold of twofolds(edition)) {
      const [first, last] = twofold.steps;
      const anywhere = fc.double({ min: first, max: last, noNaN: true });
      fc.assert(
        fc.property(fc.oneof(anywhere, fc.integer({ min: first, max: last })), views, (done, view) => {
          const folded = paper.fold(twofold.sheet, done);
          const check = checkNearest(twofold, done, view, paper.paint(folded, view), folded.centre);
          looked += check.looked;
          expect(check.wrong).toEqual([]);
        }),
        { seed: 2024, numRuns: 30 },
      );
    }
    expect(looked).toBeGreaterThan(300);
  });
});

/** The panel painted last at each spot, by its id; nothing where there is none or an edge is near. */
function topmost(
  faces: readonly { readonly id: string; readonly points: readonly Pair[] }[],
  at: readonly Pair[],
): (string | undefined)[] {
  return at.map((spot) => {
    const inside = faces.map(({ points }) => depthInside(spot, points));
    if (inside.some((depth) => Math.abs(depth) < EDGE)) return undefined;
    return faces.findLast((_, index) => (inside[index] ?? 0) > 0)?.id ?? 'paper under it';
  });
}

// The drawing of printed sheets orders faces pair by pair where they overlap, the page's script by a tree of planes:
// two ways that share no code. A bent panel's many strips take the first too long to be compared here.
describe.each(SHAPES.filter(([name]) => name !== 'pillow box'))('the %s on a page', (_, edition) => {
  it('shows what its printed drawing shows, after every step', () => {
    for (const twofold of twofolds(edition)) {
      const { sheet, ids, steps, folded } = twofold;
      for (let done = steps[0]; done <= steps[1]; done += 1) {
        for (const view of [
          USUAL_VIEW,
          { turn: 70, tilt: -20 },
          { turn: 155, tilt: 40 },
          { turn: -100, tilt: 62 },
        ]) {
          const painted = paper.paint(paper.fold(sheet, done), view);
          const drawn = axonometric(folded(done), view);
          const [mine, theirs] = [
            painted.map(({ panel, points }) => ({ id: ids[panel] ?? '', points })),
            drawn.map(({ panel, points }) => ({ id: panel, points: points.map(({ x, y }): Pair => [x, y]) })),
          ];
          const shift = fromTo(mine, theirs);
          const at = spots(painted, 60);
          const there = topmost(
            theirs,
            at.map(([x, y]): Pair => [x + shift[0], y + shift[1]]),
          );
          const here = topmost(mine, at);
          const seen = there.map((id, index) =>
            id === undefined || here[index] === undefined ? undefined : here[index],
          );
          expect(seen.filter(Boolean), `${done}`).toEqual(
            there.filter((_, index) => seen[index] !== undefined),
          );
        }
      }
    }
  });
});

/** The page's picture lies about its own middle: how far it is moved to lie on the other. */
function fromTo(mine: readonly { readonly points: readonly Pair[] }[], theirs: typeof mine): Pair {
  const corner = (faces: typeof mine, axis: 0 | 1): number =>
    Math.min(...faces.flatMap(({ points }) => points.map((point) => point[axis])));
  return [corner(theirs, 0) - corner(mine, 0), corner(theirs, 1) - corner(mine, 1)];
}

describe('the comparison', () => {
  it('would notice two faces painted in the wrong order', () => {
    const [keeper] = twofolds(editionOf(KEEPER));
    if (!keeper) throw new Error('no keeper');
    const folded = paper.fold(keeper.sheet, 6);
    const backwards = paper.paint(folded, USUAL_VIEW).toReversed();
    expect(checkNearest(keeper, 6, USUAL_VIEW, backwards, folded.centre).wrong.length).toBeGreaterThan(10);
  });
});

describe('paper that passes through paper', () => {
  // A square of 20 mm, and another that stands on edge across its middle, from 10 mm behind it to 10 mm before it.
  // Turned by 30°, what stands 5 mm before or behind comes to 5 · sin 30° = 2.5 mm right or left of the middle.
  const square = [-10, -10, 10, -10, 10, 10, -10, 10];
  const sheet: TurnSheet = {
    rest: [1, 0, 0, 0, 1, 0, 0, 0, 1],
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
    const faces = paper.paint(paper.fold(sheet, 1), { turn: 30, tilt: 0 });
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
  const levelAt = (view: View, done: number): number | undefined => {
    if (!keeper) throw new Error('no keeper');
    const folded = paper.fold(keeper.sheet, done);
    const faces = paper.paint(folded, view);
    const middle = lookedAt([69.85 - folded.centre[0], -85.725 - folded.centre[1], -folded.centre[2]], view);
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
      const faces = paper.paint(paper.fold(card.sheet, 1), { turn, tilt: 20 });
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
