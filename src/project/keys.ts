import type { Unit } from '../measure/length.ts';
import type { Finding } from './finding.ts';
import {
  type Key,
  type Keys,
  listSchema,
  pathIn,
  type ReadMap,
  readBehind,
  readKeys,
  readWhole,
  type Value,
  whereOf,
} from './grammar.ts';
import { type Reader, refuse, reportMissing } from './reader.ts';
import type { At } from './source.ts';
import { asChoice, asYes } from './values.ts';
import { textNode, type YamlNode } from './yaml-node.ts';

/** A key that may be left out. */
export function optional<T>(value: Value<T>, says: string): Key<T, false> {
  const schema = { ...value.schema, description: says };
  return { schema, sure: false, read: (map, key) => readBehind(value, map, key) };
}

/** A key whose absence is reported; the rest of the map counts. */
export function needed<T, Sure extends boolean>(key: Key<T, Sure>): Key<T, Sure> {
  return {
    ...key,
    needed: true,
    read: (map, name) => {
      const { entries, spot, reader } = map;
      if (!entries.has(name)) reportMissing(name, whereOf(spot), spot.at, reader);
      return key.read(map, name);
    },
  };
}

/** A key without which there is no map. */
export function required<T>(value: Value<T>, says: string): Key<T, true> {
  return { ...needed(optional(value, says)), sure: true };
}

/** A key that has a usual value, written as a person would write it. */
export function usually<T>(value: Value<T>, usual: string, says: string): Key<T, true> {
  const { schema, read } = optional(value, says);
  return {
    schema: { ...schema, default: usual },
    sure: true,
    read: (map, key) => {
      const { at } = map.spot;
      return read(map, key) ?? value.read(textNode(usual, at), { key, at }, map.reader);
    },
  };
}

/** The same, of which only the value counts and not where it stands. */
export function plainly<T>(value: Value<At<T>>, usual: string, says: string): Key<T, true> {
  const { read, ...key } = usually(value, usual, says);
  return { ...key, read: (map, name) => read(map, name)?.value };
}

/** A key that says yes; no where it is left out. */
export function flag(says: string): Key<boolean, true> {
  return plainly(asYes, 'no', says);
}

/** The key `unit`, of a sheet's measurements and of a shared file. */
export const UNIT: Key<Unit, true> = plainly(
  asChoice(['in', 'mm', 'cm'] as const),
  'in',
  'What a number without a unit is in: `in`, `mm` or `cm`.',
);

/** The unit a map states, which must be known before anything else of it is read; nothing is reported. */
export function statedUnit(node: YamlNode, reader: Reader): Unit {
  const entries = node.kind === 'map' ? node.entries : [];
  const byKey = new Map(entries.map((entry) => [entry.key.text, entry]));
  const muted = { ...reader, report: () => {} };
  return UNIT.read({ entries: byKey, spot: { key: '', at: node.at }, reader: muted }, 'unit') ?? 'in';
}

/** A list; one value alone is a list of one, nothing is an empty one. */
export function listed<T>(value: Value<T>, says: string): Key<readonly T[], true> {
  return {
    schema: { ...listSchema(value.schema), description: says },
    sure: true,
    read: ({ entries, reader }, key) => {
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
    read: ({ entries, spot, reader }, key) => {
      const entry = entries.get(key);
      const at = entry?.key.at ?? spot.at;
      return readWhole(map, entry?.value, { key, path: pathIn(spot, key), at }, reader);
    },
  };
}

/** What stands under names that people chose; `names` are those of what could not be read, too. */
export type ByName<T> = {
  readonly names: readonly string[];
  readonly values: readonly { readonly name: At<string>; readonly value: T }[];
};

/** A map from names that people chose; nothing is an empty one. `form` says how it is written. */
export function named<T>(value: Value<T>, form: string, says: string): Key<ByName<T>, true> {
  return {
    schema: { type: ['object', 'null'], additionalProperties: value.schema, description: says },
    sure: true,
    read: ({ entries, reader }, key) => {
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
    read: (map) => {
      const found: Finding[] = [];
      const report = (finding: Finding): unknown => found.push(finding);
      const read = readKeys(keys, { ...map, reader: { ...map.reader, report } });
      found.forEach(map.reader.report);
      return read && found.length === 0 ? make(read, map.reader) : undefined;
    },
  };
}

/** Of a few keys exactly one is to be there. */
export function exactlyOne(names: readonly string[]): Key<never, false> {
  return {
    schema: {},
    keys: {},
    sure: false,
    read: ({ entries, spot, reader }) => {
      const [first, second] = names.flatMap((name) => entries.get(name)?.key ?? []);
      if (!first) reportMissing(names.join(' or '), whereOf(spot), spot.at, reader);
      if (!first || !second) return undefined;
      return refuse(second, second.text, `either ${first.text} or ${second.text}, not both`, reader);
    },
  };
}
