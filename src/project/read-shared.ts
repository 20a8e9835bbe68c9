import type { Unit } from '../measure/length.ts';
import { Fields } from './fields.ts';
import type { Finding } from './finding.ts';
import { wholeFile } from './frontmatter.ts';
import { KNOWN_KEYS } from './known-keys.ts';
import { readPiece } from './read-pieces.ts';
import { readStock } from './read-stock.ts';
import { asSupply } from './read-supplies.ts';
import { type Reader, refuse } from './reader.ts';
import type { SharedSection, SharedValues } from './shared.ts';
import { type SourceFile, startOf } from './source.ts';
import { asUnit } from './values.ts';
import { readYaml, type YamlEntry } from './yaml-tree.ts';

/** What the files of `shared/` offer. */
export type Shared = {
  readonly values: SharedValues;
  /** Every shared file, with the unit of its bare numbers. */
  readonly units: ReadonlyMap<SourceFile, Unit>;
  /** What is wrong in the files themselves, whoever uses them. */
  readonly findings: readonly Finding[];
};

const SECTIONS: readonly SharedSection[] = ['stock', 'supplies', 'pieces'];

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
  { moneyDecimals, forms }: Pick<Reader, 'moneyDecimals' | 'forms'>,
): Shared {
  const findings: Finding[] = [];
  const units = new Map<SourceFile, Unit>();
  const values: Record<SharedSection, Map<string, YamlEntry>> = {
    stock: new Map(),
    supplies: new Map(),
    pieces: new Map(),
  };
  const reader: Reader = {
    report: (finding) => findings.push(finding),
    unitIn: (file) => units.get(file) ?? 'in',
    moneyDecimals,
    forms,
    shared: values,
  };
  for (const file of files) {
    const fields = fieldsOf(file, reader);
    units.set(file, fields?.read('unit', asUnit)?.value ?? 'in');
    for (const section of SECTIONS) gather(fields, section, values[section], reader);
  }
  // Only now are all names known that one shared value may use of another.
  for (const section of SECTIONS) for (const entry of values[section].values()) check(section, entry, reader);
  return { values, units, findings };
}

function fieldsOf(file: SourceFile, reader: Reader): Fields | undefined {
  const { root, findings } = readYaml(wholeFile(file));
  findings.forEach(reader.report);
  if (root.kind === 'map') return new Fields(root, file.path, reader, startOf(file), KNOWN_KEYS.shared);
  return root.kind === 'nothing'
    ? undefined
    : refuse(root, file.path, 'stock:, supplies: or pieces:', reader);
}

function gather(
  fields: Fields | undefined,
  section: SharedSection,
  into: Map<string, YamlEntry>,
  reader: Reader,
): void {
  const node = fields?.node(section);
  if (!node) return;
  if (node.kind !== 'map') {
    refuse(node, section, 'names with a value each', reader);
    return;
  }
  for (const entry of node.entries) {
    const { text: key, at } = entry.key;
    const first = into.get(key);
    if (first) reader.report({ rule: 'repeated-key', at, facts: { key, first: first.key.at } });
    else into.set(key, entry);
  }
}

/** A shared piece may lack what every sheet that uses it adds. */
function check(section: SharedSection, { key, value }: YamlEntry, reader: Reader): void {
  const id = { value: key.text, at: key.at };
  const lenient: Reader = {
    ...reader,
    report: (finding) => {
      if (finding.rule !== 'missing-value' || finding.at !== id.at) reader.report(finding);
    },
  };
  if (section === 'stock') readStock(id, value, reader);
  else if (section === 'pieces') readPiece(id, value, lenient);
  else asSupply(value, id.value, reader);
}
