import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readLabels } from '../../src/make/package-files.ts';
import { labelsFor } from '../../src/words/languages.ts';
import { escapeHtml, html } from '../../src/words/safe-html.ts';
import { type Voice, voiceOf } from '../../src/words/voice.ts';
import { labels } from '../handout/sample.ts';

const all = readLabels();

function voiceIn(language: string): Voice {
  return voiceOf(labelsFor(all, language).labels);
}

/** Spaces of any kind as plain ones. */
const plain = (text: string): string => text.replace(/\s/gu, ' ');

/** CLDR 44, list patterns "standard". */
describe('a list', () => {
  it.each([
    ['en', ['a'], 'a'],
    ['en', ['a', 'b'], 'a and b'],
    ['en', ['a', 'b', 'c'], 'a, b, and c'],
    ['de', ['a', 'b'], 'a und b'],
    ['de', ['a', 'b', 'c'], 'a, b und c'],
    ['fr', ['a', 'b'], 'a et b'],
    ['fr', ['a', 'b', 'c'], 'a, b et c'],
    ['es', ['a', 'b'], 'a y b'],
    ['es', ['a', 'b', 'c'], 'a, b y c'],
    // Before the sound of an i, Spanish says e (Real Academia Española, Diccionario panhispánico de dudas, "y").
    ['es', ['papel', 'hilo'], 'papel e hilo'],
    ['es', ['aguja', html`<b>${'imán'}</b>`], 'aguja e <b>imán</b>'],
    ['es', ['papel', 'hierro'], 'papel y hierro'],
    ['nl', ['a', 'b'], 'a en b'],
    ['nl', ['a', 'b', 'c'], 'a, b en c'],
    ['en', [], ''],
  ])('in %s of %j is "%s"', (language, items, said) => {
    expect(voiceIn(language).list(items).toString()).toBe(said);
  });

  it('escapes its texts and keeps its markup', () => {
    expect(voiceIn('en').list(['<b>', html`<i>x</i>`]).toString()).toBe('&lt;b&gt; and <i>x</i>');
  });
});

/** CLDR 44, numbers: Spanish groups from five digits on. */
describe('a number', () => {
  it.each([
    ['en', 3, '3'],
    ['en', 1234, '1,234'],
    ['de', 1234, '1.234'],
    ['fr', 1234, '1 234'],
    ['es', 1234, '1234'],
    ['es', 12345, '12.345'],
    ['nl', 1234, '1.234'],
    ['en', 2.5, '2.5'],
    ['de', 2.5, '2,5'],
  ])('in %s, %d is %s, in a text and in markup', (language, count, said) => {
    const voice = voiceIn(language);
    const text = voice.say('page-of', { page: count, pages: '' });
    const markup = voice.phrase('page-of', { page: count, pages: '' }).toString();
    expect(plain(text)).toContain(` ${said} `);
    expect(markup).toBe(escapeHtml(text));
  });

  it.each([
    ['en', '3.5', '3.5'],
    ['de', '3.5', '3,5'],
    ['fr', '0.25', '0,25'],
    ['es', '10', '10'],
    ['nl', '3.50', '3,50'],
  ])('in %s, the figure %s is %s', (language, figure, said) => {
    expect(voiceIn(language).say.figure(figure)).toBe(said);
  });
});

describe('a duration', () => {
  it.each([
    ['en', 0, '0 minutes'],
    ['en', 1, '1 minute'],
    ['en', 59, '59 minutes'],
    ['en', 60, '1 hour'],
    ['en', 61, '1 hour 1 minute'],
    ['en', 120, '2 hours'],
    ['en', 135, '2 hours 15 minutes'],
    ['de', 60, '1 Stunde'],
    ['de', 121, '2 Stunden 1 Minute'],
    ['fr', 0, '0 minute'],
    ['fr', 121, '2 heures 1 minute'],
    ['es', 61, '1 hora y 1 minuto'],
    ['nl', 121, '2 uur en 1 minuut'],
  ])('in %s of %d minutes is %s', (language, minutes, said) => {
    expect(plain(voiceIn(language).duration(minutes))).toBe(said);
  });
});

/** CLDR 44, dates "full" and "long". */
describe('a day', () => {
  it.each([
    ['en', 'Monday, February 28, 2028', 'February 28, 2028'],
    ['de', 'Montag, 28. Februar 2028', '28. Februar 2028'],
    ['fr', 'lundi 28 février 2028', '28 février 2028'],
    ['es', 'lunes, 28 de febrero de 2028', '28 de febrero de 2028'],
    ['nl', 'maandag 28 februari 2028', '28 februari 2028'],
  ])('in %s has its weekday and its words', (language, day, date) => {
    const voice = voiceIn(language);
    expect([plain(voice.day('2028-02-28')), plain(voice.date('2028-02-28'))]).toEqual([day, date]);
    // No line ends within a date, but for the weekday's.
    expect(voice.date('2028-02-28')).not.toContain(' ');
    expect(voice.day('2028-02-28').split(' ')).toHaveLength(2);
  });

  it('is the first of a month as French writes it, and no other', () => {
    // Imprimerie nationale: le 1er février; CLDR has "1 février".
    const dates = ['fr', 'fr-CA', 'en', 'de'].flatMap((language) =>
      ['2027-02-01', '2027-02-11'].map((date) => plain(voiceIn(language).date(date))),
    );
    expect(dates).toEqual([
      '1er février 2027',
      '11 février 2027',
      '1er février 2027',
      '11 février 2027',
      'February 1, 2027',
      'February 11, 2027',
      '1. Februar 2027',
      '11. Februar 2027',
    ]);
  });

  it('is that of the calendar, wherever the machine stands', () => {
    // 2028 is a leap year; 1 January 2000 was a Saturday.
    const { day } = voiceIn('en');
    expect(['2028-02-29', '2000-01-01', '1999-12-31'].map((date) => plain(day(date)))).toEqual([
      'Tuesday, February 29, 2028',
      'Saturday, January 1, 2000',
      'Friday, December 31, 1999',
    ]);
  });
});

describe('a phrase', () => {
  const voice = voiceOf(labels);

  it('is the text escaped, whatever its values hold', () => {
    const value = fc.oneof(fc.string(), fc.constantFrom('{page}', '{pages}', '\ue000', '<', '&amp;', '$&'));
    fc.assert(
      fc.property(value, value, (page, pages) => {
        const values = { page, pages };
        expect(voice.phrase('page-of', values).toString()).toBe(escapeHtml(voice.say('page-of', values)));
        expect(voice.say('page-of', values)).toBe(`Page ${page} of ${pages}`);
      }),
      { seed: 17, numRuns: 200 },
    );
  });

  it('keeps the name of a value that it was not given', () => {
    expect(voice.say('page-of', { page: 1 })).toBe('Page 1 of {pages}');
    expect(voice.phrase('page-of', { page: 1 }).toString()).toBe('Page 1 of {pages}');
  });

  it('is cut up into words and names by turns', () => {
    expect(voice.say.parts('page-of', { page: true, pages: 4 })).toEqual(['Page ', true, ' of ', '4', '']);
  });
});
