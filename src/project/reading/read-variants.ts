import { Length } from '../../measure/length.ts';
import { mapOf } from '../grammar/grammar.ts';
import { readValue } from '../grammar/read-value.ts';
import type { Reader } from '../grammar/reader.ts';
import type { Variant } from '../model.ts';
import { slugOf } from '../slug.ts';
import { entryOf, type YamlMap, type YamlNode, type YamlText } from '../yaml/yaml-node.ts';
import { asMeasurements } from './read-measurements.ts';
import { layOver, VARIANTS, type WrittenVariant, wayTo } from './variants.ts';

/** The head of a sheet as one variant has it; that of the sheet itself where it has none. */
type Version = {
  readonly variant?: Variant;
  readonly root: YamlNode;
  /** Whether all that it says of its own is there. */
  readonly isWhole: boolean;
};

const BLOCK = 'measurements';

/**
 * Every version of a sheet's head, the first one leading: its own tree with the values of a variant laid over it, so
 * that all that follows reads it like any other.
 */
export function versionsOf(root: YamlNode, reader: Reader): readonly [Version, ...Version[]] {
  const block = entryOf(root, BLOCK)?.value;
  const written = onlyOnce(
    [root, block].flatMap((map) => (map ? writtenIn(map, reader) : [])),
    reader,
  );
  const common = bareRoot(root);
  const slugs = slugsOf(written);
  const [first, ...others] = written.map((each, index) =>
    versionOf(each, slugs[index] ?? '', common, reader),
  );
  if (!first) return [{ root: common, isWhole: true }];
  const all = [first, ...others] as const;
  reportAlike(all, reader);
  return all;
}

type NamedVariant = { readonly name: Variant['id']; readonly value: WrittenVariant };

const ANY_MAP = mapOf('keys', { variants: VARIANTS }, true);

function writtenIn(map: YamlNode, reader: Reader): readonly NamedVariant[] {
  if (map.kind !== 'map') return [];
  return readValue(ANY_MAP, map, { key: 'variants', at: map.at }, reader)?.variants.values ?? [];
}

function onlyOnce(written: readonly NamedVariant[], { report }: Reader): readonly NamedVariant[] {
  const firsts = new Map<string, NamedVariant>();
  for (const each of written) {
    const { value: key, at } = each.name;
    const first = firsts.get(key);
    if (first) report({ rule: 'repeated-key', at, facts: { key, first: first.name.at } });
    else firsts.set(key, each);
  }
  return [...firsts.values()];
}

/** The variants' names fit for files: counted where they are the same, as `s` and `S` are, or have no letter that is fit. */
function slugsOf(written: readonly NamedVariant[]): readonly string[] {
  const slugs = new Set<string>();
  for (const { name } of written) {
    const slug = slugOf(name.value, 'variant');
    let count = 1;
    while (slugs.has(counted(slug, count))) count++;
    slugs.add(counted(slug, count));
  }
  return [...slugs];
}

function counted(slug: string, count: number): string {
  return count === 1 ? slug : `${slug}-${count}`;
}

function bareRoot(root: YamlNode): YamlNode {
  if (root.kind !== 'map') return root;
  const entries = bare(root).map((entry) =>
    entry.key.text === BLOCK && entry.value.kind === 'map'
      ? { ...entry, value: { ...entry.value, entries: bare(entry.value) } }
      : entry,
  );
  return { ...root, entries };
}

function bare({ entries }: YamlMap): YamlMap['entries'] {
  return entries.filter(({ key }) => key.text !== 'variants');
}

/** A value of a variant with the way to it from the head of the sheet. */
type OverrideAt = { readonly way: readonly YamlText[]; readonly value: YamlNode };

function versionOf(
  { name: id, value: { name, overrides } }: NamedVariant,
  slug: string,
  common: YamlNode,
  reader: Reader,
): Version {
  const block = entryOf(common, BLOCK);
  const laid = overrides.flatMap((override): OverrideAt[] => {
    const way = block && wayTo(override, block.value, reader);
    return way ? [{ way: [block.key, ...way], value: override.value }] : [];
  });
  const root = layAll(laid, common, reader);
  reportCommon(laid, id, common, reader);
  const isWhole = laid.length === overrides.length;
  return { variant: { id, name: name ?? id.value, slug }, root, isWhole };
}

function layAll(laid: readonly OverrideAt[], common: YamlNode, reader: Reader): YamlNode {
  return laid.reduce((root, { way, value }) => layOver(root, way, value, reader), common);
}

/** Reports each value of a variant without which it would be the same. */
function reportCommon(
  laid: readonly OverrideAt[],
  id: Variant['id'],
  common: YamlNode,
  reader: Reader,
): void {
  const whole = valuesIn(layAll(laid, common, reader), reader);
  for (const each of laid) {
    const others = laid.filter((other) => other !== each);
    const path = each.way.slice(-2);
    const at = path.at(-1)?.at;
    if (!at || whole === undefined || valuesIn(layAll(others, common, reader), reader) !== whole) continue;
    const facts = { variant: id.value, path: path.map(({ text }) => text) };
    reader.report({ rule: 'variant-says-common', at, facts });
  }
}

/** Reports variants that nothing tells apart, not even their names, and one that is alone. */
function reportAlike(all: readonly Version[], reader: Reader): void {
  const { report } = reader;
  const first = new Map<string, Variant>();
  const named = new Map<string, Variant>();
  for (const { variant, root, isWhole } of all) {
    if (!variant) continue;
    const { id } = variant;
    if (all.length === 1) report({ rule: 'lone-variant', at: id.at, facts: { variant: id.value } });
    const { name } = variant;
    const namesake = named.get(name)?.id;
    if (namesake) report({ rule: 'same-name', at: id.at, facts: { named: id.value, name, other: namesake } });
    else named.set(name, variant);
    const values = isWhole ? valuesIn(root, reader) : undefined;
    if (values === undefined) continue;
    const other = first.get(values)?.id;
    if (other) report({ rule: 'variants-alike', at: id.at, facts: { variant: id.value, other } });
    else first.set(values, variant);
  }
}

/** All that is measured, the same for the same values however they are written; undefined where something is unclear. */
function valuesIn(root: YamlNode, reader: Reader): string | undefined {
  const block = entryOf(root, BLOCK);
  if (!block) return undefined;
  let isClear = true;
  const report = (): void => {
    isClear = false;
  };
  const spot = { key: BLOCK, at: block.key.at };
  const read = readValue(asMeasurements, block.value, spot, { ...reader, report });
  if (!isClear || !read) return undefined;
  return JSON.stringify(read.block, (_, value: unknown) => plainly(value));
}

function plainly(value: unknown): unknown {
  if (value instanceof Map) return [...value];
  if (value instanceof Length || typeof value === 'bigint') return String(value);
  return isPlace(value) ? undefined : value;
}

function isPlace(value: unknown): boolean {
  return typeof value === 'object' && value !== null && 'file' in value && 'start' in value && 'end' in value;
}
