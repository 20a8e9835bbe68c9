// Writes the index of each folder whose files are all of one kind, so that a rule or a form is added by adding its
// file; and from the labels of every language the words that a sheet is read by. Runs before every build, check and test; the indexes are not committed.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';

const REGISTRIES = [
  { folder: 'proof/rules', list: 'rules', type: 'Rules', from: '../rule.ts', byId: true, facts: true },
  { folder: 'shape/forms', list: 'forms', type: 'Form', from: '../form.ts' },
  { folder: 'shape/outlines', list: 'outlines', type: 'Outline', from: '../tracing/outline.ts' },
  { folder: 'make/outputs', list: 'outputs', type: 'Outputs', from: '../output.ts', byId: true },
];

/** The name of what a file exports. */
function nameOf(file) {
  return file.slice(0, -3).replace(/-(\w)/g, (_, letter) => letter.toUpperCase());
}

/** What the findings of each rule tell, as its words take it. */
function factsOf(files) {
  const facts = files.map(
    (file) => `    readonly '${file.slice(0, -3)}': Parameters<typeof ${nameOf(file)}.say>[0];`,
  );
  return ['', "declare module '../../project/finding.ts' {", '  interface RuleFacts {', ...facts, '  }', '}'];
}

for (const { folder, list, type, from, byId, facts: hasFacts } of REGISTRIES) {
  const path = new URL(`${folder}/`, import.meta.url);
  const files = readdirSync(path)
    .filter((name) => name.endsWith('.ts') && name !== 'index.ts')
    .sort();
  const imports = files.map((file) => `import { ${nameOf(file)} } from './${file}';`);
  const members = files.map((file) =>
    byId ? `  '${file.slice(0, -3)}': ${nameOf(file)},` : `  ${nameOf(file)},`,
  );
  const facts = hasFacts ? factsOf(files) : [];
  const [listType, open, close] = byId ? [type, '{', '}'] : [`readonly ${type}[]`, '[', ']'];
  const text = [
    `import type { ${type} } from '${from}';`,
    ...imports,
    '',
    `/** Every file of this folder, by name. Written by src/registry.js. */`,
    `export const ${list}: ${listType} = ${open}`,
    ...members,
    `${close};`,
    ...facts,
    '',
  ].join('\n');
  writeFileSync(fileURLToPath(new URL('index.ts', path)), text);
}

/** Labels of these are read in a sheet, not said. */
const READ = /^(?:reads|allergen)-/;

const labels = new URL('../templates/labels/', import.meta.url);
const files = readdirSync(labels)
  .filter((name) => name.endsWith('.yaml'))
  .sort()
  .map((name) => ({ name, texts: parse(readFileSync(new URL(name, labels), 'utf8')) }));
const languages = files.map(({ name, texts }) => {
  const read = Object.fromEntries(Object.entries(texts).filter(([key]) => READ.test(key)));
  return `  ['${name.slice(0, -5)}', ${JSON.stringify(read, null, 2)}],`;
});

/** The words that a label lists in any language, each once. */
function wordsOf(label) {
  const words = files.flatMap(({ texts }) => (texts[label] ?? '').split(','));
  return [...new Set(words.map((word) => word.trim().toLowerCase()))].filter(Boolean).sort();
}

const UNITS = { in: 'reads-inches', cm: 'reads-centimeters', mm: 'reads-millimeters' };
writeFileSync(
  fileURLToPath(new URL('measure/unit-words.ts', import.meta.url)),
  [
    "import type { Unit } from './length.ts';",
    '',
    '/** The words for units in all our languages: no word means two of them. Written by src/registry.js from the labels. */',
    'export const UNIT_WORDS: ReadonlyMap<string, Unit> = new Map<string, Unit>([',
    ...Object.entries(UNITS).flatMap(([unit, label]) =>
      wordsOf(label).map((word) => `  ['${word}', '${unit}'],`),
    ),
    ']);',
    '',
    '/** What goes between the sides of a size in any of them. */',
    `export const BETWEEN_WORDS: readonly string[] = ${JSON.stringify(wordsOf('reads-by'))};`,
    '',
    '/** The words for the meter, in which ribbon is sold. */',
    `export const METER_WORDS: readonly string[] = ${JSON.stringify(wordsOf('reads-meters'))};`,
    '',
  ].join('\n'),
);
writeFileSync(
  fileURLToPath(new URL('project/language-words.ts', import.meta.url)),
  [
    '/** What a sheet is read by in each language, by its label. Written by src/registry.js from templates/labels. */',
    'export const languageWords: ReadonlyMap<string, Readonly<Partial<Record<string, string>>>> = new Map<',
    '  string,',
    '  Readonly<Partial<Record<string, string>>>',
    '>([',
    ...languages,
    ']);',
    '',
  ].join('\n'),
);
