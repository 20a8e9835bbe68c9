import { type Point2, shared } from '../flat-polygon.ts';
import type { FoldedPanel, FoldedShape } from '../fold.ts';
import type { FlatPoint } from '../net.ts';
import { dot, type Plane, type Point3, scaled, unit } from '../space.ts';
import { drawnEdges } from './drawn-edges.ts';
import { paintOrder, type SeenFace } from './paint-order.ts';
import type { PanelLayer } from './panel-layers.ts';
import { panelsOf, Stacking } from './stacking.ts';

/** How a shape is looked at, in degrees: turned about the upright (its right side comes forward), and tilted to show its top. */
export type View = { readonly turn: number; readonly tilt: number };

/** Seen a little from the right and from above. */
export const USUAL_VIEW: View = { turn: -32, tilt: 24 };

/** One polygon of the picture; paint them in order. */
export type PaintedFace = {
  /** The panel it is, or lies on. */
  readonly panel: string;
  /** The piece, for a layer that lies on a panel. */
  readonly layer?: string;
  /** Whether the outside of the paper is seen. */
  readonly outside: boolean;
  /** In millimetres, x to the right and y down. */
  readonly points: readonly Point2[];
  /** Of each side of the polygon, from its point to the next: whether it is an edge of the paper, to be drawn as a line. */
  readonly edges: readonly boolean[];
  /** From 0 (in the dark) to 1 (in full light). */
  readonly shade: number;
};

/** Faces seen this nearly from their edge are left out. */
const EDGE_ON = 1e-4;

/** From above, a little from the left, before the shape. */
const LIGHT: Point3 = unit({ x: -0.35, y: 0.85, z: 0.55 });

/**
 * The faces of a folded shape in parallel projection, in the order to paint them so that what lies behind is hidden.
 * Layers are painted on the outside of their panels, in the order given.
 */
export function axonometric(
  shape: FoldedShape,
  view: View = USUAL_VIEW,
  layers: readonly PanelLayer[] = [],
): readonly PaintedFace[] {
  const look = lookFrom(view);
  const stacking = new Stacking(shape);
  const faces = panelsOf(shape)
    .map((panel) => seen(shape, panel, look))
    .filter(({ plane }) => Math.abs(plane.normal.z) > EDGE_ON);
  const ordered = paintOrder(faces, (first, second) => {
    if (!stacking.lieTogether(first, second)) return undefined;
    return stacking.sideOf(first, second) * Math.sign(look(first.plane.normal).z);
  });
  const last = new Map(ordered.map((face, index) => [face.of, index]));
  return ordered.flatMap((face, index) => {
    const shows = last.get(face.of) === index && face.plane.normal.z > 0;
    return [painted(face), ...(shows ? layersOn(shape, face, layers, look) : [])];
  });
}

function lookFrom({ turn, tilt }: View): (point: Point3) => Point3 {
  const [turnCos, turnSin] = cosAndSin(turn);
  const [tiltCos, tiltSin] = cosAndSin(tilt);
  return ({ x, y, z }) => {
    const [across, towards] = [x * turnCos + z * turnSin, z * turnCos - x * turnSin];
    return { x: across, y: y * tiltCos - towards * tiltSin, z: y * tiltSin + towards * tiltCos };
  };
}

function cosAndSin(degrees: number): readonly [number, number] {
  const radians = (degrees * Math.PI) / 180;
  return [Math.cos(radians), Math.sin(radians)];
}

function seen(
  shape: FoldedShape,
  panel: FoldedPanel,
  look: (point: Point3) => Point3,
): SeenFace<FoldedPanel> {
  const corners = panel.corners.map(look);
  const normal = look(panel.plane.normal);
  const [first] = corners;
  const plane: Plane = { normal, offset: first ? dot(normal, first) : 0 };
  return { of: panel, corners, plane, edges: edgesOf(shape, panel) };
}

/**
 * Of each side of a panel, from its corner to the next: whether it is drawn. All are, but those where two strips of a
 * bent panel meet.
 */
export function edgesOf({ bent, net }: FoldedShape, { panel }: FoldedPanel): readonly boolean[] {
  const all = panel.outline.map(() => true);
  return bent ? (drawnEdges(net).get(panel.id) ?? all) : all;
}

function painted({ of, corners, plane, edges }: SeenFace<FoldedPanel>): PaintedFace {
  const outside = plane.normal.z > 0;
  return { panel: of.panel.id, outside, points: inPicture(corners), edges, shade: shadeOf(plane) };
}

/** What of a layer lies on one panel, in millimetres of the flat paper. */
export type LaidLayer = {
  readonly layer: PanelLayer;
  readonly outline: readonly Point2[];
  /** Whether its sides are its own edges; a part of it on a strip is drawn without. */
  readonly edged: boolean;
};

/** The layers of a panel, in the order given; of a strip, what of each layer lies on it. */
export function layersOf(
  { bent }: FoldedShape,
  { panel }: FoldedPanel,
  layers: readonly PanelLayer[],
): readonly LaidLayer[] {
  const own = layers.flatMap((layer) => {
    const outline = inMillimetres(layer.outline);
    if (bent) return [{ layer, outline: shared(outline, inMillimetres(panel.outline)), edged: false }];
    return layer.panel === panel.id ? [{ layer, outline, edged: true }] : [];
  });
  return own.filter(({ outline }) => outline.length > 2);
}

function layersOn(
  shape: FoldedShape,
  face: SeenFace<FoldedPanel>,
  layers: readonly PanelLayer[],
  look: (point: Point3) => Point3,
): PaintedFace[] {
  const { panel, carry } = face.of;
  return layersOf(shape, face.of, layers).map(({ layer, outline, edged }) => ({
    panel: panel.id,
    layer: layer.piece.id.value,
    outside: true,
    points: inPicture(outline.map((point) => look(carry(point)))),
    edges: outline.map(() => edged),
    shade: shadeOf(face.plane),
  }));
}

function inMillimetres(outline: readonly FlatPoint[]): Point2[] {
  return outline.map(({ x, y }) => ({ x: x.mm, y: y.mm }));
}

function inPicture(corners: readonly Point3[]): Point2[] {
  return corners.map(({ x, y }) => ({ x, y: -y }));
}

/** The side of the paper that is seen, in the light. */
function shadeOf({ normal }: Plane): number {
  const facing = normal.z > 0 ? normal : scaled(normal, -1);
  return Math.min(1, Math.max(0, 0.55 + 0.5 * dot(facing, LIGHT)));
}
