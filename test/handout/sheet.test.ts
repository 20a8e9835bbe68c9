import { describe, expect, it } from 'vitest';
import { heroOf } from '../../src/handout/drawings.ts';
import type { Target } from '../../src/handout/setting.ts';
import { Length } from '../../src/measure/length.ts';
import { printInches, printMillimeters } from '../../src/measure/print.ts';
import { everyNet, ownNet } from '../../src/shape/sheets.ts';
import { all, elements, type Node, one, parseMarkup, textOf } from './markup.ts';
import { renderer, type Sample, sample, sampleOf, settingFor, sheetHtml } from './sample.ts';

const TARGETS: readonly Target[] = ['page', 'letter', 'a4', 'large-print'];

/** A box by its score lines, layers, a photo, every kind of directive. */
function seedBox(front = '3 1/4 x 4 1/2'): Sample {
  return sample(
    `---
title: Seed packet "keeper"
summary: A box that's closed by a clip.
session: 2026-12-10
level: beginner
measurements:
  unit: in
  stock:
    moss:  { name: Moss cardstock, sheet: 8 1/2 x 11, weight: 80 lb cover, color: "#b9d8a5" }
    cream: { name: Cream cardstock, sheet: 8 1/2 x 11, weight: 80 lb cover }
  pieces:
    box:   { stock: moss, form: clip-top box, inside: 3 1/2 x 1 x 4 3/4, tab: 1/2 }
    front: { stock: cream, cut: ${front}, on: box.front }
    label: { stock: cream, cut: 2 x 3/4, on: front, at: { top: 1 1/2 }, corners: 1/8 }
  holds: { item: seed packet, size: 3 1/4 x 4 1/2 x 1/16, count: 6 }
supplies:
  - { item: Bone folder, kind: tool }
  - { item: Wheat stamp, kind: stamp, link: "https://example.org/wheat", paid: true, instead: any small stamp }
  - { item: Hot glue gun, kind: adhesive }
---
A short introduction.

## Score and fold :step{minutes=10 ahead}
Score :piece[box]. :scores[box]

:::tip
Work from the inside.
:::

![The box flat](photos/flat.jpg)

## Add the layers :step{minutes=5 dry=3}
Stick :piece[front] on, leaving :reveal[front] all round, and the label 1 1/2 in down.

::drawing{of=box view=folded}

:::host
Have the second box ready.
:::
`,
    { 'sample/photos/flat.jpg': 'x' },
  );
}

const PICTURES = new Map([
  ['photos/flat.jpg', { src: 'data:image/jpeg;base64,AA', width: 900, height: 600 }],
]);
const box = seedBox();
const html = new Map(TARGETS.map((target) => [target, sheetHtml(box, target, { pictures: PICTURES })]));
const sheet = (target: Target): Node => parseMarkup(html.get(target) ?? '');

