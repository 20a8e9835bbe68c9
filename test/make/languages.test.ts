import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { labelsOf, languageFindings } from '../../src/make/languages.ts';
import { readLabels } from '../../src/make/package-files.ts';
import type { Workspace } from '../../src/project/model.ts';
import { mergeFindings } from '../../src/proof/tell.ts';
import type { Told } from '../../src/proof/told.ts';
import { tray } from '../../src/shape/forms/tray.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';
import { type Labels, speaker } from '../../src/words/labels.ts';
import { keysOf } from '../../src/words/languages.ts';
import { partNamed } from '../../src/words/names.ts';
import { folderWith, sheetwright } from '../cli/terminal.ts';
import { type Pdf, readPdf } from '../print/read-pdf.ts';
import { blamed, findingsIn } from '../proof/workspace.ts';
import { fontWithAlef } from '../site/alef-font.ts';
import { languagesAsked } from './asked.ts';

const SHEET = `---
title: Karte
lang: de
session: 2026-12-10
minutes: 75
measurements:
  unit: mm
  stock: { weiss: { name: Karton, sheet: 210 x 297, weight: 240 gsm } }
  pieces:
    karte: { stock: weiss, form: single-fold card, size: 105.5 x 148 }
    bild: { stock: weiss, cut: 98.5 x 141, on: karte.front }
---
Eine Karte.

## Rillen und falten :step{minutes=75 dry=5}
Rillen: :scores[karte]

:assembly[karte]
`;

const english = (title: string): string => SHEET.replace('lang: de\n', '').replace('Karte', title);

describe('a German project on an English site', () => {
  let folder = '';
  let page = '';
  let pdf: Pdf;

  beforeAll(async () => {
    folder = folderWith({
      'projects/site.yaml': 'title: Bench\npaper: [a4]\n',
      'projects/karte/sheet.md': SHEET,
      'projects/card/sheet.md': english('Card'),
    });
    const { code, err, out } = await sheetwright(folder, 'make');
    if (code !== 0) throw new Error(`${out}${err}`);
    page = readFileSync(join(folder, 'dist/site/karte/index.html'), 'utf8');
    pdf = await readPdf(readFileSync(join(folder, 'dist/site/karte/karte-a4.pdf')));
  }, 60_000);

  it('has a German page: labels, date, duration, decimal commas, language', () => {
    const words = page.replace(/<script[\s\S]*?<\/script>/gu, '').replace(/<[^>]*>/gu, '');
    expect(page).toMatch(/<html lang="de"/u);
    for (const said of ['Zuschnitt', 'Material und Werkzeug', 'Projekt teilen', 'Großdruck'])
      expect(words).toContain(said);
    expect(words).toMatch(/Donnerstag, 10\.\sDezember\s2026/u);
    expect(words).toContain('1\u00a0Stunde 15\u00a0Minuten');
    expect(words).toContain('98,5 × 141 mm');
    expect(words).toContain('auf „Vorderseite (karte)“, 3,5 mm');
    expect(words).toContain('Die Rückseite hinter die Vorderseite falten');
    expect(words).toContain('bei 105,5 mm');
    const heard = [...page.matchAll(/aria-label="([^"]*)"/gu)].map(([, text]) => text).join('\n');
    expect(heard).toContain('98,5 mal 141 Millimeter');
    for (const text of [words, heard]) expect(text).not.toMatch(/98\.5|105\.5|3\.5/u);
  });

  it('has a German handout', () => {
    const text = pdf.pages.map((each) => each.text).join('\n');
    expect(pdf.lang).toBe('de');
    for (const said of ['Zuschnitt', 'Falzen', 'Schritte', 'Bevor es losgeht', 'Seite 1 von', 'Klingen'])
      expect(text).toContain(said);
    expect(text).toMatch(/98,5 × 141\s*mm/u);
    expect(text).toMatch(/Donnerstag, 10\.\sDezember\s2026/u);
    expect(text).not.toMatch(/\d\.\d mm|Millimeters|Inches|Score|Supplies/u);
    expect(pdf.pages.flatMap(({ alternatives }) => alternatives).join(' ')).toContain(
      '98,5 mal 141 Millimeter',
    );
  });

  it('leaves the site’s own pages and the other project in English', () => {
    const read = (path: string): string => readFileSync(join(folder, 'dist/site', path), 'utf8');
    expect(read('index.html')).toMatch(/<html lang="en"/u);
    expect(read('card/index.html')).toMatch(/<html lang="en"[\s\S]*98\.5 × 141/u);
  });

  it('says in German what changed', async () => {
    await sheetwright(folder, 'publish', '--no-pdf', '--only', 'karte');
    const again = folderWith({
      'projects/karte/sheet.md': SHEET.replace(
        '98.5 x 141, on: karte.front',
        '98 x 140.5, on: karte.front, at: { left: 4 }',
      ),
      'projects/karte/revisions.yaml': readFileSync(join(folder, 'projects/karte/revisions.yaml'), 'utf8'),
    });
    const { out } = await sheetwright(again, 'publish', '--dry-run');
    expect(out).toContain('bild: bisher 98,5 × 141 mm, jetzt 98 × 140,5 mm');
    expect(out).toContain('Position (bild): bisher auf „karte, Vorderseite“, 3,5 mm (⅛ in) von links');
  });
});

