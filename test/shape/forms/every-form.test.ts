import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { examine, findingsOf } from '../../../src/examine/examine.ts';
import { mergeFindings } from '../../../src/proof/tell.ts';
import { buildShapes } from '../../../src/shape/build.ts';
import type { Form } from '../../../src/shape/form.ts';
import { forms } from '../../../src/shape/forms/index.ts';
import { boxSize } from '../../../src/shape/net.ts';
import { sheetsOf } from '../../../src/shape/sheets.ts';
import { readWorkspaceFromTexts } from '../../../src/shape/workspace.ts';
import { inches } from './building.ts';

const root = fileURLToPath(new URL('../../../', import.meta.url));
const slug = (name: string): string => name.replace(/ /gu, '-');

/** The thirteen of the format's description. */
const NAMES = [
  'single-fold card',
  'gate-fold card',
  'accordion card',
  'clip-top box',
  'tuck-end box',
  'tray',
  'lidded tray',
  'slide box',
  'pillow box',
  'envelope',
  'gusseted bag',
  'belly band',
  'tag',
];

function exampleSheet({ name, example }: Form): string {
  const lines = [`form: ${name}`, ...example.settings].map((line) => `      ${line}`).join('\n');
  const layer = example.layer
    ? `    layer: { stock: card, cut: ${example.layer.cut}, on: box.${example.layer.panel} }\n`
    : '';
  return `---
title: A ${name}
measurements:
  stock:
    card: { name: Card, sheet: 8 1/2 x 11, weight: 80 lb cover }
  pieces:
    box:
      stock: card
${lines}
${layer}---
## Make it
Fold :piece[box]${example.layer ? ' and stick on :piece[layer]' : ''}.
`;
}

it('knows the forms of the format’s description, whatever others there are', () => {
  expect(forms.map(({ name }) => name)).toEqual(expect.arrayContaining(NAMES));
});

it('finds each form in the file of its name', () => {
  const files = readdirSync(`${root}src/shape/forms`).filter((file) => file !== 'index.ts');
  expect(files.toSorted()).toEqual(forms.map(({ name }) => `${slug(name)}.ts`).toSorted());
});

describe.each(forms.map((form) => [form.name, form] as const))('%s', (name, form) => {
  const workspace = readWorkspaceFromTexts({ 'a/sheet.md': exampleSheet(form) });
  const [project] = workspace.projects;
  const shapes = project && buildShapes(project);
  const nets = shapes ? sheetsOf(shapes.nets, 'box').map(({ net }) => net) : [];
  const panels = nets.flatMap((net) => net.panels);

  it('builds its example, which proofs clean', () => {
    const findings = mergeFindings(findingsOf(workspace, examine(workspace)));
    expect(findings.filter(({ severity }) => severity !== 'note')).toEqual([]);
    expect(nets.length).toBeGreaterThan(0);
  });

  it('cuts its example from letter sheets', () => {
    for (const { size } of nets) {
      const [short, long] = [size.width, size.height].toSorted((a, b) => a.compare(b));
      expect(short?.greaterThan(inches(17, 2))).toBe(false);
      expect(long?.greaterThan(inches(11))).toBe(false);
    }
  });

  it('names every panel once, over all its sheets', () => {
    expect(panels.every((panel) => panel.name !== undefined)).toBe(true);
    expect(new Set(panels.map(({ id }) => id)).size).toBe(panels.length);
  });

  it('has the panels it promises', () => {
    const known = panels.map(({ id }) => id);
    const optional = name === 'belly band' ? ['left', 'right'] : [];
    expect(form.panels.filter((panel) => !known.includes(panel))).toEqual(optional);
  });

  it('lays the example layer with 1/8 in all round', () => {
    const layer = shapes?.layers.find(({ piece }) => piece.id.value === 'layer');
    const promised = form.example.layer;
    const base = promised && panels.find(({ id }) => id === promised.panel);
    expect(layer === undefined).toBe(promised === undefined);
    if (!layer || !base) return;
    expect(layer.base).toEqual(boxSize(base.box));
    const { left, right, top, bottom } = layer.reveals;
    expect([left, right, top, bottom].map(String)).toEqual(Array(4).fill('1/8 in'));
  });
});
