import type { Twin } from '../edition/editions.ts';
import type { Length } from '../measure/length.ts';
import { EDGES, type Edge } from '../project/net-as-written.ts';
import { contains, type Point2 } from '../shape/flat-polygon.ts';
import type { Margins } from '../shape/net.ts';
import type { Layer } from '../shape/shapes.ts';
import { magnitudeOf, revealOn } from '../words/reveals.ts';
import type { PiledLayer } from './pile.ts';
import type { DrawingStyle } from './style.ts';
import { listed, spokenLength } from './words.ts';

/** What shows all round when it is the same on every side, in both editions. */
function allRound(layer: Twin<Layer>): Twin | undefined {
  return isEvenIn(layer.inch) && isEvenIn(layer.metric) ? revealOn(layer, 'left') : undefined;
}

/** `with ⅛ inch (3 millimeters) showing all round`, or side by side; sides on which the layer passes its base are said so. */
export function spokenReveals(layer: Twin<Layer>, style: DrawingStyle): string {
  const { say } = style;
  const even = allRound(layer);
  if (even && even.inch.sign === 0) return say('drawing-flush');
  if (even && even.inch.sign > 0) return say('drawing-all-round', { length: spokenLength(even, style) });
  const sides = EDGES.map((side) => {
    const reveal = revealOn(layer, side);
    if (reveal.inch.sign === 0) return say(`drawing-flush-${side}`);
    const key = reveal.inch.sign < 0 ? `drawing-past-${side}` : `drawing-shows-${side}`;
    return say(key, { length: spokenLength(magnitudeOf(reveal), style) });
  });
  return say('drawing-uneven', { sides: listed(sides, say) });
}

function isEvenIn({ border, reveals }: Layer): boolean {
  return border ? border.isEven : isEven(reveals);
}

function isEven({ left, right, top, bottom }: Margins): boolean {
  return [right, top, bottom].every((each: Length) => each.equals(left));
}

/** What shows of a base beside one layer, from the base's edge to the layer's, on the drawing. */
export type RevealGap = {
  readonly length: Twin;
  /** What is said beside it, if anything. */
  readonly says: 'all-round' | 'both-sides' | 'past-edge' | undefined;
  /** The side of the whole drawing its label belongs to. */
  readonly side: Edge;
  readonly outer: Point2;
  readonly inner: Point2;
};

/** Where along a layer's side a gap is measured, the best place first. */
const PLACES = [0.5, 0.36, 0.64, 0.22, 0.78, 0.1, 0.9];

/** What a line over bare paper is worth, in distances that keep it apart from the next. */
const CLEAR = 0.6;

/** The gaps to dimension, one for each decision: how far round, or how far from one edge, how far down. */
export function gapsOf(placed: readonly PiledLayer[], scale: number, apart: number): RevealGap[] {
  const gaps: RevealGap[] = [];
  for (const one of placed) {
    for (const { side: own, says } of sidesToMeasure(one)) {
      const length = revealOn(one.layer, own);
      if (length.inch.sign === 0) continue;
      const choices = PLACES.map((share) => gapAt(one, own, share, scale));
      const merit = (choice: GapChoice): number =>
        Math.min(apart, ...gaps.map((gap) => distanceFrom(gap, choice))) / apart +
        (isClear(choice, one, placed, scale) ? CLEAR : 0);
      const most = Math.max(...choices.map(merit));
      const chosen = choices.find((choice) => merit(choice) > most - 1e-9);
      if (chosen) gaps.push({ length, says: length.inch.sign < 0 ? 'past-edge' : says, ...chosen });
    }
  }
  return gaps;
}

/** A side at which a layer is measured, and what is said of the other sides there. */
type MeasuredSide = { readonly side: Edge; readonly says?: 'all-round' | 'both-sides' | undefined };

