import { describe, expect, it } from 'vitest';
import { Length } from '../../../src/measure/length.ts';
import { buildShapes } from '../../../src/shape/build.ts';
import { projectOf } from '../boxes.ts';
import { blamed, problemsOf } from './building.ts';

type Case = readonly [
  form: string,
  settings: Readonly<Record<string, string>>,
  blames: string,
  says: RegExp,
  remedy: string,
];

/** What each form cannot be: the very characters it points at, both numbers, and what puts it right. */
const LIMITS: readonly Case[] = [
  [
    'gable box',
    { inside: '3 x 4 x 2' },
    '4',
    /depth of box is 4 in, more than 3 in: its two gables would meet under the roof/u,
    'make it at most 3 in',
  ],
  [
    'gable box',
    { inside: '4 x 3 x 2', roof: '1 1/2' },
    '1 1/2',
    /roof of box is 1 1\/2 in, less than 1 5\/8 in: the two slopes would lie flat or not meet/u,
    'make it at least 1 5/8 in',
  ],
  [
    'gable box',
    { inside: '4 x 3 x 2', roof: '7' },
    '7',
    /roof of box is 7 in, more than 6 in: so steep a roof/u,
    'make it at most 6 in',
  ],
  [
    'polygon box',
    { sides: '2', side: '2', height: '3' },
    '2',
    /sides of box: 2; a polygon box has 3 to 8/u,
    'write a number from 3 to 8',
  ],
  [
    'polygon box',
    { side: '1/2', height: '3' },
    '1/2',
    /side of box is 1\/2 in, less than 3\/4 in: its tab would be too small/u,
    'make it at least 3/4 in',
  ],
  [
    'polygon box',
    { side: '2', height: '3', tab: '1' },
    '1',
    /tab of box is 1 in, more than ≈3\/4 in: its ends run in/u,
    'make it at most 11/16 in',
  ],
  [
    'polygon box',
    { side: '2', height: '3', lid: '4' },
    '4',
    /lid of box is 4 in, more than 3 in: a lid higher than its box/u,
    'make it at most 3 in',
  ],
  [
    'clip-top box',
    { inside: '3 x 5 x 4' },
    '5',
    /depth .* 5 in, more than 3 in: .*deeper than it is wide/u,
    'make it at most 3 in',
  ],
  [
    'clip-top box',
    { inside: '3 1/2 x 1/8 x 4' },
    '1/8',
    /depth .* 1\/8 in, less than 1\/4 in/u,
    'make it at least 1/4 in',
  ],
  [
    'clip-top box',
    { inside: '3 x 1 x 4', tab: '1 1/4' },
    '1 1/4',
    /tab .* 1 1\/4 in, more than 1 in: .* left side/u,
    'make it at most 1 in',
  ],
  [
    'clip-top box',
    { inside: '3 x 1 x 4', flange: '1/16' },
    '1/16',
    /flange .* 1\/16 in, less than 1\/8 in/u,
    'make it at least 1/8 in',
  ],
  [
    'tuck-end box',
    { inside: '2 x 1 x 3', tuck: '2' },
    '2',
    /tuck .* 2 in, more than 1 1\/2 in/u,
    'make it at most 1 1/2 in',
  ],
  [
    'tuck-end box',
    { inside: '2 x 1 x 3', tab: '1 1/8' },
    '1 1/8',
    /tab .* 1 1\/8 in, more than 1 in/u,
    'make it at most 1 in',
  ],
  [
    'tray',
    { inside: '2 x 3 x 2', tab: '1 1/2' },
    '1 1/2',
    /1 1\/2 in, more than 1 in: two tabs would meet/u,
    'make it at most 1 in',
  ],
  [
    'tray',
    { inside: '4 x 3 x 1', tab: '1 1/2' },
    '1 1/2',
    /1 1\/2 in, more than 1 in: .*corner square/u,
    'make it at most 1 in',
  ],
  [
    'lidded tray',
    { inside: '3 x 3 x 1', lid: '1 1/2' },
    '1 1/2',
    /lid .* 1 1\/2 in, more than 1 in/u,
    'make it at most 1 in',
  ],
  [
    'lidded tray',
    { inside: '3 x 3 x 1', clearance: '1/64' },
    '1/64',
    /1\/64 in, less than ≈1\/32 in: four thicknesses/u,
    'make it at least 1/16 in',
  ],
  [
    'slide box',
    { inside: '3 x 3 x 1', clearance: '1/64' },
    '1/64',
    /1\/64 in, less than ≈1\/32 in: three thicknesses/u,
    'make it at least 1/16 in',
  ],
  [
    'slide box',
    { inside: '3 x 3 x 1', tab: '4' },
    '4',
    /tab .* 4 in, more than 3 1\/8 in/u,
    'make it at most 3 1/8 in',
  ],
  [
    'pillow box',
    { size: '3 x 4', depth: '1 1/2' },
    '1 1/2',
    /depth .* 1 1\/2 in, more than ≈1 3\/16 in/u,
    'make it at most 1 3/16 in',
  ],
  [
    'pillow box',
    { size: '3 x 1 1/2', depth: '1' },
    '1 1/2',
    /length .* 1 1\/2 in, less than 2 in/u,
    'make it at least 2 in',
  ],
  [
    'envelope',
    { inside: '5 x 4', flap: '1/4' },
    '1/4',
    /flap \(1\/4 in\) and the back \(3 1\/2 in\) .* 3 3\/4 in, less than the 4 1\/4 in/u,
    'make the flap at least 3/4 in high',
  ],
  [
    'envelope',
    { inside: '5 x 4', back: '4 1/2' },
    '4 1/2',
    /back .* 4 1\/2 in, more than 4 in/u,
    'make it at most 4 in',
  ],
  [
    'envelope',
    { inside: '5 x 4', sides: '3' },
    '3',
    /side flap .* 3 in, more than 2 1\/2 in/u,
    'make it at most 2 1/2 in',
  ],
  ['envelope', { inside: '1/2 x 4' }, '1/2', /width .* 1\/2 in, less than 1 in/u, 'make it at least 1 in'],
  [
    'gusseted bag',
    { inside: '1 x 4 x 5' },
    '4',
    /4 in deep and 1 in wide: its bottom flaps, 2 1\/2 in long/u,
    'make it wider, or no deeper than 1 in',
  ],
  [
    'belly band',
    { around: '4 x 1', tab: '5' },
    '5',
    /tab .* 5 in, more than 4 1\/8 in/u,
    'make it at most 4 1/8 in',
  ],
  [
    'belly band',
    { around: '1/16 x 1/16' },
    '1/16',
    /width .* 1\/16 in, less than 1\/8 in/u,
    'make it at least 1/8 in',
  ],
  [
    'single-fold card',
    { size: '1/16 x 3' },
    '1/16',
    /width .* 1\/16 in, less than 1\/8 in/u,
    'make it at least 1/8 in',
  ],
  [
    'gate-fold card',
    { size: '1/8 x 3' },
    '1/8',
    /width .* 1\/8 in, less than 1\/4 in/u,
    'make it at least 1/4 in',
  ],
  [
    'accordion card',
    { size: '2 x 3', pages: '1' },
    '1',
    /pages of box: 1; an accordion card has 2 to 12/u,
    'write a number from 2 to 12',
  ],
  [
    'accordion card',
    { size: '2 x 3', pages: '13' },
    '13',
    /pages of box: 13;/u,
    'write a number from 2 to 12',
  ],
  [
    'tag',
    { size: '2 x 4', clip: '1' },
    '1',
    /clip .* 1 in, more than 15\/16 in/u,
    'make it at most 15/16 in',
  ],
  [
    'tag',
    { size: '1 x 2', hole: '7/8' },
    '1',
    /width .* 1 in, less than 1 1\/8 in: its hole of 7\/8 in/u,
    'make it at least 1 1/8 in',
  ],
];

