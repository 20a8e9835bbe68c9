import type { Edition } from '../../edition/editions.ts';
import type { Piece } from '../../project/model.ts';
import { grammageOf, stockOf } from '../../shape/caliper.ts';
import { closedFlat } from '../../shape/closed-flat.ts';
import { closedThickness } from '../../shape/closed-size.ts';
import { areaOf } from '../../shape/flat-polygon.ts';
import { upright } from '../../shape/fold.ts';
import { stackOn } from '../../shape/layers.ts';
import type { Net, Panel } from '../../shape/net.ts';
import { ownNet } from '../../shape/sheets.ts';
import type { FlatThing } from './envelopes.ts';

/** A piece that lies flat once it is made, with all that lies on it and in it. */
export type Mailed = FlatThing & {
  readonly piece: Piece;
  readonly isFolded: boolean;
  /** Undefined when the weight of one of its papers is unknown. */
  readonly grams: number | undefined;
};

/** A piece closed flat, `inside` lying in it; undefined when it cannot be made or does not close on a table. */
export function mailedPiece(edition: Edition, piece: Piece, inside: readonly Piece[]): Mailed | undefined {
  const net = ownNet(edition.shapes.nets, piece.id.value);
  const closed = net && closedFlat(net);
  if (!net || !closed) return undefined;
  return {
    piece,
    isFolded: net.folds.length > 0,
    size: closed.size,
    thickness: closedThickness(edition, piece, closed, inside),
    grams: gramsOf(edition, [...stackOn(edition.shapes, piece), ...inside]),
  };
}

/** Grams of some pieces together; undefined when the weight of any paper is unknown. */
function gramsOf({ project, shapes }: Edition, pieces: readonly Piece[]): number | undefined {
  let grams = 0;
  for (const piece of pieces) {
    const weight = stockOf(piece, project)?.weight;
    const net = ownNet(shapes.nets, piece.id.value);
    if (!weight || !net) return undefined;
    grams += (grammageOf(weight.value) * squareMillimeters(net) * piece.count.value) / 1_000_000;
  }
  return grams;
}

/** What is left of a net once its waste and its openings are cut away. */
function squareMillimeters({ panels, openings = [] }: Net): number {
  const areas = (parts: readonly Pick<Panel, 'outline'>[]): number[] =>
    parts.map(({ outline }) => areaOf(outline.map(upright)));
  return sumOf(areas(panels)) - sumOf(areas(openings));
}

function sumOf(numbers: readonly number[]): number {
  return numbers.reduce((total, each) => total + each, 0);
}
