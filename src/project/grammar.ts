import { type Reader, refuse, reportMissing } from './reader.ts';
import type { Place } from './source.ts';
import type { YamlEntry, YamlNode, YamlText } from './yaml-node.ts';

/** A JSON Schema (draft 2020-12), in whatever words of it. */
export type Schema = {
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly [word: string]: unknown;
};

/** What YAML makes of a text, a number or a yes typed without quotes. */
const SCALAR: readonly string[] = ['string', 'number', 'boolean'];

/** A text, or one that a pattern reads whole. JSON Schema has no flags, and white space round a text is nothing. */
export function textSchema(pattern?: RegExp): Schema {
  if (!pattern) return { type: SCALAR };
  const source = pattern.ignoreCase ? inAnyCase(pattern.source) : pattern.source;
  return {
    type: SCALAR,
    pattern: source.replace(/^\^/u, String.raw`^\s*`).replace(/\$$/u, String.raw`\s*$`),
  };
}

/** The source of a pattern that ignores case, without the flag. Groups with names are not provided for. */
function inAnyCase(source: string): string {
  return source.replace(/\\p\{\w+\}|\\.|\[[^\]]*\]|[a-z]/giu, (part) => {
    if (part.startsWith('\\')) return part;
    if (part.startsWith('[')) return part.replace(/[a-z]-[a-z]/gu, (range) => range + range.toUpperCase());
    return `[${part.toLowerCase()}${part.toUpperCase()}]`;
  });
}

/** One value or a list of them, or nothing, which is an empty one. */
export function listSchema(items: Schema): Schema {
  return { anyOf: [items, { type: 'array', items }, { type: 'null' }] };
}

/** One schema where a condition holds, another where it does not. */
export function choiceSchema(condition: Schema, holds: Schema, otherwise: Schema): Schema {
  // biome-ignore lint/suspicious/noThenProperty: it is a word of JSON Schema
  return { if: condition, then: holds, else: otherwise };
}

/** Where a value stands. */
type Spot = {
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

/** A map whose keys are being read. */
type OpenMap = {
  readonly entries: ReadonlyMap<string, YamlEntry>;
  readonly spot: Spot;
  readonly reader: Reader;
};

/** A key of a map, or a few that make one value together. */
export type Key<T, Sure extends boolean> = {
  readonly schema: Schema;
  readonly keys?: Keys;
  readonly needed?: boolean;
  /** Whether a map always has it: without it the map is none. */
  readonly sure: Sure;
  readonly read: (map: OpenMap, key: string) => T | undefined;
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
      return readKeys(keys, {
        entries: new Map(node.entries.map((entry) => [entry.key.text, entry])),
        spot,
        reader,
      });
    },
  };
}

/** Reads some keys of a map; undefined when one that it always has is not there. */
export function readKeys<K extends Keys>(keys: K, map: OpenMap): ReadMap<K> | undefined {
  const read: Record<string, unknown> = {};
  let isWhole = true;
  for (const [name, key] of Object.entries(keys)) {
    const value = key.read(map, name);
    if (value !== undefined) read[name.replace(/ \w/gu, (joint) => joint.trim().toUpperCase())] = value;
    else if (key.sure) isWhole = false;
  }
  return isWhole ? (read as ReadMap<K>) : undefined;
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

/** Reads what stands behind a key; a key with nothing behind it is reported. */
export function readBehind<T>(
  value: Value<T>,
  { entries, spot, reader }: OpenMap,
  key: string,
): T | undefined {
  const entry = entries.get(key);
  if (!entry) return undefined;
  if (entry.value.kind !== 'nothing') {
    return value.read(entry.value, { key, path: pathIn(spot, key), at: entry.value.at }, reader);
  }
  if (!value.reportNothing?.(entry.key, reader)) reportMissing(key, whereOf(spot), entry.key.at, reader);
  return undefined;
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

/** How findings call a map. */
export function whereOf({ path, key }: Spot): string {
  return path ?? key;
}

/** The way to a key of a map that is a named thing or belongs to one. */
export function pathIn({ path }: Spot, key: string): string | undefined {
  return path === undefined ? undefined : `${path}.${key}`;
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
