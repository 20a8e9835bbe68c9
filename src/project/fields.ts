import { type Reader, type ReadValue, refuse } from './reader.ts';
import type { At, Place } from './source.ts';
import type { YamlEntry, YamlMap, YamlNode } from './yaml-tree.ts';

/** A map of known keys. Making one reports every key that is not known. */
export class Fields {
  readonly where: string;
  readonly at: Place;
  readonly #entries: ReadonlyMap<string, YamlEntry>;
  readonly #reader: Reader;

  /** `known` is left out where any key may stand. `parent` is where a missing key is reported. */
  constructor(map: YamlMap, where: string, reader: Reader, parent: Place, known?: readonly string[]) {
    this.where = where;
    this.at = parent;
    this.#reader = reader;
    this.#entries = new Map(map.entries.map((entry) => [entry.key.text, entry]));
    if (!known) return;
    for (const { key } of map.entries) {
      if (known.includes(key.text)) continue;
      reader.report({ rule: 'unknown-key', at: key.at, facts: { key: key.text, known, where } });
    }
  }

  /** The same map, read with its findings going elsewhere. */
  heardBy(reader: Reader): Fields {
    return new Fields(
      { kind: 'map', entries: [...this.#entries.values()], at: this.at },
      this.where,
      reader,
      this.at,
    );
  }

  has(key: string): boolean {
    return this.#entries.has(key);
  }

  /** The value of a key; undefined where the key is absent or has nothing behind it. */
  node(key: string): YamlNode | undefined {
    const value = this.#entries.get(key)?.value;
    return value?.kind === 'nothing' ? undefined : value;
  }

  /** The key itself, for what has no value to point at. */
  keyPlace(key: string): Place {
    return this.#entries.get(key)?.key.at ?? this.at;
  }

  /** Reads an optional value; a key with nothing behind it is reported. */
  read<T>(key: string, as: ReadValue<T>): T | undefined {
    const entry = this.#entries.get(key);
    if (!entry) return undefined;
    if (entry.value.kind === 'nothing') return this.#missing(key, entry.key.at);
    return as(entry.value, key, this.#reader);
  }

  /** Reads a value that has to be there. */
  require<T>(key: string, as: ReadValue<T>): T | undefined {
    return this.has(key) ? this.read(key, as) : this.#missing(key, this.at);
  }

  /** Reports a key that has to be there and is not; reads nothing. */
  expect(key: string): void {
    if (!this.has(key)) this.#missing(key, this.at);
  }

  /** Reads a list; one value alone is a list of one, nothing is an empty one. */
  list<T>(key: string, as: ReadValue<T>): readonly T[] {
    const node = this.node(key);
    if (!node) return [];
    const items = node.kind === 'list' ? node.items : [node];
    return items
      .filter((item) => item.kind !== 'nothing')
      .map((item) => as(item, key, this.#reader))
      .filter((value) => value !== undefined);
  }

  /** Each `name: value` of a map of names; nothing is an empty one. */
  named(key: string, expected: string): readonly { name: At<string>; value: YamlNode }[] {
    const node = this.node(key);
    if (!node) return [];
    if (node.kind === 'map') return namedValues(node);
    refuse(node, key, expected, this.#reader);
    return [];
  }

  #missing(key: string, at: Place): undefined {
    this.#reader.report({ rule: 'missing-value', at, facts: { key, where: this.where } });
  }
}

/** The entries of a map whose keys are names people chose. */
export function namedValues(map: YamlMap): readonly { name: At<string>; value: YamlNode }[] {
  return map.entries.map(({ key, value }) => ({ name: { value: key.text, at: key.at }, value }));
}
