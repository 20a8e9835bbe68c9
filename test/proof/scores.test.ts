import { describe, expect, it } from 'vitest';
import { blamed, ofRule } from './workspace.ts';

/** What a rule says of a piece 8 x 5 in with these score groups. */
function scored(rule: string, groups: string, unit = 'in', site?: string): string[] {
  const pieces = `fold: { stock: cream, cut: 8 x 5, score: [${groups}] }`;
  const scaled = unit === 'in' ? pieces : pieces.replace('8 x 5', '200 x 125');
  const files = site === undefined ? {} : { 'site.yaml': site };
  return ofRule(rule, { unit, pieces: scaled }, files).map(
    (finding) => `${blamed(finding)}: ${finding.message}`,
  );
}

describe('score-off-groove', () => {
  it.each<[string, string[]]>([
    ['{ from: left, at: [1, 4 1/8, 5.25] }', []],
    [
      '{ from: left, at: [1 1/16] }',
      [
        '1 1/16: fold is scored at 1 1/16 in from the left, between two grooves of the board (one every 1/8 in)',
      ],
    ],
    // 2 15/16 from the right is 5 1/16 from the left: it counts as it is laid against the fence.
    ['{ from: right, at: [3] }', []],
    [
      '{ from: bottom, at: [1, 2.1] }',
      ['2.1: fold is scored at 2.1 in from the bottom, between two grooves of the board (one every 1/8 in)'],
    ],
    ['{ from: left, at: [25.4 mm] }', []],
    [
      '{ from: left, at: [25 mm] }',
      ['25 mm: fold is scored at 25 mm from the left, between two grooves of the board (one every 1/8 in)'],
    ],
  ])('%s', (groups, expected) => {
    expect(scored('score-off-groove', groups)).toEqual(expected);
  });

  it('takes the pitch from the settings', () => {
    expect(
      scored('score-off-groove', '{ from: left, at: [1 1/16] }', 'in', 'bench: { board: 1/16 in }'),
    ).toEqual([]);
    expect(
      scored('score-off-groove', '{ from: left, at: [1 1/8] }', 'in', 'bench: { board: 1/4 in }'),
    ).toHaveLength(1);
  });

  it('checks a metric sheet only against a metric board', () => {
    const site = 'bench: { metric board: 5 mm }';
    expect(scored('score-off-groove', '{ from: left, at: [31] }', 'mm')).toEqual([]);
    expect(scored('score-off-groove', '{ from: left, at: [30] }', 'mm', site)).toEqual([]);
    expect(scored('score-off-groove', '{ from: left, at: [31] }', 'mm', site)).toEqual([
      '31: fold is scored at 31 mm from the left, between two grooves of the board (one every 5 mm)',
    ]);
  });

  it.each<[string, string, number]>([
    ['mm', 'form: tray, inside: 90 x 60 x 25', 0],
    ['mm', 'cut: 200 x 125, score: [{ from: left, at: [30, 90] }]', 0],
    ['in', 'cut: 8 x 5, score: [{ from: left, at: [1 3/16] }]', 1],
    ['in', 'form: tray, inside: 3 1/16 x 2 x 1', 1],
  ])('says of a shared piece in %s only what is written so: %s', (unit, piece, count) => {
    const shared = `unit: ${unit}\npieces:\n  box: { ${piece} }\n`;
    const found = ofRule(
      'score-off-groove',
      { pieces: 'box: { use: shared.box, stock: cream }' },
      { 'shared/boxes.yaml': shared },
    );
    expect(found).toHaveLength(count);
  });

  it('names the grooves on either side', () => {
    const pieces = 'fold: { stock: cream, cut: 8 x 5, score: [{ from: left, at: [1/16, 1 3/16] }] }';
    expect(ofRule('score-off-groove', { pieces }).map(({ remedy }) => remedy)).toEqual([
      'score at 1/8 in, or say in the step that this line is ruled by hand',
      'score at 1 1/8 in or 1 1/4 in, or say in the step that this line is ruled by hand',
    ]);
  });

  it('tells the lines of a form that one measurement puts beside the grooves once', () => {
    const pieces = 'box: { stock: cream, form: polygon box, side: 1 1/2, height: 2, lid: 3/4 }';
    expect(ofRule('score-off-groove', { pieces }).map(({ message }) => message)).toEqual([
      'box.lid is scored at 1 9/16 in, 4 11/16 in and 7 13/16 in from the left, between two grooves of the board (one every 1/8 in)',
    ]);
  });

  // A trade fact (common practice, no source): a box of 8 x 6 3/4 in whose lines all lie on a board's grooves.
  it('passes the everyday box', () => {
    const groups = '{ from: left, at: [1 1/4, 3 3/4, 5, 7 1/2] }, { from: bottom, at: [1 1/4, 3 1/2] }';
    for (const rule of ['score-off-groove', 'score-order', 'score-outside', 'score-doubled']) {
      expect(scored(rule, groups)).toEqual([]);
    }
  });
});

describe('lines outside, doubled or out of order', () => {
  it.each<[string, string, string[]]>([
    ['score-outside', '{ from: left, at: [7 7/8] }', []],
    ['score-outside', '{ from: left, at: [8] }', ['8']],
    ['score-outside', '{ from: bottom, at: [5 1/8] }', ['5 1/8']],
    ['score-outside', '{ from: left, at: [5 1/8] }', []],
    ['score-doubled', '{ from: left, at: [2, 2] }', ['2']],
    ['score-doubled', '{ from: left, at: [2] }, { from: right, at: [6] }', ['6']],
    ['score-doubled', '{ from: left, at: [2] }, { from: bottom, at: [2] }', []],
    ['score-order', '{ from: left, at: [1, 2, 3] }', []],
    ['score-order', '{ from: left, at: [2, 1, 3] }', ['1']],
    ['score-order', '{ from: left, at: [3] }, { from: left, at: [1] }', []],
  ])('%s: %s', (rule, groups, expected) => {
    expect(scored(rule, groups).map((text) => text.split(':')[0])).toEqual(expected);
  });
});
