import { type Rest, restOf } from './base-panel.ts';
import type { Point2 } from './flat-polygon.ts';
import type { FoldedPanel, FoldedShape } from './folded-shape.ts';
import type { FlatPoint, Fold, Net, Panel } from './net.ts';
import { boxCorners } from './outline.ts';
import { type Hinge, hungOn, type Pose } from './paint/pose.ts';
import { otherSide, panelForest, panelOf } from './panel-tree.ts';
import { perNet } from './per-net.ts';
import { bounds, dot, type Point3, scaled } from './space.ts';
import { signedAngle } from './tube.ts';

/** How far each fold is folded, from 0 (flat) to 1 (its full angle): one share for all, or each its own. */
export type FoldProgress = number | ((fold: Fold) => number);

type FoldOptions = {
  /** The paper's thickness in millimeters; 0 when absent. */
  readonly caliper?: number;
  /** The panel that stays put, instead of the one the net suggests. */
  readonly base?: string;
};

/**
 * Folds a net in space: every panel turned about its folds on the way out from the base, which stays put. Parts that
 * hang on nothing stay where they lay. Folds that close a ring are not followed; `brokenRings` says where they do not meet.
 */
export function foldNet(
  net: Net,
  { at = 1, ...options }: FoldOptions & { at?: FoldProgress } = {},
): FoldedShape {
  return folderOf(net, options)(at);
}

/** A panel that has come to a pose, and what hangs on it wherever that has come to from there. */
type Posed = OnPose & { readonly panel: FoldedPanel };

type OnPose = { readonly pose: Pose; readonly onward: Map<string, Posed> };

/**
 * Folds one net time and again, a little further or otherwise: a panel is placed only once for all the times that the
 * folds on the way to it are as far closed.
 */
export function folderOf(
  net: Net,
  { caliper = 0, base: held }: FoldOptions,
): (at: FoldProgress) => FoldedShape {
  const sheet = net.strips ?? net;
  const usual = layDown(net);
  const { base, rest, hung } = held === undefined || held === usual.base ? usual : layOn(sheet, held);
  const table = { pose: rest, onward: new Map<string, Posed>() };
  return (at) => {
    const shares = sharesOf(hung, at);
    const posed: Posed[] = [];
    for (const [index, each] of hung.entries()) {
      posed.push(poseOn((each.hinge && posed[each.hinge.on]) ?? table, each, shares[index] ?? 0));
    }
    const byId = new Map(posed.map(({ panel }) => [panel.panel.id, panel]));
    const panels = sheet.panels.flatMap(({ id }) => {
      const panel = byId.get(id);
      return panel ? [[id, panel] as const] : [];
    });
    return { net: sheet, base, caliper, panels: new Map(panels) };
  };
}

function poseOn({ pose: under, onward }: OnPose, { panel, hinge }: HungPanel, share: number): Posed {
  const key = `${panel.id}/${share}`;
  const known = onward.get(key);
  if (known) return known;
  const pose = hinge ? hungOn(under, hinge, share) : under;
  const posed = { pose, panel: foldedPanel(panel, pose), onward: new Map<string, Posed>() };
  onward.set(key, posed);
  return posed;
}

/** How far a net reaches across, up and back over all once it is folded, in millimeters. */
export function foldedExtent(net: Net, at: FoldProgress = 1): readonly [number, number, number] {
  const { panels } = foldNet(net, { at });
  const { least, most } = bounds([...panels.values()].flatMap(({ corners }) => corners));
  return [most.x - least.x, most.y - least.y, most.z - least.z];
}

/** A net laid down to be folded: its base, where the flat paper lies, and its panels as they hang on the base. */
type LaidNet = { readonly base: string; readonly rest: Pose; readonly hung: readonly HungPanel[] };

/** Lays a net down on the base it suggests, as it rests in the end. */
export const layDown: (net: Net) => LaidNet = perNet((net) => {
  const sheet = net.strips ?? net;
  const suggested = restOf(sheet);
  return { ...layOn(sheet, suggested.base), rest: restingPose(sheet, suggested) };
});

/** Lays a sheet down on any base, as it lies before the reader. */
function layOn(sheet: Net, base: string): LaidNet {
  return { base, rest: FLAT, hung: hungPanels(sheet, base) };
}

/** A panel and the fold it hangs by; one that stays put has none. */
export type HungPanel = { readonly panel: Panel; readonly fold?: Fold; readonly hinge?: Hinge };

