import { type Field, type Key, type MapGrammar, type Spot, type ToRead, whereOf } from './grammar.ts';
import { type Reader, refuse, reportMissing } from './reader.ts';
import { entriesOf, entryOf, itemsOf, type YamlEntry } from './yaml-node.ts';

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
    if (known.includes(key.text)) continue;
    reader.report({ rule: 'unknown-key', at: key.at, facts: { key: key.text, known, where: whereOf(spot) } });
  }
  const groups = new Set([undefined, ...fields.map(({ group }) => group)]);
  return [...groups].map((group) => gatherOf(group, fields, reader));
}

function gatherOf(group: Field['group'], all: readonly Field[], outside: Reader): Gathered {
  const report: Reader['report'] = (finding) => {
    if (group) gathered.isWhole = false;
    outside.report(finding);
  };
  const fields = all.filter((field) => field.group === group);
  const gathered = { group, fields, reader: { ...outside, report }, values: {}, isWhole: true };
  return gathered;
}

/** A value to be read, and where it stands. */
type Behind = Pick<ToRead, 'node' | 'spot'>;

/** What stands behind a key, and last what is usual there; what should be there and is not is reported. */
export function behindKey({ name, key }: Field, reader: Reader, { node, spot }: ToRead): readonly Behind[] {
  const entry = entryOf(node, name);
  if (!entry && key.needed) reportMissing(name, whereOf(spot), spot.at, reader);
  switch (key.holds) {
    case 'list':
      return itemsOf(entry?.value).map((item) => ({ node: item, spot: { key: name, at: item.at } }));
    case 'names':
      return namesBehind(name, key.form ?? '', entry, reader);
    case 'section': {
      const at = entry?.key.at ?? spot.at;
      return [{ node: entry?.value ?? { kind: 'nothing', at }, spot: { ...pathIn(spot, name), at } }];
    }
    case 'one': {
      const isThere = entry && !isEmpty(entry, key, spot, reader);
      const { at } = spot;
      return [
        ...(isThere ? [{ node: entry.value, spot: { ...pathIn(spot, name), at: entry.value.at } }] : []),
        ...(key.usual === undefined
          ? []
          : [
              {
                node: { kind: 'text', text: key.usual, at, place: () => at } as const,
                spot: { key: name, at },
              },
            ]),
      ];
    }
  }
}

function namesBehind(
  name: string,
  form: string,
  entry: YamlEntry | undefined,
  reader: Reader,
): readonly Behind[] {
  const node = entry?.value;
  if (node?.kind === 'text' || node?.kind === 'list') refuse(node, name, form, reader);
  return entriesOf(node).map(({ key: { text, at }, value }) => ({
    node: value,
    spot: { key: text, path: `${name}.${text}`, at },
  }));
}

/** Whether nothing stands behind a key, which is reported. */
function isEmpty(
  { key, value }: YamlEntry,
  { value: { reportNothing } }: Key<unknown, boolean>,
  spot: Spot,
  reader: Reader,
): boolean {
  const isNothing = value.kind === 'nothing';
  if (isNothing && !reportNothing?.(key, reader)) reportMissing(key.text, whereOf(spot), key.at, reader);
  return isNothing;
}

/** What was read at a spot, if it could be. */
export type Found = { readonly spot: Spot; readonly value: unknown };

/** Keeps what was read behind a key; `on hand` is kept as `onHand`. */
export function keep({ name, key }: Field, found: readonly Found[], into: Gathered): void {
  const value = gathered(key, found);
  if (value !== undefined) into.values[name.replace(/ \w/gu, (joint) => joint.trim().toUpperCase())] = value;
  else if (key.sure) into.isWhole = false;
}

function gathered({ holds }: Key<unknown, boolean>, found: readonly Found[]): unknown {
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

/** A key's name, and the way there where its map is a named thing or belongs to one. */
function pathIn({ path }: Spot, key: string): Omit<Spot, 'at'> {
  return { key, path: path === undefined ? undefined : `${path}.${key}` };
}
