import { describe, expect, it } from 'vitest';
import type { Told } from '../../src/proof/told.ts';
import { blamed, ofRule } from './workspace.ts';

/** A 4 x 5 in card and what lies on it. */
function onCard(rule: string, layer: string, unit = 'in', card = 'cut: 4 x 5'): Told[] {
  const pieces = `card: { stock: cream, ${card} }\nlayer: { stock: cream, on: card, ${layer} }`;
  return ofRule(rule, { unit, pieces });
}

const said = (findings: readonly Told[]): string[] =>
  findings.map((finding) => `${blamed(finding)}: ${finding.message}`);

describe('layer-overhang', () => {
  it('says both numbers, the difference and what to cut', () => {
    const [finding] = onCard('layer-overhang', 'cut: 4 1/4 x 4 3/4');
    expect(finding).toMatchObject({
      severity: 'error',
      message: 'layer is 4 1/4 in wide, 1/4 in more than card (4 in)',
      remedy: 'cut it at 3 3/4 in for a 1/8 in reveal',
      notes: [{ message: 'card is 4 in wide' }],
    });
    expect(finding?.notes.map(blamed)).toEqual(['4']);
  });

  it.each<[string, string[]]>([
    ['cut: 4 x 5', []],
    ['cut: 4 1/32 x 5', ['4 1/32: layer is 4 1/32 in wide, 1/32 in more than card (4 in)']],
    ['cut: 4.001 x 5', ['4.001: layer is 4.001 in wide, 0.001 in more than card (4 in)']],
    ['cut: 4 1/4 x 5 1/2, overhang: yes', []],
    [
      'cut: 4 1/4 x 5 1/2',
      [
        '4 1/4: layer is 4 1/4 in wide, 1/4 in more than card (4 in)',
        '5 1/2: layer is 5 1/2 in high, 1/2 in more than card (5 in)',
      ],
    ],
    ['cut: 3 x 1, at: { left: 1 }', []],
    ['cut: 3 x 1, at: { left: 0, bottom: 0 in }', []],
    ['cut: 3 x 1, at: { left: -1/2 }, overhang: yes', []],
    ['cut: 3 x 1, at: { right: −½ }', ['−½: layer reaches 1/2 in past the right edge of card']],
    [
      'cut: 3 x 1, at: { left: 1 1/8 }',
      [
        '1 1/8: layer lies 1 1/8 in from the left of card and passes its right edge by 1/8 in: it is 3 in wide on 4 in',
      ],
    ],
    [
      'cut: 3 x 1, at: { bottom: 4 1/2 }',
      [
        '4 1/2: layer lies 4 1/2 in from the bottom of card and passes its top edge by 1/2 in: it is 1 in high on 5 in',
      ],
    ],
    [
      'cut: 1 x 4 1/2, turn: 90',
      ['4 1/2: layer is 4 1/2 in high and lies turned, which is 1/2 in more than card (4 in wide)'],
    ],
    ['cut: 5 x 4, turn: 90', []],
    ['cut: 110 mm x 100 mm', ['110 mm: layer is 4 5/16 in wide, 5/16 in more than card (4 in)']],
  ])('%s', (layer, expected) => {
    expect(said(onCard('layer-overhang', layer))).toEqual(expected);
  });

  it('is said in the unit of the sheet', () => {
    const [finding] = onCard('layer-overhang', 'cut: 102 x 120', 'mm', 'cut: 100 x 125');
    expect(finding?.message).toBe('layer is 102 mm wide, 2 mm more than card (100 mm)');
    expect(finding?.remedy).toBe('cut it at 94 mm for a 3 mm reveal');
  });

  // A trade fact (common practice, no source): the box of 8 x 6 3/4 in, scored so, has a front of 2 1/2 x 4 1/4 in.
  it('measures a panel of a scored box', () => {
    const box = [
      'box:',
      '  stock: cream',
      '  cut: 8 x 6 3/4',
      '  score: [{ from: left, at: [1 1/4, 3 3/4, 5, 7 1/2] }, { from: bottom, at: [1 1/4, 5 1/2, 6 1/8] }]',
      '  panels: { front: B3 }',
      'layer: { stock: cream, on: box.front, cut: 2 3/4 x 4 }',
    ];
    const [finding] = ofRule('layer-overhang', { pieces: box.join('\n') });
    expect(finding?.message).toBe('layer is 2 3/4 in wide, 1/4 in more than box.front (2 1/2 in)');
    expect(finding?.remedy).toBe('cut it at 2 1/4 in for a 1/8 in reveal');
    expect(finding?.notes.map(blamed)).toEqual(['front']);
  });
});

