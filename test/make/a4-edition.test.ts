import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { examine, type Study } from '../../src/examine/examine.ts';
import { createRenderer } from '../../src/handout/render.ts';
import { buildSheet, renderSheet } from '../../src/handout/sheet.ts';
import { readPackageFiles } from '../../src/make/package-files.ts';
import type { Length } from '../../src/measure/length.ts';
import { printDecimal } from '../../src/measure/print.ts';
import { scanMeasurements } from '../../src/measure/scan.ts';
import type { Project } from '../../src/project/model.ts';
import { boxSize } from '../../src/shape/net.ts';
import type { Shapes } from '../../src/shape/shapes.ts';
import { loadWorkspace } from '../../src/shape/workspace.ts';

const root = fileURLToPath(new URL('../../projects', import.meta.url));
const workspace = await loadWorkspace(root);
const studies = examine(workspace);
const files = readPackageFiles();
const renderer = createRenderer(files);

/**
 * What a person reads on the handout of the project itself, without markup. What the post says of envelopes is
 * measured on envelopes, and has tests of its own.
 */
function wordsOf(study: Study, target: 'a4' | 'letter'): string {
  const labels = files.labels.get('en');
  if (!labels) throw new Error('no English');
  const model = buildSheet({
    editions: study.editions,
    site: workspace.site,
    labels,
    ledger: study.project.ledger,
    target,
    pictures: new Map(),
    styles: { kind: 'inline', css: '' },
    scripts: [],
    links: { downloads: [] },
  });
  return renderSheet(model, renderer, labels)
    .replace(/<style>[\s\S]*?<\/style>/gu, '')
    .replace(/<section class="mail"[\s\S]*?<\/section>/gu, '')
    .replace(/aria-label="[^"]*"/gu, '')
    .replace(/<[^>]+>/gu, ' ')
    .replace(/&(?:#x?[\da-f]+|\w+);/giu, ' ')
    .replace(/\s+/gu, ' ');
}

/** The numbers that stand before `mm`, those of a size or a list included: `57 × 102 mm`, `32, 95, and 127 mm`. */
function millimetresIn(words: string): string[] {
  const lists = words.matchAll(
    /(?:[−-]?\d+(?:\.\d+)?(?:\s*(?:×|x|,|,? and|or)\s*))*[−-]?\d+(?:\.\d+)?\s*mm\b/gu,
  );
  return [...lists].flatMap(([list]) => [...list.matchAll(/\d+(?:\.\d+)?/gu)].map(([number]) => number));
}

/** Every length that the metric edition's own pieces have. */
function lengthsOf(project: Project, shapes: Shapes): Length[] {
  const pieces = [...project.pieces.values()].flatMap(({ corners, placement }) => [
    ...(corners ? [corners.value] : []),
    ...[placement.left, placement.right, placement.top, placement.bottom].flatMap((at) =>
      at ? [at.value] : [],
    ),
  ]);
  const nets = [...shapes.nets.values()].flatMap((net) => [
    net.size.width,
    net.size.height,
    ...net.scores.flatMap(({ at }) => at),
    ...net.panels.flatMap(({ box }) => [boxSize(box).width, boxSize(box).height]),
    ...(net.holes ?? []).map(({ diameter }) => diameter),
  ]);
  const layers = shapes.layers.flatMap(({ reveals, left, top }) => [...Object.values(reveals), left, top]);
  const sheets = [...project.stock.values()].flatMap((stock) =>
    stock.sheets.flatMap(({ size }) => [size.width.value, size.height.value]),
  );
  return [...pieces, ...nets, ...layers, ...sheets];
}

const printed = (length: Length): string =>
  printDecimal(length.abs(), 'mm', length.in('mm').denominator === 2n ? 1 : 0);

/** What is measured on other things: what the box holds, a length of tape; converted plainly. */
function foreign({ holds, supplies, pieces }: Project): string[] {
  const held = holds?.size?.map(({ value }) => value) ?? [];
  const texts = supplies.flatMap(({ item, each, pack, instead }) =>
    [item, each, pack, instead].flatMap((text) => (text ? [text.value] : [])),
  );
  const settings = [...pieces.values()].flatMap(({ body }) =>
    body.kind === 'form' ? [...body.settings.values()] : [],
  );
  const inTexts = texts.flatMap((text) => scanMeasurements(text).flatMap(({ lengths }) => lengths));
  const inForms = settings.flatMap((setting) =>
    setting.kind === 'lengths' ? setting.lengths.map(({ value }) => value) : [],
  );
  return [...held, ...inTexts, ...inForms].map((length) => printDecimal(length, 'mm', 0));
}

/** Width, height and depth of what is finished come from folding, to the millimetre. */
function finished(words: string): string[] {
  const [, size = ''] = /Finished size (.*?) (?:Time|Level|Session)/u.exec(words) ?? [];
  return millimetresIn(size);
}

describe.each(studies.map((study) => [study.project.slug, study] as const))(
  'the A4 handout of %s',
  (_, study) => {
    const { editions } = study;
    const { project, shapes } = editions.metric;

    it('has no millimetre that is not the metric edition’s own', () => {
      const words = wordsOf(study, 'a4');
      const own = new Set(lengthsOf(project, shapes).map(printed));
      const others = new Set([...foreign(study.project), ...finished(words)]);
      const strangers = millimetresIn(words).filter((number) => !own.has(number) && !others.has(number));
      expect(millimetresIn(words).length).toBeGreaterThan(5);
      expect(strangers).toEqual([]);
    });

    it('leads with millimetres, where Letter leads with inches', () => {
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
    const { project, shapes } = study.editions.inch;
    // 2 1/2 in converts to 63.5 mm, printed 64; the edition's front is 63 mm.
    const plain = new Set(lengthsOf(project, shapes).map((length) => printDecimal(length.abs(), 'mm', 0)));
    const words = wordsOf(study, 'a4');
    expect(millimetresIn(words).filter((number) => !plain.has(number)).length).toBeGreaterThan(0);
  });
});
