import { turned, type Value } from './grammar.ts';
import { type Reader, refuse, type SharedSection, type SharedValue } from './reader.ts';
import type { At } from './source.ts';
import { entryOf, type YamlNode } from './yaml-node.ts';

const PREFIX = 'shared.';
const WHAT: Readonly<Record<SharedSection, string>> = { stock: 'stock', supplies: 'supply', pieces: 'piece' };

/** What `use:` says, in the docs. */
export const USE =
  'A value of `shared/` to begin with; the keys beside it are added, or take the place of its own.';

/** Whether a name is one of `shared/`: `shared.moss`. */
export function isShared(name: string): boolean {
  return name.startsWith(PREFIX);
}

/** How a sheet names a value of `shared/`. */
export function sharedName(key: string): string {
  return PREFIX + key;
}

/** The shared value a name stands for; undefined, and reported, when there is none. */
export function findShared(
  section: SharedSection,
  name: At<string>,
  reader: Reader,
): SharedValue | undefined {
  const values = reader.shared.values[section];
  const found = isShared(name.value) ? values.get(name.value.slice(PREFIX.length)) : undefined;
  if (found) return found;
  const facts = { what: WHAT[section], name: name.value, among: [...values.keys()].map(sharedName) };
  const unknown = { rule: 'unknown-reference', at: name.at, facts } as const;
  reader.report((isShared(name.value) && reader.shared.trouble) || unknown);
  return undefined;
}

/**
 * A value that may come from `shared/`: `use:` in a map is filled in before it is read; of supplies a name alone
 * will do. What is not there is reported, and then nothing else of that value.
 */
export function sharing<T>(section: SharedSection, value: Value<T>): Value<T> {
  return turned(value.schema, ({ node, spot, reader }) => {
    const isSupply = section === 'supplies';
    const whole = isSupply ? withNamed(node, reader) : withUsed(node, section, reader);
    return whole && { value, node: whole, spot: isSupply ? { ...spot, at: whole.at } : spot };
  });
}

function withNamed(node: YamlNode, reader: Reader): YamlNode | undefined {
  if (node.kind !== 'text' || !isShared(node.text)) return withUsed(node, 'supplies', reader);
  const found = findShared('supplies', { value: node.text, at: node.at }, reader);
  return found && withUsed(found.value, 'supplies', reader);
}

/** A map with what its `use: shared.…` stands for; its own keys come first and override. */
function withUsed(
  node: YamlNode,
  section: SharedSection,
  reader: Reader,
  using: readonly string[] = [],
): YamlNode | undefined {
  if (node.kind !== 'map') return node;
  const use = entryOf(node, 'use')?.value;
  if (!use) return node;
  if (use.kind !== 'text' || using.includes(use.text)) {
    return refuse(use, 'use', `a value of shared/, such as ${PREFIX}box, that does not use this one`, reader);
  }
  const found = findShared(section, { value: use.text, at: use.at }, reader);
  const base = found && withUsed(found.value, section, reader, [...using, use.text]);
  if (base?.kind !== 'map') return undefined;
  const own = node.entries.filter(({ key }) => key.text !== 'use');
  const names = new Set(own.map(({ key }) => key.text));
  return { ...node, entries: [...own, ...base.entries.filter(({ key }) => !names.has(key.text))] };
}