describe('thin-reveal', () => {
  it.each<[string, string[]]>([
    ['cut: 4 x 4 3/4', []],
    ['cut: 3 7/8 x 4 3/4', []],
    [
      'cut: 3 15/16 x 4 3/4',
      ['3 15/16: layer leaves 1/32 in of card to show at the left and right, too thin to look even'],
    ],
    [
      'cut: 2 x 2, at: { left: 1/32 }',
      ['1/32: layer leaves 1/32 in of card to show at the left, too thin to look even'],
    ],
    ['cut: 2 x 2, at: { top: 1/16 }', []],
    [
      'cut: 2 x 3 31/32, turn: 90',
      ['3 31/32: layer leaves 1/64 in of card to show at the left and right, too thin to look even'],
    ],
  ])('%s', (layer, expected) => {
    expect(said(onCard('thin-reveal', layer))).toEqual(expected);
  });

  it('takes 1 1/2 mm as enough in a metric sheet', () => {
    expect(onCard('thin-reveal', 'cut: 97 x 120', 'mm', 'cut: 100 x 125')).toEqual([]);
    expect(onCard('thin-reveal', 'cut: 98 x 120', 'mm', 'cut: 100 x 125')).toHaveLength(1);
  });
});

describe('uneven-reveal', () => {
  it.each<[string, 'warning' | 'note' | undefined]>([
    ['cut: 3 3/4 x 4 3/4', undefined],
    ['cut: 3 3/4 x 4 5/8', 'warning'],
    ['cut: 3 3/4 x 4 1/2', 'warning'],
    ['cut: 3 3/4 x 4 1/4', undefined],
    ['cut: 4 x 4 7/8', undefined],
    ['cut: 2 x 2 3/4', undefined],
    ['cut: 3 5/8 x 4 3/4, turn: 180', 'warning'],
    ['cut: 3 3/4 x 1, at: { left: 1/8 }', undefined],
    ['cut: 3 11/16 x 1, at: { left: 1/8 }', 'note'],
    ['cut: 3 11/16 x 1, at: { left: 1/8, top: 1 }', 'note'],
    ['cut: 3 5/8 x 1, at: { left: 1/8 }', undefined],
  ])('%s', (layer, severity) => {
    expect(onCard('uneven-reveal', layer).map((finding) => finding.severity)).toEqual(
      severity ? [severity] : [],
    );
  });

  it('says what makes it even', () => {
    const [finding] = onCard('uneven-reveal', 'cut: 3 5/8 x 4 3/4');
    expect(finding?.message).toBe(
      'layer leaves 3/16 in of card to show at the sides, but 1/8 in above and below',
    );
    expect(finding?.remedy).toBe('cut it 3 3/4 in wide for 1/8 in all round');
    expect(finding && blamed(finding)).toBe('3 5/8');
  });

  it('points at the distance that almost centers a layer', () => {
    const [finding] = onCard('uneven-reveal', 'cut: 3 11/16 x 1, at: { left: 1/8 }');
    expect(finding?.message).toBe(
      'layer lies 1/8 in from the left of card and 3/16 in from the right: almost centered, but not quite',
    );
    expect(finding && blamed(finding)).toBe('1/8');
  });
});

describe('turned-layer', () => {
  // By hand: a square of side s turned 45 degrees reaches s / sqrt 2 from its center each way. On a base 4 in wide
  // that is 2 in, so s may be 2.828 in at most.
  it.each<[string, number]>([
    ['cut: 2.828 x 2.828, turn: 45', 0],
    ['cut: 2.829 x 2.829, turn: 45', 1],
    ['cut: 2.829 x 2.829, turn: 45, overhang: yes', 0],
    ['cut: 3 3/4 x 4 3/4, turn: 180', 0],
    ['cut: 3 3/4 x 4 3/4, turn: 1', 0],
    ['cut: 3 3/4 x 4 3/4, turn: 4', 1],
    ['cut: 3 3/4 x 4 3/4, turn: -4', 1],
  ])('%s', (layer, count) => {
    expect(onCard('turned-layer', layer)).toHaveLength(count);
  });

  it.each([
    ['cut: 3 3/4 x 4 3/4, turn: 10', 'turn it 3° instead, or write "overhang: yes" if you meant it'],
    ['cut: 3 3/4 x 4 3/4, turn: -10', 'turn it 357° instead, or write "overhang: yes" if you meant it'],
    ['cut: 4 x 5, turn: 10', 'cut it smaller, or write "overhang: yes" if you meant it'],
  ])('%s: %s', (layer, remedy) => {
    expect(onCard('turned-layer', layer)[0]?.remedy).toBe(remedy);
    // What it says must hold: the turn it names passes.
    const turn = /turn it (\d+)/u.exec(remedy)?.[1];
    if (turn) expect(onCard('turned-layer', layer.replace(/turn: .*/u, `turn: ${turn}`))).toEqual([]);
  });
});

