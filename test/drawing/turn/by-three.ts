import { Matrix4, Object3D, Vector3 } from 'three';
import type { TurnPanel, TurnSheet } from '../../../src/drawing/turn/model.ts';
import type { Pair, Triple } from './paper.ts';

type Hung = { readonly object: Object3D; readonly origin: Pair };

/**
 * Where every corner of a sheet comes to when three.js replays the model's tree of hinges: each panel an object hung on
 * its parent at its fold, its own zero at the fold's first end.
 */
export function replayedByThree({ rest, panels }: TurnSheet, done: number): readonly (readonly Triple[])[] {
  const hung: Hung[] = [];
  for (const panel of panels) hung.push(hang(panel, hung, done));
  for (const { object } of hung.filter((_, index) => !panels[index]?.hinge)) object.updateMatrixWorld(true);
  return panels.map(({ outline }, index) =>
    pairs(outline).map(([x, y]) => resting(rest, worldPoint(hung[index], x, y))),
  );
}

function hang({ hinge }: TurnPanel, hung: readonly Hung[], done: number): Hung {
  const object = new Object3D();
  if (!hinge) return { object, origin: [0, 0] };
  const [fromX = 0, fromY = 0, toX = 0, toY = 0] = hinge.line;
  const parent = hung[hinge.on];
  if (!parent) throw new Error('a panel comes before the one it hangs on');
  object.position.set(fromX - parent.origin[0], fromY - parent.origin[1], 0);
  const share = hinge.step === undefined ? 0 : Math.min(1, Math.max(0, done - hinge.step));
  const axis = new Vector3(toX - fromX, toY - fromY, 0).normalize();
  object.rotateOnAxis(axis, (hinge.angle * share * Math.PI) / 180);
  parent.object.add(object);
  return { object, origin: [fromX, fromY] };
}

function worldPoint(place: Hung | undefined, x: number, y: number): Triple {
  const [left, up] = place?.origin ?? [0, 0];
  const point = new Vector3(x - left, y - up, 0).applyMatrix4(place?.object.matrixWorld ?? new Matrix4());
  return [point.x, point.y, point.z];
}

/** Three directions as the columns of a matrix. */
function resting(rest: readonly number[], [x, y, z]: Triple): Triple {
  const along = (axis: number): number =>
    (rest[axis] ?? 0) * x + (rest[axis + 3] ?? 0) * y + (rest[axis + 6] ?? 0) * z;
  return [along(0), along(1), along(2)];
}

/** Coordinates that alternate in one list. */
function pairs(numbers: readonly number[]): Pair[] {
  return numbers.flatMap((x, index): Pair[] =>
    index % 2 === 0 ? [[x, numbers[index + 1] ?? Number.NaN]] : [],
  );
}
