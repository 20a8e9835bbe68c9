import { cross, type Point3, plus, scaled, unit } from '../space.ts';

/** Where flat paper has come to: the ways its right, its top and its outside look, and where its zero lies. */
export type Pose = {
  readonly right: Point3;
  readonly up: Point3;
  readonly outside: Point3;
  readonly origin: Point3;
};

/** How a panel hangs on another. Flat paper is measured in millimeters, y up, the outside towards the reader. */
export type Hinge = {
  /** The index of the panel it hangs on, which comes before it. */
  readonly on: number;
  /** x and y of the fold's two ends, the panel that turns lying to the right on the way from the first to the second. */
  readonly line: readonly [number, number, number, number];
  /** Degrees when folded, positive away from the reader. */
  readonly angle: number;
};

/** Where every panel comes to when each has turned by its share, 0 to 1, of its hinge's angle. */
export function posesOf(
  panels: readonly { readonly hinge?: Hinge }[],
  rest: Pose,
  shares: readonly number[],
): readonly Pose[] {
  const poses: Pose[] = [];
  for (const [index, { hinge }] of panels.entries()) {
    poses.push(hinge ? hungOn(poses[hinge.on] ?? rest, hinge, shares[index] ?? 0) : rest);
  }
  return poses;
}

/** Where a panel comes to that has turned by a share of its hinge's angle, from the pose of the one it hangs on. */
export function hungOn(pose: Pose, { line, angle }: Hinge, share: number): Pose {
  const degrees = angle * share;
  return degrees === 0 ? pose : joined(pose, turnAbout(line, degrees));
}

/** Where a point of the flat paper has come to. */
export function placed(pose: Pose, point: Point3): Point3 {
  return plus(turned(pose, point), pose.origin);
}

function turned({ right, up, outside }: Pose, { x, y, z }: Point3): Point3 {
  return {
    x: right.x * x + up.x * y + outside.x * z,
    y: right.y * x + up.y * y + outside.y * z,
    z: right.z * x + up.z * y + outside.z * z,
  };
}

function joined(pose: Pose, next: Pose): Pose {
  return {
    right: turned(pose, next.right),
    up: turned(pose, next.up),
    outside: turned(pose, next.outside),
    origin: placed(pose, next.origin),
  };
}

/** The turn about a line of the flat paper: what lies to its right goes away from the reader (Rodrigues' formula). */
function turnAbout([fromX, fromY, toX, toY]: Hinge['line'], degrees: number): Pose {
  const axis = unit({ x: toX - fromX, y: toY - fromY, z: 0 });
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const rotated = (point: Point3): Point3 => {
    const along = scaled(axis, (axis.x * point.x + axis.y * point.y) * (1 - cos));
    return plus(plus(scaled(point, cos), scaled(cross(axis, point), sin)), along);
  };
  const from = { x: fromX, y: fromY, z: 0 };
  return {
    right: rotated({ x: 1, y: 0, z: 0 }),
    up: rotated({ x: 0, y: 1, z: 0 }),
    outside: rotated({ x: 0, y: 0, z: 1 }),
    origin: plus(from, scaled(rotated(from), -1)),
  };
}
