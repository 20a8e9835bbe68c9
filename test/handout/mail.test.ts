import { describe, expect, it } from 'vitest';
import { mailingFrom, mailSaid } from '../../src/handout/mail.ts';
import type { Target } from '../../src/handout/setting.ts';
import { forms } from '../../src/shape/forms/index.ts';
import { one, parseMarkup, textOf } from './markup.ts';
import { type Sample, sample, sampleOf, settingFor, sheetHtml } from './sample.ts';

const CARD = `
unit: in
stock:
  base: { name: Base, sheet: 12 x 12, weight: 80 lb cover }
pieces:
  card: { stock: base, form: single-fold card, size: 5 1/2 x 4 1/4 }
  mat:  { stock: base, cut: 5 1/4 x 4, on: card.front }
`;

function said(from: Sample, target: Target = 'letter', inUs = true): string | undefined {
  const html = mailSaid(settingFor(from, target), { series: ['iso', 'north-america'], inUs });
  return html && textOf(parseMarkup(html.toString()));
}

describe('what is said of a card in the mail', () => {
  it('is what takes it, how thick and heavy it is, and what it counts as', () => {
    // Three sheets of 9.5 points (0.0095 in): 0.0285 in, 0.72 mm. 216 g/m² of 11 × 4 1/4 and of 5 1/4 × 4 in: 9.47 g.
    // An A2 leaves 1/8 in, for which it is sold to such a card; a C6 leaves 22 and 6 mm, an A6 1 and 1/2 in.
    expect(said(sampleOf(CARD))).toBe(
      'C6, A2 (snug), A6: US letter; about 0.03 in (0.7 mm) thick, about 10 g (USPS rules of January 4, 2010)',
    );
    expect(said(sampleOf(CARD), 'a4')).toContain('about 0.7 mm (0.03 in) thick');
    const html = mailSaid(settingFor(sampleOf(CARD), 'letter'), { series: ['iso'], inUs: true });
    expect(html?.toString()).toContain('10\u00a0g');
  });

  it('is no rule of the United States elsewhere', () => {
    expect(said(sampleOf(CARD), 'a4', false)).toBe(
      'C6, US A2 (snug), US A6; about 0.7 mm (0.03 in) thick, about 10 g',
    );
  });

  it.each([
    ['paper: [a4]', /^C6; /u],
    ['paper: [letter]', /^A2 \(snug\), A6: US letter; .*USPS/u],
    ['paper: [letter]\ncurrency: CAD', /^US A2 \(snug\), US A6; (?!.*USPS)/u],
    ['paper: [a4, letter]', /^C6, US A2 \(snug\), US A6; (?!.*USPS)/u],
  ])('names the envelopes that are sold where a site prints: %s', (settings, words) => {
    const from = sample(`---\ntitle: A card\nmeasurements:\n${CARD.trim().replace(/^/gmu, '  ')}\n---\n`, {
      'site.yaml': `${settings}\n`,
    });
    expect(textOf(parseMarkup(String(mailSaid(settingFor(from), mailingFrom(from.site)))))).toMatch(words);
  });

  it('leaves out the envelope that is made for another card', () => {
    const both = sampleOf(`${CARD}
  little: { stock: base, form: single-fold card, size: 4 x 3 }
  cover: { stock: base, form: envelope, card: 5 1/2 x 4 1/4, holds: card }
  sleeve: { stock: base, form: envelope, card: 4 x 3, holds: little }`);
    const text = said(both, 'letter', false) ?? '';
    expect(text).toMatch(/^card: cover, .*; little: sleeve, /u);
    expect(text.match(/cover|sleeve/gu)).toEqual(['cover', 'sleeve']);
  });

  it('names first its own envelope, which may be too square for the machines', () => {
    // 5 1/2 + 1/4 and 4 1/4 + 1/4: 5 3/4 × 4 1/2 in, 1.278 times as long as high, less than 1.3.
    const both = sampleOf(`${CARD}  cover: { stock: base, form: envelope, card: 5 1/2 x 4 1/4 }`);
    expect(said(both)).toMatch(
      /^cover: US letter, but too square for the machines \(surcharge\); C6, A2 \(snug\), A6: US letter; /u,
    );
  });

  it('says so where no envelope takes it', () => {
    const large = sampleOf('unit: in\npieces:\n  card: { form: single-fold card, size: 9 x 14 }');
    expect(said(large)).toMatch(/^no common envelope fits it; about/u);
  });

  it('counts loose sheets in, and speaks of no weight it does not know', () => {
    const loose = sampleOf(`${CARD}  note: { cut: 5 x 4, count: 10 }`);
    // Ten sheets of unknown paper, reckoned at 0.3 mm each, besides the 0.72 mm of the card: then it bends an envelope
    // round its edges by more than an A2 has to spare.
    expect(said(loose, 'letter', false)).toMatch(/about 0\.15 in \(3\.7 mm\) thick$/u);
    expect(said(loose)).not.toMatch(/A2| g\b/u);
  });
});

