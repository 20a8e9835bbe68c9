import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { pieceDrawing } from '../../src/drawing/piece.ts';
import type { Schema } from '../../src/project/grammar/grammar.ts';
import { jsonSchemas } from '../../src/project/grammar/json-schema.ts';
import { printFindings } from '../../src/proof/print.ts';
import { mergeFindings } from '../../src/proof/tell.ts';
import { forms } from '../../src/shape/forms/index.ts';
import { outlines } from '../../src/shape/outlines/index.ts';
import type { Outline } from '../../src/shape/tracing/outline.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';
import { editionsOf } from '../drawing/drawn.ts';
import { english } from '../drawing/english.ts';
import { findingsIn } from '../proof/workspace.ts';
import { attributesOf, examplesOf } from './guide-examples.ts';
import { SELDOM_WRITTEN } from './seldom-written.ts';

const path = fileURLToPath(new URL('../../docs/writing-a-project.md', import.meta.url));

/** Every schema of a map within a schema, by the keys that lead to it; those of a list stand for the list. */
function mapsIn(schema: Schema, way: readonly string[] = []): [string, Schema][] {
  const { properties = {}, items, anyOf, additionalProperties: named } = schema;
  const within = [items, named, ...(Array.isArray(anyOf) ? anyOf : [])].flatMap((each) =>
    isSchema(each) ? mapsIn(each, way) : [],
  );
  const below = Object.entries(properties).flatMap(([key, each]) => mapsIn(each, [...way, key]));
  return [...(schema.properties ? [[way.join(' '), schema] as [string, Schema]] : []), ...within, ...below];
}

function pieceOf({ $defs }: Schema): Schema {
  return isSchema($defs) && isSchema($defs.piece) ? $defs.piece : {};
}

function openingOf({ $defs }: Schema): Schema {
  return isSchema($defs) && isSchema($defs.opening) ? $defs.opening : {};
}

function isSchema(value: unknown): value is Schema {
  return typeof value === 'object' && value !== null;
}

const schemas = jsonSchemas({ forms: [], outlines });
const found = new Map([
  ...mapsIn(schemas.sheet, ['sheet']),
  ...mapsIn(schemas.site, ['site']),
  ...mapsIn(schemas.shared, ['shared']).slice(0, 1),
  ...mapsIn(pieceOf(schemas.sheet), ['piece']),
  ...mapsIn(openingOf(schemas.sheet), ['opening']),
  ...mapsIn(schemas.step, ['step']),
  ...mapsIn(schemas.drawing, ['drawing']),
]);

/** What the guide calls each map. */
const NAMES: Readonly<Record<string, string>> = {
  sheet: 'sheet',
  'sheet measurements': 'measurements',
  'sheet measurements stock': 'stock',
  'sheet measurements stock sheet': 'a sheet size',
  'sheet measurements holds': 'holds',
  'sheet supplies': 'a supply',
  piece: 'a piece',
  'piece at': 'at',
  opening: 'an opening',
  'opening at': 'at',
  'opening corners': 'corners',
  'piece score': 'score',
  'piece edge': 'edge',
  'piece impressions': 'an impression',
  'piece impressions at': 'at',
  'piece corners': 'corners',
  step: ':step',
  drawing: '::drawing',
  shared: 'a shared file',
  site: 'site.yaml',
  'site bench': 'bench',
  'site pricing': 'pricing',
  'site sessions': 'sessions',
  'site links': 'a named link',
  'sheet links': 'a named link',
};

const LEAF =
  '<svg xmlns="http://www.w3.org/2000/svg" width="1in" height="1in" viewBox="0 0 10 10"><path d="M0,0L10,0L10,10Z"/></svg>';

const EXAMPLES = examplesOf(schemas);

/** A key as it is written in a text that proofs clean, the first there is; nothing where it has lines of its own. */
function exampleOf(name: string, key: string): string {
  if (name.startsWith(':')) return attributesOf(name).get(key) ?? '';
  const maps = [...found].filter(([way]) => (NAMES[way] ?? way) === name).map(([, schema]) => schema);
  const written = maps.flatMap((map) => EXAMPLES.get(map)?.get(key) ?? []);
  return written[0] === undefined ? '' : `${key}: ${written[0]}`;
}

