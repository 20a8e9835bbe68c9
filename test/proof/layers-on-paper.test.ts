import { describe, expect, it } from 'vitest';
import type { Told } from '../../src/proof/told.ts';
import type { SheetParts } from './sheet-with.ts';
import { sheetWith } from './sheet-with.ts';
import { blamed, findingsOf } from './workspace.ts';

/** A 2 1/2 × 1 1/4 × 4 1/4 in box by its score lines. */
const BOX = `box:
  stock: cream
  cut: 8 x 6 3/4
  score: [{ from: left, at: [1 1/4, 3 3/4, 5, 7 1/2] }, { from: bottom, at: [1 1/4, 5 1/2, 6 1/8] }]
  panels: { left: A3, front: B3, right: C3, back: D3, tab: E3 }
  trim: [A1, C1, E1, E2, E4]
  slit: [A|B 1-2, B|C 1-2, C|D 1-2, A|B 4, B|C 4, C|D 4]
  taper: [A2, C2, A4, C4, tab]
  folds: { 1|2: valley 90 }
  glue: { tab: left, A4: D4, C4: D4, B4: D4 }
`;
const CARD = 'card: { stock: cream, form: single-fold card, size: 4 1/4 x 5 1/2 }\n';
const scored = (more = ''): string =>
  `card: { stock: cream, cut: 8 1/2 x 5 1/2, score: [{ from: left, at: [4 1/4] }]${more} }\n`;
const TAG = 'tag: { stock: cream, form: tag, size: 2 x 4, clip: 1/2 }\n';

const found = (pieces: string, more: SheetParts = {}): Told[] => findingsOf(sheetWith({ pieces, ...more }));
const said = (pieces: string, more: SheetParts = {}): string[] =>
  found(pieces, more).map(
    (finding) => `${finding.severity} ${finding.rule} at "${blamed(finding)}": ${finding.message}`,
  );
const mat = (lines: string): string => `mat: { stock: cream, ${lines} }`;

