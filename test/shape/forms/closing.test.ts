import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { proofProject } from '../../../src/proof/proof.ts';
import { rules } from '../../../src/proof/rules/index.ts';
import { mergeFindings } from '../../../src/proof/tell.ts';
import { buildShapes } from '../../../src/shape/build.ts';
import { ownNet } from '../../../src/shape/sheets.ts';
import { readWorkspaceFromTexts } from '../../../src/shape/workspace.ts';
import { anySettings } from './any.ts';

/** The rules that look at the folded shape. */
const FOLD_RULES = [
  'bottom-gap',
  'does-not-close',
  'flap-too-long',
  'glue-misses',
  'glue-overlap',
  'loose-part',
  'missing-slit',
  'panels-collide',
  'tuck-does-not-fit',
  'walls-unequal',
];
const ofTheFold = Object.fromEntries(Object.entries(rules).filter(([id]) => FOLD_RULES.includes(id)));

function findingsOf(name: string, settings: Readonly<Record<string, string>>): string[] {
  const lines = Object.entries(settings).map(([key, text]) => `      ${key}: ${text}`);
  const sheet = `---
title: Any ${name}
measurements:
  stock:
    card: { name: Card, weight: 80 lb cover }
  pieces:
    box:
      stock: card
      form: ${name}
${lines.join('\n')}
---
## Fold
Fold :piece[box].
`;
  const workspace = readWorkspaceFromTexts({ 'any/sheet.md': sheet });
  const [project] = workspace.projects;
  if (!project) throw new Error('no project was read');
  const shapes = buildShapes(project);
  expect(shapes.findings).toEqual([]);
  expect(ownNet(shapes.nets, 'box')).toBeDefined();
  return mergeFindings(proofProject(workspace, project, shapes, ofTheFold)).map(({ message }) => message);
}

it('knows every rule of the fold', () => {
  expect(Object.keys(ofTheFold).toSorted()).toEqual(FOLD_RULES);
});

describe.each(Object.entries(anySettings()))('any %s', (name, any) => {
  it('closes, holds its glue and runs into nothing', () => {
    fc.assert(
      fc.property(any, (settings) => {
        expect(findingsOf(name, settings)).toEqual([]);
      }),
      { numRuns: 40 },
    );
  });
});
