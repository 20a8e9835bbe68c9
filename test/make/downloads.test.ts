import { afterAll, describe, expect, it } from 'vitest';
import { offersOf, printer, slugs } from './offers.ts';

afterAll(() => printer.close());

describe('what a page leads to', () => {
  it.each(slugs)('is made, for %s', (slug) => {
    const offers = offersOf(slug, ['letter', 'a4']);
    expect(offers.flatMap(({ offered }) => offered).length).toBeGreaterThanOrEqual(3);
    for (const { offered, made } of offers) expect(made).toEqual(expect.arrayContaining([...offered]));
  });

  it('is named with its paper where there are several, on the page and in lists', () => {
    const offers = offersOf('short-pencil-box', ['letter', 'a4']);
    const papers = offers.filter(({ listed }) => listed.length > 0);
    const labels = papers.flatMap((each) => each.labels);
    const listed = papers.flatMap((each) => each.listed);
    // An output that comes new may stand anywhere among them.
    const [handouts, templates] = [
      ['Letter', 'A4', 'Large print'].map((paper) => `Handout: ${paper}`),
      ['Letter', 'A4'].map((paper) => `Template: ${paper}`),
    ];
    expect(listed.filter((line) => line.startsWith('Handout: '))).toEqual(handouts);
    expect(listed.filter((line) => line.startsWith('Template: '))).toEqual(templates);
    expect(labels.filter((label) => label.startsWith('PDF, '))).toEqual([
      'PDF, Letter',
      'PDF, A4',
      'PDF, large print',
    ]);
    expect(labels.filter((label) => label.startsWith('Template, '))).toEqual([
      'Template, Letter',
      'Template, A4',
    ]);
  });

  it('is a template without a paper where there is one paper alone', () => {
    const offers = offersOf('short-pencil-box', ['a4']);
    expect(offers.flatMap(({ labels }) => labels)).toContain('Actual-size template');
    expect(offers.flatMap(({ listed }) => listed)).toContain('Template: PDF');
  });

  it('is no PDF where none is made', () => {
    const offers = offersOf('short-pencil-box', ['letter', 'a4'], { pdf: false });
    expect(offers.flatMap(({ offered }) => offered).filter((path) => path.endsWith('.pdf'))).toEqual([]);
  });
});
