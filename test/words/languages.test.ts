import { describe, expect, it } from 'vitest';
import type { Labels } from '../../src/words/labels.ts';
import { keysOf, labelsFor } from '../../src/words/languages.ts';
import { voiceOf } from '../../src/words/voice.ts';

function labels(language: string, texts: Readonly<Record<string, string>>): [string, Labels] {
  return [language, { language, texts: new Map(Object.entries(texts)) }];
}

const ENGLISH = { time: 'Time', level: 'Level', 'hours-one': '{count} hour', 'hours-other': '{count} hours' };
const ALL = new Map([
  labels('en', ENGLISH),
  labels('de', { ...ENGLISH, time: 'Dauer', level: 'Grad' }),
  labels('zh-Hant', ENGLISH),
  labels('fr', { time: 'Durée', 'hours-one': '{count} heure', 'hours-other': '{count} heures' }),
]);

describe('the labels of a language', () => {
  it.each([
    ['de', 'de'],
    ['de-AT', 'de'],
    ['DE-at', 'de'],
    ['de-CH-1996', 'de'],
    ['en-GB', 'en'],
    // RFC 4647 section 3.4: "zh-Hant-CN-x-private1-private2" is looked up as "zh-Hant-CN-x-private1", "zh-Hant-CN",
    // "zh-Hant" and "zh", in this order.
    ['zh-Hant-CN-x-private1-private2', 'zh-Hant'],
  ])('for %s are those of %s', (wanted, from) => {
    expect(labelsFor(ALL, wanted)).toMatchObject({ from, known: true });
  });

  it.each(['zh', 'zh-Hans', 'it', 'd', 'deu'])('for %s are the English, said to be so', (wanted) => {
    const { labels: found, known, missing } = labelsFor(ALL, wanted);
    expect([known, missing, found.language]).toEqual([false, [], 'en']);
    expect(found.texts.get('time')).toBe('Time');
  });

  it('keep the tag that was asked for, whose dates differ', () => {
    // Austria calls January Jänner: CLDR, and any Austrian calendar.
    const [germany, austria] = ['de', 'de-AT'].map((tag) => voiceOf(labelsFor(ALL, tag).labels));
    expect(germany?.date('2027-01-14')).toBe('14.\u00a0Januar\u00a02027');
    expect(austria?.date('2027-01-14')).toBe('14.\u00a0Jänner\u00a02027');
    expect(austria?.say('time')).toBe('Dauer');
  });

  it('are filled up in English where a language has a hole, which is named', () => {
    const { labels: french, missing } = labelsFor(ALL, 'fr-CA');
    expect(missing).toEqual(['level', 'hours-many']);
    const voice = voiceOf(french);
    expect([voice.say('time'), voice.say('level')]).toEqual(['Durée', 'Level']);
    // A plural that is missing is the language's own other plural, not English in the middle of a sentence.
    expect(voice.count('hours', 1_000_000)).toMatch(/^1\s000\s000 heures$/u);
  });

  it('of a variety are its own, then those of its language, then the English', () => {
    // CLDR: 1 and 5 of something in Polish are "one" and "many".
    const polish = labels('pl', { 'hours-one': '{count} godzina', 'hours-other': '{count} godziny' });
    const canada = labels('fr-CA', { level: 'Calibre' });
    const more = new Map([...ALL, polish, canada]);
    const french = labelsFor(more, 'fr-CA');
    const voice = voiceOf(french.labels);
    expect(['time', 'level'].map((key) => voice.say(key))).toEqual(['Durée', 'Calibre']);
    expect([french.from, french.missing]).toEqual(['fr', ['hours-many']]);
    expect(labelsFor(more, 'fr').missing).toEqual(['level', 'hours-many']);
    // Whoever asks for another kind of French does not get the Canadian.
    expect(voiceOf(labelsFor(more, 'fr-BE').labels).say('level')).toBe('Level');
    const { count } = voiceOf(labelsFor(more, 'pl').labels);
    expect([count('hours', 1), count('hours', 5)]).toEqual(['1 godzina', '5 godziny']);
  });

  it('take no plural from English where the language has another', () => {
    const only = new Map([...ALL, labels('ja', { 'hours-other': '{count}時間' })]);
    expect(voiceOf(labelsFor(only, 'ja').labels).count('hours', 1)).toBe('1時間');
    const half = new Map([...ALL, labels('sv', { 'hours-other': '{count} timmar' })]);
    expect(voiceOf(labelsFor(half, 'sv').labels).count('hours', 1)).toBe('1 timmar');
  });

  it('need a word for every plural of their own, and none for those of English alone', () => {
    const english: Labels = { language: 'en', texts: new Map(Object.entries(ENGLISH)) };
    const counted = (language: string): string[] =>
      keysOf(english, language).filter((key) => key.startsWith('hours'));
    // CLDR's plural rules: Polish has four, Japanese one.
    expect(counted('pl').toSorted()).toEqual(['hours-few', 'hours-many', 'hours-one', 'hours-other']);
    expect(counted('ja')).toEqual(['hours-other']);
    expect(counted('de')).toEqual(['hours-one', 'hours-other']);
  });

  it('are a mistake of ours without English', () => {
    expect(() => labelsFor(new Map(), 'de')).toThrow('English');
  });
});
