import { describe, expect, it } from 'vitest';
import { elapsed, momentAt, runClock, type TimedStep } from '../../src/cue/clock.ts';
import { timesFrom } from '../../src/cue/times.ts';
import { voiceOf } from '../../src/words/voice.ts';
import { labels } from '../handout/sample.ts';

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
  it.each([
    ['18:30', 0, { kind: 'time', minute: 1110, days: 0 }],
    ['18:30', 45, { kind: 'time', minute: 1155, days: 0 }],
    ['23:50', 9, { kind: 'time', minute: 1439, days: 0 }],
    ['23:50', 10, { kind: 'time', minute: 0, days: 1 }],
    ['23:50', 1450, { kind: 'time', minute: 0, days: 2 }],
    ['00:00', 0, { kind: 'time', minute: 0, days: 0 }],
    [undefined, 75, { kind: 'elapsed', minutes: 75 }],
  ])('from %s after %i minutes', (start, minutes, moment) => {
    expect(momentAt(start, minutes)).toEqual(moment);
  });

  it('is told in hours and minutes since the start', () => {
    expect([0, 5, 59, 60, 125].map(elapsed)).toEqual(['0:00', '0:05', '0:59', '1:00', '2:05']);
  });

  it('is said as the language says it', () => {
    const say = (start: string | undefined, minutes: number, language = 'en'): string =>
      timesFrom(start, voiceOf({ ...labels, language }))(minutes).replace(/\s/gu, ' ');
    expect(say('18:30', 0)).toBe('6:30 PM');
    expect(say('09:05', 60)).toBe('10:05 AM');
    expect(say('18:30', 45, 'de')).toBe('19:15');
    expect(say('23:50', 20)).toBe('12:10 AM (next day)');
    expect(say('23:50', 3000)).toBe('1:50 AM (3 days on)');
    expect(say(undefined, 0)).toBe('0:00');
  });
});
