import type { Finding } from './finding.ts';
import { type Reader, refuse, reportMissing } from './reader.ts';
import { listSchema, type Schema } from './schema.ts';
import type { At, Place } from './source.ts';
import { textNode, type YamlText } from './yaml-text.ts';
import type { YamlEntry, YamlNode } from './yaml-tree.ts';

/** Where a value stands. */
export type Spot = {
  /** The key it stands behind, which names it in findings. */
  readonly key: string;
  /** The named thing it is or belongs to, and the way there: `pieces.box`, `pieces.box.at`. */
  readonly path?: string | undefined;
  /** Where its defaults stand, and where what is missing in it is reported. */
  readonly at: Place;
};

/** A kind of value: how it is read, and what an editor may be told of it. */
export type Value<T> = {
  readonly schema: Schema;
  /** What it cannot take it reports, and gives undefined. */
  readonly read: (node: YamlNode, spot: Spot, reader: Reader) => T | undefined;
  /** Reports why there is nothing behind the key, if it is not simply missing. */
  readonly reportNothing?: (key: YamlText, reader: Reader) => boolean;
};

type Entries = ReadonlyMap<string, YamlEntry>;

/** A key of a map, or a few that make one value together. `map` is where the whole map stands. */
export type Key<T, Sure extends boolean> = {
  readonly schema: Schema;
  readonly keys?: Keys;
  readonly needed?: boolean;
  /** Whether a map always has it: without it the map is none. */
  readonly sure: Sure;
  readonly read: (entries: Entries, key: string, map: Spot, reader: Reader) => T | undefined;
};

export type Keys = { readonly [key: string]: Key<unknown, boolean> };

/** `on hand` is `onHand` in what is read. */
type Joined<K> = K extends `${infer First} ${infer Rest}` ? `${First}${Capitalize<Rest>}` : K;
type ReadOf<K> = K extends Key<infer T, boolean> ? T : never;
type Merged<T> = { [P in keyof T]: T[P] };

/** What a map with these keys is read as. */
export type ReadMap<K extends Keys> = Merged<
  { readonly [P in keyof K as K[P]['sure'] extends true ? Joined<P> : never]: ReadOf<K[P]> } & {
    readonly [P in keyof K as K[P]['sure'] extends true ? never : Joined<P>]?: ReadOf<K[P]>;
  }
>;

/** A key that may be left out. */
export function optional<T>(value: Value<T>, says: string): Key<T, false> {
  const schema = { ...value.schema, description: says };
  return {
    schema,
    sure: false,
    read: (entries, key, map, reader) => behind(value, entries, key, map, reader),
  };
}

/** A key whose absence is reported; the rest of the map counts. */
export function needed<T, Sure extends boolean>(key: Key<T, Sure>): Key<T, Sure> {
  return {
    ...key,
    needed: true,
    read: (entries, name, map, reader) => {
      if (!entries.has(name)) reportMissing(name, whereOf(map), map.at, reader);
      return key.read(entries, name, map, reader);
    },
  };
}

/** A key without which there is no map. */
export function required<T>(value: Value<T>, says: string): Key<T, true> {
  return { ...needed(optional(value, says)), sure: true };
}

/** A key that has a usual value, written as a person would write it. */
export function usually<T>(value: Value<T>, usual: string, says: string): Key<T, true> {
  return {
    schema: { ...value.schema, description: says, default: usual },
    sure: true,
    read: (entries, key, map, reader) => {
      return (
        behind(value, entries, key, map, reader) ??
        value.read(textNode(usual, map.at), { key, at: map.at }, reader)
      );
    },
  };
}

/** The same, of which only the value counts and not where it stands. */
export function plainly<T>(value: Value<At<T>>, usual: string, says: string): Key<T, true> {
  const { read, ...key } = usually(value, usual, says);
  return { ...key, read: (...where) => read(...where)?.value };
}

/** A list; one value alone is a list of one, nothing is an empty one. */
export function listed<T>(value: Value<T>, says: string): Key<readonly T[], true> {
  return {
    schema: { ...listSchema(value.schema), description: says },
    sure: true,
    read: (entries, key, _, reader) => {
      const node = entries.get(key)?.value;
      const items = node?.kind === 'list' ? node.items : node ? [node] : [];
      return items
        .filter((item) => item.kind !== 'nothing')
        .map((item) => value.read(item, { key, at: item.at }, reader))
        .filter((read) => read !== undefined);
    },
  };
}

/** A map that is all defaults where it is not there. */
export function section<T>(map: Value<T>, says: string): Key<T, true> {
  return {
    schema: { ...map.schema, type: ['object', 'null'], description: says },
    sure: true,
    read: (entries, key, within, reader) => {
      const entry = entries.get(key);
      const spot = { ...inside(within, key), at: entry?.key.at ?? within.at };
      return readWhole(map, entry?.value, spot, reader);
    },
  };
}

/**
 * Reads a map of which every key has a default; what is there and is no map is reported.
 * @throws when one of its keys is required.
 */
export function readWhole<T>(map: Value<T>, node: YamlNode | undefined, spot: Spot, reader: Reader): T {
  if (node?.kind === 'text' || node?.kind === 'list') map.read(node, spot, reader);
  const entries = node?.kind === 'map' ? node : ({ kind: 'map', entries: [], at: spot.at } as const);
  const read = map.read(entries, spot, reader);
  if (read === undefined) throw new Error(`${spot.key} has a key without a default`);
  return read;
}

/** What stands under names that people chose; `names` are those of what could not be read, too. */
export type Named<T> = {
  readonly names: readonly string[];
  readonly values: readonly { readonly name: At<string>; readonly value: T }[];
};

