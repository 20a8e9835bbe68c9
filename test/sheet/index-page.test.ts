import { describe, expect, it } from 'vitest';
import { type IndexInput, renderIndex, renderNotFound } from '../../src/sheet/index-page.ts';
import { all, elements, one, parseMarkup, textOf } from './markup.ts';
import { labels, renderer } from './sample.ts';

const CARD = {
  slug: 'seed-box',
  title: `The gardener's box`,
  summary: 'Holds six packets.',
  session: '2026-12-10',
  level: 'beginner',
  minutes: 45,
  picture: { src: 'seed-box/finished.jpg', alternative: 'A green box', width: 800, height: 600 },
  papers: [{ name: 'PDF, A4', href: 'seed-box/seed-box-a4.pdf' }],
};
const INPUT: IndexInput = {
  site: { title: 'Paper bench' },
  labels,
  styles: { kind: 'linked', hrefs: ['assets/a.css'] },
  scripts: [],
  toCome: [CARD],
  others: [{ slug: 'tag', title: '<b>Tag</b> {{x}}', papers: [] }],
};

describe('the list of projects', () => {
  const root = parseMarkup(renderIndex(INPUT, renderer));

  it('shows sessions to come first, then the others', () => {
    expect(all(root, 'h2').map(textOf)).toEqual(['Sessions to come', 'All projects']);
    expect(all(root, 'h3').map(textOf)).toEqual(['The gardener’s box', '<b>Tag</b> {{x}}']);
  });

  it('shows of each its picture, facts and papers, with links that work from any place', () => {
    const [card] = all(root, '.card');
    if (!card) throw new Error('no card');
    expect(one(card, 'img').attributes).toMatchObject({ src: 'seed-box/finished.jpg', alt: 'A green box' });
    expect(all(card, 'span').map(textOf)).toEqual(['Thursday, December 10, 2026', '45 minutes', 'beginner']);
    expect(all(card, 'a').map(({ attributes }) => attributes.href)).toEqual([
      'seed-box/index.html',
      'seed-box/seed-box-a4.pdf',
    ]);
    expect(one(card, '.buttons').attributes['aria-label']).toBe(`Print The gardener's box`);
  });

  it('has one top heading, landmarks and a way past', () => {
    expect(all(root, 'h1').map(textOf)).toEqual(['Paper bench']);
    expect(one(root, '.skip').attributes.href).toBe('#content');
    expect(one(root, 'main').attributes.id).toBe('content');
    const ids = elements(root).flatMap(({ attributes }) => attributes.id ?? []);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('says so when there is nothing', () => {
    const empty = parseMarkup(renderIndex({ ...INPUT, toCome: [], others: [] }, renderer));
    expect(textOf(one(empty, 'main'))).toContain('There are no projects yet.');
    expect(all(empty, 'h2')).toEqual([]);
  });
});

describe('the page that is not there', () => {
  it('leads back to the list', () => {
    const root = parseMarkup(renderNotFound({ ...INPUT, home: 'https://example.org/bench/' }, renderer));
    expect(textOf(one(root, 'h1'))).toBe('There is no such page');
    expect(one(root, '.button').attributes.href).toBe('https://example.org/bench/');
  });
});
