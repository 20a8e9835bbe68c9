import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Workspace } from '../../src/project/model.ts';
import type { Place } from '../../src/project/source.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';
import { FORMS, NET, PROSE, SHAPES, VARIANTS } from '../bad-input/bases.ts';
import { findingsOf } from '../proof/workspace.ts';
import { runs } from '../runs.ts';

const SHEET = `---
title: Seed packet keeper
session: 2026-12-10
minutes: 45
tags: [box, "two words"]
measurements:
  unit: in
  stock:
    moss: { name: 'Moss', sheet: 8 1/2 x 11, weight: 80 lb cover, color: "#6b7f5b", price: 0.45 }
  pieces:
    box:
      stock: moss
      cut: "9 1/2 x 6 3/4"
      score:
        - { from: left, at: [1, 4 1/2, 5 1/2, 9] }
      panels: { front: B1, tab: E1 }
      slit: [A|B 1]
      folds: { A|B: valley 90 }
      glue: { tab: A1 }
    front: { stock: shared.cream, cut: 3 1/4 x 4 1/2, on: box.front, at: { left: 1/4, turn: 5 } }
    lid: { use: shared.lid, tab: 1/2 }
  holds: { item: seed packet, size: 3 1/4 x 4 1/2 x 1/16, count: 6 }
supplies:
  - shared.folder
  - { item: Stamp, kind: stamp, link: "https://example.org/x", paid: true }
---
Hello :piece[box], *see* [a link](https://example.org) and ![flat](photos/flat.jpg).

## Score :step{minutes=10 ahead}
At 3:15 leave 1/8 in. <b>Bold</b>

:::tip
- Burnish :size[front]
:::

::drawing{of=box view=flat}
`;

const SHARED = `unit: in
stock: { cream: { sheet: 12 x 12 } }
pieces: { lid: { form: tray, inside: 3 x 4 x 1 } }
supplies: { folder: { item: Bone folder, kind: tool } }
`;

const SITE =
  'title: Bench\nbench: { board: 1/8 in }\nsessions: { every: 2 weeks, on: thursday, from: 2026-10-01 }\n';

/** What breaks files: brackets, quotes, indents, markup, control characters, half a surrogate pair. */
const SNIPPETS = [
  '{',
  '}',
  '[',
  ']',
  '"',
  "'",
  ':',
  ': ',
  '#',
  ' #',
  '\n',
  '\n  ',
  '\t',
  '- ',
  '|',
  '>',
  '&a ',
  '*a',
  '<<: ',
  '---\n',
  '%',
  '!!x ',
  '\\',
  '\u0000',
  '\r',
  '\uFEFF',
  '\uD83C',
  '🌱',
  ':::',
  '::',
  ':x[',
  '](',
  '![',
  '<a',
  '<!--',
  '&#x;',
  '```',
  '[^a]',
  '0',
  '-',
  '/',
  'x',
  ' x ',
  '1/0',
  '99999',
  'shared.',
  'use: shared.lid',
  '..',
  '%2e',
];

type Edit = { readonly at: number; readonly cut: number; readonly put: string };

const edits = fc.array(
  fc.record({
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    cut: fc.oneof(fc.constant(0), fc.nat(5), fc.nat(80)),
    put: fc.oneof(fc.constant(''), fc.constantFrom(...SNIPPETS)),
  }),
  { minLength: 1, maxLength: 4 },
);

function edited(text: string, changes: readonly Edit[]): string {
  return changes.reduce((result, { at, cut, put }) => {
    const start = Math.floor(at * result.length);
    return result.slice(0, start) + put + result.slice(start + cut);
  }, text);
}

/** Every place of a workspace, found by looking at everything in it. */
function placesIn(value: unknown, found: Place[] = [], seen: Set<unknown> = new Set()): Place[] {
  if (typeof value !== 'object' || value === null || seen.has(value)) return found;
  seen.add(value);
  if ('file' in value && 'start' in value && 'end' in value) found.push(value as Place);
  const inner = value instanceof Map || value instanceof Set ? [...value.values()] : Object.values(value);
  for (const each of inner) placesIn(each, found, seen);
  return found;
}

function check(workspace: Workspace): void {
  expect(workspace.projects).toHaveLength(1);
  const astray = placesIn(workspace).filter(
    ({ file, start, end }) => !(start >= 0 && start <= end && end <= file.text.length),
  );
  expect(astray.map(({ file, start, end }) => [file.path, start, end, file.text.length])).toEqual([]);
}

describe('whatever is typed, the reader reads on', () => {
  const files = {
    'box/sheet.md': SHEET,
    'box/photos/flat.jpg': '',
    'shared/all.yaml': SHARED,
    'site.yaml': SITE,
  };

  it('starts from files with one fault only: the bold in HTML', () => {
    const workspace = readWorkspaceFromTexts(files);
    check(workspace);
    expect([...workspace.findings, ...workspace.site.findings]).toEqual([]);
    expect(workspace.projects[0]?.findings.map(({ rule }) => rule)).toEqual(['unsafe-content']);
    expect(placesIn(workspace).length).toBeGreaterThan(80);
  });

  it.each(['box/sheet.md', 'shared/all.yaml', 'site.yaml'] as const)('%s changed at random', (path) => {
    fc.assert(
      fc.property(edits, (changes) => {
        check(readWorkspaceFromTexts({ ...files, [path]: edited(files[path], changes) }));
      }),
      path === 'box/sheet.md' ? runs(20261210, 300, 30_000) : runs(20261210, 200, 10_000),
    );
  });

  it('a sheet of noise', () => {
    fc.assert(
      fc.property(
        fc.array(fc.oneof(fc.constantFrom(...SNIPPETS), fc.string({ unit: 'binary', maxLength: 5 }))),
        (parts) => {
          check(readWorkspaceFromTexts({ ...files, 'box/sheet.md': parts.join('') }));
          check(
            readWorkspaceFromTexts({
              ...files,
              'box/sheet.md': `---\n${parts.join('')}\n---\n${parts.join('')}`,
            }),
          );
        },
      ),
      runs(254, 100, 8000),
    );
  });

  it.each(Object.entries({ NET, FORMS, SHAPES, VARIANTS, PROSE }))(
    'whole projects, %s, changed at random and examined to the end',
    (_, sheet) => {
      fc.assert(
        fc.property(edits, (changes) => {
          const found = findingsOf(edited(sheet, changes));
          expect(found.filter(({ rule }) => rule === 'internal').map(({ message }) => message)).toEqual([]);
        }),
        runs(4711, 6, 300),
      );
    },
  );
});