describe('a layer on a folded sheet', () => {
  const unnamed = (on: string, panel: string): string =>
    `warning panel-not-named at "${on}": mat lies on ${on} as a whole, and so on its ${panel}: no panel is named`;
  it.each<[string, string, string[]]>([
    [
      'across the fold of a card',
      CARD + mat('cut: 4 x 5 1/4, on: card'),
      [
        'error layer-across-fold at "card": mat lies across the fold between back and front of card: 2 in of it on back, 2 in on front',
      ],
    ],
    ['on its front', CARD + mat('cut: 4 x 5 1/4, on: card.front'), []],
    ['across a line that stays flat', scored(', folds: { A|B: flat }') + mat('cut: 4 x 5 1/4, on: card'), []],
    [
      'across one that is folded a little',
      scored(', folds: { A|B: valley 10 }') + mat('cut: 4 x 5 1/4, on: card'),
      [
        'error layer-across-fold at "card": mat lies across the fold between A1 and B1 of card: 2 in of it on A1, 2 in on B1',
      ],
    ],
    [
      'beside it, placed on the flat sheet',
      scored() + mat('cut: 4 x 5 1/4, on: card, at: { right: 1/8 }'),
      [unnamed('card', 'B1')],
    ],
    ['up to it', scored() + mat('cut: 4 1/8 x 5 1/4, on: card, at: { right: 1/8 }'), [unnamed('card', 'B1')]],
    [
      'over it by a sixteenth',
      scored() + mat('cut: 4 1/4 x 5 1/4, on: card, at: { right: 1/16 }'),
      [
        'error layer-across-fold at "card": mat lies across the fold between A1 and B1 of card: 1/16 in of it on A1, 4 3/16 in on B1',
      ],
    ],
    [
      'across several folds of a box',
      BOX + mat('cut: 4 1/2 x 1, on: box, at: { left: 1/2, top: 3 }'),
      [
        'error layer-across-fold at "box": mat lies across the fold between left and front of box: 3/4 in of it on left, 2 1/2 in on front, and 1 more',
      ],
    ],
    // Flap A2 is tapered by 1/32 in where the mat ends, 1/8 in from its fold.
    [
      'across a cut',
      BOX + mat('cut: 1/2 x 3/8, on: box, at: { left: 1, top: 3/4 }'),
      [
        'error layer-across-fold at "box": mat lies across the cut between A2 and B2 of box: 7/32 in of it on A2, 1/4 in on B2',
      ],
    ],
    [
      'within one panel of the sheet',
      BOX + mat('cut: 2 1/4 x 4, on: box, at: { left: 1 3/8, top: 1 3/8 }'),
      [unnamed('box', 'front')],
    ],
    [
      'over a cell that is trimmed off',
      BOX + mat('cut: 1 x 1/2, on: box, at: { left: 1/8, top: 1/16 }'),
      ['error layer-off-paper at "box": mat lies where box is trimmed off, over 1 × 1/2 in of nothing'],
    ],
  ])('%s', (_, pieces, expected) => {
    expect(said(pieces)).toEqual(expected);
  });

  it('is said once, for what lies on the layer lies there with it', () => {
    const pieces = `${CARD}${mat('cut: 4 x 5 1/4, on: card')}\nlabel: { stock: cream, cut: 2 x 1, on: mat }`;
    expect(found(pieces).map(({ rule, remedy }) => [rule, remedy])).toEqual([
      ['layer-across-fold', 'say which panel it goes on, such as "on: card.front"'],
    ]);
  });

  it('is told of another panel than that in the middle of the sheet', () => {
    const gates = 'card: { stock: cream, form: gate-fold card, size: 5 1/2 x 4 1/4 }\n';
    expect(found(gates + mat('cut: 2 1/2 x 4, on: card')).map(({ remedy }) => remedy)).toEqual([
      'write "on: card.back", or another panel, such as "on: card.right"',
    ]);
  });

  it('has a panel to go on named only if it fits there', () => {
    expect(found(CARD + mat('cut: 6 x 5 1/4, on: card'))[0]?.remedy).toBe(
      'cut it to fit on one panel, and say on which',
    );
  });

  it('may be a band that goes round it', () => {
    const band = 'band: { stock: cream, form: belly band, around: 4 1/4 x 1/16, on: card }';
    expect(said(CARD + band)).toEqual([]);
  });
});

