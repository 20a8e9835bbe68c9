import type { Size } from '../measure/size.ts';
import type { RoundedCorners } from '../project/corners.ts';
import type { Finding } from '../project/finding.ts';
import type { Piece } from '../project/model.ts';
import { faceOf, type Ref } from '../project/ref.ts';
import { borderOf } from './border.ts';
import { fromBox } from './layer-outline.ts';
import { lieOn } from './lying.ts';
import { boxSize, type FlatPoint, type Net, type Opening } from './net.ts';
import { largestPanel } from './panel-area.ts';
import { type Layer, onlyPanel, type Shapes, type Under, underOf } from './shapes.ts';
import { type Nets, ownNet, sheetsOf } from './sheets.ts';
import { type Reach, turned, turnedCircle, turnedOutline } from './turning.ts';

/**
 * Lays every piece that has a base on it, bases first, and finds the bases that cannot be. A piece whose base (or own
 * size) is not known is left out.
 */
export function layPieces(pieces: readonly Piece[], nets: Nets): Pick<Shapes, 'layers' | 'findings'> {
  const findings: Finding[] = [];
  const layers: Layer[] = [];
  const { circles, order } = stackingOrder(new Map(pieces.map((piece) => [piece.id.value, piece])));
  findings.push(...circles.map(findCircle));
  for (const piece of order) {
    const own = ownNet(nets, piece.id.value);
    const on = piece.on?.value;
    if (!own || !on) continue;
    const under = underOf(nets, on);
    if (under) layers.push(lay(piece, own, on, under));
    else if (ownNet(nets, on.piece)) findings.push(findPanelMissing(on, piece, nets));
  }
  return { layers, findings };
}

/**
 * What of a piece lies on its base: a flat piece whole, a folded one with its largest panel (the first of equals).
 */
function layerSize(net: Net): Size {
  const panel = onlyPanel(net) ?? (net.folds.length > 0 ? largestPanel(net) : undefined);
  return panel ? boxSize(panel.box) : net.size;
}

function findPanelMissing(
  { piece: id, part: name = '' }: Ref,
  layer: Piece,
  nets: Nets,
): Finding<'unknown-reference'> {
  const among = sheetsOf(nets, id).flatMap(({ net: { panels, openings = [] } }) => [
    ...panels.map((panel) => panel.name ?? panel.id),
    ...openings.map((opening) => opening.name),
  ]);
  const facts = { what: 'panel', name, of: id, layer: layer.id.value, among };
  return { rule: 'unknown-reference', at: layer.on?.at ?? layer.at, facts };
}

/** What a layer on this base is measured against; undefined where the base isn't known. */
export function baseSize(ref: Ref, nets: Nets): Size | undefined {
  const under = underOf(nets, ref);
  return under && sizeUnder(under);
}

/** Of a sheet with one panel that panel's, which an outline may have left smaller than the sheet. */
function sizeUnder({ net, panel }: Under): Size {
  return panel ? boxSize(panel.box) : net.size;
}

/** One piece on its base; behind an opening it lies in the middle of that. */
function lay(piece: Piece, own: Net, on: Ref, under: Under): Layer {
  const [base, size] = [sizeUnder(under), layerSize(own)];
  const { placement, corners } = piece;
  const middle = under.opening && middleOf(under.opening, base, on);
  const reachAt = (turn: number): Reach => reachOf(own, size, turn, corners);
  const layer = { piece, under, on, base, ...lieOn(base, { size, placement, reachAt, middle }) };
  const border = under.net.shape && !under.opening && borderOf(layer, own);
  return { ...layer, ...(border && { border }) };
}

/** What is round reaches as far however it is turned; what else has an outline by its points. */
function reachOf(own: Net, size: Size, turn: number, rounded: RoundedCorners | undefined): Reach {
  const panel = onlyPanel(own);
  if (own.shape?.round) return turnedCircle(size, turn);
  if (!own.shape || !panel || turn % 90 === 0) return turned(size, turn, rounded);
  return turnedOutline(fromBox(panel), size, turn);
}

/** The middle of an opening on a face of its panel. */
function middleOf({ margins }: Opening, { width, height }: Size, on: Ref): FlatPoint {
  const [near, far] = faceOf(on) === 'inside' ? [margins.right, margins.left] : [margins.left, margins.right];
  return {
    x: near.plus(width.minus(far)).half(),
    y: margins.top.plus(height.minus(margins.bottom)).half(),
  };
}

/** A piece and everything that lies on it, layer on layer. */
export function stackOn({ layers }: Pick<Shapes, 'layers'>, piece: Piece): readonly Piece[] {
  const stack = [piece];
  const ids = new Set([piece.id.value]);
  for (const layer of layers) {
    if (!ids.has(layer.on.piece)) continue;
    ids.add(layer.piece.id.value);
    stack.push(layer.piece);
  }
  return stack;
}

type Stacking = { readonly order: readonly Piece[]; readonly circles: readonly (readonly Piece[])[] };

/** Bases before what lies on them, else as written. What is in a circle, or lies on one, is in no order. */
function stackingOrder(pieces: ReadonlyMap<string, Piece>): Stacking {
  const order = new Set<Piece>();
  const circles: (readonly Piece[])[] = [];
  const lost = new Set<Piece>();
  for (const piece of pieces.values()) {
    const chain: Piece[] = [];
    let next: Piece | undefined = piece;
    while (next && !order.has(next) && !lost.has(next) && !chain.includes(next)) {
      chain.push(next);
      next = next.on && pieces.get(next.on.value.piece);
    }
    const circular = next && chain.includes(next);
    if (circular && next) circles.push(chain.slice(chain.indexOf(next)));
    const dead = circular || (next && lost.has(next));
    for (const each of chain.toReversed()) (dead ? lost : order).add(each);
  }
  return { order: [...order], circles };
}

function findCircle(circle: readonly Piece[]): Finding<'circular-base'> {
  const laid = circle.map(({ id, on, at }) => ({ value: id.value, at: on?.at ?? at }));
  const [first] = laid;
  if (!first) throw new Error('a circle of bases without a piece');
  return { rule: 'circular-base', at: first.at, facts: { circle: laid } };
}
