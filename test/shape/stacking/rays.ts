import {
  BufferGeometry,
  DoubleSide,
  Mesh,
  MeshBasicMaterial,
  Raycaster,
  ShapeUtils,
  Vector2,
  Vector3,
} from 'three';
import type { FlatPoint, Fold, Net } from '../../../src/shape/net.ts';
import { cross, dot, minus, type Point3, plus, scaled, unit } from '../../../src/shape/space.ts';
import { foldedByThree } from '../three-fold.ts';

type Flat = { readonly x: number; readonly y: number };

/** Degrees between two panels that lie on one another at most; a wall beside a flap is none of them. */
const ALIKE = 12;

/**
 * A net folded by three.js, with its panels as meshes to shoot rays at. Nothing of it comes from our own folding, our
 * overlaps or our stacking.
 */
export class RaysOnPaper {
  readonly #net: Net;
  readonly #corners: ReadonlyMap<string, readonly Point3[]>;
  readonly #meshes: Mesh[];
  readonly #caster = new Raycaster();

  constructor(net: Net, progress: (fold: Fold) => number) {
    this.#net = net;
    this.#corners = foldedByThree(net, net.panels[0]?.id ?? '', progress);
    this.#meshes = net.panels.map(({ id, outline }) => meshOf(id, outline.map(flat), this.#cornersOf(id)));
  }

  /** Spots spread evenly over a panel, some way in from its edges, in millimeters on the sheet, y up. */
  spotsOn(panel: string, inset: number): Flat[] {
    const outline = this.#outlineOf(panel);
    const [xs, ys] = [outline.map(({ x }) => x), outline.map(({ y }) => y)];
    const [left, low] = [Math.min(...xs), Math.min(...ys)];
    const [wide, high] = [Math.max(...xs) - left, Math.max(...ys) - low];
    return Array.from({ length: SPOTS }, (_, index) => ({
      x: left + wide * fraction(index * GOLDEN),
      y: low + (high * (index + 0.5)) / SPOTS,
    })).filter((spot) => contains(outline, spot) && distanceToEdges(outline, spot) > inset);
  }

  /**
   * The panels a ray meets that starts on a panel, straight up from its outside or its inside, the nearest first: those
   * that lie about along it, no farther than `far` millimeters.
   */
  metFrom(panel: string, spot: Flat, face: 'outside' | 'inside', far: number): string[] {
    const up = scaled(this.#outsideOf(panel), face === 'outside' ? 1 : -1);
    const from = this.place(panel, spot);
    return this.#shoot(from, up)
      .filter(({ distance, object }) => distance <= far && object.name !== panel)
      .filter(({ object }) => this.#isAlike(panel, object.name))
      .map(({ object }) => object.name);
  }

  /** Where a spot of the sheet has come to, as part of a panel. */
  place(panel: string, spot: Flat): Point3 {
    const { origin, right, up, at } = this.#axesOf(panel);
    return plus(origin, plus(scaled(right, spot.x - at.x), scaled(up, spot.y - at.y)));
  }

  /** The spot of the sheet that has come to a place, as part of a panel. */
  spotAt(panel: string, place: Point3): Flat {
    const { origin, right, up, at } = this.#axesOf(panel);
    const from = minus(place, origin);
    return { x: at.x + dot(from, right), y: at.y + dot(from, up) };
  }

  isOn(panel: string, spot: Flat): boolean {
    return contains(this.#outlineOf(panel), spot);
  }

  #shoot(from: Point3, ray: Point3): { distance: number; object: Mesh }[] {
    this.#caster.set(new Vector3(from.x, from.y, from.z), new Vector3(ray.x, ray.y, ray.z));
    return this.#caster.intersectObjects(this.#meshes, false);
  }

  #isAlike(first: string, second: string): boolean {
    const cosine = Math.abs(dot(this.#outsideOf(first), this.#outsideOf(second)));
    return cosine > Math.cos((ALIKE * Math.PI) / 180);
  }

  #outsideOf(panel: string): Point3 {
    const { right, up } = this.#axesOf(panel);
    return cross(right, up);
  }

  /** Three corners of a panel tell where its sheet's right and up have come to. */
  #axesOf(panel: string): { origin: Point3; right: Point3; up: Point3; at: Flat } {
    const [outline, corners] = [this.#outlineOf(panel), this.#cornersOf(panel)];
    const [at, origin] = [outline[0], corners[0]];
    const second = outline.findIndex((point) => at && Math.hypot(point.x - at.x, point.y - at.y) > 1);
    const [to, there] = [outline[second], corners[second]];
    const third = outline.findIndex((point) => at && to && Math.abs(turn(at, to, point)) > 1);
    const [off, beyond] = [outline[third], corners[third]];
    if (!at || !origin || !to || !there || !off || !beyond) throw new Error(`${panel} has no corners`);
    const [dx, dy] = [to.x - at.x, to.y - at.y];
    const long = Math.hypot(dx, dy);
    const along = unit(minus(there, origin));
    const way = minus(beyond, origin);
    const beside = unit(minus(way, scaled(along, dot(way, along))));
    const left = scaled(beside, Math.sign(turn(at, to, off)));
    return {
      origin,
      at,
      right: plus(scaled(along, dx / long), scaled(left, -dy / long)),
      up: plus(scaled(along, dy / long), scaled(left, dx / long)),
    };
  }

  #outlineOf(panel: string): Flat[] {
    return this.#net.panels.find(({ id }) => id === panel)?.outline.map(flat) ?? [];
  }

  #cornersOf(panel: string): readonly Point3[] {
    return this.#corners.get(panel) ?? [];
  }
}

const SPOTS = 300;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

export function flat({ x, y }: FlatPoint): Flat {
  return { x: x.mm, y: -y.mm };
}

function fraction(value: number): number {
  return value - Math.floor(value);
}

function meshOf(name: string, outline: readonly Flat[], corners: readonly Point3[]): Mesh {
  const faces = ShapeUtils.triangulateShape(
    outline.map(({ x, y }) => new Vector2(x, y)),
    [],
  );
  const points = corners.map(({ x, y, z }) => new Vector3(x, y, z));
  const geometry = new BufferGeometry().setFromPoints(points).setIndex(faces.flat());
  const mesh = new Mesh(geometry, new MeshBasicMaterial({ side: DoubleSide }));
  mesh.name = name;
  return mesh;
}

/** Twice the area of a triangle, positive when it turns left. */
function turn(a: Flat, b: Flat, c: Flat): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

/** Whether a spot lies within an outline: a line to the right crosses it an odd number of times. */
export function contains(outline: readonly Flat[], { x, y }: Flat): boolean {
  let inside = false;
  for (const [index, a] of outline.entries()) {
    const b = outline[(index + 1) % outline.length] ?? a;
    if (a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside;
  }
  return inside;
}

export function distanceToEdges(outline: readonly Flat[], { x, y }: Flat): number {
  return Math.min(
    ...outline.map((a, index) => {
      const b = outline[(index + 1) % outline.length] ?? a;
      const [dx, dy] = [b.x - a.x, b.y - a.y];
      const share = Math.min(1, Math.max(0, ((x - a.x) * dx + (y - a.y) * dy) / (dx ** 2 + dy ** 2 || 1)));
      return Math.hypot(x - a.x - share * dx, y - a.y - share * dy);
    }),
  );
}
