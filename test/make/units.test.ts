import { describe, expect, it } from 'vitest';
import { cueCardHtml } from '../../src/cue/card.ts';
import { ROOMS } from '../../src/cue/room.ts';
import { examine } from '../../src/examine/examine.ts';
import type { Study } from '../../src/examine/study.ts';
import { createRenderer } from '../../src/handout/render.ts';
import { sheetHtml } from '../../src/handout/sheet.ts';
import { templateFiles, templateHtml } from '../../src/handout/template-print.ts';
import { readPackageFiles } from '../../src/make/package-files.ts';
import type { Site } from '../../src/project/model.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';
import { howTo } from '../../src/site/how-to.ts';
import type { Labels } from '../../src/words/labels.ts';
import { labelsFor } from '../../src/words/languages.ts';

const files = readPackageFiles();
const renderer = createRenderer(files);
const LANGUAGES = [...files.labels.keys()];

const STEPS = `
## Score :piece[box]
Work over :scores[box], leave 1/8 in (3 mm) or 3 mm / 1/8 in free, 10 in of tape, 254 mm of thread. The front is 90 mm or 3 1/2 in.

## Stick :piece[label] and fold :piece[card]
Leave :reveal[label], cut :size[label].

::drawing{of=box.front view=layers}

::drawing{of=box view=fold-1}
`;

const INCH = `---
title: Keeper
summary: A slim box, 4 in tall, for 100 mm packets.
units: UNITS
minutes: 20
supplies:
  - { item: Tape 1/4 in wide, kind: adhesive, each: 6 in, instead: 6 mm tape }
measurements:
  unit: in
  stock: { moss: { name: Moss, sheet: 12 x 12, weight: 80 lb cover } }
  pieces:
    box: { stock: moss, form: clip-top box, inside: 3 1/2 x 1 x 4 3/4, tab: 1/2 }
    label: { stock: moss, cut: 2 x 3/4, on: box.front, corners: 1/8, at: { turn: 20 } }
    card: { stock: moss, form: single-fold card, size: 4 1/4 x 5 1/2 }
  holds: { item: seed packet, size: 3 1/4 x 4 1/2 x 1/16, count: 6 }
---
A slim box, 4 in tall.
${STEPS}`;

const METRIC = INCH.replace('unit: in', 'unit: mm')
  .replace('sheet: 12 x 12', 'sheet: 305 x 305')
  .replace('3 1/2 x 1 x 4 3/4, tab: 1/2', '90 x 25 x 120, tab: 13')
  .replace('2 x 3/4', '50 x 20')
  .replace('corners: 1/8', 'corners: 3')
  .replace('4 1/4 x 5 1/2', '105 x 148')
  .replace('3 1/4 x 4 1/2 x 1/16', '82 x 115 x 2');

const studies = new Map<string, { readonly study: Study; readonly site: Site }>();

function studyOf(sheet: string, units: string): { readonly study: Study; readonly site: Site } {
  const text = sheet.replace('UNITS', units);
  const workspace = readWorkspaceFromTexts({ 'keeper/sheet.md': text });
  const [study] = studies.has(text) ? [] : examine(workspace);
  if (study) {
    const wrong = study.findings.map(({ rule }) => rule);
    expect(wrong.filter((rule) => rule !== 'prose-measurement')).toEqual([]);
    studies.set(text, { study, site: workspace.site });
  }
  const known = studies.get(text);
  if (!known) throw new Error('no project');
  return known;
}

/** All that is made of a project with words in it, by name. */
function madeOf(sheet: string, units: string, labels: Labels): ReadonlyMap<string, string> {
  const { study, site } = studyOf(sheet, units);
  const common = { editions: study.editions, site, labels, ledger: study.project.ledger };
  const styles = { kind: 'inline', css: '' } as const;
  const made = new Map<string, string>();
  for (const target of ['page', 'letter', 'a4', 'large-print'] as const) {
    const more = { target, pictures: new Map(), styles, scripts: [], links: { downloads: [] } };
    made.set(target, sheetHtml({ ...common, ...more, renderer }));
  }
  for (const paper of ['letter', 'a4'] as const)
    made.set(`template on ${paper}`, templateHtml({ ...common, paper, styles, renderer }) ?? '');
  made.set('template as a file', templateFiles(study.editions, 'box', labels)[0]?.svg ?? '');
  const [room] = ROOMS;
  if (!room) throw new Error('no room');
  made.set('cue card', cueCardHtml({ ...common, styles, renderer, pictures: new Map() }, room));
  made.set('how-to', JSON.stringify(howTo({ ...common, pictures: new Map(), image: undefined })));
  return made;
}

/** What is seen, heard or copied of a document: no style, no script, no address. */
function wordsOf(document: string): string {
  return document
    .replace(/<(style|script)[\s\S]*?<\/\1>/gu, '')
    .replace(/ (?:style|d|width|height|viewBox|class|data-[\w-]+)="[^"]*"/gu, '')
    .replace(/<\/?span[^>]*>/gu, '')
    .replace(/\s+/gu, ' ');
}

/** A number with a unit after it, or the unit spelled out, in any of the languages. */
const UNITS = {
  inch: /\d\s*in\b|\binch|\bzoll\b|pulgada|\bpouce/iu,
  metric: /\d\s*[mc]m\b|milli?m[eè]t|milím/iu,
};

/** Every place where a pattern is found, with some of what stands around it. */
function placesOf(pattern: RegExp, words: string): readonly string[] {
  const found = [...words.matchAll(new RegExp(pattern, `g${pattern.flags}`))];
  return found.map(({ index }) => words.slice(Math.max(0, index - 40), index + 20));
}

describe.each(LANGUAGES)('in %s', (language) => {
  const { labels } = labelsFor(files.labels, language);

  it.each([
    ['inches', INCH, 'inch'],
    ['inches', INCH, 'metric'],
    ['millimeters', METRIC, 'inch'],
    ['millimeters', METRIC, 'metric'],
  ] as const)('a project in %s tells nothing of the edition that is not printed', (_, sheet, printed) => {
    const other = printed === 'inch' ? 'metric' : 'inch';
    for (const [name, document] of madeOf(sheet, printed, labels)) {
      const words = wordsOf(document);
      expect([name, UNITS[printed].test(words)]).toEqual([name, true]);
      expect([name, ...placesOf(UNITS[other], words)]).toEqual([name]);
    }
  });
});

describe('a project printed in both', () => {
  it.each([INCH, METRIC])('tells of both everywhere', (sheet) => {
    const labels = files.labels.get('en');
    if (!labels) throw new Error('no English');
    for (const [name, document] of madeOf(sheet, 'both', labels)) {
      const words = wordsOf(document);
      expect([name, UNITS.inch.test(words), UNITS.metric.test(words)]).toEqual([name, true, true]);
    }
  });
});
