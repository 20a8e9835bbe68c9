import { between, dot, height, type Plane, type Point3 } from '../space.ts';

/** A flat polygon in space: a panel, or what lies on one. Its plane's normal points to its outside. */
export type PlaneFace = Plane & {
  readonly corners: readonly Point3[];
  /** Of each side, from its corner to the next: whether it is an edge of the paper, to be drawn as a line. */
  readonly sides: readonly boolean[];
  /** The index of its panel. */
  readonly panel: number;
  /** 0 for the panel itself; what lies on it counts from 1 in the order it is stuck on, on its inside from -1 down. */
  readonly level: number;
  /** `#rrggbb` of the paper's two sides in full light. */
  readonly outside: string;
  readonly inside: string;
};

/** Two panels, by index, that come to lie on one another: 1 when the second is on the first's outer side, else -1. */
export type StackedPair = readonly [first: number, second: number, side: 1 | -1];

/** How faces that lie in one plane, or nearly, are stacked. */
export type StackRules = {
  /** Millimeters: what lies closer is stacked by rule, not by where it lies. */
  readonly near: number;
  readonly stacked: readonly StackedPair[];
};

/** A plane, the faces that lie in it, and those behind and before it. */
export type PlaneTree = {
  readonly normal: Point3;
  readonly behind: PlaneTree | undefined;
  readonly within: readonly PlaneFace[];
  readonly before: PlaneTree | undefined;
};

/** Cosine of one degree: planes that run alike. */
const ALIKE: number = Math.cos(Math.PI / 180);
/** Millimeters; what lies nearer a plane lies in it. */
const TOUCHING = 1e-3;
/** Faces tried for the plane that cuts the fewest others. */
const TRIED = 8;

/** Sorts faces into a tree of planes; a face that lies on both sides of one is cut in two. */
export function planeTree(faces: readonly PlaneFace[], rules: StackRules): PlaneTree | undefined {
  const [plane, ...others] = withBestFirst(faces);
  if (!plane) return undefined;
  const [behind, within, before]: [PlaneFace[], PlaneFace[], PlaneFace[]] = [[], [plane], []];
  for (const face of others) {
    const [least, most] = reachOf(face, plane);
    if (most <= rules.near && least >= -rules.near && runAlike(face, plane)) within.push(face);
    else if (most <= TOUCHING) behind.push(face);
    else if (least >= -TOUCHING) before.push(face);
    else {
      behind.push(halfOf(face, plane, -1));
      before.push(halfOf(face, plane, 1));
    }
  }
  return {
    normal: plane.normal,
    behind: planeTree(behind, rules),
    within: stackOf(within, plane, rules),
    before: planeTree(before, rules),
  };
}

/** The faces of a tree as they are seen when `towards` points to the viewer, the farthest first. */
export function farthestFirst(tree: PlaneTree | undefined, towards: Point3): readonly PlaneFace[] {
  if (!tree) return [];
  const isFacing = dot(tree.normal, towards) > 0;
  const [far, near] = isFacing ? [tree.behind, tree.before] : [tree.before, tree.behind];
  const within = isFacing ? tree.within : [...tree.within].reverse();
  return [...farthestFirst(far, towards), ...within, ...farthestFirst(near, towards)];
}

function runAlike(first: Plane, second: Plane): boolean {
  return Math.abs(dot(first.normal, second.normal)) > ALIKE;
}

/** The faces, that one first whose plane cuts the fewest others, of some tried. */
function withBestFirst(faces: readonly PlaneFace[]): readonly PlaneFace[] {
  const every = Math.max(1, Math.floor(faces.length / TRIED));
  let [best, fewest] = [0, Number.POSITIVE_INFINITY];
  for (const [index, face] of faces.entries()) {
    if (index % every > 0 || fewest === 0) continue;
    const cuts = faces.filter((other) => isCut(other, face)).length;
    if (cuts < fewest) [best, fewest] = [index, cuts];
  }
  return [...faces.slice(best, best + 1), ...faces.slice(0, best), ...faces.slice(best + 1)];
}

function isCut(face: PlaneFace, plane: Plane): boolean {
  const [least, most] = reachOf(face, plane);
  return least < -TOUCHING && most > TOUCHING;
}

/** The least and the greatest height of a face's corners over a plane. */
function reachOf({ corners }: PlaneFace, plane: Plane): readonly [number, number] {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const corner of corners) {
    const over = height(plane, corner);
    if (over < least) least = over;
    if (over > most) most = over;
  }
  return [least, most];
}

/** The part of a face on one side of a plane. Where it was cut, no side is drawn. */
function halfOf(face: PlaneFace, plane: Plane, sign: 1 | -1): PlaneFace {
  const [corners, sides]: [Point3[], boolean[]] = [[], []];
  for (const [index, corner] of face.corners.entries()) {
    const next = face.corners[(index + 1) % face.corners.length] ?? corner;
    const [here, there] = [height(plane, corner) * sign, height(plane, next) * sign];
    const isDrawn = face.sides[index] ?? true;
    if (here >= 0) {
      corners.push(corner);
      // From a corner on the plane the way to the other side is the cut's.
      sides.push(isDrawn && (here > 0 || there >= 0));
    }
    if (here * there < 0) {
      corners.push(between(corner, next, here / (here - there)));
      sides.push(here < 0 && isDrawn);
    }
  }
  return { ...face, corners, sides };
}

/** Faces that lie on one another, from what is hindmost as the plane looks to what is foremost. */
function stackOf(faces: readonly PlaneFace[], plane: Plane, rules: StackRules): readonly PlaneFace[] {
  const waiting = [...faces];
  const stack: PlaneFace[] = [];
  while (waiting.length > 0) {
    const free = waiting.findIndex((face) =>
      waiting.every((other) => riseTo(face, other, plane, rules) >= 0),
    );
    stack.push(...waiting.splice(Math.max(free, 0), 1));
  }
  return stack;
}

/** Positive when the second of two faces lies higher, as the plane looks; 0 when neither does. */
function riseTo(first: PlaneFace, second: PlaneFace, plane: Plane, { near, stacked }: StackRules): number {
  const facing = Math.sign(dot(first.normal, plane.normal));
  if (first.panel === second.panel) return (second.level - first.level) * facing;
  const side = sideOf(first, second, stacked);
  if (side !== 0) return side * facing;
  const [a, b] = [first.corners[0], second.corners[0]];
  const rise = a && b ? dot(plane.normal, b) - dot(plane.normal, a) : 0;
  if (Math.abs(rise) > near / 1000) return rise;
  // A layer that reaches past its panel lies over the panel beside it too.
  return dot(first.normal, second.normal) > 0 ? (second.level - first.level) * facing : 0;
}

/** 1 when the second lies on the first's outer side, -1 on its inner one; 0 for panels that never meet. */
function sideOf(first: PlaneFace, second: PlaneFace, stacked: readonly StackedPair[]): number {
  const pair = stacked.find(([a, b]) => isPair(first, second, a, b) || isPair(second, first, a, b));
  if (!pair) return 0;
  const [panel, , side] = pair;
  // On the outer side of a panel that faces the other way is on one's own outer side too.
  return panel === first.panel ? side : -side * Math.sign(dot(first.normal, second.normal));
}

function isPair(first: PlaneFace, second: PlaneFace, a: number, b: number): boolean {
  return first.panel === a && second.panel === b;
}
