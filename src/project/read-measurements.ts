import { Fields, type namedValues } from './fields.ts';
import { KNOWN_KEYS } from './known-keys.ts';
import type { Piece, Project, Stock } from './model.ts';
import { present } from './optional.ts';
import { asHolds } from './read-holds.ts';
import { readPiece, type WrittenPiece, wholePiece } from './read-pieces.ts';
import { readStock } from './read-stock.ts';
import { type Reader, refuse } from './reader.ts';
import { findShared, isShared } from './shared.ts';
import type { At } from './source.ts';
import { asChoice, asUnit } from './values.ts';
import type { YamlNode } from './yaml-tree.ts';

/** The measurement block, and the reader that knows its unit. */
export type Measured = {
  readonly block: Pick<Project, 'unit' | 'metric' | 'stock' | 'pieces' | 'holds' | 'names'>;
  /** Every piece that was written, those that could not be read whole included. */
  readonly written: readonly WrittenPiece[];
  readonly reader: Reader;
};

/** Reads `measurements:` of a sheet. */
export function readMeasurements(sheet: Fields, unread: Reader): Measured {
  const node = sheet.node('measurements');
  if (node && node.kind !== 'map') refuse(node, 'measurements', 'unit:, stock: and pieces: under it', unread);
  const map = node?.kind === 'map' ? node : ({ kind: 'map', entries: [], at: sheet.at } as const);
  const place = sheet.keyPlace('measurements');
  const fields = new Fields(map, 'measurements', unread, place, KNOWN_KEYS.measurements);
  const unit = fields.read('unit', asUnit)?.value ?? 'in';
  const ownFile = sheet.at.file;
  const reader: Reader = { ...unread, unitIn: (file) => (file === ownFile ? unit : unread.unitIn(file)) };
  const own = new Fields(map, 'measurements', reader, place);
  const pieces = readNamed(own.named('pieces', 'pieces by name'), (id, value) =>
    readPiece(id, value, reader),
  );
  const stock = readNamed(own.named('stock', 'stock by name'), (id, value) => readStock(id, value, reader));
  const written = [...pieces.values.values()];
  const used = usedShared(written, reader);
  const block = {
    unit,
    metric: own.read('metric', asChoice(['whole', 'half'] as const))?.value ?? 'whole',
    stock: new Map([...stock.values, ...used.values]),
    pieces: new Map(written.flatMap((each) => wholeEntry(each))),
    ...present('holds', own.read('holds', asHolds)),
    names: { pieces: pieces.names, stock: [...stock.names, ...used.names] },
  };
  return { block, written, reader };
}

function wholeEntry(written: WrittenPiece): [string, Piece][] {
  const piece = wholePiece(written);
  return piece ? [[piece.id.value, piece]] : [];
}

type Named<T> = { readonly names: readonly string[]; readonly values: ReadonlyMap<string, T> };

function readNamed<T>(
  entries: ReturnType<typeof namedValues>,
  read: (name: At<string>, value: YamlNode) => T | undefined,
): Named<T> {
  const values = new Map<string, T>();
  for (const { name, value } of entries) {
    const each = read(name, value);
    if (each !== undefined) values.set(name.value, each);
  }
  return { names: entries.map(({ name }) => name.value), values };
}

/** The shared stock that pieces name, each under the name they use: `shared.moss`. */
function usedShared(pieces: readonly WrittenPiece[], reader: Reader): Named<Stock> {
  const names = new Set<string>();
  const values = new Map<string, Stock>();
  for (const { stock: name } of pieces) {
    if (!name || !isShared(name.value)) continue;
    const again = values.has(name.value);
    names.add(name.value);
    const entry = again ? undefined : findShared('stock', name, reader);
    const stock = entry && readStock({ value: name.value, at: entry.key.at }, entry.value, reader);
    if (stock) values.set(name.value, stock);
  }
  return { names: [...names], values };
}
