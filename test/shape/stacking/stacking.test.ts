import { describe, expect, it } from 'vitest';
import type { Fold, Net } from '../../../src/shape/net.ts';
import { stackOf } from '../../../src/shape/stacking/folding.ts';
import { glueAreas } from '../../../src/shape/stacking/glue-areas.ts';
import { tubesOf } from '../../../src/shape/tube.ts';
import { FORM_NETS } from './known-nets.ts';
import { contains, distanceToEdges, flat, RaysOnPaper } from './rays.ts';

/** 80 lb cover, in millimeters. */
const CALIPER = 0.24;

/**
 * What no small angle shows, since the parts slide along one another; the second lies on the inner side of the first.
 * By hand, once for each: a tab is glued inside, by what the word means, and a flap is tucked in.
 */
const BY_HAND: readonly (readonly [RegExp, outer: string, inner: string])[] = [
  [/clip-top/u, 'left', 'tab'],
  [/tuck-end/u, 'left', 'tab'],
  [/gusseted/u, 'back', 'tab'],
  [/slide box \(sheet 2\)/u, 'bottom', 'tab'],
  [/belly band height: 2/u, 'back', 'tab'],
  [/gable/u, 'front', 'tab'],
  [/polygon box(?: lid: 1)?$/u, 'wall-5', 'tab'],
  [/polygon.*\(sheet 2\)/u, 'lid-wall-5', 'lid-tab'],
  // A lid is closed with its flap behind the wall it meets: that is what holds it.
  [/tuck-end/u, 'front', 'lid-tuck'],
  [/tuck-end box$/u, 'front', 'bottom-tuck'],
  [/reverse/u, 'back', 'bottom-tuck'],
  // Each flange stands on its own half of the top; seen from the front one, the other is towards the back.
  [/clip-top/u, 'front-flange', 'back-flange'],
];

/**
 * A folding that stops short of its end: what is folded early by next to nothing, what is folded late by more, so that
 * it lies farther off whatever it is folded over. In a flat tube, whose folds are one stage, the tab is pressed first.
 */
function notQuite(net: Net): (fold: Fold) => number {
  const last = Math.max(...net.folds.map(({ stage = 1 }) => stage));
  const isTab = (id: string): boolean => tubesOf(net).some(({ tab }) => tab === id);
  return ({ angle, direction, stage = 1, panels }) => {
    if (angle === 0 || direction === 'flat') return 0;
    const early = panels.some(isTab) ? 0 : stage;
    const walls = angle < 170 && stage === 1;
    return walls ? 1 : 1 - (LAST * 6 ** (early - last)) / angle;
  };
}

/** How much, in degrees, the last stage falls short; the one before it a sixth of that, and so on. */
const LAST = 3;

/** How far a ray looks, in millimeters. */
const FAR = 8;
/** Millimeters from an edge: beside a fold all panels touch. */
const INSET = 4;

describe.each(FORM_NETS)('the stack of a %s', (name, net) => {
  const { sides } = stackOf(net, CALIPER);
  const ids = net.panels.map(({ id }) => id);
  const hand = BY_HAND.filter(([form]) => form.test(name)).map(([, outer, inner]) => [outer, inner] as const);

  it('is what rays meet when three.js has folded it not quite', () => {
    const rays = new RaysOnPaper(net, notQuite(net));
    const differing = ids.flatMap((id) =>
      ids.flatMap((other) => {
        if (id === other || hand.some((pair) => pair.includes(id) && pair.includes(other))) return [];
        const spots = rays.spotsOn(id, INSET);
        const count = (face: 'outside' | 'inside'): number =>
          spots.filter((spot) => rays.metFrom(id, spot, face, FAR).includes(other)).length;
        const [outside, inside] = [count('outside'), count('inside')];
        const seen = outside + inside === 0 ? undefined : outside > inside ? 1 : -1;
        // Near the fold of what is folded late, what was folded early stands off more.
        const isClear = Math.min(outside, inside) <= 0.2 * (outside + inside);
        return isClear && sides.of(id, other) === seen
          ? []
          : [`${other} on ${id}: ${outside} out, ${inside} in, ${sides.of(id, other)}`];
      }),
    );
    expect(differing).toEqual([]);
  });

  it('has what slides in where the hand puts it', () => {
    for (const [outer, inner] of hand) expect(sides.of(outer, inner), `${inner} in ${outer}`).toBe(-1);
  });

  it('is the same seen from either of two panels', () => {
    for (const id of ids) for (const other of sides.on(id)) expect(sides.of(other, id)).toBeDefined();
  });
});

describe.each(FORM_NETS.filter(([, { glue }]) => glue.length > 0))('the glue of a %s', (_, net) => {
  const areas = glueAreas(net, CALIPER);
  const exact = new RaysOnPaper(net, ({ direction }) => (direction === 'flat' ? 0 : 1));

  it('is on every area that is glued', () => {
    expect(areas.map(({ mate }) => mate)).toEqual(net.glue);
  });

  it('covers the spots that meet their mate, and no others, on both faces', () => {
    for (const { from, to, between } of areas) {
      const spots = exact.spotsOn(from.panel, 0.1);
      expect(spots.length).toBeGreaterThan(50);
      expect(between).toEqual([]);
      for (const spot of spots) {
        const there = exact.spotAt(to.panel, exact.place(from.panel, spot));
        const [here, mate] = [from.areas, to.areas].map((each) => each.map((area) => area.map(flat)));
        // Within a hundredth of a millimeter of an edge either answer is right.
        const isClose = [...(here ?? [])].some((area) => distanceToEdges(area, spot) < 0.01);
        if (isClose) continue;
        const meets = exact.isOn(to.panel, there);
        expect(
          here?.some((area) => contains(area, spot)),
          `${from.panel} at ${spot.x} ${spot.y}`,
        ).toBe(meets);
        expect(
          mate?.some((area) => contains(area, there)),
          `${to.panel} at ${there.x} ${there.y}`,
        ).toBe(meets);
      }
    }
  });

  it('is on the faces that look at each other', () => {
    const rays = new RaysOnPaper(net, notQuite(net));
    const slid = BY_HAND.map(([, outer, inner]) => `${inner} ${outer}`);
    for (const { from, to } of areas) {
      if (slid.includes(`${from.panel} ${to.panel}`)) continue;
      const other = from.face === 'outside' ? 'inside' : 'outside';
      const spots = rays.spotsOn(from.panel, INSET);
      const met = (face: 'outside' | 'inside'): number =>
        spots.filter((spot) => rays.metFrom(from.panel, spot, face, FAR)[0] === to.panel).length;
      expect(met(from.face), `${from.panel} on ${to.panel}`).toBeGreaterThan(
        0.8 * (met('outside') + met('inside')),
      );
      expect(met(other)).toBeLessThan(0.2 * spots.length);
    }
  });
});
