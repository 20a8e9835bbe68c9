import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { editionTables } from '../../src/cli/editions.ts';
import { examine } from '../../src/examine/examine.ts';
import type { Study } from '../../src/examine/study.ts';
import { createRenderer } from '../../src/handout/render.ts';
import { sheetHtml } from '../../src/handout/sheet.ts';
import { draftText } from '../../src/make/draft.ts';
import { readPackageFiles } from '../../src/make/package-files.ts';
import { printDecimal } from '../../src/measure/print.ts';
import { scanMeasurements } from '../../src/measure/scan.ts';
import type { Project } from '../../src/project/model.ts';
import { forms } from '../../src/shape/forms/index.ts';
import { everyNet } from '../../src/shape/sheets.ts';
import { loadWorkspace, readWorkspaceFromTexts } from '../../src/shape/workspace.ts';

const root = fileURLToPath(new URL('../../projects', import.meta.url));
const workspace = await loadWorkspace(root);
const drafts = readWorkspaceFromTexts(
  Object.fromEntries(forms.map((form) => [`${form.name}/sheet.md`, draftText(form.name, form)])),
);
const studies = [...examine(workspace), ...examine(drafts)];
const files = readPackageFiles();
const renderer = createRenderer(files);

/**
 * What a person reads on the handout of the project itself, without markup. What the post says of envelopes is
 * measured on envelopes, and has tests of its own.
 */
function wordsOf(study: Study, target: 'a4' | 'letter'): string {
  const labels = files.labels.get('en');
  if (!labels) throw new Error('no English');
  return sheetHtml({
    editions: study.editions,
    site: workspace.site,
    labels,
    renderer,
    ledger: study.project.ledger,
    target,
    pictures: new Map(),
    styles: { kind: 'inline', css: '' },
    scripts: [],
    links: { downloads: [] },
  })
    .replace(/<style>[\s\S]*?<\/style>/gu, '')
    .replace(/<dt[^>]*>\s*Mailing it\s*<\/dt>\s*<dd[\s\S]*?<\/dd>/u, '')
    .replace(/aria-label="[^"]*"/gu, '')
    .replace(/<[^>]+>/gu, ' ')
    .replace(/&(?:#x?[\da-f]+|\w+);/giu, ' ')
    .replace(/\s+/gu, ' ');
}

/** The numbers that stand before `mm`, those of a size or a list included: `57 × 102 mm`, `32, 95, and 127 mm`. */
function millimetersIn(words: string): string[] {
  const lists = words.matchAll(
    /(?:[−-]?\d+(?:\.\d+)?(?:\s*(?:×|x|,|,? and|or)\s*))*[−-]?\d+(?:\.\d+)?\s*mm\b/gu,
  );
  return [...lists].flatMap(([list]) => [...list.matchAll(/\d+(?:\.\d+)?/gu)].map(([number]) => number));
}

/** Every millimeter that `proof --editions` prints of the metric edition, and those of its paper and its holes. */
function editionOf(study: Study): ReadonlySet<string> {
  const { project, shapes } = study.editions.metric;
  const rows = editionTables([study]).split('\n').slice(2);
  // The millimeters stand in the first column of a project written in them, else in the third.
  const column = study.editions.own === 'metric' ? /^ +(\S+) / : /^ +\S+(?: \d+\/\d+)? +\S+ +(\S+) /;
  const table = rows.flatMap((row) => column.exec(row)?.[1] ?? []);
  const holes = everyNet(shapes.nets).flatMap(({ openings = [] }) => openings.map(({ size }) => size.width));
  const sheets = [...project.stock.values()].flatMap((stock) =>
    stock.sheets.flatMap(({ size }) => [size.width.value, size.height.value]),
  );
  return new Set([...table, ...[...holes, ...sheets].map((length) => printDecimal(length, 'mm', 0))]);
}

/** What is measured on other things: what the box holds, a length of tape; converted plainly. */
function foreign({ holds, supplies }: Project): string[] {
  const held = holds?.size?.map(({ value }) => value) ?? [];
  const texts = supplies.flatMap(({ item, each, pack, instead }) =>
    [item, each, pack, instead].flatMap((text) => (text ? [text.value] : [])),
  );
  const inTexts = texts.flatMap((text) => scanMeasurements(text).flatMap(({ lengths }) => lengths));
  return [...held, ...inTexts].map((length) => printDecimal(length, 'mm', 0));
}

/** Width, height and depth of what is finished come from folding, to the millimeter. */
function finished(words: string): string[] {
  const [, size = ''] = /Finished size (.*?) (?:Time|Level|Session)/u.exec(words) ?? [];
  return millimetersIn(size);
}

describe.each(studies.map((study) => [study.project.slug, study] as const))(
  'the A4 handout of %s',
  (_, study) => {
    it('has no millimeter that the table of editions doesn’t have', () => {
      const words = wordsOf(study, 'a4');
      const own = editionOf(study);
      const others = new Set([...foreign(study.project), ...finished(words)]);
      const strangers = millimetersIn(words).filter((number) => !own.has(number) && !others.has(number));
      expect(millimetersIn(words).length).toBeGreaterThan(5);
      expect(strangers).toEqual([]);
    });

    it('leads with millimeters, where Letter leads with inches', () => {
      const leads = (words: string, first: string, second: string): boolean =>
        new RegExp(`\\d ${first} ?\\( ?[^()]* ${second} ?\\)`, 'u').test(words);
      const [a4, letter] = [wordsOf(study, 'a4'), wordsOf(study, 'letter')];
      expect([leads(a4, 'mm', 'in'), leads(a4, 'in', 'mm')]).toEqual([true, false]);
      expect([leads(letter, 'in', 'mm'), leads(letter, 'mm', 'in')]).toEqual([true, false]);
    });
  },
);

describe('the check itself', () => {
  it('would find a plainly converted number', () => {
    const study = studies.find(({ project }) => project.slug === 'short-pencil-box');
    if (!study) throw new Error('no box');
    // The editions in each other's place: every metric number is then an inch one, converted plainly.
    const { inch } = study.editions;
    const plain = editionOf({ ...study, editions: { ...study.editions, metric: inch } });
    const words = wordsOf(study, 'a4');
    expect(millimetersIn(words).filter((number) => !plain.has(number)).length).toBeGreaterThan(0);
  });
});
