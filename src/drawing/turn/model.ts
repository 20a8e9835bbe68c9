import type { Edition } from '../../edition/editions.ts';
import { caliperOf } from '../../shape/caliper.ts';
import type { Point2 } from '../../shape/flat-polygon.ts';
import { type FoldedShape, foldedPanelOf, foldNet } from '../../shape/fold.ts';
import { type FoldStep, foldSteps } from '../../shape/fold-order.ts';
import type { FlatPoint, Net, Panel } from '../../shape/net.ts';
import { type Joint, panelForest, panelOf } from '../../shape/panel-tree.ts';
import { sheetsOf } from '../../shape/shapes.ts';
import { signedAngle } from '../../shape/tube.ts';
import { edgesOf, layersOf } from '../../shape/view/axonometric.ts';
import { layersOnPanels, type PanelLayer } from '../../shape/view/panel-layers.ts';
import { colorOf } from '../piece.ts';
import { tint } from '../tint.ts';
import { type StackedPair, stackedPairs } from './stacked.ts';

/**
 * A folded piece as a page's script turns and folds it: plain numbers, ready for JSON. Flat coordinates are
 * millimetres on the sheet, x to the right and y up, the outside towards the reader; x and y alternate in one list.
 */
export type TurnModel = {
  /** One sheet, but for a form of several: they are shown side by side and folded one after another. */
  readonly sheets: readonly TurnSheet[];
  /** How many steps the folding takes, all sheets together. */
  readonly steps: number;
};

export type TurnSheet = {
  /** Where the flat paper's right, up and outside point in space as its base rests: nine numbers, three by three. */
  readonly rest: readonly number[];
  /** Panels that lie closer than this, in millimetres, are stacked by `stacked`, not by where they lie. */
  readonly near: number;
  /** Parents come before their children. */
  readonly panels: readonly TurnPanel[];
  /** In the order they are stuck on, all on the outside. */
  readonly layers: readonly TurnLayer[];
  readonly stacked: readonly StackedPair[];
  /** `#rrggbb` of the paper's outside and inside in full light. */
  readonly outside: string;
  readonly inside: string;
};

export type TurnPanel = {
  readonly outline: readonly number[];
  /** Sides (by their first corner) that are not drawn: they lie within a bent panel. */
  readonly undrawn?: readonly number[];
  /** How it hangs on another panel; none for one that stays put. */
  readonly hinge?: Hinge;
};

export type Hinge = {
  /** The index of the panel it hangs on. */
  readonly on: number;
  /** The fold's two ends, the panel that turns lying to the right on the way from the first to the second. */
  readonly line: readonly number[];
  /** Degrees when folded, positive away from the reader. */
  readonly angle: number;
  /** Which step of the folding turns it, from 0; none for a fold that stays flat. */
  readonly step?: number;
};

export type TurnLayer = {
  readonly panel: number;
  readonly outline: readonly number[];
  readonly color: string;
  /** Its sides are not drawn: it is a part of a layer on a bent panel. */
  readonly undrawn?: true;
};

/** A piece to be turned and folded; undefined when it has no net or nothing on it is folded. */
export function turnModel(edition: Edition, piece: string): TurnModel | undefined {
  const layers = layersOnPanels(edition.shapes, piece);
  const sheets: TurnSheet[] = [];
  let steps = 0;
  for (const { net } of sheetsOf(edition.shapes.nets, piece)) {
    const folding = foldSteps(net);
    sheets.push(turnSheet(edition, piece, { net, folding, first: steps, layers }));
    steps += folding.length;
  }
  return steps > 0 ? { sheets, steps } : undefined;
}

/** A sheet, how it is folded, and which step of the whole folding is its first. */
type Plan = {
  readonly net: Net;
  readonly folding: readonly FoldStep[];
  readonly first: number;
  readonly layers: readonly PanelLayer[];
};

