import { made, mapOf, type Value } from './grammar.ts';
import { flag, listed, named, needed, optional, plainly, statedUnit, UNIT, usually } from './keys.ts';
import type { Holds, Project, Stock } from './model.ts';
import { asPiece, type WrittenPiece, wholePiece } from './read-pieces.ts';
import { asStock } from './read-stock.ts';
import type { Reader, SharedValue } from './reader.ts';
import { findShared, isShared } from './shared.ts';
import type { At } from './source.ts';
import { asChoice, asCount, asText, asVolume } from './values.ts';

/** The measurement block, and every piece that was written, those that could not be read whole included. */
type MeasuredBlock = {
  readonly block: Pick<Project, 'unit' | 'metric' | 'stock' | 'pieces' | 'holds' | 'names'>;
  readonly written: readonly WrittenPiece[];
};

/** What the finished box is for. Allergens are kept as written; a rule knows their names. */
const asHolds: Value<Holds> = made(
  mapOf('{ item: seed packet, size: 3 x 4 x 1/8 }', {
    item: needed(optional(asText, 'What goes in, in the singular.')),
    size: optional(asVolume, 'Three lengths.'),
    count: usually(asCount(1, 1000), '1', 'How many.'),
    food: flag('`yes` if it is something to eat. The sheet then says what to watch for.'),
    allergens: listed(asText, 'What is in it, as a list: `[wheat, milk]`.'),
  }),
  ({ item, ...holds }, _, { at }) => ({ ...holds, item: item?.value ?? '', at }),
);

const STEP = asChoice(['whole', 'half'] as const);

const MEASUREMENTS = mapOf('unit:, stock: and pieces: under it', {
  unit: UNIT,
  metric: plainly(STEP, 'whole', 'Whether the metric edition is in `whole` or may use `half` millimeters.'),
  stock: named(asStock, 'stock by name', 'The papers, each under a short name of yours.'),
  pieces: named(asPiece, 'pieces by name', 'What is cut, each under a short name of yours.'),
  holds: optional(asHolds, 'What the finished box is for.'),
});

/** `measurements:` of a sheet. Bare numbers in it are in its own unit. */
export const asMeasurements: Value<MeasuredBlock> = {
  schema: MEASUREMENTS.schema,
  read: (node, spot, outside) => {
    const reader = { ...outside, unit: statedUnit(node, outside) };
    const read = MEASUREMENTS.read(node, spot, reader);
    if (!read) return undefined;
    const written = read.pieces.values.map(({ value }) => value);
    const used = usedShared(written, reader);
    const stock = [...read.stock.values.map(({ value }) => value), ...used.stock];
    const block = {
      ...read,
      stock: byId(stock),
      pieces: byId(written.flatMap((piece) => wholePiece(piece) ?? [])),
      names: { pieces: read.pieces.names, stock: [...read.stock.names, ...used.names] },
    };
    return { block, written };
  },
};

function byId<T extends { readonly id: At<string> }>(all: readonly T[]): ReadonlyMap<string, T> {
  return new Map(all.map((each) => [each.id.value, each]));
}

/** The shared stock that pieces name, each under the name they use: `shared.moss`. */
function usedShared(
  pieces: readonly WrittenPiece[],
  reader: Reader,
): { readonly names: readonly string[]; readonly stock: readonly Stock[] } {
  const used = new Map<string, SharedValue | undefined>();
  for (const { stock: name } of pieces) {
    if (name && isShared(name.value)) used.set(name.value, findShared('stock', name, reader));
  }
  const stock = [...used].flatMap(([key, found]) => {
    return (
      (found && asStock.read(found.value, { key, path: `stock.${key}`, at: found.name.at }, reader)) ?? []
    );
  });
  return { names: [...used.keys()], stock };
}
