import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Ajv2020 as Ajv } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import type { Finding } from '../../src/project/finding.ts';
import { splitSheet } from '../../src/project/frontmatter.ts';
import { jsonSchemas } from '../../src/project/grammar/json-schema.ts';
import { sourceFile } from '../../src/project/source.ts';
import { forms } from '../../src/shape/forms/index.ts';
import { outlines } from '../../src/shape/outlines/index.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';
import { SHOWN } from '../proof/written-example.ts';
import { readSheet, sheetOf } from './reading.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const schemas = jsonSchemas({ forms, outlines });
const demo = `${root}projects/`;

// What ajv makes of our schemas is the check from outside; it is the JSON Schema library that editors mostly use.
const ajv = new Ajv({ allErrors: true, allowUnionTypes: true });
const validate = {
  sheet: ajv.compile(schemas.sheet),
  site: ajv.compile(schemas.site),
  shared: ajv.compile(schemas.shared),
};

/** What the schema says of a text, read as an editor reads YAML: where it is wrong, or nothing. */
function faults(kind: keyof typeof validate, yaml: string): readonly string[] {
  validate[kind](parse(yaml));
  return (validate[kind].errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
}

function headOf(sheet: string): string {
  return splitSheet(sourceFile('sheet.md', sheet)).yaml?.text ?? '';
}

/** Whether a schema is to be written: when asked for, and once for a form that was just added; never so in CI. */
const isAwaited = (written: string): boolean =>
  process.env.UPDATE === '1' || (!process.env.CI && forms.some(({ name }) => !written.includes(`"${name}"`)));

/** `UPDATE=1 npx vitest run test/project/schema.test.ts` writes the files anew. */
it.each(Object.keys(validate) as (keyof typeof validate)[])(
  'schema/%s.json follows from the grammar',
  (name) => {
    const path = `${root}schema/${name}.json`;
    const text = `${JSON.stringify(schemas[name], null, 1)}\n`;
    if (isAwaited(readFileSync(path, 'utf8'))) writeFileSync(path, text);
    expect(readFileSync(path, 'utf8')).toBe(text);
  },
);

const folders = readdirSync(demo, { withFileTypes: true }).filter((entry) => entry.isDirectory());
const slugs = folders.map(({ name }) => name).filter((name) => name !== 'shared');

describe('the schema takes', () => {
  it.each(slugs)('the head of %s', (slug) => {
    expect(faults('sheet', headOf(readFileSync(`${demo}${slug}/sheet.md`, 'utf8')))).toEqual([]);
  });

  it.each(readdirSync(`${demo}shared`))('shared/%s', (file) => {
    expect(faults('shared', readFileSync(`${demo}shared/${file}`, 'utf8'))).toEqual([]);
  });

  it('the settings of the demo, and none', () => {
    expect(faults('site', readFileSync(`${demo}site.yaml`, 'utf8'))).toEqual([]);
    expect(faults('site', '')).toEqual([]);
  });

  it('every example of a rule that the reader takes', () => {
    const examples = SHOWN.flatMap(({ fails, passes }) => [fails.sheet, passes.sheet]);
    const read = examples.filter((sheet) => readSheet(sheet).findings.length === 0);
    expect(read.length).toBeGreaterThan(60);
    for (const sheet of read) expect([sheet, faults('sheet', headOf(sheet))]).toEqual([sheet, []]);
  });

  it.each([
    'stock: { m: { sheet: Half  LETTER, metric sheet: [A4, 30 x 30 cm], weight: 80LB Cover, price: $0.45 } }',
    'stock: { m: { sheets: [{ size: a4, price: 1 }, 2¼ by 4"], color: "#ABC", caliper: .3 mm, on hand: 0 } }',
    'stock: { m: { use: shared.moss } }',
    'pieces: { a: { use: shared.box, inside: 3 x 4 x 1 } }',
    'pieces: { a: { cut: "  2 1/4 x 3  ", overhang: Yes, turn: −22.5°, count: 2 } }',
    'pieces: { a: { form: Slide Box, inside: 3 x 4 x 1, tab: 1/2 } }',
    'pieces: { a: { cut: 3 x 4, score: { from: left, at: 1 }, folds: { 1|2: Valley 45 }, slit: a|b 1-2 } }',
    'holds: { item: 3, size: 1 x 2 x 3, allergens: milk }',
    'stock:',
  ])('%s, as the reader does', (block) => {
    const sheet = sheetOf(block);
    const files = { 'shared/a.yaml': 'stock: { moss: {} }\npieces: { box: { form: tray } }\n' };
    expect(readSheet(sheet, files).findings).toEqual([]);
    expect(faults('sheet', headOf(sheet))).toEqual([]);
  });
});

/** What people type by mistake or in another way than usual. */
const ODD: readonly string[] = [
  '',
  '0',
  '3',
  'yes',
  'left',
  'Letter',
  '2 1/4 x 3',
  '"2\u00bc by 3 in"',
  '1 x 2 x 3 cm',
  '[1, 2]',
  '{ a: b }',
  '{ use: shared.moss }',
  'shared.moss',
  'A1',
  'valley',
  '"#abc"',
  '12.5',
  '2026-1-7',
];

it('never speaks up where the reader is content: any value of the demo, put in another way', () => {
  const heads = slugs.map((slug) => readFileSync(`${demo}${slug}/sheet.md`, 'utf8'));
  const files = Object.fromEntries(
    readdirSync(`${demo}shared`).map((file) => [
      `shared/${file}`,
      readFileSync(`${demo}shared/${file}`, 'utf8'),
    ]),
  );
  let content = 0;
  fc.assert(
    fc.property(fc.constantFrom(...heads), fc.nat(), fc.constantFrom(...ODD), (sheet, choice, odd) => {
      const head = headOf(sheet);
      const values = [...head.matchAll(/(?<=[\w |]: )[^,{}[\]\n]+/gu)];
      const value = values[choice % values.length];
      if (!value) return;
      const changed = head.slice(0, value.index) + odd + head.slice(value.index + value[0].length);
      const { findings } = readSheet(`---\n${changed}---\n`, files);
      // Whether a piece or a stock of a name is there no schema can say; which forms, outlines and papers there are, it can.
      const isOfNames = (each: Finding): boolean =>
        each.rule === 'unknown-reference' &&
        !('what' in each.facts && ['form', 'shape', 'paper'].includes(each.facts.what));
      if (!findings.every(isOfNames)) return;
      content += 1;
      expect([changed, faults('sheet', changed)]).toEqual([changed, []]);
    }),
    { seed: 30, numRuns: 250 },
  );
  expect(content).toBeGreaterThan(40);
});

describe('the schema refuses, and so does the reader,', () => {
  it.each<[string, string]>([
    ['pieces: { a: { cut: 3 x 4, coner: 1/8 } }', '/measurements/pieces/a'],
    ['pieces: { a: { corners: 1/8 } }', '/measurements/pieces/a'],
    ['pieces: { a: { cut: 3 } }', '/measurements/pieces/a/cut'],
    ['pieces: { a: { cut: 3 x -4 } }', '/measurements/pieces/a/cut'],
    ['pieces: { a: { cut: "5,7, 4" } }', '/measurements/pieces/a/cut'],
    ['pieces: { a: { cut: 3 x 4, count: 0 } }', '/measurements/pieces/a/count'],
    ['pieces: { a: { cut: 3 x 4, count: 1.5 } }', '/measurements/pieces/a/count'],
    ['pieces: { a: { cut: 3 x 4, overhang: perhaps } }', '/measurements/pieces/a/overhang'],
    ['pieces: { a: { cut: 3 x 4, at: { lfet: 1 } } }', '/measurements/pieces/a/at'],
    ['pieces: { a: { cut: 3 x 4, score: [{ from: west, at: [1] }] } }', '/measurements/pieces/a/score'],
    ['pieces: { a: { cut: 3 x 4, folds: { 1|2: up 90 } } }', '/measurements/pieces/a/folds/1|2'],
    ['pieces: { a: { form: tary, inside: 3 x 4 x 1 } }', '/measurements/pieces/a/form'],
    ['pieces: { a: { form: tray, insde: 3 x 4 x 1 } }', '/measurements/pieces/a'],
    ['pieces: { a: { form: tray, inside: 3 x 4 } }', '/measurements/pieces/a/inside'],
    ['stock: { m: { colour: green } }', '/measurements/stock/m'],
    ['stock: { m: { color: green } }', '/measurements/stock/m/color'],
    ['stock: { m: { weight: 80 lb } }', '/measurements/stock/m/weight'],
    ['stock: { m: { sheet: Lettre } }', '/measurements/stock/m/sheet'],
    ['stock: { m: { price: cheap } }', '/measurements/stock/m/price'],
    ['holds: { count: 2 }', '/measurements/holds'],
    ['unit: ell', '/measurements/unit'],
    ['units: inch', '/measurements'],
  ])('%s', (block, where) => {
    const sheet = sheetOf(block);
    expect(readSheet(sheet).findings).not.toEqual([]);
    expect(faults('sheet', headOf(sheet)).filter((fault) => fault.startsWith(where))).not.toEqual([]);
  });

  it.each(['measurements: {}', 'title: A', 'title: A\nmeasurements: {}\nsupplies: [{ kind: tool }]'])(
    '%s',
    (head) => {
      expect(readSheet(`---\n${head}\n---\n`).findings).not.toEqual([]);
      expect(faults('sheet', head)).not.toEqual([]);
    },
  );

  it.each([
    'paper: legal',
    'units: imperial',
    'url: ftp://example.org',
    'bench: { bord: 1/8 in }',
    'sessions: { on: thursday }',
    'sessions: { every: week, at: 25:00 }',
  ])('the setting %s', (site) => {
    const { findings } = readWorkspaceFromTexts({ 'site.yaml': site }).site;
    expect(findings).not.toEqual([]);
    expect(faults('site', site)).not.toEqual([]);
  });
});
