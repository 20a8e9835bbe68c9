import { edgesOf, offLine } from '../flat-polygon.ts';
import type { FlatPoint, Fold, Net } from '../net.ts';
import { type Joint, panelForest, panelOf } from '../panel-tree.ts';
import { signedAngle } from '../tube.ts';

/** Millimeters. */
const ON_LINE = 0.01;

/**
 * Folds of which one must go the other way, for a ring of panels whose lines all run alike (the strip of a pop-up with
 * the card it is cut from) would come round once more than flat paper can: from flat to folded, what its folds turn
 * adds up to nothing. Of those that could be the slip, the one that is in most such rings.
 */
export function foldsOfWoundRings(net: Net): readonly Fold[] {
  const suspects = windingRings(net);
  const inHowMany = (fold: Fold): number => suspects.filter((ring) => ring.includes(fold)).length;
  const worst = suspects.map((ring) =>
    ring.reduce((most, fold) => (inHowMany(fold) > inHowMany(most) ? fold : most)),
  );
  return [...new Set(worst)];
}

/** Of each ring that is wound, the folds that turn it the way it is wound. */
function windingRings(net: Net): (readonly [Fold, ...Fold[]])[] {
  const [root] = net.panels;
  if (!root) return [];
  const { trees, rings } = panelForest(net, root.id);
  const joints = new Map(trees.flatMap((tree) => tree.joints.map((joint) => [joint.child, joint] as const)));
  return rings.flatMap((closing) => {
    const steps = stepsRound(closing, joints);
    const axis = directionOf(closing);
    if (!steps.every(({ fold }) => Math.abs(crossed(directionOf(fold), axis)) < ON_LINE)) return [];
    const turns = steps.map(({ fold, from }) => ({ fold, turn: turnOf(net, fold, from, axis) }));
    const whole = turns.reduce((sum, { turn }) => sum + turn, 0);
    const [first, ...others] = turns.filter(({ turn }) => Math.abs(whole) > 180 && turn * whole > 0);
    return first ? [[first.fold, ...others.map(({ fold }) => fold)] as const] : [];
  });
}

/** A fold as it is met on the way round, and the panel before it. */
type RingStep = { readonly fold: Fold; readonly from: string };

function stepsRound(closing: Fold, joints: ReadonlyMap<string, Joint>): readonly RingStep[] {
  const [out, back] = closing.panels.map((panel) => wayToRoot(panel, joints));
  const down = (out ?? []).filter((joint) => !back?.includes(joint));
  const up = (back ?? []).filter((joint) => !out?.includes(joint)).toReversed();
  return [
    ...down.map(({ fold, child }) => ({ fold, from: child })),
    ...up.map(({ fold, parent }) => ({ fold, from: parent })),
    { fold: closing, from: closing.panels[1] },
  ];
}

function wayToRoot(panel: string, joints: ReadonlyMap<string, Joint>): Joint[] {
  const joint = joints.get(panel);
  return joint ? [joint, ...wayToRoot(joint.parent, joints)] : [];
}

type Vector = { readonly x: number; readonly y: number };

function directionOf({ from, to }: Pick<Fold, 'from' | 'to'>): Vector {
  return between(from, to);
}

function between(from: FlatPoint, to: FlatPoint): Vector {
  const [x, y] = [to.x.mm - from.x.mm, to.y.mm - from.y.mm];
  const length = Math.hypot(x, y);
  return { x: x / length, y: y / length };
}

function crossed(one: Vector, other: Vector): number {
  return one.x * other.y - one.y * other.x;
}

/** Degrees that a fold turns what comes after it about the axis, as it is crossed out of one of its panels. */
function turnOf(net: Net, fold: Fold, from: string, axis: Vector): number {
  const line = [fold.from, fold.to].map(({ x, y }) => ({ x: x.mm, y: y.mm }));
  const [start, end] = line;
  const along = edgesOf(panelOf(net, from).outline).find((edge) =>
    edge.every(({ x, y }) => start && end && Math.abs(offLine([start, end], { x: x.mm, y: y.mm })) < ON_LINE),
  );
  const way = along ? between(...along) : axis;
  return signedAngle(fold) * Math.sign(way.x * axis.x + way.y * axis.y);
}
