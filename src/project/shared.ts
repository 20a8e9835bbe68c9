import { type Reader, refuse } from './reader.ts';
import type { At } from './source.ts';
import type { YamlEntry, YamlNode } from './yaml-tree.ts';

export type SharedSection = 'stock' | 'supplies' | 'pieces';

/** The named values of `shared/`, by section and name, unread. */
export type SharedValues = Readonly<Record<SharedSection, ReadonlyMap<string, YamlEntry>>>;

const PREFIX = 'shared.';
const WHAT: Readonly<Record<SharedSection, string>> = { stock: 'stock', supplies: 'supply', pieces: 'piece' };

/** Whether a name is one of `shared/`: `shared.moss`. */
export function isShared(name: string): boolean {
  return name.startsWith(PREFIX);
}

/** How a sheet names a value of `shared/`. */
export function sharedName(key: string): string {
  return PREFIX + key;
}

/** The shared value a name stands for; undefined, and reported, when there is none. */
export function findShared(section: SharedSection, name: At<string>, reader: Reader): YamlEntry | undefined {
  const values = reader.shared[section];
  const entry = isShared(name.value) ? values.get(name.value.slice(PREFIX.length)) : undefined;
  if (entry) return entry;
  const among = [...values.keys()].map(sharedName);
  reader.report({
    rule: 'unknown-reference',
    at: name.at,
    facts: { what: WHAT[section], name: name.value, among },
  });
  return undefined;
}

/**
 * A map with what its `use: shared.…` stands for filled in; its own keys come first and override. Undefined when
 * that could not be found (reported), so that its missing keys are not reported as well.
 */
export function withShared(
  node: YamlNode,
  section: SharedSection,
  reader: Reader,
  using: readonly string[] = [],
): YamlNode | undefined {
  if (node.kind !== 'map') return node;
  const use = node.entries.find(({ key }) => key.text === 'use')?.value;
  if (!use) return node;
  if (use.kind !== 'text' || using.includes(use.text)) {
    return refuse(use, 'use', `a value of shared/, such as ${PREFIX}box, that does not use this one`, reader);
  }
  const found = findShared(section, { value: use.text, at: use.at }, reader);
  const base = found && withShared(found.value, section, reader, [...using, use.text]);
  if (base?.kind !== 'map') return undefined;
  const own = node.entries.filter(({ key }) => key.text !== 'use');
  const names = new Set(own.map(({ key }) => key.text));
  return { ...node, entries: [...own, ...base.entries.filter(({ key }) => !names.has(key.text))] };
}
