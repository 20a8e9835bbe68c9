import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { examine } from '../../src/examine/examine.ts';
import type { Study } from '../../src/examine/study.ts';
import { cutList } from '../../src/handout/cut-list.ts';
import { scoreList } from '../../src/handout/score-list.ts';
import type { Site } from '../../src/project/model.ts';
import { loadWorkspace } from '../../src/shape/workspace.ts';
import { emptyFolder, sheetwright } from '../cli/terminal.ts';
import { parseMarkup, textOf } from '../handout/markup.ts';
import { settingFor } from '../handout/sample.ts';
import { madeDemo } from '../made-demo.ts';
import { hostNotes, oneLine } from '../print/host-notes.ts';
import { type Pdf, readPdf } from '../print/read-pdf.ts';

const FOOT_MM = 250;
/** 16 points, each 1/72 in. */
const LEAST_MM = (16 / 72) * 25.4;

const read = (markup: unknown): string => textOf(parseMarkup(String(markup)));
const textIn = ({ pages }: Pdf): string => oneLine(pages.map(({ text }) => text).join('\n'));
/** Where a line is broken there may be a blank or none: numbers are compared without any. */
const tight = (text: string): string => text.replace(/\s/gu, '');

describe('the cue cards of the demo', () => {
  let folder = '';
  let studies: readonly Study[] = [];
  let site: Site;
  const cards = new Map<string, Pdf>();

  beforeAll(async () => {
    folder = await madeDemo();
    const root = join(folder, 'projects');
    const workspace = await loadWorkspace(root, { namedFrom: root });
    site = workspace.site;
    studies = examine(workspace);
    for (const { project } of studies) {
      const path = join(folder, 'dist/host', `${project.slug}-cue-card.pdf`);
      cards.set(project.slug, await readPdf(new Uint8Array(readFileSync(path))));
    }
  }, 300_000);

  it('are there for every project, on Letter, on one page or two', () => {
    expect(cards.size).toBeGreaterThanOrEqual(14);
    for (const [slug, { pages }] of cards) {
      expect(pages.length, slug).toBeLessThanOrEqual(2);
      expect(pages[0]?.widthMm, slug).toBeCloseTo(215.9, 1);
      expect(pages[0]?.heightMm, slug).toBeCloseTo(279.4, 1);
    }
  });

  it('are tagged and titled PDFs with their fonts in them', () => {
    for (const [slug, { tagged, title, lang, fonts, outline }] of cards) {
      expect([tagged, lang], slug).toEqual([true, 'en']);
      expect(title, slug).toMatch(/: Cue card$/u);
      expect(outline.length, slug).toBeGreaterThan(3);
      expect(fonts.length, slug).toBeGreaterThan(0);
      expect(
        fonts.filter(({ embedded }) => !embedded),
        slug,
      ).toEqual([]);
    }
  });

  it('are set in 16 points or more, all but the foot', () => {
    for (const [slug, { pages }] of cards) {
      const words = pages.flatMap((page) => page.words.filter(({ y }) => y < FOOT_MM));
      expect(words.length, slug).toBeGreaterThan(20);
      const small = words.filter(({ size }) => size < LEAST_MM - 0.01);
      expect(small, slug).toEqual([]);
    }
  });

  it('have every cut and score of the sheet, to the figure', () => {
    for (const { project, editions } of studies) {
      const setting = settingFor({ editions, project, site }, 'large-print');
      const cuts = cutList(setting).groups.flatMap(({ rows }) => rows);
      const scores = (scoreList(setting)?.pieces ?? []).flatMap(({ rows }) =>
        rows.map(({ positions }) => positions),
      );
      const card = tight(textIn(cards.get(project.slug) as Pdf));
      const expected = [...cuts, ...scores].flatMap(({ lead, second }) => [read(lead), read(second)]);
      // Two pieces in two units at the least.
      expect(expected.length, project.slug).toBeGreaterThan(3);
      expect(
        expected.filter((figure) => !card.includes(tight(figure))),
        project.slug,
      ).toEqual([]);
    }
  });

  it('have the notes of the demonstrator', () => {
    const notes = studies.flatMap(({ project }) =>
      hostNotes(project.file.text).map((note) => ({ slug: project.slug, note })),
    );
    expect(notes.length).toBeGreaterThanOrEqual(13);
    for (const { slug, note } of notes) expect(textIn(cards.get(slug) as Pdf)).toContain(note);
  });
});

describe('a cue card', () => {
  const SHEET = (more: string): string => `---
title: A long evening
measurements:
  unit: in
  pieces:
${more}
---
Welcome.
`;

  it('stays within two pages, however much there is to say', async () => {
    const folder = emptyFolder();
    mkdirSync(join(folder, 'projects/long'), { recursive: true });
    const pieces = Array.from(
      { length: 60 },
      (_, index) => `    piece-${index}: { cut: 2 x ${(index % 9) + 1} }`,
    );
    const steps = Array.from(
      { length: 25 },
      (_, index) =>
        `\n## Step ${index} :step{minutes=5 dry=2${index < 10 ? ' ahead' : ''}}\nTake :piece[piece-${index}] up.\n\n:::host\n${'Say a word more. '.repeat(30)}\n:::\n`,
    );
    const rest = pieces.map((_, index) => `:piece[piece-${index}]`).join(', ');
    writeFileSync(
      join(folder, 'projects/long/sheet.md'),
      `${SHEET(pieces.join('\n'))}${steps.join('')}\n## The rest\n${rest}\n`,
    );
    expect((await sheetwright(folder, 'make')).code).toBe(0);
    const card = await readPdf(new Uint8Array(readFileSync(join(folder, 'dist/host/long-cue-card.pdf'))));
    expect(card.pages).toHaveLength(2);
    expect(textIn(card)).toMatch(/\d+ more on the sheet\./u);
    expect(textIn(card)).toContain('Your own notes did not fit; they are in projects/long/sheet.md.');
  }, 120_000);
});