/** A map from names that people chose; nothing is an empty one. `form` says how it is written. */
export function named<T>(value: Value<T>, form: string, says: string): Key<Named<T>, true> {
  return {
    schema: { type: ['object', 'null'], additionalProperties: value.schema, description: says },
    sure: true,
    read: (entries, key, _, reader) => {
      const node = entries.get(key)?.value;
      if (node && node.kind !== 'map' && node.kind !== 'nothing') refuse(node, key, form, reader);
      const all = node?.kind === 'map' ? node.entries : [];
      const values = all.flatMap(({ key: { text, at }, value: each }) => {
        const read = value.read(each, { key: text, path: `${key}.${text}`, at }, reader);
        return read === undefined ? [] : [{ name: { value: text, at }, value: read }];
      });
      return { names: all.map(({ key: { text } }) => text), values };
    },
  };
}

/** Keys that make one value together, of which there is none when anything in it has to be reported. */
export function together<K extends Keys, T>(
  keys: K,
  make: (read: ReadMap<K>, reader: Reader) => T | undefined,
): Key<T, false> {
  return {
    schema: {},
    keys,
    sure: false,
    read: (entries, _, map, reader) => {
      let isSound = true;
      const report = (finding: Finding): void => {
        isSound = false;
        reader.report(finding);
      };
      const read = readKeys(keys, entries, map, { ...reader, report });
      return read && isSound ? make(read, reader) : undefined;
    },
  };
}

/** Of a few keys exactly one is to be there. */
export function exactlyOne(names: readonly string[]): Key<never, false> {
  return {
    schema: {},
    keys: {},
    sure: false,
    read: (entries, _, map, { report }) => {
      const [first, second] = names.flatMap((name) => entries.get(name)?.key ?? []);
      const key = names.join(' or ');
      if (!first) report({ rule: 'missing-value', at: map.at, facts: { key, where: whereOf(map) } });
      if (!first || !second) return undefined;
      const form = `either ${first.text} or ${second.text}, not both`;
      const facts = { key: second.text, expected: form, actual: second.text };
      report({ rule: 'unexpected-value', at: second.at, facts });
      return undefined;
    },
  };
}

/** A map of known keys; any other is reported unless it is open to them. `form` says how it is written. */
export function mapOf<K extends Keys>(form: string, keys: K, isOpen = false): Value<ReadMap<K>> {
  const schema = mapSchema(keys);
  const known = Object.keys(schema.properties ?? {});
  return {
    schema,
    read: (node, spot, reader) => {
      if (node.kind !== 'map') return refuse(node, spot.key, form, reader);
      for (const { key } of node.entries) {
        if (isOpen || known.includes(key.text)) continue;
        const facts = { key: key.text, known, where: whereOf(spot) };
        reader.report({ rule: 'unknown-key', at: key.at, facts });
      }
      return readKeys(keys, new Map(node.entries.map((entry) => [entry.key.text, entry])), spot, reader);
    },
  };
}

/** A value made of what was read. */
export function made<T, U>(
  value: Value<T>,
  make: (read: T, spot: Spot, node: YamlNode, reader: Reader) => U | undefined,
): Value<U> {
  return {
    ...value,
    read: (node, spot, reader) => {
      const read = value.read(node, spot, reader);
      return read === undefined ? undefined : make(read, spot, node, reader);
    },
  };
}

/** A value that a text alone may stand for. */
export function orShort<T>(short: Value<T>, long: Value<T>): Value<T> {
  return {
    schema: { anyOf: [short.schema, long.schema] },
    read: (node, spot, reader) => (node.kind === 'text' ? short : long).read(node, spot, reader),
  };
}

/** The keys a map knows. */
export function keysOf({ schema }: Value<unknown>): readonly string[] {
  return Object.keys(schema.properties ?? {});
}

function readKeys<K extends Keys>(
  keys: K,
  entries: Entries,
  map: Spot,
  reader: Reader,
): ReadMap<K> | undefined {
  let isWhole = true;
  const read = Object.entries(keys).flatMap(([name, key]) => {
    const value = key.read(entries, name, map, reader);
    isWhole &&= value !== undefined || !key.sure;
    return value === undefined
      ? []
      : [[name.replace(/ (\w)/gu, (_, first: string) => first.toUpperCase()), value]];
  });
  return isWhole ? (Object.fromEntries(read) as ReadMap<K>) : undefined;
}

function mapSchema(keys: Keys): Schema {
  const all = flatKeys(keys);
  const required = all.filter(([, { needed }]) => needed).map(([name]) => name);
  const whole = keys.use ? { anyOf: [{ required }, { required: ['use'] }] } : { required };
  return {
    type: 'object',
    properties: Object.fromEntries(all.map(([name, { schema }]) => [name, schema])),
    ...(required.length > 0 && whole),
    additionalProperties: false,
  };
}

function flatKeys(keys: Keys): [string, Keys[string]][] {
  return Object.entries(keys).flatMap(([name, key]) => (key.keys ? flatKeys(key.keys) : [[name, key]]));
}

function behind<T>(value: Value<T>, entries: Entries, key: string, map: Spot, reader: Reader): T | undefined {
  const entry = entries.get(key);
  if (!entry) return undefined;
  if (entry.value.kind !== 'nothing')
    return value.read(entry.value, { ...inside(map, key), at: entry.value.at }, reader);
  if (!value.reportNothing?.(entry.key, reader)) reportMissing(key, whereOf(map), entry.key.at, reader);
  return undefined;
}

/** How findings call a map. */
function whereOf({ path, key }: Spot): string {
  return path ?? key;
}

/** The spot of a key within a map, but for its place. */
function inside({ path }: Spot, key: string): Pick<Spot, 'key' | 'path'> {
  return { key, path: path === undefined ? undefined : `${path}.${key}` };
}