describe('a layer on cut corners', () => {
  const POP_UP =
    'card: { stock: cream, form: single-fold card, size: 5 x 4, fold: top, openings: { step: { pop-up: 1 1/2, depth: 3/4 } } }\n';
  const passes = (by: string, on: string): string =>
    `error corner-overhang at "mat": mat fits ${on}, but its square corners pass the cut ones of the base by ${by}`;
  // By hand: the corner lies m from both edges; a cut of c at 45 degrees leaves it out by (c - 2 m) / √2.
  it.each<[string, string, string[]]>([
    ['1/4 in in, on a cut of 1/2 in', TAG + mat('cut: 1 1/2 x 1, on: tag, at: { top: 1/4 }'), []],
    ['1/8 in in', TAG + mat('cut: 1 3/4 x 1, on: tag, at: { top: 1/8 }'), [passes('3/16 in', 'tag')]],
    [
      '1/8 in in, clipped alike',
      `${TAG}mat: { stock: cream, form: tag, size: 1 3/4 x 3 3/4, clip: 1/2, on: tag }`,
      [],
    ],
    ['as meant', TAG + mat('cut: 1 3/4 x 1, on: tag, at: { top: 1/8 }, overhang: yes'), []],
    [
      'on a card that is rounded',
      CARD.replace(' }', ', corners: 1/2 }') + mat('cut: 4 1/8 x 5 3/8, on: card.front'),
      [passes('1/8 in', 'card.front')],
    ],
    [
      'on it, rounded too',
      CARD.replace(' }', ', corners: 1/2 }') + mat('cut: 4 1/8 x 5 3/8, on: card.front, corners: 7/16'),
      [],
    ],
    [
      'on a tapered flap',
      `envelope: { stock: cream, form: envelope, card: 5 1/2 x 4 1/4 }\n${mat('cut: 5 1/2 x 2, on: envelope.flap')}`,
      [passes('1/8 in', 'envelope.flap')],
    ],
    [
      'turned, on a circle',
      `base: { stock: cream, cut: 4 x 4, corners: 2 }\n${mat('cut: 2 7/8 x 2 7/8, on: base, at: { turn: 22 }')}`,
      [passes('1/16 in', 'base')],
    ],
    [
      'over the notch of a banner',
      `base: { stock: cream, cut: 2 x 6, shape: banner, notch: 3/4 }\n${mat('cut: 1 1/2 x 5 1/2, on: base, at: { top: 1/4 }')}`,
      // It ends 5 3/4 in down, and the notch begins at 5 1/4.
      [
        'error corner-overhang at "mat": mat fits base by its width and height, but passes its outline by 1/2 in',
      ],
    ],
    [
      'short of that notch',
      `base: { stock: cream, cut: 2 x 6, shape: banner, notch: 3/4 }\n${mat('cut: 1 1/2 x 4 3/4, on: base, at: { top: 1/4 }')}`,
      [],
    ],
    [
      // It begins 1/8 in below the fold, and the strip reaches 3/4 in down.
      'over the gap of a pop-up',
      POP_UP + mat('cut: 4 3/4 x 3 3/4, on: card.front'),
      [
        'error corner-overhang at "mat": mat lies 5/8 in deep over the gap that step leaves in card.front; glued there, it would hold the strip back',
      ],
    ],
    ['below it', POP_UP + mat('cut: 4 3/4 x 3 1/8, on: card.front, at: { bottom: 1/8 }'), []],
    [
      'turned, within it',
      `base: { stock: cream, cut: 4 x 4, corners: 2 }\n${mat('cut: 2 13/16 x 2 13/16, on: base, at: { turn: 22 }')}`,
      [
        'warning thin-reveal at "base": mat leaves no more than 1/32 in of base to show where their outlines are nearest, too thin to look even',
      ],
    ],
  ])('%s', (_, pieces, expected) => {
    const others = /layer-off-paper|missing-knife/u;
    expect(said(pieces).filter((each) => !others.test(each))).toEqual(expected);
  });
});