/** One side where all are alike, else one across and one down; of two outlines one where they are nearest, and none where that is at no side. */
function sidesToMeasure({ layer, drawn }: PiledLayer): readonly MeasuredSide[] {
  const { border, reveals } = drawn;
  if (border) {
    const nearest = EDGES.filter((side) => Math.abs(reveals[side].mm - border.least.mm) < 0.1);
    return border.isEven ? nearest.slice(0, 1).map((side) => ({ side, says: 'all-round' })) : [];
  }
  if (allRound(layer)) return [{ side: 'left', says: 'all-round' }];
  return [decidedSide(layer, drawn, 'left', 'right'), decidedSide(layer, drawn, 'top', 'bottom')];
}

/** Of two opposite sides the one that was chosen; either stands for both where the layer lies in the middle. */
function decidedSide(layer: Twin<Layer>, { piece, reveals }: Layer, near: Edge, far: Edge): MeasuredSide {
  const { placement } = piece;
  if (placement[near] || placement[far]) return { side: placement[near] ? near : far };
  const isMiddle = [layer.inch, layer.metric].every((each) => each.reveals[near].equals(each.reveals[far]));
  if (isMiddle) return { side: near, says: 'both-sides' };
  return { side: reveals[far].lessThan(reveals[near]) ? far : near };
}

type GapChoice = Pick<RevealGap, 'side' | 'outer' | 'inner'>;

/** Square to the base's edge, from it to the layer's farthest edge or corner on that side, `share` of the way along that edge. */
function gapAt({ drawn, onBase, basePose }: PiledLayer, own: Edge, share: number, scale: number): GapChoice {
  const across = own === 'left' || own === 'right';
  const reach = (point: Point2): number =>
    (own === 'left' || own === 'top' ? -1 : 1) * (across ? point.x : point.y);
  const most = Math.max(...onBase.map(reach));
  const touching = onBase.filter((point) => most - reach(point) < 0.02).map(({ x, y }) => (across ? y : x));
  const [start, end] = [Math.min(...touching), Math.max(...touching)];
  const along = start + (end - start) * share;
  const edge = { left: 0, top: 0, right: drawn.base.width.mm, bottom: drawn.base.height.mm }[own];
  const inward = own === 'left' || own === 'top' ? -most : most;
  const at = (value: number): Point2 => {
    const { x, y } = basePose(across ? { x: value, y: along } : { x: along, y: value });
    return { x: x * scale, y: y * scale };
  };
  const [outer, inner] = [at(edge), at(inward)];
  return { outer, inner, side: sideOf(basePose, own) };
}

/** The side of the drawing that a side of a (turned) base faces most. */
function sideOf(basePose: (point: Point2) => Point2, own: Edge): Edge {
  const ways: Readonly<Record<Edge, Point2>> = {
    left: { x: -1, y: 0 },
    right: { x: 1, y: 0 },
    top: { x: 0, y: -1 },
    bottom: { x: 0, y: 1 },
  };
  const [origin, tip] = [basePose({ x: 0, y: 0 }), basePose(ways[own])];
  const [x, y] = [tip.x - origin.x, tip.y - origin.y];
  if (Math.abs(x) >= Math.abs(y)) return x < 0 ? 'left' : 'right';
  return y < 0 ? 'top' : 'bottom';
}

/** How far apart two gaps' lines leave the drawing, in millimeters of paper. */
function distanceFrom(gap: RevealGap, choice: GapChoice): number {
  if (gap.side !== choice.side) return Number.POSITIVE_INFINITY;
  const across = gap.side === 'left' || gap.side === 'right';
  return Math.abs(across ? gap.outer.y - choice.outer.y : gap.outer.x - choice.outer.x);
}

/** Whether no other layer lies under the dimension line; the base itself and its own bases always do. */
function isClear(
  { outer, inner }: GapChoice,
  one: PiledLayer,
  placed: readonly PiledLayer[],
  scale: number,
): boolean {
  const others = placed.slice(placed.indexOf(one) + 1).map(({ sheet }) => sheet.outline);
  const samples = [0.1, 0.3, 0.5, 0.7, 0.9].map((share) => ({
    x: (outer.x + (inner.x - outer.x) * share) / scale,
    y: (outer.y + (inner.y - outer.y) * share) / scale,
  }));
  return !others.some((outline) => samples.some((sample) => contains(outline, sample)));
}
