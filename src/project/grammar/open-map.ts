import type { Place } from '../source.ts';
import { entriesOf, entryOf, isRunOn, isToldOf, itemsOf, type YamlEntry } from '../yaml/yaml-node.ts';
import { type Field, type MapGrammar, type ToRead, type ValueSpot, whereOf } from './grammar.ts';
import { type Reader, refuse, reportMissing } from './reader.ts';

/** What is read together: behind the keys of a map itself, or of one of its groups. */
type Gathered = {
  readonly group: Field['group'];
  readonly fields: readonly Field[];
  readonly reader: Reader;
  readonly values: Record<string, unknown>;
  /** Whether all is there that always is and, in a group, nothing was reported. */
  isWhole: boolean;
};

/** What is to be read of a map, its own keys first; nothing, and reported, where what stands there is none. */
export function openMap({ form, fields, isOpen }: MapGrammar, task: ToRead): readonly Gathered[] {
  const { node, spot, reader, value } = task;
  const isMap = node.kind === 'map' || (node.kind === 'nothing' && value.isSection);
  if (!isMap) refuse(node, spot.key, form, reader);
  if (!isMap && !value.isSection) return [];
  const known = fields.map(({ name }) => name);
  for (const { key } of isOpen ? [] : entriesOf(node)) {
    const { typed, text, at } = key;
    if (typed === undefined && known.includes(text)) continue;
    const facts = {
      key: typed ?? text,
      known,
      where: whereOf(spot),
      ...(typed !== undefined && { meant: text }),
    };
    reader.report({ rule: 'unknown-key', at, facts });
  }
  const groups = new Set([undefined, ...fields.map(({ group }) => group)]);
  return [...groups].map((group) => gatherOf(group, fields, reader));
}

function gatherOf(group: Field['group'], all: readonly Field[], outside: Reader): Gathered {
  const report: Reader['report'] = (...found) => {
    if (group) gathered.isWhole = false;
    outside.report(...found);
  };
  const fields = all.filter((field) => field.group === group);
  const gathered = { group, fields, reader: { ...outside, report }, values: {}, isWhole: true };
  return gathered;
}

/** A value to be read, and where it stands. */
type UnreadNode = Pick<ToRead, 'node' | 'spot'>;

/** What follows a key, and last what is usual there; what should be there and is not is reported. */
export function behindKey({ name, key }: Field, reader: Reader, map: ToRead): readonly UnreadNode[] {
  const { spot } = map;
  const entry = entryOf(map.node, name);
  const node = entry?.value;
  if (!entry && key.needed && !isToldOf(map.node) && !isRunOn(map.node, name))
    reportMissing({ key: name, where: whereOf(spot), isWritten: false }, spot.at, reader);
  if (key.holds === 'list')
    return itemsOf(node).map((item) => ({ node: item, spot: { key: name, at: item.at } }));
  if (key.holds === 'names') {
    if (node?.kind === 'text' || node?.kind === 'list') refuse(node, name, key.form ?? '', reader);
    const entries = entriesOf(node);
    const past = key.most && entries[key.most];
    const facts = { what: name, count: entries.length, most: key.most ?? entries.length };
    if (past) reader.report({ rule: 'too-many', at: past.key.at, facts });
    return entries.slice(0, key.most).map((each) => ({ node: each.value, spot: namedSpot(each, name) }));
  }
  const here = { key: name, path: spot.path && [...spot.path, name] };
  if (key.holds === 'section') {
    if (entry && key.needed) isEmpty(entry, key, spot, reader);
    const at = entry?.key.at ?? spot.at;
    return [{ node: node ?? { kind: 'nothing', at }, spot: { ...here, at } }];
  }
  const usual = usualBehind(name, key.usual, spot.at);
  if (!entry || isEmpty(entry, key, spot, reader)) return usual;
  return [{ node: entry.value, spot: { ...here, at: entry.value.at } }, ...usual];
}

function namedSpot({ key: { text, at } }: YamlEntry, name: string): ValueSpot {
  return { key: text, path: [name, text], at };
}

function usualBehind(key: string, text: string | undefined, at: Place): readonly UnreadNode[] {
  return text === undefined ? [] : [{ node: { kind: 'text', text, at, place: () => at }, spot: { key, at } }];
}

/** Whether nothing follows a key, which is reported. */
function isEmpty(entry: YamlEntry, { value }: Field['key'], spot: ValueSpot, reader: Reader): boolean {
  if (entry.value.kind !== 'nothing') return false;
  if (isToldOf(entry.value)) return true;
  const isTold = value.reportNothing?.(entry.key, reader);
  const facts = { key: entry.key.text, where: whereOf(spot), isWritten: true };
  if (!isTold) reportMissing(facts, entry.key.at, reader);
  return true;
}

/** What was read at a spot, if it could be. */
export type FoundValue = { readonly spot: ValueSpot; readonly value: unknown };

/** Keeps what was read behind a key; `on hand` is kept as `onHand`. */
export function keep({ name, key }: Field, found: readonly FoundValue[], into: Gathered): void {
  const value = gathered(key, found);
  if (value !== undefined) into.values[name.replace(/ \w/gu, (joint) => joint.trim().toUpperCase())] = value;
  else if (key.sure) into.isWhole = false;
}

function gathered({ holds }: Field['key'], found: readonly FoundValue[]): unknown {
  const read = found.filter(({ value }) => value !== undefined);
  if (holds === 'list') return read.map(({ value }) => value);
  if (holds !== 'names') return read[0]?.value;
  const values = read.map(({ spot: { key, at }, value }) => ({ name: { value: key, at }, value }));
  return { names: found.map(({ spot }) => spot.key), values };
}

/** The map as read; undefined where it lacks what it always has. */
export function closeMap([own, ...groups]: readonly Gathered[], { spot, reader, value }: ToRead): unknown {
  if (!own?.isWhole && value.isSection) throw new Error(`${spot.key} has a key without a default`);
  if (!own?.isWhole) return undefined;
  const made = groups.map(({ group, isWhole, values }) => [
    group?.name,
    // It takes what its keys give, which the types saw where it was declared.
    isWhole ? group?.make(values as never, reader) : undefined,
  ]);
  return { ...own.values, ...Object.fromEntries(made.filter(([, each]) => each !== undefined)) };
}