describe('a layer that is not seen', () => {
  const stuck = (panel: string, to: string): string =>
    `error layer-covered at "${panel}": mat lies where ${panel} is stuck to ${to}: in the joint, and out of sight`;
  const TUCK = 'box: { stock: cream, form: tuck-end box, inside: 2 x 1 x 3 }\n';
  const ENVELOPE = 'envelope: { stock: cream, form: envelope, card: 6 x 4 }\n';
  // A carton glued at both ends, its walls and flaps all folded the wrong way: its outside is within.
  const INSIDE_OUT = `box:
  stock: cream
  cut: 8 x 6 3/4
  score: [{ from: left, at: [1 1/4, 3 3/4, 5, 7 1/2] }, { from: bottom, at: [1 1/4, 5 1/2] }]
  panels: { front: B2, tab: E2 }
  trim: [E1, E3]
  slit: [A|B 1, B|C 1, C|D 1, A|B 3, B|C 3, C|D 3]
  folds: { A|B: FOLD, B|C: FOLD, C|D: FOLD, D|E: FOLD, 1|2: FOLD, 2|3: FOLD }
  glue: { tab: A2, A1: D1, C1: D1, B1: D1, A3: D3, C3: D3, B3: D3 }
`;
  /** A card with a step in its fold, by its score lines: opened, all of it lies flat. */
  const STEP = `card:
  stock: cream
  cut: 4 x 8
  score: [{ from: left, at: [1, 3] }, { from: top,  at: [3, 4, 5] }]
  panels: { back: A1, riser: B2, tread: B3, front: A4 }
  slit:   [A|B 2-3, B|C 2-3]
  folds: { 2|3: mountain 180, B2|B3: valley 180, B1|B2: mountain 180, B3|B4: mountain 180, 1|2: none, 3|4: none, A|B 1: none, B|C 1: none, A|B 4: none, B|C 4: none }
`;
  it.each<[string, string, string[]]>([
    ['inside the step of a card', STEP + mat('cut: 1 3/4 x 3/4, on: inside card.riser'), []],
    ['inside its other part', STEP + mat('cut: 1 3/4 x 3/4, on: inside card.tread'), []],
    ['on a tab', TUCK + mat('cut: 1/4 x 2, on: box.tab'), [stuck('box.tab', 'box.left')]],
    [
      'on a flap that is glued',
      ENVELOPE + mat('cut: 1/2 x 2, on: envelope.left-flap'),
      [stuck('envelope.left-flap', 'envelope.back')],
    ],
    ['on the panel that a tab is stuck to', TUCK + mat('cut: 3/4 x 2, on: box.left'), []],
    [
      'on a flap that is glued and is narrower than it is',
      ENVELOPE + mat('cut: 1 1/2 x 2, on: envelope.left-flap'),
      [stuck('envelope.left-flap', 'envelope.back')],
    ],
    [
      'on a flap of a bag that others are stuck over',
      `bag: { stock: cream, form: gusseted bag, inside: 3 x 2 x 3 }\n${mat('cut: 1/2 x 1/2, on: bag.left-front-bottom')}`,
      [
        'warning layer-covered at "bag.left-front-bottom": mat lies on the outside of bag.left-front-bottom, which is closed in once all is glued: nobody ever sees it',
      ],
    ],
    [
      'on a map, which opens',
      `map:
  stock: cream
  cut: 8 x 10
  score: [{ from: left, at: [4] }, { from: top, at: [5] }]
  folds: { A|B: valley 180, 1|2: mountain 180 }
${mat('cut: 3 x 4, on: map.A2')}`,
      [],
    ],
    ['under a lid, which opens', TUCK + mat('cut: 1/2 x 1/2, on: box.left-dust'), []],
    [
      'between the leaves of a card, which open',
      `card: { stock: cream, form: accordion card, size: 3 x 4, pages: 4 }\n${mat('cut: 2 3/4 x 3 3/4, on: card.page-2')}`,
      [],
    ],
    [
      'within a box that is turned inside out',
      INSIDE_OUT.replaceAll('FOLD', 'valley 90') + mat('cut: 2 x 2, on: box.front'),
      [
        'warning layer-covered at "box.front": mat lies on the outside of box.front, which is closed in once all is glued: nobody ever sees it',
      ],
    ],
    ['inside a card, which opens', CARD + mat('cut: 4 x 5 1/4, on: inside card.back'), []],
    ['inside a box with a lid', TUCK + mat('cut: 1 1/2 x 2, on: inside box.front'), []],
    [
      'inside, where a tab is stuck',
      TUCK + mat('cut: 7/8 x 2, on: inside box.left'),
      [stuck('box.left', 'box.tab').replace('"box.left"', '"inside box.left"')],
    ],
    [
      'inside a box that is closed for good',
      INSIDE_OUT.replaceAll('FOLD', 'mountain 90') + mat('cut: 2 x 2, on: inside box.front'),
      [
        'warning layer-covered at "inside box.front": mat lies on the inside of box.front, which is closed in once all is glued: nobody ever sees it',
      ],
    ],
    [
      'on one that is not',
      INSIDE_OUT.replaceAll('FOLD', 'mountain 90') + mat('cut: 2 x 2, on: box.front'),
      [],
    ],
  ])('%s', (_, pieces, expected) => {
    expect(said(pieces).filter((each) => each.includes('layer-'))).toEqual(expected);
  });
});

