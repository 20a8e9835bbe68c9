import { type Key, taken, type Value } from '../grammar/grammar.ts';
import { atMost, type ByName, named } from '../grammar/keys.ts';
import { type Reader, refuse } from '../grammar/reader.ts';
import type { Place } from '../source.ts';
import {
  entriesOf,
  entryOf,
  type YamlEntry,
  type YamlMap,
  type YamlNode,
  type YamlText,
} from '../yaml/yaml-node.ts';
import { takesPlaceOf } from './shared.ts';

/** A value that a variant has for itself: the way to it, word by word, and what stands there. */
type Override = { readonly path: readonly YamlText[]; readonly value: YamlNode };

/** A variant as written: what it is called on paper, and its own values. */
export type WrittenVariant = { readonly name: string | undefined; readonly overrides: readonly Override[] };

const FORM = 'values by their paths, such as { box.inside: 2 x 1 x 3 }';

const asVariant: Value<WrittenVariant> = taken({ type: ['object', 'null'] }, ({ node, spot, reader }) => {
  if (node.kind !== 'map' && node.kind !== 'nothing') return refuse(node, spot.key, FORM, reader);
  const name = entryOf(node, 'name')?.value;
  if (name && (name.kind !== 'text' || name.text.trim() === '')) refuse(name, 'name', 'a text', reader);
  const entries = entriesOf(node).filter(({ key }) => key.text !== 'name');
  return {
    name: name?.kind === 'text' && name.text.trim() !== '' ? name.text.trim() : undefined,
    overrides: entries.flatMap(({ key, value }) => overridesIn(wordsOf(key), value)),
  };
});

/** The key `variants`, of a sheet's head or of its measurements. */
export const VARIANTS: Key<ByName<WrittenVariant>, true> = atMost(
  50,
  named(
    asVariant,
    `the variants by name, each with ${FORM}`,
    'The same project in several sizes or designs, each under a short name with the values that are its own.',
  ),
);

/** Every value under a path; a map goes on with the path. */
function overridesIn(path: readonly YamlText[], value: YamlNode): readonly Override[] {
  if (value.kind !== 'map' || value.entries.length === 0) return [{ path, value }];
  return value.entries.flatMap((entry) => overridesIn([...path, ...wordsOf(entry.key)], entry.value));
}

/** `box.inside` word by word, each with its own place. */
function wordsOf({ text, place }: YamlText): readonly YamlText[] {
  const words: YamlText[] = [];
  let start = 0;
  for (const word of text.split('.')) {
    const from = start;
    const own = (first: number, last: number): Place => place(from + first, from + last);
    words.push({ kind: 'text', text: word.trim(), at: own(0, word.length), place: own });
    start += word.length + 1;
  }
  return words;
}

const SECTIONS = ['pieces', 'stock', 'holds'] as const;

/** The way from the measurement block to a value; undefined, and reported, where nothing there goes by that name. */
export function wayTo(
  { path }: Override,
  block: YamlNode,
  { report }: Reader,
): readonly YamlText[] | undefined {
  const [first, second] = path;
  const names = (section: string): string[] =>
    entriesOf(entryOf(block, section)?.value).map(({ key }) => key.text);
  if (!first) return undefined;
  const unknown = (what: string, { text, at }: YamlText, among: readonly string[]): undefined => {
    report({ rule: 'unknown-reference', at, facts: { what, name: text, among } });
  };
  if (names('pieces').includes(first.text)) return [{ ...first, text: 'pieces' }, ...path];
  if (!SECTIONS.some((section) => section === first.text))
    return unknown('piece', first, [...names('pieces'), ...SECTIONS]);
  const isNamed = first.text === 'holds' || (second && names(first.text).includes(second.text));
  if (isNamed) return path;
  return unknown(first.text === 'stock' ? 'stock' : 'piece', second ?? first, names(first.text));
}

/** A tree with one value laid over what stands at the end of a way, or added there. */
export function layOver(
  node: YamlNode | undefined,
  [word, ...rest]: readonly YamlText[],
  value: YamlNode,
  reader: Reader,
): YamlNode {
  if (!word) return value;
  const map: YamlMap = node?.kind === 'map' ? node : { kind: 'map', entries: [], at: word.at };
  const there = entryOf(map, word.text);
  const key = there && rest.length > 0 ? there.key : word;
  const laid = { key, value: layOver(there?.value, rest, value, reader) };
  // An outer size takes the place of an inner one.
  const isGone = (entry: YamlEntry): boolean => rest.length === 0 && takesPlaceOf(laid, entry, reader);
  const kept = map.entries.filter((entry) => entry === there || !isGone(entry));
  return {
    ...map,
    entries: there ? kept.map((entry) => (entry === there ? laid : entry)) : [...kept, laid],
  };
}