describe.each(TARGETS)('a sheet for %s', (target) => {
  const root = sheet(target);

  it('says all its words', () => {
    const text = textOf(one(root, 'body'));
    expect(text).not.toMatch(/\{\w+\}|undefined|\[object/u);
    expect(text).toContain('Seed packet “keeper”');
    expect(text).toContain('that’s closed');
  });

  it('has one top heading and no level left out', () => {
    const levels = elements(root).flatMap(({ name }) => (/^h[1-6]$/u.test(name) ? [Number(name[1])] : []));
    expect(levels.filter((level) => level === 1)).toHaveLength(1);
    const left = levels.filter((level, index) => level > (levels[index - 1] ?? 0) + 1);
    expect(left).toEqual([]);
  });

  it('names every section by a heading that is there, and no two things alike', () => {
    const ids = elements(root).flatMap(({ attributes }) => attributes.id ?? []);
    expect(new Set(ids).size).toBe(ids.length);
    const named = elements(root).flatMap(({ attributes }) => attributes['aria-labelledby'] ?? []);
    expect(named.filter((id) => !ids.includes(id))).toEqual([]);
    const labeled = all(root, 'label').flatMap(({ attributes }) => attributes.for ?? []);
    expect(labeled.filter((id) => !ids.includes(id))).toEqual([]);
  });

  it('has tables whose headings say what they head', () => {
    const headings = all(root, 'table').flatMap((table) => all(table, 'th'));
    expect(headings.length).toBeGreaterThan(5);
    for (const { attributes } of headings) expect(attributes.scope).toMatch(/^(?:col|row|rowgroup)$/u);
  });

  it('describes every picture', () => {
    const drawings = all(root, 'svg').filter(({ attributes }) => attributes.role === 'img');
    expect(drawings.length).toBeGreaterThan(4);
    for (const { attributes } of drawings) expect(attributes['aria-label']?.length).toBeGreaterThan(10);
    for (const { attributes } of all(root, 'img')) expect(attributes.alt?.length).toBeGreaterThan(3);
  });

  it('prints every measurement in both editions', () => {
    const measures = all(root, '.measure');
    expect(measures.length).toBeGreaterThan(12);
    for (const measure of measures) {
      const units = all(measure, 'span').flatMap(({ attributes }) => attributes['data-unit'] ?? []);
      expect([...units].sort()).toEqual(['in', 'mm']);
      const [first] = units;
      expect(first).toBe(target === 'a4' ? 'mm' : 'in');
    }
  });

  it('keeps the host’s words out', () => {
    expect(html.get(target)).not.toContain('second box');
  });

  it('gives each caution once, before the first step, and the disclosure beside the link', () => {
    const text = textOf(one(root, 'main'));
    expect(text.split('Hot glue The nozzle')).toHaveLength(2);
    expect(text.indexOf('The nozzle')).toBeLessThan(text.indexOf('Score and fold'));
    expect(text).toContain('example.org/wheat Affiliate link: we earn a commission');
  });

  it('keeps a step, its picture and its tip in one element', () => {
    const [first] = all(root, '.step');
    if (!first) throw new Error('no step');
    // On paper the photo at the head stands nowhere else.
    expect(all(root, 'img')).toHaveLength(target === 'page' ? 2 : 1);
    expect(all(first, 'img')).toHaveLength(target === 'page' ? 1 : 0);
    expect(textOf(one(first, '.tip'))).toContain('Work from the inside.');
    expect(textOf(first)).toContain('Do ahead');
    expect(textOf(first)).toContain('10 minutes');
  });
});

describe('a print', () => {
  it('asks nobody for anything and holds no form, no script', () => {
    for (const target of ['letter', 'a4', 'large-print'] as const) {
      const root = sheet(target);
      for (const name of ['script', 'link', 'input', 'form', 'iframe', 'button'])
        expect(all(root, name)).toEqual([]);
      const sources = elements(root).flatMap(({ attributes }) => attributes.src ?? []);
      expect(sources.every((source) => source.startsWith('data:'))).toBe(true);
      expect(sources).toHaveLength(1);
    }
  });

  it('is the same twice', () => {
    expect(sheetHtml(seedBox(), 'a4', { pictures: PICTURES })).toBe(html.get('a4'));
  });

  it('hides nothing from who listens', () => {
    expect(html.get('letter')).not.toContain('aria-hidden');
  });
});

describe('a page', () => {
  const root = sheet('page');

  it('has landmarks and a way past the header', () => {
    expect(all(root, 'main')).toHaveLength(1);
    expect(all(root, 'header').length).toBeGreaterThan(0);
    expect(all(root, 'footer')).toHaveLength(1);
    expect(one(root, '.skip').attributes.href).toBe(`#${one(root, 'main').attributes.id}`);
  });

  it('has a box with a name for every supply and step', () => {
    const boxes = all(root, 'input').filter(({ attributes }) => attributes.type === 'checkbox');
    const labeled = new Set(all(root, 'label').map(({ attributes }) => attributes.for));
    expect(boxes.length).toBe(2 + 3 + 2);
    for (const { attributes } of boxes) expect(labeled.has(attributes.id)).toBe(true);
  });

  it('marks the columns of each edition, so that one can be shown alone', () => {
    for (const name of ['.cut-list', '.score-list']) {
      const rows = all(one(root, name), 'tr').map((row) =>
        elements(row).flatMap(({ attributes }) => attributes['data-column'] ?? []),
      );
      const marked = rows.filter((units) => units.length > 0);
      expect(marked.length).toBeGreaterThan(1);
      expect(marked.every((units) => units.join() === 'in,mm')).toBe(true);
    }
  });

  it('hides the switch of units until a script can work it', () => {
    expect(one(root, 'fieldset').attributes.hidden).toBe('');
  });

  it('runs nothing within the markup', () => {
    for (const { attributes } of elements(root))
      expect(Object.keys(attributes).join(' ')).not.toMatch(/\bon/u);
  });

  it('offers what it is given to print', () => {
    const links = {
      downloads: [{ label: 'pdf-a4', href: 'box-a4.pdf' }],
      home: '../index.html',
      share: 'share/',
    };
    const page = parseMarkup(sheetHtml(box, 'page', { links }));
    const buttons = all(page, '.button')
      .filter(({ name }) => name === 'a')
      .map((button) => [textOf(button), button.attributes.href]);
    expect(buttons).toEqual([
      ['PDF, A4', 'box-a4.pdf'],
      ['Share this project', 'share/'],
    ]);
  });
});

describe('the layers of a project without a photo', () => {
  const tag = sampleOf('unit: in\npieces:\n  tag: { cut: 3 x 6 }\n  mat: { cut: 2 x 5, on: tag }');

  it('stand at the head, but of large print, whose letters leave them no room there', () => {
    expect(heroOf(settingFor(tag, 'letter'))?.showsLayers).toBe(true);
    expect(heroOf(settingFor(tag, 'large-print'))).toBeUndefined();
    expect(sheetHtml(tag, 'large-print')).toContain('Layers on the tag');
  });
});

describe('a changed measurement', () => {
  const narrow = seedBox('3 x 4 1/4');
  const width = ownNet(narrow.editions.metric.shapes.nets, 'front')?.size.width;

  it.each(TARGETS)('changes every place of a sheet for %s', (target) => {
    const before = textOf(one(sheet(target), 'main'));
    const after = textOf(one(parseMarkup(sheetHtml(narrow, target, { pictures: PICTURES })), 'main'));
    const size = '3 1/4 × 4 1/2';
    const held = (text: string): number => text.split(size).length - 1;
    // What the box holds has that size too, and keeps it.
    expect(held(before)).toBeGreaterThan(held(after));
    expect(held(after)).toBe(1);
    expect(after.split('3 × 4 1/4').length - 1).toBeGreaterThanOrEqual(held(before) - 1);
    expect(after).toContain(`${printMillimeters(width ?? Length.zero)} ×`);
  });
});

describe('the millimeters of a sheet for A4', () => {
  it('are the metric edition’s own', () => {
    const { metric } = box.editions;
    const own = new Set(
      everyNet(metric.shapes.nets)
        .flatMap((net) => [net.size.width, net.size.height, ...net.scores.flatMap(({ at }) => at)])
        .map(printMillimeters),
    );
    const root = sheet('a4');
    const columns = [...all(root, '.lead')].map(textOf).flatMap((text) => text.match(/[\d.]+/gu) ?? []);
    expect(columns.length).toBeGreaterThan(8);
    expect(columns.filter((number) => !own.has(number))).toEqual([]);
  });

  it('are not a plain conversion where that would not add up', () => {
    const { inch, metric } = box.editions;
    const plain = ownNet(inch.shapes.nets, 'box')?.scores[0]?.at.map(printMillimeters);
    const solved = ownNet(metric.shapes.nets, 'box')?.scores[0]?.at.map(printMillimeters);
    expect(solved).not.toEqual(plain);
    expect(
      ownNet(inch.shapes.nets, 'box')?.scores[0]?.at.map((at) => printInches(at, 'plain')),
    ).toBeDefined();
  });
});

describe('a project of little', () => {
  it.each(TARGETS)('still makes a sheet for %s', (target) => {
    const bare = sample('---\ntitle: Bare\n---\n');
    const root = parseMarkup(sheetHtml(bare, target));
    expect(textOf(one(root, 'h1'))).toBe('Bare');
    expect(sheetHtml(bare, target)).not.toContain('class="score"');
  });

  it('may be called anything', () => {
    const hostile = sample(
      `---\ntitle: '</title><script>alert(1)</script>{{x}}'\nsummary: '<img src=x onerror=y>'\n---\n`,
    );
    for (const target of TARGETS) {
      const page = sheetHtml(hostile, target);
      expect(page).not.toMatch(/<script>|<img src=x/u);
      expect(textOf(one(parseMarkup(page), 'h1'))).toBe('</title><script>alert(1)</script>{{x}}');
    }
  });

  it('is called by what was typed, without the soft hyphens of its heading', () => {
    const long = sample('---\ntitle: Acknowledgements\n---\n');
    const page = sheetHtml(long, 'page');
    expect(page).toMatch(/<h1[^>]*>\s*Ac\u00adknow/u);
    expect(page).toMatch(/<title>Acknowledgements\b/u);
    expect(page).not.toMatch(/<meta[^>]*\u00ad/u);
  });

  it('has a renderer that knows the page', () => {
    expect(() => renderer.render('sheet', {}, () => '')).toThrow();
  });
});