describe('what is spoken of', () => {
  it.each<[string, string, boolean]>([
    ['a gate-fold card', 'card: { form: gate-fold card, size: 5 1/2 x 4 1/4 }', true],
    ['an accordion', 'card: { form: accordion card, size: 2 3/4 x 4 1/4 }', true],
    ['an envelope alone', 'cover: { form: envelope, outside: 6 x 4 }', true],
    [
      'score lines that close flat',
      'card: { cut: 8 1/2 x 5 1/2, score: [{ from: left, at: [4 1/4] }] }',
      true,
    ],
    ['a tag', 'tag: { form: tag, size: 2 x 4 }', false],
    ['a flat piece with layers', 'base: { cut: 2 x 7 }\n  mat: { cut: 1 3/4 x 6 3/4, on: base }', false],
    ['a box', 'box: { form: tray, inside: 3 x 3 x 1 }', false],
    [
      'a box with a tag',
      'box: { form: tuck-end box, inside: 3 x 2 x 4 }\n  tag: { form: tag, size: 2 x 4 }',
      false,
    ],
    ['a band', 'band: { form: belly band, around: 4 x 1/4, height: 2 }', false],
    ['nothing', 'lost: { form: no such form }', false],
  ])('%s', (_, pieces, isSaid) => {
    const from = sampleOf(`unit: in\npieces:\n  ${pieces}`);
    expect(said(from) !== undefined).toBe(isSaid);
    expect(sheetHtml(from, 'page').includes('Mailing it')).toBe(isSaid);
  });

  it.each(forms.map((form) => [form.name, form] as const))('a %s, if the form says so', (name, form) => {
    const from = sampleOf(`unit: in\npieces:\n  own: { form: ${name}, ${form.example.settings.join(', ')} }`);
    expect(said(from) !== undefined).toBe(form.mailed !== undefined);
  });

  it('is an envelope as it is mailed, where there is no card', () => {
    const square = sampleOf('unit: in\npieces:\n  cover: { form: envelope, outside: 6 x 6 }');
    expect(said(square)).toMatch(/^US letter, but too square for the machines \(surcharge\); about/u);
    const small = sampleOf('unit: mm\npieces:\n  cover: { form: envelope, outside: 114 x 81 }');
    expect(said(small)).toMatch(/^too small to mail in the USA; about/u);
  });
});

describe('on the sheet', () => {
  it.each<Target>(['page', 'letter', 'a4', 'large-print'])('for %s it is one dated line', (target) => {
    const text = textOf(one(parseMarkup(sheetHtml(sampleOf(CARD), target)), '.facts'));
    expect(text).toMatch(/Mailing it .*\(USPS rules of January 4, 2010\)/u);
    expect(text.match(/USPS/gu)).toHaveLength(1);
  });
});