/** A table of keys, each with its sentence, what holds without it, and an example. */
function tableOf(name: string, { properties = {} }: Schema, keys = Object.keys(properties)): string {
  const rows = keys.map((key) => {
    const { description, default: usual } = properties[key] ?? {};
    const without = usual === undefined || usual === 'no' ? '' : ` \`${usual}\` by default.`;
    const word = name.startsWith(':') ? key : `${key}:`;
    const example = exampleOf(name, key);
    const cells = [`${description}${without}`, example && `\`${example}\``].map((each) =>
      each.replaceAll('|', '\\|'),
    );
    return `| \`${word}\` | ${cells.join(' | ')} |`;
  });
  return ['| key | what it says | for example |', '| --- | --- | --- |', ...rows].join('\n');
}

// A stock has four keys for the same sheets.
const byName = new Map(
  [...found]
    .filter(([way]) => !/^sheet measurements stock (?:sheets|metric sheet|inch sheet)$/u.test(way))
    .map(([way, schema]) => [NAMES[way] ?? way, schema]),
);
const TABLE = /(<!-- keys of ([^:>]*|::?\w+)(?:: ([\w ]+))? -->)\n([\s\S]*?)<!-- end -->/gu;

const FORMS = /<!-- forms -->\n([\s\S]*?)<!-- end -->/u;

/** Numbered panels are as many as one wants. */
function listed(panels: readonly string[]): string {
  const [first, second] = panels;
  return panels.every((panel) => /-\d+$/u.test(panel)) ? `${first}, ${second}, and so on` : panels.join(', ');
}

/** The forms, with what they are told and what may be stuck on them. */
function tableOfForms(): string {
  const rows = forms.map(({ name, summary, parameters, oneOf = [], panels }) => {
    const bold = (key: string): string => `**${key}**`;
    const either = new Intl.ListFormat('en-US', { type: 'disjunction' }).format(oneOf.map(bold));
    const others = parameters.filter(({ key }) => !oneOf.includes(key));
    const told = others.map(({ key, required }) => (required ? bold(key) : key)).join(', ');
    const given = [either, told].filter((each) => each !== '').join('; ');
    return `| [${name}](forms/${name.replaceAll(' ', '-')}.md) | ${summary} | ${given} | ${listed(panels)} |`;
  });
  const head = [
    '| form | what it is | you give | panels to stick something on |',
    '| --- | --- | --- | --- |',
  ];
  return [...head, ...rows].join('\n');
}

const OUTLINES = /<!-- outlines -->\n([\s\S]*?)<!-- end -->/u;

/** The outlines, with what they are told. */
function tableOfOutlines(): string {
  const rows = outlines.map(({ name, summary, parameters }) => {
    const told = parameters.map(({ key }) => `\`${key}:\``).join(', ');
    return `| ![${name}](outlines/${name.replaceAll(' ', '-')}.svg) | \`${name}\` | ${summary} | ${told} |`;
  });
  return ['| | shape | what it is | you may give |', '| --- | --- | --- | --- |', ...rows].join('\n');
}

/** An outline as the cut list shows it, of a piece 2 x 3 in, or as wide as it is high. */
function outlineDrawing({ name, across }: Outline): string {
  const cut = across ? '2 1/2 x 2 1/2' : '2 x 3';
  const stock = 'stock: { moss: { color: "#6b7f5b" } }';
  const editions = editionsOf(
    `unit: in\n${stock}\npieces: { it: { stock: moss, cut: ${cut}, shape: ${name} } }`,
  );
  const drawing = pieceDrawing(editions, 'it', 0.25, { shown: ['inch'], say: english }, false);
  if (!drawing) throw new Error(`a ${name} cannot be drawn`);
  return `${drawing.svg.replace(/ aria-label="[^"]*"/u, ` aria-label="${name}"`)}\n`;
}

