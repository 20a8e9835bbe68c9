import type { Unit } from '../../measure/length.ts';
import { made, sectionOf, turned, type Value } from '../grammar/grammar.ts';
import { named, optional, plainly, UNIT } from '../grammar/keys.ts';
import { asMeant } from '../grammar/misspelled.ts';
import { readValue } from '../grammar/read-value.ts';
import type { Reader, SharedValue } from '../grammar/reader.ts';
import { asChoice, asText, asUnit } from '../grammar/values.ts';
import type { Project } from '../model.ts';
import type { At } from '../source.ts';
import type { Stock } from '../stock.ts';
import { entryOf, type YamlNode } from '../yaml/yaml-node.ts';
import { asHolds } from './read-holds.ts';
import { asPiece, type WrittenPiece } from './read-piece.ts';
import { asStock } from './read-stock.ts';
import { findShared, isShared } from './shared.ts';
import { VARIANTS } from './variants.ts';

/** The measurement block, and every piece that was written, those that could not be read whole included. */
export type MeasuredBlock = {
  readonly block: Pick<
    Project,
    'unit' | 'metric' | 'stock' | 'substitutes' | 'pieces' | 'called' | 'holds' | 'names'
  >;
  readonly written: readonly WrittenPiece[];
};

const STEP = asChoice(['whole', 'half'] as const);

const MEASUREMENTS = sectionOf('unit:, stock: and pieces: under it', {
  unit: UNIT,
  metric: plainly(STEP, 'whole', 'Whether the metric edition is in `whole` or may use `half` millimeters.'),
  stock: named(asStock, 'stock by name', 'The papers, each under a short name of yours.'),
  pieces: named(asPiece, 'pieces by name', 'What is cut, each under a short name of yours.'),
  names: named(
    asText,
    'names of panels',
    'What panels and openings are called on paper, if not by their names in the file.',
  ),
  holds: optional(asHolds, 'What the finished box is for.'),
  variants: VARIANTS,
});

/** `measurements:` of a sheet. Bare numbers in it are in its own unit. */
export const asMeasurements: Value<MeasuredBlock> = made(
  turned(MEASUREMENTS.schema, ({ node, reader }) => ({
    value: MEASUREMENTS,
    reader: { ...reader, unit: statedUnit(node, reader) },
  })),
  (read, { reader }) => {
    const written = read.pieces.values.map(({ value }) => value);
    const used = usedShared(
      written.flatMap((piece) => piece.stock ?? []),
      reader,
    );
    const stock = [...read.stock.values.map(({ value }) => value), ...used.stock];
    const substitutes = substitutesOf(stock, reader);
    // Half a piece would only mislead every rule that follows.
    const pieces = unburdened(written, reader).flatMap(({ body, ...piece }) =>
      body ? [{ ...piece, body }] : [],
    );
    const { variants: _, ...block } = {
      ...read,
      stock: byId(stock),
      substitutes: byId(substitutes),
      pieces: byId(pieces),
      called: read.names.values,
      names: { pieces: read.pieces.names, stock: [...read.stock.names, ...used.names] },
    };
    return { block, written };
  },
);

/** More than anybody sticks on one piece by name: each is held against every other. */
const MOST_LAYERS = 500;

/** Pieces without those that are too many on their base, the first of which is reported. */
function unburdened(pieces: readonly WrittenPiece[], reader: Reader): readonly WrittenPiece[] {
  const burdens = new Map<string, WrittenPiece[]>();
  const kept = pieces.filter((piece) => {
    const base = piece.on?.value.piece;
    if (base === undefined) return true;
    const layers = burdens.get(base) ?? [];
    burdens.set(base, layers);
    return layers.push(piece) <= MOST_LAYERS;
  });
  for (const [base, { length: count, [MOST_LAYERS]: past }] of burdens) {
    const facts = { what: `layers on ${base}`, count, most: MOST_LAYERS };
    if (past?.on) reader.report({ rule: 'too-many', at: past.on.at, facts });
  }
  return kept;
}

/** The unit a block states, which must be known before anything else of it is read; nothing is reported. */
function statedUnit(node: YamlNode, reader: Reader): Unit {
  const muted = { ...reader, report: () => {} };
  const unit = entryOf(asMeant(node, MEASUREMENTS), 'unit')?.value;
  return (unit && readValue(asUnit, unit, { key: 'unit', at: unit.at }, muted)?.value) ?? 'in';
}

function byId<T extends { readonly id: At<string> }>(all: readonly T[]): ReadonlyMap<string, T> {
  return new Map(all.map((each) => [each.id.value, each]));
}

/** What takes the place of stocks, from the same sheet or from `shared/`. */
function substitutesOf(stock: readonly Stock[], reader: Reader): readonly Stock[] {
  const names = stock.flatMap(({ instead }) => instead ?? []);
  const own = names.flatMap((name) => {
    if (isShared(name.value)) return [];
    const found = stock.find(({ id }) => id.value === name.value);
    if (found) return [found];
    const among = stock.map(({ id }) => id.value);
    reader.report({
      rule: 'unknown-reference',
      at: name.at,
      facts: { what: 'stock', name: name.value, among },
    });
    return [];
  });
  return [...own, ...usedShared(names, reader).stock];
}

/** The shared stock that is named, each under the name they use: `shared.moss`. */
function usedShared(
  named: readonly At<string>[],
  reader: Reader,
): { readonly names: readonly string[]; readonly stock: readonly Stock[] } {
  const used = new Map<string, SharedValue | undefined>();
  for (const name of named) {
    if (isShared(name.value)) used.set(name.value, findShared('stock', name, reader));
  }
  const stock = [...used].flatMap(([key, found]) => {
    const spot = found && { key, path: ['stock', key], at: found.name.at };
    return (spot && readValue(asStock, found.value, spot, reader)) ?? [];
  });
  return { names: [...used.keys()], stock };
}
