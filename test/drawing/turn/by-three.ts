import { Matrix4, Object3D, Vector3 } from 'three';
import type { PaperPanel, PaperSheet } from '../../../src/shape/paint/paper-sheet.ts';
import type { Pose } from '../../../src/shape/paint/pose.ts';
import type { Pair, Triple } from './paper.ts';

type Hung = { readonly object: Object3D; readonly origin: Pair };

/**
 * Where every corner of a sheet comes to when three.js replays the model's tree of hinges: each panel an object hung on
 * its parent at its fold, its own zero at the fold's first end.
 */
export function replayedByThree({ rest, panels }: PaperSheet, done: number): readonly (readonly Triple[])[] {
  const hung: Hung[] = [];
  for (const panel of panels) hung.push(hang(panel, hung, done));
  for (const { object } of hung.filter((_, index) => !panels[index]?.hinge)) object.updateMatrixWorld(true);
  return panels.map(({ outline }, index) =>
    pairs(outline).map(([x, y]) => resting(rest, worldPoint(hung[index], x, y))),
  );
}

function hang({ hinge }: PaperPanel, hung: readonly Hung[], done: number): Hung {
  const object = new Object3D();
  if (!hinge) return { object, origin: [0, 0] };
  const [fromX, fromY, toX, toY] = hinge.line;
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
function resting({ right, up, outside }: Pose, [x, y, z]: Triple): Triple {
  const along = (axis: 'x' | 'y' | 'z'): number => right[axis] * x + up[axis] * y + outside[axis] * z;
  return [along('x'), along('y'), along('z')];
}

/** Coordinates that alternate in one list. */
function pairs(numbers: readonly number[]): Pair[] {
  return numbers.flatMap((x, index): Pair[] =>
    index % 2 === 0 ? [[x, numbers[index + 1] ?? Number.NaN]] : [],
  );
}