describe('a layer on the other side', () => {
  const FRAME = 'frame: { stock: cream, cut: 4 x 5 }\n';
  it.each<[string, string, string[]]>([
    ['behind a flat piece', FRAME + mat('cut: 3 x 4, behind: frame'), []],
    [
      'larger than what it is behind',
      FRAME + mat('cut: 4 1/4 x 4, behind: frame'),
      ['error layer-overhang at "4 1/4": mat is 4 1/4 in wide, 1/4 in more than the back of frame (4 in)'],
    ],
    [
      'inside a flat piece',
      FRAME + mat('cut: 3 x 4, on: inside frame'),
      ['error no-such-side at "inside frame": mat lies inside frame, which is flat and has no inside'],
    ],
    [
      'behind a folded one',
      CARD + mat('cut: 3 x 4, behind: card.front'),
      ['error no-such-side at "card.front": mat lies behind card.front, which is folded'],
    ],
    [
      'on something and behind it',
      FRAME + mat('cut: 3 x 4, on: frame, behind: frame'),
      ['error unexpected-value at "behind": "on" and "behind" stand for each other, and both are here'],
    ],
    [
      'on a panel that is not there',
      CARD + mat('cut: 3 x 4, on: inside card.middle'),
      [
        'error unknown-reference at "inside card.middle": mat lies on card.middle, but card has no panel "middle"',
      ],
    ],
    [
      'larger than the inner face',
      CARD + mat('cut: 4 1/2 x 5, on: inside card.front'),
      [
        'error layer-overhang at "4 1/2": mat is 4 1/2 in wide, 1/4 in more than the inside of card.front (4 1/4 in)',
      ],
    ],
  ])('%s', (_, pieces, expected) => {
    expect(said(pieces)).toEqual(expected);
  });
});

describe('a layer over a hole', () => {
  // The hole of a 2 x 4 in tag is 1/4 in wide and begins 1/4 in from the upper edge.
  it.each<[string, string | undefined]>([
    ['cut: 1 3/4 x 3, on: tag, at: { top: 1/2 }', undefined],
    ['cut: 1 3/4 x 3, on: tag, at: { top: 7/16 }', 'warning: mat covers a part of the 1/4 in hole of tag'],
    ['cut: 3/4 x 3/4, corners: 3/8, on: tag, at: { top: 1/8 }', 'note: mat covers the 1/4 in hole of tag'],
  ])('%s', (layer, expected) => {
    const off = found(TAG + mat(layer)).filter(({ rule }) => rule === 'layer-off-paper');
    expect(off.map(({ severity, message }) => `${severity}: ${message}`)).toEqual(expected ? [expected] : []);
  });
});

describe('layers in one place', () => {
  const on = (...layers: string[]): string =>
    ['card: { stock: cream, cut: 4 x 5 }', ...layers.map((layer) => `${layer}, on: card }`)].join('\n');
  it.each<[string, string, string[]]>([
    [
      'three of one size',
      on('a: { stock: cream, cut: 2 x 2', 'b: { stock: cream, cut: 2 x 2', 'c: { stock: cream, cut: 2 x 2'),
      ['warning layer-hidden at "c": c lies over the whole of a and b on card: nothing of them is seen'],
    ],
    [
      'a small one, then a large one',
      on('label: { stock: cream, cut: 2 x 1', 'photo: { stock: cream, cut: 3 x 4'),
      ['warning layer-hidden at "photo": photo lies over the whole of label on card: nothing of it is seen'],
    ],
    [
      'a large one, then a small one',
      on('photo: { stock: cream, cut: 3 x 4', 'label: { stock: cream, cut: 2 x 1'),
      [],
    ],
    ['two that cross', on('a: { stock: cream, cut: 1 x 4', 'b: { stock: cream, cut: 3 x 1'), []],
    [
      'several alike',
      on('a: { stock: cream, cut: 1 x 1, count: 3', 'b: { stock: cream, cut: 2 x 2'),
      ['note layer-count at "card": 3 × a lie in one place on each card'],
    ],
    [
      'a square inside a circle',
      on('a: { stock: cream, cut: 1 x 1', 'b: { stock: cream, cut: 2 x 2, corners: 1'),
      ['warning layer-hidden at "b": b lies over the whole of a on card: nothing of it is seen'],
    ],
    [
      'a square that looks out of a circle',
      on('a: { stock: cream, cut: 1 1/2 x 1 1/2', 'b: { stock: cream, cut: 2 x 2, corners: 1'),
      [],
    ],
  ])('%s', (_, pieces, expected) => {
    expect(said(pieces)).toEqual(expected);
  });

  it('are stuck on in the order of the steps, where these say so', () => {
    const pieces = on('label: { stock: cream, cut: 2 x 1', 'photo: { stock: cream, cut: 3 x 4');
    const body =
      '## One\nStick the :piece[photo] on the :piece[card].\n\n## Two\nStick on the :piece[label].\n';
    expect(said(pieces, { body })).toEqual([]);
  });
});

