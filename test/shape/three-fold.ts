import { Matrix4, Object3D, Vector3 } from 'three';
import type { FoldProgress } from '../../src/shape/fold.ts';
import type { FoldedShape } from '../../src/shape/folded-shape.ts';
import type { FlatPoint, Fold, Net } from '../../src/shape/net.ts';
import type { Point3 } from '../../src/shape/space.ts';

/**
 * The corners of every panel of a net as three.js puts them: panels as objects hung on one another at their hinges,
 * turned about their own axes. Built from the net alone, without any of our matrices. Held at `base`, which does not
 * move from where it lies flat.
 */
export function foldedByThree(net: Net, base: string, progress: FoldProgress = 1): Map<string, Point3[]> {
  const hung = new Map<string, Hung>([[base, { object: new Object3D(), origin: { x: 0, y: 0 } }]]);
  const root = hung.get(base)?.object ?? new Object3D();
  for (const waiting = [base]; waiting.length > 0; ) {
    const parent = waiting.shift() ?? base;
    for (const fold of net.folds) {
      const child = fold.panels.find((id) => id !== parent);
      if (!fold.panels.includes(parent) || child === undefined || hung.has(child)) continue;
      hung.set(child, hang(net, fold, child, hung.get(parent), progress));
      waiting.push(child);
    }
  }
  root.updateMatrixWorld(true);
  return new Map(
    net.panels.map(({ id, outline }) => {
      const place = hung.get(id);
      return [id, outline.map((corner) => worldPoint(place, corner))];
    }),
  );
}

type Flat = { readonly x: number; readonly y: number };
type Hung = { readonly object: Object3D; readonly origin: Flat };

const flat = ({ x, y }: FlatPoint): Flat => ({ x: x.mm, y: -y.mm });

/** Hangs a panel on its parent at the middle of the fold; `origin` is where the panel's own zero lies on the sheet. */
function hang(net: Net, fold: Fold, child: string, parent: Hung | undefined, progress: FoldProgress): Hung {
  const [from, to] = [flat(fold.from), flat(fold.to)];
  const origin = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const object = new Object3D();
  const up = parent?.origin ?? { x: 0, y: 0 };
  object.position.set(origin.x - up.x, origin.y - up.y, 0);
  const outline = net.panels.find(({ id }) => id === child)?.outline.map(flat) ?? [];
  const middle = {
    x: outline.reduce((sum, { x }) => sum + x, 0) / outline.length - origin.x,
    y: outline.reduce((sum, { y }) => sum + y, 0) / outline.length - origin.y,
  };
  // Turning about this axis by a positive angle takes what lies towards the middle away from the reader.
  const along = { x: to.x - from.x, y: to.y - from.y };
  const sense = along.x * middle.y - along.y * middle.x > 0 ? -1 : 1;
  const share = typeof progress === 'number' ? progress : progress(fold);
  const signed = fold.direction === 'valley' ? -fold.angle : fold.angle;
  const axis = new Vector3(along.x * sense, along.y * sense, 0).normalize();
  object.rotateOnAxis(axis, (signed * share * Math.PI) / 180);
  parent?.object.add(object);
  return { object, origin };
}

function worldPoint(place: Hung | undefined, corner: FlatPoint): Point3 {
  const { x, y } = flat(corner);
  const origin = place?.origin ?? { x: 0, y: 0 };
  const point = new Vector3(x - origin.x, y - origin.y, 0).applyMatrix4(
    place?.object.matrixWorld ?? new Matrix4(),
  );
  return { x: point.x, y: point.y, z: point.z };
}

/** The greatest distance between two sets of corners, once ours are held as three.js holds them. */
export function greatestDifference(
  ours: FoldedShape,
  theirs: ReadonlyMap<string, readonly Point3[]>,
): number {
  return Math.max(
    ...[...ours.panels].flatMap(([id, { corners }]) =>
      corners.map((corner, index) => {
        const other = theirs.get(id)?.[index] ?? { x: Number.NaN, y: 0, z: 0 };
        return Math.hypot(corner.x - other.x, corner.y - other.y, corner.z - other.z);
      }),
    ),
  );
}
