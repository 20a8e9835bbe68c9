import { describe, expect, it } from 'vitest';
import { findOthers } from '../../src/edition/others.ts';
import { examine, findingsOf } from '../../src/examine/examine.ts';
import { Length } from '../../src/measure/length.ts';
import type { Finding } from '../../src/project/finding.ts';
import { sourceFile } from '../../src/project/source.ts';
import { mergeFindings } from '../../src/proof/tell.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';

const SHEET = `---
title: A
measurements:
  unit: in
  stock: { cream: { name: Cream, sheet: 8 1/2 x 11 } }
  pieces:
    card: { stock: cream, cut: 100/32 x 5 }
    mat: { stock: cream, cut: 98/32 x 4 1/2, on: card }
    front: { use: shared.front, stock: cream, on: mat }
---
## Cut
Cut :piece[card], :piece[mat] and :piece[front].
`;

/** A shared file whose cut stands so many characters from its start. */
function sharedFrom(start: number): string {
  const text = (pad: number): string =>
    `unit: in\n#${'x'.repeat(pad)}\npieces:\n  front: { cut: 93/32 x 3, at: { left: 1/16 } }\n`;
  return text(start - text(0).indexOf('93/32'));
}

/** The borders of the front in the metric edition, and what is told, without its place. */
function metricOf(start: number): unknown {
  const workspace = readWorkspaceFromTexts({ 'a/sheet.md': SHEET, 'shared/s.yaml': sharedFrom(start) });
  const studies = examine(workspace);
  const layers = studies[0]?.editions.metric.shapes.layers ?? [];
  const front = layers.find(({ piece }) => piece.id.value === 'front')?.reveals;
  const told = mergeFindings(findingsOf(workspace, studies));
  return { borders: [front?.left.mm, front?.right.mm], told: told.map(({ message }) => message) };
}

it('an edition is the same, however long a comment in another file is', () => {
  const start = SHEET.indexOf('98/32');
  const [apart, same] = [metricOf(start + 1), metricOf(start)];
  expect(same).toEqual(apart);
  expect(apart).toMatchObject({ borders: [2, 2] });
});

const file = sourceFile('a/sheet.md', 'pieces');
const other = sourceFile('shared/s.yaml', 'pieces');

/** A slot of so many millimeters in the bottom of a box. */
function slot(millimeters: number, from = file, start = 0): Finding<'bottom-gap'> {
  const gap = Length.of(millimeters, 1, 'mm');
  const facts = { piece: 'box', unit: 'mm', flaps: [], across: Length.of(60, 1, 'mm'), gap } as const;
  return { rule: 'bottom-gap', at: { file: from, start, end: start + 1 }, facts };
}

describe('a finding of one edition is also of the other', () => {
  const isOther = (found: readonly Finding[], known: readonly Finding[]): boolean =>
    findOthers(found, () => known).next().done !== true;

  it('at the same place, about as grave', () => {
    expect(isOther([slot(6)], [slot(6)])).toBe(false);
    expect(isOther([slot(7)], [slot(6)])).toBe(false);
  });

  it('but not where it got much worse, stands in another file or elsewhere, or is there twice', () => {
    expect(isOther([slot(10)], [slot(6)])).toBe(true);
    expect(isOther([slot(6)], [slot(6, other)])).toBe(true);
    expect(isOther([slot(6, file, 1)], [slot(6)])).toBe(true);
    expect(isOther([slot(6), slot(6)], [slot(6)])).toBe(true);
  });
});