describe('a layer in the steps', () => {
  const pieces =
    'card: { stock: cream, cut: 4 x 5 }\nmat: { stock: cream, cut: 3 3/4 x 4 3/4, on: card }\nlabel: { stock: cream, cut: 2 x 1, on: mat }';
  const EARLY =
    'warning layer-before-base at "label": label is stuck on here, but mat, which it lies on, comes only in the step "Two"';
  it.each<[string, string, string, string[]]>([
    [
      'stuck on before its base',
      'Stick on the :piece[label].',
      'Stick :piece[mat] to :piece[card].',
      [EARLY],
    ],
    [
      'stuck on with its border',
      'Put the label down, leaving :reveal[label].',
      'Stick :piece[mat] to :piece[card]. Take :piece[label].',
      [EARLY],
    ],
    [
      'stamped beforehand',
      'Stamp the :piece[label].',
      'Stick :piece[mat] to :piece[card] and the label on it.',
      [],
    ],
    ['cut beforehand', 'Cut :piece[label].', 'Cut :piece[mat] and :piece[card]. Stick both down.', []],
    [
      'with its base, in either order',
      'Stick :piece[label] to :piece[mat].',
      'Stick the pair to :piece[card].',
      [],
    ],
    [
      'on a base that is named by a word',
      'Stick :piece[label] to the mat.',
      'Stick :piece[mat] to :piece[card].',
      [],
    ],
    [
      'with something stuck to it',
      'Tape a ribbon to the :piece[label].',
      'Stick :piece[mat] to :piece[card].',
      [],
    ],
  ])('%s', (_, one, two, expected) => {
    expect(said(pieces, { body: `## One\n${one}\n\n## Two\n${two}\n` })).toEqual(expected);
  });
});

describe('rounded corners', () => {
  it.each<[string, string | undefined]>([
    ['cut: 2 1/2 x 2 1/2, corners: 1 1/4', undefined],
    ['cut: 19 mm x 19 mm, corners: 10 mm', undefined],
    [
      'cut: 2 1/2 x 3 1/2, corners: 2',
      'the corners of mat are rounded by 2 in, but it is 2 1/2 × 3 1/2 in: two corners meet at 1 1/4 in',
    ],
    ['cut: 2 x 3, corners: { top left: 2 }', undefined],
    ['cut: 2 x 3, corners: { top left: 1 1/2, top right: 1/2 }', undefined],
    [
      'cut: 2 x 3, corners: { top left: 1 3/4, top right: 1/2 }',
      'the upper left corner of mat is rounded by 1 3/4 in, but it is 2 × 3 in: there is room for 1 1/2 in',
    ],
    [
      'cut: 2 x 3, corners: { top: 1 1/4, bottom: 1/8 }',
      'the upper corners of mat are rounded by 1 1/4 in, but it is 2 × 3 in: there is room for 1 in',
    ],
    [
      'form: single-fold card, size: 2 x 3, corners: 1 1/8',
      'the corners of mat are rounded by 1 1/8 in, but it is 2 × 3 in: two corners meet at 1 in',
    ],
  ])('%s', (lines, expected) => {
    expect(found(mat(lines)).map(({ message }) => message)).toEqual(expected ? [expected] : []);
  });
});

describe('the border of a strip', () => {
  const CARD_OF = (size: string): string => `card: { stock: cream, cut: ${size} }\n`;
  it.each<[string, string, number]>([
    [
      'twice as wide along it as at its ends',
      `${CARD_OF('1 1/4 x 4 3/4')}${mat('cut: 3/4 x 4 1/2, on: card')}`,
      0,
    ],
    ['a sixteenth wider', `${CARD_OF('1 1/8 x 4 3/4')}${mat('cut: 3/4 x 4 1/2, on: card')}`, 1],
    ['of what is no strip', `${CARD_OF('2 x 2 1/4')}${mat('cut: 1 1/2 x 2, on: card')}`, 1],
  ])('%s', (_, pieces, count) => {
    expect(found(pieces).filter(({ rule }) => rule === 'uneven-reveal')).toHaveLength(count);
  });
});