describe('docs/writing-a-project.md', () => {
  it('shows every outline as it is drawn', () => {
    const folder = fileURLToPath(new URL('../../docs/outlines/', import.meta.url));
    mkdirSync(folder, { recursive: true });
    for (const outline of outlines) {
      const file = `${folder}${outline.name.replaceAll(' ', '-')}.svg`;
      const drawing = outlineDrawing(outline);
      if (process.env.UPDATE || (!existsSync(file) && !process.env.CI)) writeFileSync(file, drawing);
      expect([outline.name, readFileSync(file, 'utf8')]).toEqual([outline.name, drawing]);
    }
    expect(readdirSync(folder)).toHaveLength(outlines.length);
  });

  it('has every outline in its table, as the outline says itself', () => {
    const guide = readFileSync(path, 'utf8');
    const written = guide.replace(
      OUTLINES,
      () => `<!-- outlines -->\n\n${tableOfOutlines()}\n\n<!-- end -->`,
    );
    const isNew = outlines.some(({ name }) => !guide.includes(`| \`${name}\` |`));
    if (process.env.UPDATE || (isNew && !process.env.CI)) writeFileSync(path, written);
    expect(readFileSync(path, 'utf8')).toBe(written);
    expect(OUTLINES.test(written)).toBe(true);
  });

  it('has every form in its table, as the form says itself', () => {
    const guide = readFileSync(path, 'utf8');
    const [, table = ''] = FORMS.exec(guide) ?? [];
    const isNew = forms.some(({ name }) => !table.includes(`| [${name}](`));
    const written = guide.replace(FORMS, () => `<!-- forms -->\n\n${tableOfForms()}\n\n<!-- end -->`);
    if (process.env.UPDATE || (isNew && !process.env.CI)) writeFileSync(path, written);
    expect(readFileSync(path, 'utf8')).toBe(written);
    expect(table).not.toBe('');
  });

  it('has the keys of every map in its tables, as the grammar says them', () => {
    const guide = readFileSync(path, 'utf8');
    const written = guide.replace(TABLE, (_, opening: string, name: string, keys: string | undefined) => {
      const table = tableOf(name, byName.get(name) ?? {}, keys?.split(' '));
      return `${opening}\n\n${table}\n\n<!-- end -->`;
    });
    if (process.env.UPDATE) writeFileSync(path, written);
    expect(readFileSync(path, 'utf8')).toBe(written);
  });

  it('has an example of every key that is written on one line', () => {
    const guide = readFileSync(path, 'utf8');
    const without = [...guide.matchAll(/^\| `([\w :-]+)` \| .* \| {2}\|$/gmu)].map(([, key]) => key);
    // These have lines of their own.
    const sections = [
      'measurements:',
      'openings:',
      'pieces:',
      'stock:',
      'supplies:',
      'variants:',
      'variants:',
    ];
    expect(without.toSorted()).toEqual(sections.toSorted());
  });

  it('takes examples from nothing that has a finding', () => {
    const texts = { ...SELDOM_WRITTEN, 'card/shapes/leaf.svg': LEAF, 'fonts/my-font.ttf': 'any' };
    const found = mergeFindings(findingsIn(readWorkspaceFromTexts(texts)));
    const told = found.filter(({ severity }) => severity !== 'note');
    expect(printFindings(told, { summary: false })).toBe('');
  });

  it('leaves no key out', () => {
    const guide = readFileSync(path, 'utf8');
    const told = [...guide.matchAll(TABLE)].flatMap(([, , name = '', , body = '']) =>
      [...body.matchAll(/^\| `([^`]+?):?` \|/gmu)].map(([, key]) => `${name}: ${key}`),
    );
    const declared = [...byName].flatMap(([name, { properties = {} }]) =>
      Object.keys(properties).map((key) => `${name}: ${key}`),
    );
    expect(told.toSorted()).toEqual(declared.toSorted());
  });
});
