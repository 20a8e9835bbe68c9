import { difference, intersection, union } from 'polyclip-ts';
import type { Mate, Net } from '../../../src/shape/net.ts';
import {
  between,
  bounds,
  cross,
  distance,
  dot,
  minus,
  type Point3,
  scaled,
  unit,
} from '../../../src/shape/space.ts';
import { foldedByThree } from '../../shape/three-fold.ts';

/** What paper forgives, in millimeters: two thicknesses of cardstock and a little give. */
const GIVE = 0.6;

/** The least glue that holds, a quarter inch, in millimeters. Common practice, no source. */
const LEAST_GLUE = 6.35;

/**
 * A second opinion on a folded net, for what the proof lets pass: corners by three.js, areas by polyclip-ts, and none of
 * the proof's own folding. Lengths in millimeters.
 */
export class SecondOpinion {
  readonly #net: Net;
  readonly #corners: ReadonlyMap<string, readonly Point3[]>;
  readonly #covered = new Map<string, number>();
  readonly #touching = new Map<string, boolean>();

  constructor(net: Net) {
    this.#net = net;
    this.#corners = foldedByThree(net, net.panels[0]?.id ?? '');
  }

  /** Whatever keeps it from being folded and glued. */
  flaws(): string[] {
    return [...this.#glueThatMisses(), ...this.#crossings()];
  }

  /** Every glue area that does not lie on its mate, over a quarter inch both ways at least. */
  #glueThatMisses(): string[] {
    return this.#net.glue.flatMap(({ from, to }) => {
      if (!this.#liesOn(from, to)) return [`${from} lies off ${to}`];
      const shared = intersection(this.#flat(from, from), this.#flat(to, from)).flat(2);
      const by = narrowest(shared);
      return by < LEAST_GLUE - 0.01 ? [`${from} meets ${to} by ${by} mm`] : [];
    });
  }

