import { turned, type Value } from '../grammar/grammar.ts';
import { type Reader, refuse, type Shared, type SharedSection, type SharedValue } from '../grammar/reader.ts';
import type { At } from '../source.ts';
import { type Note, watchMap, watchProperties } from '../watch.ts';
import {
  entryOf,
  isByName,
  textNode,
  type YamlEntry,
  type YamlMap,
  type YamlNode,
} from '../yaml/yaml-node.ts';

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

/** What is shared, telling what a sheet takes of it: `shared.stock.moss`; of what is wrong there it takes `shared` as a whole. */
export function watchShared(shared: Shared, note: Note): Shared {
  const { stock, supplies, pieces } = shared.values;
  const values = {
    stock: watchMap(stock, 'shared.stock', note),
    supplies: watchMap(supplies, 'shared.supplies', note),
    pieces: watchMap(pieces, 'shared.pieces', note),
  };
  const isTrouble = (key: string): boolean => key === 'findings' || key === 'trouble';
  return watchProperties({ ...shared, values }, (key) => (isTrouble(key) ? 'shared' : undefined), note);
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
  return turned(value.schema, ({ node, reader }) => {
    const isName = section === 'supplies' && node.kind === 'text' && isShared(node.text.trim());
    const start = isName ? mapWith('use', node) : node;
    const use = useIn(start);
    if (start.kind !== 'map' || !use) return { value, node };
    const whole = filledIn(start, section, reader);
    const report: Reader['report'] = (finding, usedAt = use.at) => reader.report(finding, usedAt);
    return whole && { value, node: whole, reader: { ...reader, report } };
  });
}

/** A map with what its `use: shared.…` stands for; its own keys come first and override. */
function filledIn(map: YamlMap, section: SharedSection, reader: Reader): YamlMap | undefined {
  const layers = [map];
  const used = new Set<string>();
  for (let use = useIn(map); use; use = useIn(layers.at(-1))) {
    const name = use.kind === 'text' ? use.text.trim() : '';
    if (name === '' || used.has(name)) {
      return refuse(
        use,
        'use',
        `a value of shared/, such as ${PREFIX}box, that does not use this one`,
        reader,
      );
    }
    used.add(name);
    const found = findShared(section, { value: name, at: use.at }, reader);
    const base = found && mapOfShared(section, found.value);
    if (found && !base) refuse(use, 'use', 'the name of a value of shared/ with keys of its own', reader);
    if (!base) return undefined;
    layers.push(base);
  }
  const entries: YamlEntry[] = [];
  for (const layer of layers) {
    const isTaken = (entry: YamlEntry): boolean =>
      (entry.key.text === 'use' && layer !== map) ||
      entries.some((each) => takesPlaceOf(each, entry, reader));
    entries.push(...layer.entries.filter((entry) => !isTaken(entry)));
  }
  return { ...map, entries };
}

function useIn(node: YamlNode | undefined): YamlNode | undefined {
  return node && entryOf(node, 'use')?.value;
}

/** A supply may be a text alone, its item. */
function mapOfShared(section: SharedSection, value: YamlNode): YamlMap | undefined {
  if (value.kind === 'map') return value;
  if (section !== 'supplies' || value.kind !== 'text') return undefined;
  return mapWith('item', value);
}

function mapWith(key: string, value: YamlNode): YamlMap {
  return { kind: 'map', entries: [{ key: textNode(key, value.at), value }], at: value.at };
}

/** Whether what is laid over a map takes an entry's place: by its key, or as another of a form's settings for the same. */
export function takesPlaceOf(laid: YamlEntry, entry: YamlEntry, { forms }: Reader): boolean {
  const [key, other] = [laid.key.text, entry.key.text];
  if (key === other) return true;
  // `around: card` says what a band goes with, whatever its size.
  if (isByName(laid) || isByName(entry)) return false;
  return forms.some(({ oneOf = [] }) => oneOf.includes(key) && oneOf.includes(other));
}
