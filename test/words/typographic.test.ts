import { describe, expect, it } from 'vitest';
import { readLabels } from '../../src/make/package-files.ts';
import { dropSoftHyphens, hyphenated } from '../../src/words/hyphens.ts';
import { speaker } from '../../src/words/labels.ts';
import { labelsFor } from '../../src/words/languages.ts';
import { typographic } from '../../src/words/typographic.ts';

const all = readLabels();
const set = (text: string, language: string): string =>
  typographic(text, speaker(labelsFor(all, language).labels));

/** Common practice of American setting; no source. */
const ENGLISH: readonly (readonly [string, string])[] = [
  [`It's the box's lid.`, 'It’s the box’s lid.'],
  [`"Cut it," she said.`, '“Cut it,” she said.'],
  [`Write "in" on it ("once").`, 'Write “in” on it (“once”).'],
  [`the 'good' side`, 'the ‘good’ side'],
  [`the children's`, 'the children’s'],
  [`'s lid`, '’s lid'],
  [`the boxes' lids`, 'the boxes’ lids'],
  [`Ready? Go!`, 'Ready? Go!'],
  ['nothing here', 'nothing here'],
];

describe('typed text', () => {
  it.each(ENGLISH)('%s', (typed, said) => {
    expect(set(typed, 'en')).toBe(said);
    expect(set(typed, 'en-US')).toBe(said);
  });

  /** CLDR 44, delimiters, for the outer marks; French spaces: Lexique des règles typographiques en usage à l'Imprimerie nationale. */
  it.each([
    ['de', `Die Seite "innen" ist 'gut'.`, 'Die Seite „innen“ ist ‚gut‘.'],
    ['de', `"Schneiden", sagt sie.`, '„Schneiden“, sagt sie.'],
    ['de', `Fertig? Ja: los!`, 'Fertig? Ja: los!'],
    ['fr', `Le papier "brillant" de l'angle`, 'Le papier «\u00a0brillant\u00a0» de l’angle'],
    ['fr', 'Prêt ? Oui : coller ; presser !', 'Prêt\u00a0? Oui\u00a0: coller\u00a0; presser\u00a0!'],
    ['fr', 'Prêt? « déjà » dit.', 'Prêt\u00a0? «\u00a0déjà\u00a0» dit.'],
    ['fr', 'https://example.org/?a=1 à 18:30', 'https://example.org/?a=1 à 18:30'],
    ['fr', 'de 14 h 30 à 17 h', 'de 14\u00a0h\u00a030 à 17\u00a0h'],
    ['de', 'Um 20:00 Uhr ist Schluss, Uhr hin oder her.', 'Um 20:00\u00a0Uhr ist Schluss, Uhr hin oder her.'],
    ['nl', 'om 20:50 uur', 'om 20:50\u00a0uur'],
    ['fr-CA', 'Prêt! Oui : coller', 'Prêt! Oui\u00a0: coller'],
    ['es', `el papel "brillante"`, 'el papel «brillante»'],
    ['nl', `de kant "binnen"`, 'de kant ‘binnen’'],
  ])('in %s: %s', (language, typed, said) => {
    expect(set(typed, language)).toBe(said);
  });

  it('keeps a number and its unit on one line', () => {
    expect(set('3 mm wide, 2 in a row, 5 inserts', 'en')).toBe('3\u00a0mm wide, 2\u00a0in a row, 5 inserts');
  });

  it('may break long words where their language divides them, and no others', () => {
    // Duden: Weih-nachts-ge-schenk-schach-tel.
    expect(set('Weihnachtsgeschenkschachtel falten', 'de').replaceAll('\u00ad', '-')).toBe(
      'Weih-nachts-ge-schenk-schach-tel falten',
    );
    expect(dropSoftHyphens(set('Weihnachtsgeschenkschachtel', 'de'))).toBe('Weihnachtsgeschenkschachtel');
    expect(set('Einkaufsbeutel', 'de')).toBe('Einkaufsbeutel');
    // A language without patterns keeps its words whole.
    expect(hyphenated('wortlangerworter', 'tlh')).toBe('wortlangerworter');
  });
});
