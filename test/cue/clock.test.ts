import { describe, expect, it } from 'vitest';
import { runClock, timesFrom } from '../../src/cue/clock.ts';
import { voiceOf } from '../../src/words/voice.ts';
import { labels } from '../handout/sample.ts';

type TimedStep = Parameters<typeof runClock>[0][number];

const step = (minutes: number, dry = 0, ...pieces: string[]): TimedStep => ({
  minutes,
  dry,
  pieces: new Set(pieces),
});

/** Reckoned by hand: each row is from, to, dry at, waits; then the end. */
describe('the clock', () => {
  it.each<[string, readonly TimedStep[], readonly (readonly (number | undefined)[])[], number]>([
    ['nothing to do', [], [], 0],
    ['one step', [step(10)], [[0, 10, undefined, 0]], 10],
    [
      'one after the other',
      [step(10), step(5), step(7)],
      [
        [0, 10, undefined, 0],
        [10, 15, undefined, 0],
        [15, 22, undefined, 0],
      ],
      22,
    ],
    [
      'drying alongside the next step, over before the last',
      [step(5, 5, 'label'), step(8, 0, 'box'), step(6)],
      [
        [0, 5, 10, 0],
        [5, 13, undefined, 0],
        [13, 19, undefined, 0],
      ],
      19,
    ],
    [
      'the same piece again, after a step of others',
      [step(4, 10, 'light'), step(8, 0, 'mat'), step(6, 0, 'light', 'lantern'), step(4)],
      [
        [0, 4, 14, 0],
        [4, 12, undefined, 0],
        [14, 20, undefined, 2],
        [20, 24, undefined, 0],
      ],
      24,
    ],
    [
      'the last step waits for everything',
      [step(12, 20), step(15, 10), step(8)],
      [
        [0, 12, 32, 0],
        [12, 27, 37, 0],
        [37, 45, undefined, 10],
      ],
      45,
    ],
    [
      'what the last step leaves to dry counts to the end',
      [step(10), step(5, 30)],
      [
        [0, 10, undefined, 0],
        [10, 15, 45, 0],
      ],
      45,
    ],
    [
      'a long wait of an early step that no later one needs but the last',
      [step(1, 60, 'a'), step(1), step(1), step(1)],
      [
        [0, 1, 61, 0],
        [1, 2, undefined, 0],
        [2, 3, undefined, 0],
        [61, 62, undefined, 58],
      ],
      62,
    ],
    [
      'a step without minutes takes none',
      [step(0, 5), step(3), step(4)],
      [
        [0, 0, 5, 0],
        [0, 3, undefined, 0],
        [5, 9, undefined, 2],
      ],
      9,
    ],
  ])('%s', (_, steps, slots, end) => {
    const clock = runClock(steps);
    expect(clock.slots.map(({ from, to, dryAt, waits }) => [from, to, dryAt, waits])).toEqual(slots);
    expect(clock.end).toBe(end);
  });
});

describe('a moment', () => {
  const say = (start: string | undefined, minutes: number, language: string): string =>
    timesFrom(start, voiceOf({ ...labels, language }))(minutes).replace(/\s/gu, ' ');

  // Reckoned by hand; how the hours are written is CLDR's.
  it.each([
    ['18:30', 0, 'en', '6:30 PM'],
    ['18:30', 45, 'de', '19:15'],
    ['18:30', 45, 'en', '7:15 PM'],
    ['09:05', 60, 'en', '10:05 AM'],
    ['00:00', 0, 'en', '12:00 AM'],
    ['23:50', 9, 'de', '23:59'],
    ['23:50', 9, 'fr', '23:59'],
    ['23:50', 10, 'en', '12:00 AM (next day)'],
    ['23:50', 20, 'en', '12:10 AM (next day)'],
    ['23:50', 1450, 'en', '12:00 AM (2 days later)'],
    ['23:50', 3000, 'en', '1:50 AM (3 days later)'],
    [undefined, 0, 'en', '0:00'],
    [undefined, 5, 'de', '0:05'],
    [undefined, 59, 'en', '0:59'],
    [undefined, 60, 'en', '1:00'],
    [undefined, 75, 'en', '1:15'],
    [undefined, 1505, 'en', '25:05'],
  ])('from %s after %i minutes, in %s, is %s', (start, minutes, language, said) => {
    expect(say(start, minutes, language)).toBe(said);
  });
});