  /** Every panel that an edge of another goes through. */
  #crossings(): string[] {
    const ids = [...this.#corners.keys()];
    return ids.flatMap((id) =>
      ids
        .filter((other) => other !== id && !this.#areJoined(id, other))
        .filter((other) => edgesOf(this.#of(id)).some((edge) => this.#pierces(edge, other)))
        .map((other) => `${id} goes through ${other}`),
    );
  }

  /**
   * Glue that no order of what lies in its plane brings together: for every order, something lies between two that are
   * glued, wherever they meet over a quarter inch.
   */
  glueThatNoOrderJoins(): string[] {
    return this.stacks().flatMap((stack) => {
      const glued = this.#net.glue.filter(({ from, to }) => stack.includes(from) && stack.includes(to));
      const ways = orders(stack.filter((id) => glued.some(({ from, to }) => from === id || to === id)));
      const joins = (order: readonly string[]): boolean => glued.every((mate) => this.#meets(mate, order));
      return ways.some(joins) ? [] : [`${stack.join(', ')} can lie in no order`];
    });
  }

  /** Whether two panels that are glued touch over a quarter inch both ways, with those between them in an order. */
  #meets({ from, to }: Mate, order: readonly string[]): boolean {
    const [first = 0, last = 0] = [order.indexOf(from), order.indexOf(to)].toSorted((a, b) => a - b);
    const between = order.slice(first + 1, last);
    const key = `${from} ${to} ${between.toSorted().join(' ')}`;
    const known = this.#touching.get(key);
    if (known !== undefined) return known;
    const shared = intersection(this.#flat(from, from), this.#flat(to, from));
    const free = shared.length > 0 ? difference(shared, ...between.map((id) => this.#flat(id, from))) : [];
    const touches = free.some((part) => narrowest(part.flat()) > LEAST_GLUE - 0.01);
    this.#touching.set(key, touches);
    return touches;
  }

  /** How much of a panel lies on another, in square millimeters. */
  areaOn(id: string, other: string): number {
    return this.#liesOn(id, other) ? areaOf(intersection(this.#flat(id, id), this.#flat(other, id))) : 0;
  }

  /** How much of a panel lies outside another: all of it where it does not lie on it. */
  areaBeside(id: string, other: string): number {
    return areaOf([this.#flat(id, id)]) - this.areaOn(id, other);
  }

  /** What some panels cover together of the plane of the first, in square millimeters. */
  areaCovered(panels: readonly string[]): number {
    const key = panels.join(' ');
    const [first = '', ...others] = panels;
    const flats = (): Ring[][] => others.map((each) => this.#flat(each, first));
    const area = this.#covered.get(key) ?? areaOf(union(this.#flat(first, first), ...flats()));
    this.#covered.set(key, area);
    return area;
  }

  /** The panels that lie in one plane, for each plane with several. */
  stacks(): string[][] {
    const left = new Set(this.#corners.keys());
    return [...left].flatMap((id) => {
      if (!left.has(id)) return [];
      const stack = [...left].filter((other) => this.#liesOn(other, id));
      for (const each of stack) left.delete(each);
      return stack.length > 1 ? [stack] : [];
    });
  }

  /** Width, height and depth of the whole, its first panel lying before the reader. */
  extent(): readonly number[] {
    const { least, most } = bounds([...this.#corners.values()].flat());
    return [most.x - least.x, most.y - least.y, most.z - least.z];
  }

  #of(id: string): readonly Point3[] {
    const corners = this.#corners.get(id);
    if (!corners) throw new Error(`the net has no panel ${id}`);
    return corners;
  }

  #areJoined(id: string, other: string): boolean {
    return this.#net.folds.some(({ panels }) => panels.includes(id) && panels.includes(other));
  }

  #liesOn(id: string, other: string): boolean {
    const axes = axesOf(this.#of(other));
    return this.#of(id).every((corner) => Math.abs(onAxes(axes, corner).up) < GIVE);
  }

  /** A panel's outline on the plane of another. */
  #flat(id: string, on: string): Ring[] {
    const axes = axesOf(this.#of(on));
    return [
      this.#of(id).map((corner): Flat => {
        const { x, y } = onAxes(axes, corner);
        return [rounded(x), rounded(y)];
      }),
    ];
  }

  #pierces([from, to]: readonly [Point3, Point3], face: string): boolean {
    const axes = axesOf(this.#of(face));
    const [here, there] = [onAxes(axes, from).up, onAxes(axes, to).up];
    if (here * there >= 0 || Math.min(Math.abs(here), Math.abs(there)) < GIVE) return false;
    const { x, y } = onAxes(axes, between(from, to, here / (here - there)));
    return isWellWithin([x, y], this.#flat(face, face)[0] ?? []);
  }
}

type Flat = [number, number];
type Ring = Flat[];
type Axes = {
  readonly origin: Point3;
  readonly across: Point3;
  readonly down: Point3;
  readonly normal: Point3;
};

/** A panel's own axes: its first edge, and square to it towards the corner that lies farthest off. */
function axesOf(corners: readonly Point3[]): Axes {
  const [origin, next] = corners;
  if (!origin || !next) throw new Error('a panel without corners');
  const across = unit(minus(next, origin));
  const ways = corners.map((corner) => {
    const way = minus(corner, origin);
    return minus(way, scaled(across, dot(way, across)));
  });
  const down = unit(ways.reduce((best, way) => (dot(way, way) > dot(best, best) ? way : best)));
  return { origin, across, down, normal: cross(across, down) };
}

function onAxes({ origin, across, down, normal }: Axes, point: Point3): Record<'x' | 'y' | 'up', number> {
  const way = minus(point, origin);
  return { x: dot(way, across), y: dot(way, down), up: dot(way, normal) };
}

/** To a tenth of a micron: polyclip-ts finds no ring through points that differ by what floating-point numbers are off. */
function rounded(value: number): number {
  return Math.round(value * 10_000) / 10_000;
}

/** Inside, and farther from every edge than paper gives. */
function isWellWithin([x, y]: Flat, ring: readonly Flat[]): boolean {
  let isInside = false;
  for (const [[ax, ay], [bx, by]] of edgesOf(ring)) {
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) isInside = !isInside;
    const [a, b] = [
      { x: ax, y: ay, z: 0 },
      { x: bx, y: by, z: 0 },
    ];
    const share = ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / distance(a, b) ** 2;
    const nearest = between(a, b, Math.max(0, Math.min(1, share)));
    if (distance(nearest, { x, y, z: 0 }) < GIVE) return false;
  }
  return isInside;
}

function edgesOf<P>(points: readonly P[]): (readonly [P, P])[] {
  return points.map((point, index) => [point, points[(index + 1) % points.length] ?? point]);
}

/** By the shoelace formula; what has a hole is its outer ring less the holes. */
function areaOf(shapes: readonly (readonly Ring[])[]): number {
  const ofRing = (ring: Ring): number =>
    Math.abs(edgesOf(ring).reduce((sum, [[ax, ay], [bx, by]]) => sum + ax * by - bx * ay, 0)) / 2;
  const ofShape = ([outer = [], ...holes]: readonly Ring[]): number =>
    holes.reduce((sum, hole) => sum - ofRing(hole), ofRing(outer));
  return shapes.reduce((sum, shape) => sum + ofShape(shape), 0);
}

/** The lesser of what some points spread either way. */
function narrowest(points: readonly Flat[]): number {
  return Math.min(spread(points.map(([x]) => x)), spread(points.map(([, y]) => y)));
}

/** Every order of some things. */
function orders(things: readonly string[]): string[][] {
  if (things.length < 2) return [[...things]];
  return things.flatMap((first) =>
    orders(things.filter((each) => each !== first)).map((rest) => [first, ...rest]),
  );
}

function spread(values: readonly number[]): number {
  return values.length > 0 ? Math.max(...values) - Math.min(...values) : 0;
}
