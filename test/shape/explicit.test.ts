import { describe, expect, it } from 'vitest';
import type { Told } from '../../src/proof/told.ts';
import { boxSize } from '../../src/shape/net.ts';
import { KEEPER, netOf, notesOf, shapesOf, sheetOf, TRADE_FACT, wrongIn } from './boxes.ts';
import { blamed } from './forms/building.ts';

/** The keeper with one line of it written differently. */
const changed = (from: string, to: string): string => {
  const box = KEEPER.replace(from, to);
  if (box === KEEPER) throw new Error(`the box has no "${from}"`);
  return box;
};

const problemsOf = (box: string): readonly Told[] => wrongIn(sheetOf(box));

describe('a net by its score lines', () => {
  it('takes positions from every edge', () => {
    const mirrored = changed('from: left,   at: [1, 4 1/2, 5 1/2, 9]', 'from: right, at: [1/2, 4, 5, 8 1/2]');
    expect(netOf(mirrored).panels).toEqual(netOf(KEEPER).panels);
    const downward = changed('from: bottom, at: [1, 5 3/4, 6 1/4]', 'from: top, at: [1/2, 1, 5 3/4]');
    expect(netOf(downward).panels).toEqual(netOf(KEEPER).panels);
  });

  it('gathers several groups, from facing edges too', () => {
    const split = changed(
      '- { from: left,   at: [1, 4 1/2, 5 1/2, 9] }',
      '- { from: left, at: [1, 4 1/2] }\n    - { from: right, at: [1/2, 4] }',
    );
    expect(netOf(split).panels).toEqual(netOf(KEEPER).panels);
    expect(netOf(split).scores.map(({ from, at }) => `${from}: ${at.join(', ')}`)).toEqual([
      'left: 1 in, 9/2 in',
      'right: 1/2 in, 4 in',
      'bottom: 1 in, 23/4 in, 25/4 in',
    ]);
  });

  // Common practice, no source.
  it('has the trade-fact box’s front panel, 2 1/2 × 4 1/4 in', () => {
    const front = netOf(TRADE_FACT).panels.find(({ id }) => id === 'front');
    const { width, height } = front ? boxSize(front.box) : { width: undefined, height: undefined };
    expect([width, height].map(String)).toEqual(['5/2 in', '17/4 in']);
  });

  it('keeps where each glue mate is written', () => {
    const mate = netOf(KEEPER).glue.find(({ from }) => from === 'C4');
    expect(mate?.at?.file.text.slice(mate.at.start, mate.at.end)).toBe('C4: D4');
  });
});

describe('a second place', () => {
  const notes = (from: string, to: string): string[] =>
    wrongIn(sheetOf(KEEPER.replace(from, to))).flatMap(notesOf);

  it.each([
    ['5 1/2, 9]', '5 1/2, 9 3/4]', 'box is 9 1/2 in wide at "9 1/2"'],
    ['5 3/4, 6 1/4]', '5 3/4, 6 3/4]', 'box is 6 3/4 in high at "6 3/4"'],
    ['5 1/2, 9]', '5 1/2, 5 1/2, 9]', 'the first is 5 1/2 in from the left at "5 1/2"'],
  ])('is shown: %s as %s', (from, to, note) => {
    expect(KEEPER).toContain(from);
    expect(notes(from, to)).toEqual([note]);
  });
});

describe('what cannot be', () => {
  it.each([
    [
      'a line outside',
      '5 1/2, 9]',
      '5 1/2, 9 3/4]',
      'score-outside',
      '9 3/4',
      /1\/4 in outside box, which is 9 1\/2 in wide/u,
    ],
    ['a line on the edge', '5 1/2, 9]', '5 1/2, 9 1/2]', 'score-outside', '9 1/2', /is the edge of box/u],
    [
      'a line twice',
      '5 1/2, 9]',
      '5 1/2, 5 1/2, 9]',
      'score-doubled',
      '5 1/2',
      /twice at 5 1\/2 in from the left/u,
    ],
    [
      'lines out of order',
      '4 1/2, 5 1/2',
      '5 1/2, 4 1/2',
      'score-order',
      '4 1/2',
      /5 1\/2 in comes before 4 1\/2 in/u,
    ],
    ['a cell that is not there', 'E4]', 'E5]', 'unknown-reference', 'E5', /no such cell/u],
    ['a panel beyond the grid', 'tab: E3 }', 'tab: F3 }', 'unknown-reference', 'F3', /tab is F3/u],
    ['a name that is not there', 'C4, tab]', 'C4, tap]', 'unknown-reference', 'tap', /no such panel/u],
    ['a slit along no line', 'C|D 4]', 'E|F 4]', 'unknown-reference', 'E|F 4', /between E and F/u],
    ['a slit through no row', 'C|D 4]', 'C|D 5]', 'unknown-reference', 'C|D 5', /through 4 rows only/u],
    [
      'a fold along no line',
      '1|2: valley 90',
      '4|5: valley 90',
      'unknown-reference',
      '4|5: valley 90',
      /between 4 and 5/u,
    ],
    ['glue on what is trimmed', 'tab: A3, ', 'tab: A1, ', 'unknown-reference', 'A1', /trimmed off/u],
    ['two names for one panel', 'back: D3', 'back: B3', 'unknown-reference', 'back', /named front already/u],
  ])('%s', (_, from, to, rule, at, message) => {
    const problems = problemsOf(changed(from, to));
    expect(problems.map((problem) => [problem.rule, blamed(problem)])).toContainEqual([rule, at]);
    expect(problems.find((problem) => problem.rule === rule)?.message).toMatch(message);
  });

  it('suggests the nearest name', () => {
    const [problem] = problemsOf(changed('C4, tab]', 'C4, tap]'));
    expect(problem?.remedy).toBe('write "tab"');
  });

  it('says one thing only where a missing line gives every cell another name', () => {
    const problems = problemsOf(changed('5 1/2, 9]', '5 1/2, 19]'));
    expect(problems.map(({ rule }) => rule)).toEqual(['score-outside']);
  });

  it('makes the net all the same of lines out of order, and of nothing else', () => {
    const hasNet = (box: string): boolean => shapesOf(sheetOf(box)).nets.has('box');
    expect(hasNet(changed('4 1/2, 5 1/2', '5 1/2, 4 1/2'))).toBe(true);
    expect(hasNet(changed('C4, tab]', 'C4, tap]'))).toBe(false);
  });

  it('finds a line doubled from the other edge', () => {
    const both = changed('- { from: bottom,', '- { from: right, at: [1/2] }\n    - { from: bottom,');
    const [problem] = problemsOf(both);
    expect(problem?.message).toBe(
      'box has the same score line twice: 1/2 in from the right is also 9 in from the left',
    );
  });
});
