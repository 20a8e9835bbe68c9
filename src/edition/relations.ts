import { Length } from '../measure/length.ts';
import type { Edge, Piece, ScoreGroup } from '../project/model.ts';
import type { Grid } from '../shape/grid.ts';
import type { Net } from '../shape/net.ts';
import type { Layer } from '../shape/shapes.ts';
import type { Quantities } from './quantities.ts';

/** The quantities of a base, by its name (`box.front`): what a layer on it is measured against. */
export type Bases = Map<string, { readonly width: number; readonly height: number }>;

/** What 1/16 in, the narrowest reveal that shows evenly when cut by hand, is called on a metric ruler. Common practice, no source. */
const THIN: Length = Length.of(3, 2, 'mm');

/** A flat piece: its two sizes and the radius of its corners. */
export function relateFlat(piece: Piece, quantities: Quantities, bases: Bases): void {
  const id = piece.id.value;
  if (piece.corners) quantities.of(piece.corners.value, `${id} corners`);
  if (piece.body.kind !== 'flat') return;
  const { width, height } = piece.body.cut;
  bases.set(id, {
    width: quantities.of(width.value, `${id} width`),
    height: quantities.of(height.value, `${id} height`),
  });
}

/** A net by its score lines: its columns add up to its width, its rows to its height, its positions to both. */
export function relateNet(
  { id, body }: Piece,
  { grid, panels }: { readonly grid: Grid; readonly panels: Net['panels'] },
  quantities: Quantities,
  bases: Bases,
): void {
  if (body.kind !== 'net') return;
  const name = id.value;
  const { width, height } = grid.size;
  const size = {
    width: quantities.of(width, `${name} width`),
    height: quantities.of(height, `${name} height`),
  };
  bases.set(name, size);
  const columns = relateGaps(`${name} column`, [...grid.across, width], size.width, quantities);
  const rows = relateGaps(`${name} row`, [...grid.down, height], size.height, quantities);
  for (const { id: panel, box } of panels) {
    const across = quantities.find(box.right.minus(box.left));
    const upright = quantities.find(box.bottom.minus(box.top));
    if (across !== undefined && upright !== undefined) {
      bases.set(`${name}.${panel}`, { width: across, height: upright });
    }
  }
  for (const { edge, value, name: score } of scorePositions(name, body.score)) {
    const gaps = edge === 'left' || edge === 'right' ? columns : rows;
    const ordered = edge === 'right' || edge === 'bottom' ? gaps.toReversed() : gaps;
    const position = quantities.apart(value, score);
    quantities.equal({
      terms: [
        ...upTo(value, ordered, quantities).map((quantity) => ({ quantity, coefficient: 1 })),
        { quantity: position, coefficient: -1 },
      ],
    });
  }
}

/** Every score position of a piece with its name among the quantities: numbered along each edge, as written. */
export function scorePositions(
  piece: string,
  groups: readonly ScoreGroup[],
): readonly { readonly edge: Edge; readonly value: Length; readonly name: string }[] {
  const counts = new Map<Edge, number>();
  return groups.flatMap(({ from: { value: edge }, at }) =>
    at.map(({ value }) => {
      const number = (counts.get(edge) ?? 0) + 1;
      counts.set(edge, number);
      return { edge, value, name: `${piece} score ${number} from ${edge}` };
    }),
  );
}

/** A layer: what shows on its two sides and its own size add up to its base. */
export function relateLayer(layer: Layer, quantities: Quantities, bases: Bases): void {
  const base = bases.get(layer.baseName);
  const own = bases.get(layer.piece.id.value);
  if (!base || !own || layer.turn % 90 !== 0) return;
  const id = layer.piece.id.value;
  const lying = layer.turn % 180 !== 0;
  const { left, right, top, bottom } = layer.reveals;
  const { across, upright } = layer.centred;
  const width = { base: base.width, layer: lying ? own.height : own.width };
  const height = { base: base.height, layer: lying ? own.width : own.height };
  if (across && quantities.strictness === 'half reveals') relateCentred(id, left, width, quantities);
  else relateReveals(id, [left, right], width, quantities);
  if (upright && quantities.strictness === 'half reveals') relateCentred(id, top, height, quantities);
  else relateReveals(id, [top, bottom], height, quantities);
}

/** The distances a layer is placed by. */
export function relatePlacement({ id, placement }: Piece, quantities: Quantities): void {
  for (const edge of ['left', 'right', 'top', 'bottom'] as const) {
    const distance = placement[edge];
    if (distance) quantities.reveal(distance.value, `${id.value} from ${edge}`);
  }
}

type Extents = { readonly base: number; readonly layer: number };

function relateReveals(
  id: string,
  reveals: readonly [Length, Length],
  { base, layer }: Extents,
  quantities: Quantities,
): void {
  const shown = reveals.flatMap((reveal) => {
    if (reveal.sign === 0) return [];
    const quantity = quantities.reveal(reveal, `${id} reveal`);
    keepShowing(quantity, reveal, 1, quantities);
    return [{ quantity, coefficient: 1 }];
  });
  quantities.equal({
    terms: [...shown, { quantity: layer, coefficient: 1 }, { quantity: base, coefficient: -1 }],
  });
}

/** A centred layer whose reveals, equal on both sides, may be a half step. */
function relateCentred(id: string, reveal: Length, { base, layer }: Extents, quantities: Quantities): void {
  const both = reveal.sign === 0 ? [] : [quantities.doubledReveal(reveal, `${id} reveal`)];
  for (const quantity of both) {
    keepShowing(quantity, reveal, 2, quantities);
    const same = quantities.find(reveal, 'reveal');
    if (same !== undefined) {
      quantities.equal({
        terms: [
          { quantity, coefficient: 1 },
          { quantity: same, coefficient: -2 },
        ],
      });
    }
  }
  quantities.equal({
    terms: [
      ...both.map((quantity) => ({ quantity, coefficient: 1 })),
      { quantity: layer, coefficient: 1 },
      { quantity: base, coefficient: -1 },
    ],
  });
}

/** What was not thin does not become so. */
function keepShowing(quantity: number, reveal: Length, parts: 1 | 2, quantities: Quantities): void {
  if (!reveal.lessThan(THIN)) quantities.keepOver(quantity, THIN.times(parts));
}

/** The gaps between edges, of which the first is at zero and not named. */
function relateGaps(name: string, edges: readonly Length[], whole: number, quantities: Quantities): number[] {
  const gaps = edges.map((edge, index) => quantities.of(edge.minus(edges[index - 1] ?? Length.zero), name));
  quantities.equal({
    terms: [...gaps.map((quantity) => ({ quantity, coefficient: 1 })), { quantity: whole, coefficient: -1 }],
  });
  return gaps;
}

/** The gaps from one edge up to a position. */
function upTo(position: Length, gaps: readonly number[], quantities: Quantities): number[] {
  let reached = Length.zero;
  return gaps.filter((gap) => {
    const inside = reached.lessThan(position);
    reached = reached.plus(quantities.own(gap));
    return inside;
  });
}