function workspaceOf(files: Readonly<Record<string, string>>): Workspace {
  return readWorkspaceFromTexts(files);
}

describe('languages that are asked for', () => {
  const read = readLabels();
  // A translation may lack words that came after it; here none does, but for the holes that are made.
  const all = new Map([...read].map(([language, labels]) => [language, { language, texts: whole(labels) }]));

  function whole({ language, texts }: Labels): ReadonlyMap<string, string> {
    const keys = keysOf(read.get('en') ?? { language, texts }, language);
    return new Map([...keys.map((key) => [key, key] as const), ...texts]);
  }

  function holed(language: string, keys: readonly string[]): ReadonlyMap<string, Labels> {
    const labels = all.get(language);
    if (!labels) throw new Error(`no ${language}`);
    const texts = new Map([...labels.texts].filter(([key]) => !keys.includes(key)));
    return new Map([...all, [language, { language, texts }]]);
  }

  it('are the project’s own, else the site’s', () => {
    const workspace = workspaceOf({
      'site.yaml': 'language: nl\n',
      'a/sheet.md': SHEET,
      'b/sheet.md': english('B'),
    });
    const said = workspace.projects.map((project) => labelsOf(project, workspace.site, all).language);
    expect(said).toEqual(['de', 'nl']);
    expect(languageFindings(languagesAsked(workspace), all)).toEqual([]);
  });

  const errorsIn = (workspace: Workspace): readonly Told[] =>
    mergeFindings(findingsIn(workspace)).filter(({ severity }) => severity === 'error');

  it('call panels and openings as the sheet does, and hear of one that is not there', () => {
    const named = (id: string): Workspace =>
      workspaceOf({ 'a/sheet.md': SHEET.replace('---\nEine', `  names: { ${id}: Deckblatt }\n---\nEine`) });
    const { projects, site } = named('front');
    const [project] = projects;
    if (!project) throw new Error('there is no project');
    const say = speaker(labelsOf(project, site, all));
    expect([partNamed('front', say), partNamed('back', say)]).toEqual(['Deckblatt', 'Rückseite']);
    expect(errorsIn(named('front'))).toEqual([]);
    const wrong = errorsIn(named('frnt'));
    expect(wrong.map((finding) => [finding.rule, blamed(finding)])).toEqual([['unknown-part', 'frnt']]);
    expect(wrong[0]?.remedy).toBe('write "front"');
  });

  it('are noted where there are no labels in them, at the very word', () => {
    const files = { 'site.yaml': 'language: eo\n', 'a/sheet.md': SHEET.replace('lang: de', 'lang: it') };
    const findings = mergeFindings(languageFindings(languagesAsked(workspaceOf(files)), all));
    expect(findings.map((finding) => [finding.rule, finding.severity, blamed(finding)])).toEqual([
      ['unknown-language', 'note', 'it'],
      ['unknown-language', 'note', 'eo'],
    ]);
    expect(findings.map(({ message }) => message)).toEqual([
      'there are no labels in Italian (it), so the labels are in English',
      'there are no labels in Esperanto (eo), so the labels are in English',
    ]);
    expect(findings[0]?.remedy).toBe('name one of de, en, en-GB, es, fr, fr-CA, nl');
  });

  it('are noted once where words are missing, which are named and stand in English', () => {
    const workspace = workspaceOf({
      'site.yaml': 'language: en\n',
      'a/sheet.md': SHEET,
      'b/sheet.md': SHEET.replace('lang: de', 'lang: de-AT'),
    });
    const labels = holed('de', ['supplies', 'hours-one', 'closing-tray']);
    const findings = mergeFindings(languageFindings(languagesAsked(workspace), labels));
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({ rule: 'missing-label', severity: 'note' });
    expect(findings[0]?.at?.file.path).toBe('a/sheet.md');
    expect(findings[0]?.message).toMatch(/hours-one, supplies(?:, .*)?, closing-tray:/u);
    const [project] = workspace.projects;
    const said = project && labelsOf(project, workspace.site, labels);
    expect(said?.texts.get('supplies')).toBe('Supplies');
    expect(said?.texts.get('steps')).toBe('Schritte');
    // A form says itself how it is closed.
    expect(said?.texts.get('closing-tray')).toBe(tray.closing);
    expect(said?.texts.get('closing-tag')).toBe('Das Loch stanzen und das Band einfädeln.');
  });

  it('stop nothing from being made, and show in a proof too', async () => {
    const folder = folderWith({ 'projects/karte/sheet.md': SHEET.replace('lang: de', 'lang: it') });
    const proof = await sheetwright(folder, 'proof');
    expect(proof.code).toBe(0);
    expect(proof.out).toMatch(/karte\/sheet\.md:3:7 {2}note {2}there are no labels in Italian \(it\)/u);
    const made = await sheetwright(folder, 'make', '--no-pdf');
    expect(made.code).toBe(0);
    expect(made.out + made.err).toContain('[unknown-language]');
    expect(readFileSync(join(folder, 'dist/site/karte/index.html'), 'utf8')).toMatch(/<html lang="en"/u);
  });
});