/** The panels of a net as they hang on `base`, and on one another: each after the one it hangs on. */
function hungPanels(net: Net, base: string): readonly HungPanel[] {
  const index = new Map<string, number>();
  const hung: HungPanel[] = [];
  const hang = (id: string, by?: Pick<HungPanel, 'fold' | 'hinge'>): void => {
    index.set(id, hung.length);
    hung.push({ panel: panelOf(net, id), ...by });
  };
  for (const { root, joints } of panelForest(net, base).trees) {
    hang(root);
    for (const { fold, parent, child } of joints) {
      const line = lineOf(panelOf(net, child), fold);
      hang(child, { fold, hinge: { on: index.get(parent) ?? 0, line, angle: signedAngle(fold) } });
    }
  }
  return hung;
}

/** A fold from that end from which the panel lies to its right. */
function lineOf({ outline }: Panel, fold: Fold): Hinge['line'] {
  const [from, to] = [upright(fold.from), upright(fold.to)];
  const side = outline
    .map(upright)
    .reduce((sum, { x, y }) => sum + (to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x), 0);
  return side <= 0 ? [from.x, from.y, to.x, to.y] : [to.x, to.y, from.x, from.y];
}

/** From the top down, as nets are measured, to y up. */
export function upright({ x, y }: FlatPoint): Point2 {
  return { x: x.mm, y: -y.mm };
}

/** The share each panel's fold is folded by; panels that stay put have none. */
export function sharesOf(hung: readonly HungPanel[], at: FoldProgress): readonly number[] {
  return hung.map(({ fold }) => (typeof at === 'number' ? at : fold ? at(fold) : 0));
}

function foldedPanel(panel: Panel, pose: Pose): FoldedPanel {
  const place = ({ x, y }: FlatPoint): Point3 => placeFlat(pose, x.mm, -y.mm);
  const { left, top } = panel.box;
  return {
    panel,
    corners: panel.outline.map(place),
    get box() {
      return boxCorners(panel.box).map(place);
    },
    plane: { normal: pose.outside, offset: dot(pose.outside, pose.origin) },
    axes: { origin: place({ x: left, y: top }), across: pose.right, down: scaled(pose.up, -1) },
    place,
  };
}

/** `placed` of a point of the paper itself; asked of every corner at every move, so nothing is made on the way. */
function placeFlat({ right, up, origin }: Pose, x: number, y: number): Point3 {
  return {
    x: right.x * x + up.x * y + origin.x,
    y: right.y * x + up.y * y + origin.y,
    z: right.z * x + up.z * y + origin.z,
  };
}

const [X, Y, Z]: readonly [Point3, Point3, Point3] = [
  { x: 1, y: 0, z: 0 },
  { x: 0, y: 1, z: 0 },
  { x: 0, y: 0, z: 1 },
];
const FLAT: Pose = { right: X, up: Y, outside: Z, origin: { x: 0, y: 0, z: 0 } };

/** Where the flat paper lies when its base is set down as it rests, the front (of a tray or lid) towards the viewer. */
function restingPose(net: Net, { base, lies }: Rest): Pose {
  if (lies === 'facing') return FLAT;
  if (lies === 'away') return { ...FLAT, right: scaled(X, -1), outside: scaled(Z, -1) };
  if (lies === 'raised') return { ...FLAT, up: scaled(Y, -1), outside: scaled(Z, -1) };
  const over = lies === 'over' ? 1 : -1;
  const ways = [X, scaled(Z, -1), scaled(X, -1), Z];
  const quarters = quarterTurnsToFront(net, base, lies === 'over');
  const [right = X, back = Z] = [ways[quarters], ways[(quarters + 1) % 4]];
  return { ...FLAT, right, up: scaled(back, over), outside: scaled(Y, over) };
}

/** Quarter turns about the upright that bring the front to the viewer; as it lies without one. */
function quarterTurnsToFront(net: Net, base: string, upward: boolean): number {
  const front = new Set(net.panels.filter(({ role }) => role === 'front').map(({ id }) => id));
  const fold = net.folds.find((each) => front.has(otherSide(each, base) ?? ''));
  if (!fold) return 0;
  const { box } = panelOf(net, base);
  if (fold.from.y.equals(fold.to.y)) return fold.from.y.equals(box.top) === upward ? 2 : 0;
  return fold.from.x.equals(box.left) ? 1 : 3;
}
