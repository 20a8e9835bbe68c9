import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Twin } from '../../src/edition/editions.ts';
import { Length } from '../../src/measure/length.ts';
import { parseLength } from '../../src/measure/notation.ts';
import { measuresFor } from '../../src/words/measures.ts';
import { voiceOf } from '../../src/words/voice.ts';
import { all, one, parseMarkup, textOf } from '../handout/markup.ts';
import { labels } from '../handout/sample.ts';

const voice = voiceOf(labels);
const inches = (top: number, bottom = 1): Length => Length.of(top, bottom, 'in');
const twin = (top: number, bottom: number, mm: number): Twin => ({
  inch: inches(top, bottom),
  metric: Length.of(mm, 1, 'mm'),
});
const SIZE = [twin(9, 4, 57), twin(4, 1, 102)];
const POSITIONS = [twin(1, 1, 25), twin(9, 2, 114), twin(9, 1, 229)];

const read = (markup: { toString(): string }): string => textOf(parseMarkup(String(markup)));

describe('a size', () => {
  it('stands in both editions, the leading one first', () => {
    expect(read(measuresFor(voice, ['inch', 'metric'], false).both(SIZE))).toBe('2 1/4 × 4 in (57 × 102 mm)');
    expect(read(measuresFor(voice, ['metric', 'inch'], false).both(SIZE))).toBe('57 × 102 mm (2 1/4 × 4 in)');
  });

  it('stands alone in a column', () => {
    const { alone } = measuresFor(voice, ['inch', 'metric'], false);
    expect(read(alone(SIZE, 'inch'))).toBe('2 1/4 × 4 in');
    expect(read(alone(SIZE, 'metric'))).toBe('57 × 102 mm');
  });

  it('marks each edition, so that a page can show one of them', () => {
    const html = measuresFor(voice, ['inch', 'metric'], true).both(SIZE).toString();
    const markup = parseMarkup(html);
    const units = all(markup, 'span').flatMap(({ attributes }) => attributes['data-unit'] ?? []);
    expect(units).toEqual(['in', 'mm']);
    expect(all(markup, '.bracket').map(textOf)).toEqual(['(', ')']);
    // What is hidden takes its space along: a comma may follow.
    expect(html).toContain('</span><span class="twin"><span class="bracket"> (</span>');
  });
});

describe('one edition alone', () => {
  it.each([
    ['inch', '2 1/4 × 4 in', 'in'],
    ['metric', '57 × 102 mm', 'mm'],
  ] as const)('is all that is shown: %s', (edition, words, unit) => {
    const measures = measuresFor(voice, [edition], false);
    expect(read(measures.both(SIZE))).toBe(words);
    expect(measures.headings).toMatchObject({ lead: { unit }, second: undefined });
    expect(measures.columns(SIZE).second).toBeUndefined();
  });
});

describe('a length that no ruler has', () => {
  const odd: readonly Twin[] = [{ inch: inches(10, 3), metric: Length.of(10, 3, 'mm') }, twin(4, 1, 102)];

  it('is said to be rounded, each figure by itself, seen and heard', () => {
    expect(read(measuresFor(voice, ['inch', 'metric'], false).both(odd))).toBe(
      '≈3 5/16 × 4 in (≈3 × 102 mm)',
    );
    const markup = parseMarkup(measuresFor(voice, ['inch'], true).both(odd).toString());
    expect(one(markup, '.spoken').children.join('')).toBe('about 3 and 5 sixteenths by 4 inches');
  });
});

describe('positions on a board', () => {
  it('are listed in a sentence and set in a row in a column', () => {
    const { both, alone } = measuresFor(voice, ['inch', 'metric'], false);
    expect(read(both(POSITIONS, 'sentence'))).toBe('1, 4 1/2, and 9 in (25, 114, and 229 mm)');
    expect(read(alone(POSITIONS, 'metric', 'column'))).toBe('25, 114, 229 mm');
  });
});

describe('inches read aloud', () => {
  const heard = (lengths: readonly Twin[]): string => {
    const markup = measuresFor(voice, ['inch', 'metric'], true).alone(lengths, 'inch').toString();
    return one(parseMarkup(markup), '.spoken').children.join('');
  };

  it.each([
    [inches(1), '1 inch'],
    [inches(1, 2), 'one half inch'],
    [inches(3, 4), '3 quarters inch'],
    [inches(9, 8), '1 and 1 eighth inches'],
    [inches(43, 16), '2 and 11 sixteenths inches'],
    [inches(1, 32), '1 thirty-second inch'],
  ])('%s is "%s"', (length, words) => {
    expect(heard([{ inch: length, metric: length }])).toBe(words);
  });

  it('says a size with "by"', () => {
    expect(heard(SIZE)).toBe('2 and 1 quarter by 4 inches');
  });

  it('are beside figures that a screen reader leaves out', () => {
    const markup = parseMarkup(measuresFor(voice, ['inch', 'metric'], true).alone(SIZE, 'inch').toString());
    const hidden = all(markup, 'span').filter(({ attributes }) => attributes['aria-hidden'] === 'true');
    expect(hidden.map(textOf)).toEqual(['2 1/4 × 4 in']);
  });

  it('are left out of print, where nothing may be hidden', () => {
    const markup = measuresFor(voice, ['inch', 'metric'], false).both(SIZE).toString();
    expect(markup).not.toContain('aria-hidden');
    expect(markup).not.toContain('spoken');
  });
});

describe('an inch figure', () => {
  const inchFigure = (length: Length): string =>
    measuresFor(voice, ['inch'], false)
      .both([{ inch: length, metric: length }])
      .toString();

  it('marks the fraction alone for the typeface', () => {
    const markup = parseMarkup(inchFigure(inches(43, 16)));
    expect(all(markup, '.fraction').map(textOf)).toEqual(['11/16']);
    expect(textOf(markup)).toBe('2 11/16 in');
  });

  it('reads back as the length it was, for every length of a ruler', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 32 * 36 }), (steps) => {
        const length = inches(steps, 32);
        const reading = parseLength(read(inchFigure(length)), 'in');
        expect(reading.ok && reading.value.equals(length)).toBe(true);
      }),
    );
  });

  it('keeps its sign', () => {
    expect(read(inchFigure(inches(-3, 2)))).toBe('−1 1/2 in');
    expect(read(inchFigure(inches(-1, 8)))).toBe('−1/8 in');
  });
});