describe('a font that the settings name', () => {
  it('goes with the site and says which letters it is for; another is made anew, the same is not', async () => {
    const folder = folderWith({
      'projects/site.yaml': 'title: "א"\nfont: own.ttf\n',
      'projects/card/sheet.md': english('Card א'),
    });
    const put = async (glyph: number): Promise<string> => {
      writeFileSync(join(folder, 'projects/own.ttf'), await fontWithAlef('Second Sans', glyph));
      const { code, out, err } = await sheetwright(folder, 'make', '--no-pdf');
      expect(code).toBe(0);
      return `${err}${out}`;
    };
    const first = await put(20);
    expect(first).not.toContain('missing-letters');
    const assets = join(folder, 'dist/site/assets');
    const page = readFileSync(join(folder, 'dist/site/card/index.html'), 'utf8');
    const [, sheet = ''] = /href="\.\.\/assets\/([^"]*\.css)"/u.exec(page) ?? [];
    const face =
      /@font-face\s*\{[^}]*U\+5D0[^}]*\}/u.exec(readFileSync(join(assets, sheet), 'utf8'))?.[0] ?? '';
    const [, font = ''] = /url\("?([^")]*)"?\)/u.exec(face) ?? [];
    expect(readFileSync(join(assets, font))).toEqual(readFileSync(join(folder, 'projects/own.ttf')));
    expect(await put(20)).not.toContain('made site/');
    const again = await put(21);
    for (const name of ['card/index\\.html', 'card/preview-\\w+\\.jpg', 'assets/preview-\\w+\\.jpg'])
      expect(again).toMatch(new RegExp(`^made site/${name}$`, 'mu'));
  }, 60_000);

  it('is what the pages that are printed are set in, the same or another', async () => {
    const folder = folderWith({ 'site.yaml': 'font: own.ttf\n', 'card/sheet.md': english('Card א') });
    const put = async (glyph: number): Promise<string> => {
      writeFileSync(join(folder, 'own.ttf'), await fontWithAlef('Second Sans', glyph));
      return (await sheetwright(folder, 'make', '--only', 'card', '--why')).out;
    };
    await put(20);
    expect(await put(20)).not.toContain('.pdf');
    const again = await put(21);
    for (const paper of ['letter', 'a4', 'large-print'])
      expect(again).toContain(`site/card/card-${paper}.pdf changed: site.font`);
  }, 60_000);

  it('is told of where a picture with it cannot be painted, once for all projects', async () => {
    const folder = folderWith({
      'projects/site.yaml': 'font: own.ttf\n',
      'projects/card/sheet.md': english(`Card ${'א'.repeat(60)}`),
      'projects/other/sheet.md': english(`Other ${'א'.repeat(60)}`),
    });
    const font = await fontWithAlef('Second Sans', 20);
    // 16 units to the em, the fewest that OpenType 1.9.1 allows in a `head` table: its letters are 60 times as large.
    const entry = Array.from({ length: font.readUInt16BE(4) }, (_, index) => 12 + 16 * index).find(
      (at) => font.toString('latin1', at, at + 4) === 'head',
    );
    font.writeUInt16BE(16, font.readUInt32BE((entry ?? 0) + 8) + 18);
    writeFileSync(join(folder, 'projects/own.ttf'), font);
    const { code, out, err } = await sheetwright(folder, 'make', '--no-pdf');
    expect(code).toBe(1);
    expect(`${out}${err}`.match(/site\.yaml:1:7 +error +"own\.ttf" is a font whose letters/gu)).toHaveLength(
      1,
    );
    expect(out + err).not.toContain('mistake of Sheetwright');
  }, 60_000);
});
