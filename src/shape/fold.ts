import { glMatrix, mat4, vec3 } from 'gl-matrix';
import { type Rest, restOf } from './base-panel.ts';
import type { Point2 } from './flat-polygon.ts';
import type { FlatPoint, Fold, Net, Panel } from './net.ts';
import { boxCorners } from './outline.ts';
import { type Joint, otherSide, panelForest } from './panel-tree.ts';
import { cross, dot, minus, type Plane, type Point3 } from './space.ts';
import { signedAngle } from './tube.ts';

// Doubles: a chain of folds in single precision is off by more than the thickness of a line.
glMatrix.setMatrixArrayType(Array);

/** How far each fold is folded, from 0 (flat) to 1 (its full angle): one share for all, or each its own. */
export type Progress = number | ((fold: Fold) => number);

export type FoldOptions = {
  /** Everything folded when absent. */
  readonly at?: Progress;
  /** The paper's thickness in millimetres; 0 when absent. */
  readonly caliper?: number;
  /** The panel that stays put, instead of the one the net suggests. */
  readonly base?: string;
};

/** One panel where it has come to in space. */
export type FoldedPanel = {
  readonly panel: Panel;
  /** The corners of its outline, clockwise as seen from outside. */
  readonly corners: readonly Point3[];
  /** The corners of its box, clockwise from the top left as it lay flat: tapers not taken off. */
  readonly box: readonly Point3[];
  /** Its plane; the normal points to the outside. */
  readonly plane: Plane;
  /** Carries a point of the flat net to where it has come. */
  readonly place: (point: FlatPoint) => Point3;
  /** The same for a point in millimetres from the left and the top. */
  readonly carry: (point: Point2) => Point3;
};

/** A net folded, wholly or in part, standing on a table in front of the viewer (see `space.ts` for the axes). */
export type FoldedShape = {
  /** The net that was folded: the piece's own, or its strips where it has bent panels. */
  readonly net: Net;
  /** Whether its panels are strips that stand for bent ones. */
  readonly bent: boolean;
  readonly base: string;
  readonly caliper: number;
  readonly panels: ReadonlyMap<string, FoldedPanel>;
};

/**
 * Folds a net in space: every panel turned about its folds on the way out from the base, which stays put. Parts that
 * hang on nothing stay where they lay. Folds that close a ring are not followed; `brokenRings` says whether they meet.
 */
export function foldNet(net: Net, options: FoldOptions = {}): FoldedShape {
  const sheet = net.strips ?? net;
  const rest = restOf(sheet);
  const base = options.base ?? rest.base;
  const progress = options.at ?? 1;
  const share = typeof progress === 'number' ? (): number => progress : progress;
  const pose = base === rest.base ? restingPose(sheet, rest) : mat4.create();
  const panels = new Map<string, FoldedPanel>();
  const poses = posesOf(sheet, base, pose, share);
  for (const panel of sheet.panels) panels.set(panel.id, foldedPanel(panel, poses.get(panel.id) ?? pose));
  return { net: sheet, bent: net.strips !== undefined, base, caliper: options.caliper ?? 0, panels };
}

/** The folded panel with this id. @throws Error when there is none. */
export function foldedPanelOf(shape: FoldedShape, id: string): FoldedPanel {
  const panel = shape.panels.get(id);
  if (!panel) throw new Error(`the folded shape has no panel "${id}"`);
  return panel;
}

function posesOf(net: Net, base: string, pose: mat4, share: (fold: Fold) => number): Map<string, mat4> {
  const poses = new Map<string, mat4>();
  for (const tree of panelForest(net, base).trees) {
    poses.set(tree.root, pose);
    for (const joint of tree.joints) {
      const parent = poses.get(joint.parent) ?? pose;
      poses.set(joint.child, mat4.multiply(mat4.create(), parent, turnAbout(net, joint, share(joint.fold))));
    }
  }
  return poses;
}

/** The turn of a joint's child about its fold, in the coordinates of the flat paper. */
function turnAbout(net: Net, { fold, child }: Joint, share: number): mat4 {
  const turn = mat4.create();
  const angle = (signedAngle(fold) * share * Math.PI) / 180;
  if (angle === 0) return turn;
  const from = flat(fold.from);
  const axis = awayFrom(child, fold, net);
  mat4.translate(turn, turn, [from.x, from.y, 0]);
  mat4.rotate(turn, turn, angle, [axis.x, axis.y, 0]);
  return mat4.translate(turn, turn, [-from.x, -from.y, 0]);
}

/** The fold's direction with the child on such a side that a positive turn takes it away from the reader. */
function awayFrom(child: string, fold: Fold, net: Net): Point3 {
  const [from, to] = [flat(fold.from), flat(fold.to)];
  const direction = { x: to.x - from.x, y: to.y - from.y, z: 0 };
  const outline = net.panels.find(({ id }) => id === child)?.outline ?? [];
  const side = outline.reduce((sum, corner) => {
    const { x, y } = flat(corner);
    return sum + direction.x * (y - from.y) - direction.y * (x - from.x);
  }, 0);
  return side <= 0 ? direction : { x: -direction.x, y: -direction.y, z: 0 };
}

function foldedPanel(panel: Panel, pose: mat4): FoldedPanel {
  const carry = ({ x, y }: Point2): Point3 => {
    const [px = 0, py = 0, pz = 0] = vec3.transformMat4(vec3.create(), [x, -y, 0], pose);
    return { x: px, y: py, z: pz };
  };
  const place = ({ x, y }: FlatPoint): Point3 => carry({ x: x.mm, y: y.mm });
  const origin = carry({ x: 0, y: 0 });
  const right = minus(carry({ x: 1, y: 0 }), origin);
  const up = minus(carry({ x: 0, y: -1 }), origin);
  const normal = cross(right, up);
  return {
    panel,
    corners: panel.outline.map(place),
    box: boxCorners(panel.box).map(place),
    plane: { normal, offset: dot(normal, origin) },
    place,
    carry,
  };
}

/** Flat paper in the axes of space: y up, the outside towards the viewer. */
function flat({ x, y }: FlatPoint): Point3 {
  return { x: x.mm, y: -y.mm, z: 0 };
}

/** The turn that sets the base down as it lies, the front (of a tray or lid) towards the viewer. */
function restingPose(net: Net, { base, lies }: Rest): mat4 {
  const pose = mat4.create();
  if (lies === 'facing') return pose;
  if (lies === 'away') return mat4.rotateY(pose, pose, Math.PI);
  const upward = lies === 'over';
  mat4.rotateY(pose, pose, (quarterTurnsToFront(net, base, upward) * Math.PI) / 2);
  return mat4.rotateX(pose, pose, (upward ? -1 : 1) * (Math.PI / 2));
}

/** Quarter turns about the upright that bring the wall named `front` to the viewer; as it lies without one. */
function quarterTurnsToFront(net: Net, base: string, upward: boolean): number {
  const fold = net.folds.find((each) => /(?:^|-)front$/u.test(otherSide(each, base) ?? ''));
  const box = net.panels.find(({ id }) => id === base)?.box;
  if (!fold || !box) return 0;
  if (fold.from.y.equals(fold.to.y)) return fold.from.y.equals(box.top) === upward ? 2 : 0;
  return fold.from.x.equals(box.left) ? 1 : 3;
}