describe('corner-overhang', () => {
  // By hand: a square corner m from both edges lies on the arc of radius r when (r - m) sqrt 2 = r, m = 0.29289 r.
  it.each<[string, number]>([
    ['cut: 3.414 x 4.414', 0],
    ['cut: 3.415 x 4.415', 1],
    ['cut: 3.415 x 4.415, overhang: yes', 0],
    ['cut: 3 7/8 x 4 7/8, corners: 15/16', 0],
    ['cut: 3 7/8 x 4 7/8, corners: 13/16', 0],
    ['cut: 3 7/8 x 4 7/8, corners: 3/4', 1],
    ['cut: 4 x 1', 0],
  ])('%s on corners of 1 in', (layer, count) => {
    expect(onCard('corner-overhang', layer, 'in', 'cut: 4 x 5, corners: 1')).toHaveLength(count);
  });

  // The base is round at its upper left alone, whichever way the layer lies or the base is turned over.
  it.each<[string, number]>([
    ['cut: 3 7/8 x 4 7/8', 1],
    ['cut: 3 7/8 x 4 7/8, corners: { top left: 15/16 }', 0],
    ['cut: 3 7/8 x 4 7/8, corners: { top left: 3/4, bottom: 15/16 }', 1],
    ['cut: 3 7/8 x 4 7/8, corners: { top: 15/16, bottom right: 1/8 }', 0],
    ['cut: 3 7/8 x 4 7/8, corners: { top right: 15/16 }', 1],
    ['cut: 4 7/8 x 3 7/8, turn: 90, corners: { bottom left: 15/16 }', 0],
    ['cut: 4 7/8 x 3 7/8, turn: 90, corners: { top left: 15/16 }', 1],
    ['cut: 3 7/8 x 4 7/8, turn: 180, corners: { bottom right: 15/16 }', 0],
    ['cut: 4 7/8 x 3 7/8, turn: 270, corners: { top right: 15/16 }', 0],
    ['cut: 3 x 4, at: { right: 1/8, bottom: 1/8 }', 0],
    ['cut: 3 x 4, at: { left: 1/8, top: 1/8 }', 1],
  ])('%s on an upper left corner of 1 in', (layer, count) => {
    const base = 'cut: 4 x 5, corners: { top left: 1 }';
    expect(onCard('corner-overhang', layer, 'in', base)).toHaveLength(count);
  });

  it.each<[string, string, number]>([
    ['inside card', '{ top right: 15/16 }', 0],
    ['inside card', '{ top left: 15/16 }', 1],
    ['behind card', '{ top left: 15/16 }', 0],
    ['behind card', '{ top right: 15/16 }', 1],
  ])('of a layer %s with corners %s', (where, corners, count) => {
    const on = where.startsWith('behind') ? 'behind: card' : 'on: inside card';
    const shapes = `card: { stock: cream, cut: 4 x 5, corners: { top left: 1 } }\nlayer: { stock: cream, cut: 3 7/8 x 4 7/8, ${on}, corners: ${corners} }`;
    expect(ofRule('corner-overhang', { unit: 'in', pieces: shapes })).toHaveLength(count);
  });

  it('says which corners of the base are round', () => {
    const [told] = onCard('corner-overhang', 'cut: 3 7/8 x 4 7/8', 'in', 'cut: 4 x 5, corners: { top: 1 }');
    expect(told?.message).toContain(
      'its square corners show beyond the rounded upper corners of the base (1 in)',
    );
    expect(told?.remedy).toBe('round its corners there at 15/16 in, or cut it smaller');
  });

  it('says a radius that fits', () => {
    const square = onCard('corner-overhang', 'cut: 3 7/8 x 4 7/8', 'in', 'cut: 4 x 5, corners: 1');
    expect(square[0]?.remedy).toBe('round its corners at 15/16 in, or cut it smaller');
  });
});

describe('placement-clash', () => {
  it('lets two distances stand that add up', () => {
    expect(onCard('placement-clash', 'cut: 3 1/2 x 1, at: { left: 1/4, right: 1/4 }')).toEqual([]);
    expect(said(onCard('placement-clash', 'cut: 3 x 1, at: { top: 3, bottom: 3 }'))).toEqual([
      '3: layer is 1 in high, but 3 in from the top and 3 in from the bottom of card leave nothing',
    ]);
  });
});