function turnSheet(edition: Edition, piece: string, plan: Plan): TurnSheet {
  const { project } = edition;
  const stock = project.stock.get(project.pieces.get(piece)?.stock?.value ?? '');
  const caliper = caliperOf(stock).thickness.mm;
  const flat = foldNet(plan.net, { at: 0, caliper });
  const outside = paper(colorOf(edition, piece));
  const ids = inTreeOrder(flat);
  return {
    rest: restOf(flat),
    near: 2 * caliper + 0.5,
    panels: turnPanels(flat, ids, plan),
    layers: turnLayers(edition, flat, ids, plan.layers),
    stacked: stackedPairs(plan.net, caliper, ids),
    outside,
    // A printed pattern is on one side of its paper.
    inside: stock?.print ? paper(undefined) : outside,
  };
}

function paper(color: string | undefined): string {
  return color === undefined ? '#ffffff' : tint(color);
}

/** The panels of the net, each after the one it hangs on. */
function inTreeOrder({ net, base }: FoldedShape): string[] {
  return panelForest(net, base).trees.flatMap(({ root, joints }) => [
    root,
    ...joints.map(({ child }) => child),
  ]);
}

/** Flat paper rests turned about the sheet's own corner, so that three directions say all. */
function restOf(flat: FoldedShape): number[] {
  const { plane, carry } = foldedPanelOf(flat, flat.base);
  return [carry({ x: 1, y: 0 }), carry({ x: 0, y: -1 }), plane.normal].flatMap(({ x, y, z }) =>
    [x, y, z].map(brief),
  );
}

function turnPanels(shape: FoldedShape, ids: readonly string[], plan: Plan): TurnPanel[] {
  const joints = panelForest(shape.net, shape.base).trees.flatMap((tree) => tree.joints);
  const jointOf = new Map(joints.map((joint) => [joint.child, joint]));
  return ids.map((id) => {
    const folded = foldedPanelOf(shape, id);
    const undrawn = edgesOf(shape, folded).flatMap((drawn, side) => (drawn ? [] : [side]));
    const joint = jointOf.get(id);
    return {
      outline: numbers(folded.panel.outline.map(upright)),
      ...(undrawn.length > 0 && { undrawn }),
      ...(joint && { hinge: hingeOf(shape.net, joint, ids, plan) }),
    };
  });
}

function hingeOf(net: Net, { fold, parent, child }: Joint, ids: readonly string[], plan: Plan): Hinge {
  const step = plan.folding.findIndex(({ folds }) => folds.includes(fold));
  return {
    on: ids.indexOf(parent),
    line: numbers(toTheRight(panelOf(net, child), [upright(fold.from), upright(fold.to)])),
    angle: signedAngle(fold),
    ...(step >= 0 && { step: plan.first + step }),
  };
}

/** A line from that end from which the panel lies to its right. */
function toTheRight({ outline }: Panel, [from, to]: readonly [Point2, Point2]): readonly Point2[] {
  const side = outline
    .map(upright)
    .reduce((sum, { x, y }) => sum + (to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x), 0);
  return side <= 0 ? [from, to] : [to, from];
}

function turnLayers(
  edition: Edition,
  shape: FoldedShape,
  ids: readonly string[],
  layers: readonly PanelLayer[],
): TurnLayer[] {
  return ids.flatMap((id, panel) =>
    layersOf(shape, foldedPanelOf(shape, id), layers).map(({ layer, outline, edged }) => ({
      panel,
      outline: numbers(outline.map(({ x, y }) => ({ x, y: -y }))),
      color: paper(colorOf(edition, layer.piece.id.value)),
      ...(!edged && { undrawn: true as const }),
    })),
  );
}

/** From the top down, as nets are measured, to y up. */
function upright({ x, y }: FlatPoint): Point2 {
  return { x: x.mm, y: -y.mm };
}

function numbers(points: readonly Point2[]): number[] {
  return points.flatMap(({ x, y }) => [brief(x), brief(y)]);
}

/** Four decimals: a sixteenth of an inch is 1.5875 mm, and a chain of folds adds up what is rounded off. */
function brief(value: number): number {
  return Math.round(value * 10_000) / 10_000 + 0;
}
