// Folds a sheet of paper and paints it: the mathematics behind the picture that turns (turn.js). A point is [x, y, z] in
// millimetres, x to the right, y up, z towards the viewer; a pose is where x, y, z and the origin of flat paper come to.
(() => {
  /** Cosine of one degree: planes that run alike. */
  const ALIKE = Math.cos(Math.PI / 180);
  /** Millimetres; what lies nearer a plane lies in it. */
  const TOUCHING = 1e-6;
  /** Faces tried for the plane that cuts the fewest others. */
  const TRIED = 8;
  /** From above, a little from the left, before the shape. */
  const LIGHT = unit([-0.35, 0.85, 0.55]);

  function dot(a, b) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  }

  function along(a, b, share) {
    return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share, a[2] + (b[2] - a[2]) * share];
  }

  function unit(a) {
    const length = Math.hypot(...a);
    return a.map((value) => value / length);
  }

  function turned([right, up, outside], [x, y, z]) {
    return [0, 1, 2].map((axis) => right[axis] * x + up[axis] * y + outside[axis] * z);
  }

  function placed(pose, point) {
    return turned(pose, point).map((value, axis) => value + pose[3][axis]);
  }

  function joined(pose, [right, up, outside, origin]) {
    return [...[right, up, outside].map((way) => turned(pose, way)), placed(pose, origin)];
  }

  /** The turn about a line of the flat paper: what lies to its right goes away from the reader (Rodrigues' formula). */
  function turnAbout([fromX, fromY, toX, toY], degrees) {
    const [x, y] = unit([toX - fromX, toY - fromY, 0]);
    const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
    const rest = 1 - cos;
    const ways = [
      [cos + x * x * rest, x * y * rest, -y * sin],
      [x * y * rest, cos + y * y * rest, x * sin],
      [y * sin, -x * sin, cos],
    ];
    const moved = turned(ways, [fromX, fromY, 0]);
    return [...ways, [fromX - moved[0], fromY - moved[1], -moved[2]]];
  }

  function posesOf({ rest, panels }, done) {
    const poses = [];
    for (const { hinge } of panels) {
      if (!hinge) {
        poses.push([rest.slice(0, 3), rest.slice(3, 6), rest.slice(6, 9), [0, 0, 0]]);
        continue;
      }
      const share = hinge.step === undefined ? 0 : Math.min(1, Math.max(0, done - hinge.step));
      const parent = poses[hinge.on];
      poses.push(share === 0 ? parent : joined(parent, turnAbout(hinge.line, hinge.angle * share)));
    }
    return poses;
  }

  function faceOf(pose, outline, look) {
    const corners = [];
    for (let at = 0; at < outline.length; at += 2)
      corners.push(placed(pose, [outline[at], outline[at + 1], 0]));
    const normal = pose[2];
    return { corners, normal, offset: dot(normal, pose[3]), ...look };
  }

  /** Every panel and layer of a sheet where it has come to after `done` steps; `level` 0 is the panel itself. */
  function facesOf(sheet, done) {
    const poses = posesOf(sheet, done);
    const { outside, inside } = sheet;
    const panels = sheet.panels.map(({ outline, undrawn = [] }, panel) => {
      const sides = outline.slice(outline.length / 2).map((_, side) => !undrawn.includes(side));
      return faceOf(poses[panel], outline, { panel, level: 0, sides, outside, inside });
    });
    const layers = sheet.layers.map(({ panel, outline, color, undrawn }, index) => {
      const sides = outline.slice(outline.length / 2).map(() => !undrawn);
      return faceOf(poses[panel], outline, { panel, level: index + 1, sides, outside: color, inside: color });
    });
    return [...panels, ...layers];
  }

  /** Folds a sheet: its faces in a tree of planes, and the ball it fits in. */
  function fold(sheet, done) {
    const faces = facesOf(sheet, done);
    const corners = faces.flatMap((face) => face.corners);
    const centre = [0, 1, 2].map((axis) => {
      const values = corners.map((corner) => corner[axis]);
      return (Math.min(...values) + Math.max(...values)) / 2;
    });
    const [x, y, z] = centre;
    const radius = Math.max(
      ...corners.map((corner) => Math.hypot(corner[0] - x, corner[1] - y, corner[2] - z)),
    );
    return { tree: treeOf(faces, rulesOf(sheet)), centre, radius };
  }

  /** Which of two panels that lie on one another is the outer one, as a table; 0 for two that never do. */
  function rulesOf({ near, panels: { length: count }, stacked }) {
    const sides = new Int8Array(count * count);
    for (const [first, second, side] of stacked) sides[first * count + second] = side;
    return { near, sideOf: (first, second) => sides[first * count + second] };
  }

  /**
   * A tree of planes, each with the faces that lie in it, those behind it and those before it; a face that lies on both
   * sides is cut in two. From wherever it is looked at, it gives the order to paint the faces in.
   */
  function treeOf(faces, rules) {
    if (faces.length === 0) return undefined;
    const plane = bestPlane(faces);
    const [behind, within, before] = [[], [], []];
    for (const face of faces) {
      const [least, most] = reach(face, plane);
      if (most <= rules.near && least >= -rules.near && isAlike(face, plane)) within.push(face);
      else if (most <= TOUCHING) behind.push(face);
      else if (least >= -TOUCHING) before.push(face);
      else {
        behind.push(half(face, plane, -1));
        before.push(half(face, plane, 1));
      }
    }
    return {
      normal: plane.normal,
      behind: treeOf(behind, rules),
      within: stackOf(within, plane, rules),
      before: treeOf(before, rules),
    };
  }

  function isAlike({ normal }, plane) {
    return Math.abs(dot(normal, plane.normal)) > ALIKE;
  }

  function bestPlane(faces) {
    const every = Math.max(1, Math.floor(faces.length / TRIED));
    let [best, fewest] = [faces[0], Number.POSITIVE_INFINITY];
    for (let index = 0; index < faces.length && fewest > 0; index += every) {
      const cuts = cutsOf(faces, faces[index], fewest);
      if (cuts < fewest) [best, fewest] = [faces[index], cuts];
    }
    return best;
  }

  /** How many faces a plane cuts; counted no further than `enough`. */
  function cutsOf(faces, plane, enough) {
    let cuts = 0;
    for (const face of faces) {
      const [least, most] = reach(face, plane);
      if (least < -TOUCHING && most > TOUCHING) cuts += 1;
      if (cuts >= enough) break;
    }
    return cuts;
  }

  /** The least and the greatest height of a face's corners over a plane. */
  function reach({ corners }, { normal, offset }) {
    let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (const corner of corners) {
      const height = dot(normal, corner) - offset;
      if (height < least) least = height;
      if (height > most) most = height;
    }
    return [least, most];
  }

  /** The part of a face on one side of a plane. Where it was cut, no side is drawn. */
  function half(face, { normal, offset }, sign) {
    const heights = face.corners.map((corner) => (dot(normal, corner) - offset) * sign);
    const [corners, sides] = [[], []];
    for (const [index, corner] of face.corners.entries()) {
      const next = (index + 1) % face.corners.length;
      const [here, there] = [heights[index], heights[next]];
      if (here >= 0) {
        corners.push(corner);
        sides.push(face.sides[index]);
      }
      if (here * there < 0) {
        corners.push(along(corner, face.corners[next], here / (here - there)));
        sides.push(here < 0 && face.sides[index]);
      }
    }
    return { ...face, corners, sides };
  }

  /** Faces that lie on one another, from what is hindmost as the plane looks to what is foremost. */
  function stackOf(faces, plane, rules) {
    const waiting = [...faces];
    const stack = [];
    while (waiting.length > 0) {
      const free = waiting.findIndex((face) =>
        waiting.every((other) => rise(face, other, plane, rules) >= 0),
      );
      stack.push(...waiting.splice(Math.max(free, 0), 1));
    }
    return stack;
  }

  /** Positive when the second of two faces lies higher, as the plane looks; 0 when neither does. */
  function rise(first, second, plane, { near, sideOf }) {
    const facing = Math.sign(dot(first.normal, plane.normal));
    if (first.panel === second.panel) return (second.level - first.level) * facing;
    const side =
      sideOf(first.panel, second.panel) ||
      // On the outer side of a panel that faces the other way is on one's own outer side too.
      -sideOf(second.panel, first.panel) * Math.sign(dot(first.normal, second.normal));
    if (side !== 0) return side * facing;
    const height = dot(plane.normal, second.corners[0]) - dot(plane.normal, first.corners[0]);
    if (Math.abs(height) > near / 1000) return height;
    // A layer that reaches past its panel lies over the panel beside it too.
    return dot(first.normal, second.normal) > 0 ? (second.level - first.level) * facing : 0;
  }

  /** Faces of a tree, the farthest first. */
  function inOrder(tree, towards, into) {
    if (!tree) return into;
    const facing = dot(tree.normal, towards) > 0;
    inOrder(facing ? tree.behind : tree.before, towards, into);
    into.push(...(facing ? tree.within : [...tree.within].reverse()));
    return inOrder(facing ? tree.before : tree.behind, towards, into);
  }

  /**
   * What is seen of a folded sheet, in the order to paint it: points in millimetres from its middle, y down. Turned in
   * degrees about the upright (its right side comes forward) and tilted to show its top.
   */
  function paint({ tree, centre }, { turn, tilt }) {
    const [turnCos, turnSin, tiltCos, tiltSin] = [turn, tilt].flatMap((degrees) => {
      const radians = (degrees * Math.PI) / 180;
      return [Math.cos(radians), Math.sin(radians)];
    });
    const right = [turnCos, 0, turnSin];
    const up = [turnSin * tiltSin, tiltCos, -turnCos * tiltSin];
    const towards = [-turnSin * tiltCos, tiltSin, turnCos * tiltCos];
    const picture = (corner) => {
      const from = corner.map((value, axis) => value - centre[axis]);
      return [dot(right, from), -dot(up, from)];
    };
    return inOrder(tree, towards, []).map(({ corners, normal, sides, panel, level, outside, inside }) => {
      const seen = [dot(right, normal), dot(up, normal), dot(towards, normal)];
      const lit = dot(seen, LIGHT) * Math.sign(seen[2]);
      const shade = Math.min(1, Math.max(0, 0.55 + 0.5 * lit));
      const color = seen[2] > 0 ? outside : inside;
      return { points: corners.map(picture), sides, color, shade, panel, level };
    });
  }

  globalThis.sheetwright = { ...globalThis.sheetwright, paper: { facesOf, fold, paint } };
})();
