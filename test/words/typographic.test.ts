import { describe, expect, it } from 'vitest';
import { typographic } from '../../src/words/typographic.ts';

/** Common practice of American setting; no source. */
const ENGLISH: readonly (readonly [string, string])[] = [
  [`It's the box's lid.`, 'It’s the box’s lid.'],
  [`"Cut it," she said.`, '“Cut it,” she said.'],
  [`Write "in" on it ("once").`, 'Write “in” on it (“once”).'],
  [`the 'good' side`, 'the ‘good’ side'],
  [`the children's`, 'the children’s'],
  [`'s lid`, '’s lid'],
  [`the boxes' lids`, 'the boxes’ lids'],
  ['nothing here', 'nothing here'],
];

describe('quotation marks', () => {
  it.each(ENGLISH)('%s', (typed, set) => {
    expect(typographic(typed, 'en')).toBe(set);
    expect(typographic(typed, 'en-US')).toBe(set);
  });

  it('are left to the writer in another language, but for the apostrophe', () => {
    expect(typographic(`"l'angle"`, 'fr')).toBe(`"l’angle"`);
  });
});
