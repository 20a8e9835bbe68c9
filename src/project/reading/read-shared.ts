import type { Unit } from '../../measure/length.ts';
import type { Finding } from '../finding.ts';
import { wholeFile } from '../frontmatter.ts';
import type { Schema } from '../grammar/grammar.ts';
import { type Key, sectionOf, taken, type Value } from '../grammar/grammar.ts';
import { type ByName, named, UNIT } from '../grammar/keys.ts';
import { readValue } from '../grammar/read-value.ts';
import type { Catalog, Reader, Shared, SharedSection, SharedValue } from '../grammar/reader.ts';
import { type SourceFile, startOf } from '../source.ts';
import { entryOf, type YamlNode } from '../yaml/yaml-node.ts';
import { readYaml } from '../yaml/yaml-tree.ts';
import { asPiece } from './read-piece.ts';
import { asStock } from './read-stock.ts';
import { asSupply } from './read-supplies.ts';

const SECTIONS: readonly SharedSection[] = ['stock', 'supplies', 'pieces'];

const SHARED = sectionOf('stock:, supplies: or pieces:', {
  unit: UNIT,
  stock: shareable(asStock, 'Papers, each under a short name of yours.'),
  supplies: shareable(asSupply, 'Supplies, each under a short name of yours.'),
  pieces: shareable(asPiece, 'Pieces, each under a short name of yours.'),
});

export const SHARED_SCHEMA: Schema = SHARED.schema;

/** Values by name that are read where they are used. */
function shareable({ schema }: Value<unknown>, says: string): Key<ByName<YamlNode>, true> {
  return named(
    taken(schema, ({ node }) => node),
    'names with a value each',
    says,
  );
}

/**
 * Reads `shared/*.yaml`, and every value in them once, so that a finding is reported once and at its own place.
 * Each file is a map of `stock:`, `supplies:` and `pieces:`, each of them a map from a name to a value as a sheet
 * would have it (a supply is named here, and only referred to in a sheet's list); `unit:` is that of the file's
 * bare numbers, inches if it says none. Names are unique over all files of a section.
 *
 *     unit: in
 *     stock:    { moss: { name: Moss cardstock, sheet: 8 1/2 x 11 } }
 *     supplies: { bone-folder: { item: Bone folder, kind: tool } }
 *     pieces:   { small-box: { form: tray, inside: 3 x 4 x 1 } }
 *
 * A sheet takes them by name: `stock: shared.moss`; `box: { use: shared.small-box, stock: cream }`, whose further
 * keys override the shared ones; a supply as `shared.bone-folder` or `{ use: shared.bone-folder, instead: … }`.
 */
export function readShared(
  files: readonly SourceFile[],
  bench: Pick<Reader, 'moneyDecimals' | keyof Catalog>,
  unreadable: readonly Finding[],
): Shared {
  const findings = [...unreadable];
  const units = new Map<SourceFile, Unit>();
  const values = { stock: new Map(), supplies: new Map(), pieces: new Map() };
  const shared = { values, units, findings };
  const reader: Reader = { ...bench, unit: 'in', shared, report: (finding) => findings.push(finding) };
  let [trouble] = unreadable;
  for (const file of files) {
    const { root, broken, findings: ofYaml } = readYaml(wholeFile(file));
    findings.push(...ofYaml);
    if (broken) trouble ??= ofYaml[0];
    const { unit, ...sections } = readValue(
      SHARED,
      root,
      { key: file.path, path: ['file', file.path], at: startOf(file) },
      reader,
    );
    units.set(file, unit);
    for (const section of SECTIONS) gather(sections[section].values, values[section], reader);
  }
  // Only now are all names known that one shared value may use of another.
  for (const section of SECTIONS) for (const value of values[section].values()) check(section, value, reader);
  return { ...shared, trouble };
}

function gather(found: readonly SharedValue[], into: Map<string, SharedValue>, { report }: Reader): void {
  for (const value of found) {
    const { value: key, at } = value.name;
    const first = into.get(key);
    if (first) report({ rule: 'repeated-key', at, facts: { key, first: first.name.at } });
    else into.set(key, value);
  }
}

const KINDS = { stock: asStock, supplies: asSupply, pieces: asPiece } as const;

/** A shared value may lack what every sheet that uses it adds: its form, say, whose settings it has. */
function check(section: SharedSection, { name, value }: SharedValue, reader: Reader): void {
  const isShaped = ['form', 'cut'].some((key) => entryOf(value, key));
  const settings = isShaped ? [] : reader.forms.flatMap(({ parameters }) => parameters.map(({ key }) => key));
  const isAdded = ({ rule, at, facts }: Finding): boolean =>
    (rule === 'missing-value' && at === name.at) ||
    (rule === 'unknown-key' && facts.where.length === 2 && settings.includes(facts.key));
  const report: Reader['report'] = (finding) => {
    if (!isAdded(finding)) reader.report(finding);
  };
  const spot = { key: name.value, path: [section, name.value], at: name.at };
  readValue<unknown>(KINDS[section], value, spot, { ...reader, report });
}