const UNREADABLE: readonly Case[] = [
  [
    'tray',
    { inside: '3 1/2 x 1/0 x 4' },
    '1/0',
    /^inside: "1\/0" divides by zero$/u,
    'put another number under the fraction bar, such as 1/2',
  ],
  [
    'tray',
    { inside: '3 1/2 x 1' },
    '3 1/2 x 1',
    /fewer measurements/u,
    'write three lengths, such as 3 1/2 x 1 x 4 3/4',
  ],
  [
    'tray',
    { inside: '3 x 2 x -1' },
    '-1',
    /"-1" is less than zero/u,
    'leave out the minus sign: a measurement is always more than zero',
  ],
  [
    'tag',
    { size: '0 x 4' },
    '0',
    /"0" measures nothing/u,
    'write what it measures, or leave the whole entry out',
  ],
  [
    'tag',
    { size: '2 x 4', clip: 'two' },
    'two',
    /"two" is no measurement/u,
    'write it in figures, such as 2 1/4 or 2.25, with in, mm or cm if it needs a unit',
  ],
  [
    'tag',
    { size: '2 x 4', hole: '5000' },
    '5000',
    /longer than 1 m/u,
    'look for a missing space, fraction bar or decimal point',
  ],
];

describe('a form', () => {
  it.each(LIMITS)('refuses a %s of %j at %s', (name, settings, blames, says, remedy) => {
    const [problem, ...others] = problemsOf(name, { settings });
    expect(others).toEqual([]);
    expect(problem).toMatchObject({ rule: 'form-limit', remedy });
    expect(problem?.message).toMatch(says);
    expect(problem && blamed(problem)).toBe(blames);
  });

  it.each(UNREADABLE)('cannot read a %s of %j at %s', (name, settings, blames, says, remedy) => {
    const problems = problemsOf(name, { settings });
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ rule: 'unreadable-length', remedy });
    expect(problems[0]?.message).toMatch(says);
    expect(problems[0] && blamed(problems[0])).toBe(blames);
  });

  it('needs a size, and takes one only', () => {
    const [none] = problemsOf('tray', { settings: {} });
    expect(none).toMatchObject({
      rule: 'missing-value',
      message: 'box has no "inside:" or "outside:"',
      remedy: 'add "inside:" or "outside:"',
    });
    const [both] = problemsOf('tray', { settings: { inside: '4 x 3 x 1', outside: '5 x 3 x 1' } });
    expect(both).toMatchObject({
      rule: 'unexpected-value',
      remedy: 'write either inside or outside, not both',
    });
    expect(both && blamed(both)).toBe('outside');
  });

  it('has no corners to round where all its ends are curved', () => {
    const [problem] = problemsOf('pillow box', {
      settings: { size: '3 x 4' },
      corners: Length.of(3, 1, 'mm'),
    });
    expect(problem?.message).toBe('box is a pillow box, which has no corners to round');
  });

  it('says its limits in millimeters where it is written in them', () => {
    const [problem] = problemsOf('clip-top box', { settings: { inside: '60 x 80 x 100 mm' } });
    expect(problem?.message).toMatch(/depth of box is 80 mm, more than 60 mm/u);
    expect(problem?.remedy).toBe('make it at most 60 mm');
  });

  it('points into a whole sheet, at the number behind its key', () => {
    const sheet = `---
title: Box
measurements:
  pieces:
    deep: { form: clip-top box, inside: "3 x 5 x 4" }
---
## Fold
Fold :piece[deep].
`;
    const { findings } = buildShapes(projectOf(sheet));
    expect(findings.map(blamed)).toEqual(['5']);
    expect(findings[0]?.at.start).toBe(sheet.indexOf('5 x 4'));
  });
});
