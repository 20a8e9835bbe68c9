import { describe, expect, it } from 'vitest';
import { sheetWith } from './sheet-with.ts';
import { blamed, findingsOf } from './workspace.ts';

const KNIFE = 'supplies: [{ item: Craft knife, kind: tool }]';
const said = (pieces: string): string[] =>
  findingsOf(sheetWith({ pieces, head: KNIFE })).map(
    (finding) => `${finding.severity} ${finding.rule} at "${blamed(finding)}": ${finding.message}`,
  );
/** A 4 1/4 x 5 1/2 in card with something cut in its front, and what is stuck to it. */
const card = (openings: string, more = ''): string =>
  `card: { stock: cream, form: single-fold card, size: 4 1/4 x 5 1/2, openings: { ${openings} } }\n${more}`;
const WINDOW = 'window: { size: 2 x 3, in: front }';
const BOX = 'box: { stock: cream, form: tuck-end box, inside: 2 x 1 x 3, openings: { window: { ';

describe('an opening', () => {
  it.each<[string, string, string[]]>([
    ['in the middle of a panel', card(WINDOW), []],
    ['as a slot', card('slit: { slot: 2, in: front, at: { bottom: 1 } }'), []],
    ['as a circle', card('window: { shape: circle, size: 2 x 2, in: front, at: { top: 1/2 } }'), []],
    [
      'over the fold',
      card('window: { size: 2 x 3, in: front, at: { left: -1/8 } }').replace('-1/8', '2 1/2'),
      [
        'error opening-at-edge at "2 1/2": card.window runs past the right edge of front by 1/4 in: it is 2 in wide on 4 1/4 in',
      ],
    ],
    [
      'that cuts the fold',
      card('window: { size: 2 x 3, in: front, at: { right: 2 3/8 } }'),
      [
        'error opening-at-edge at "2 3/8": card.window is cut across the fold to back from front by 1/8 in: it is 2 in wide on 4 1/4 in',
      ],
    ],
    [
      'wider than its panel',
      card('window: { size: 4 1/2 x 3, in: front }'),
      [
        'error opening-at-edge at "4 1/2": card.window is cut across the fold to back from front by 1/8 in: it is 4 1/2 in wide on 4 1/4 in',
      ],
    ],
    [
      'with a sixteenth left beside it',
      card('window: { size: 2 x 3, in: front, at: { left: 1/16 } }'),
      [
        'warning opening-at-edge at "1/16": card.window leaves 1/16 in of front beside it; 1/8 in is the least that does not tear',
      ],
    ],
    ['with an eighth left', card('window: { size: 2 x 3, in: front, at: { left: 1/8 } }'), []],
    [
      'in no panel',
      card('window: { size: 2 x 3 }'),
      ['error missing-value at "{ size: 2 x 3 }": "openings window" of card has no "in:"'],
    ],
    [
      'in a panel that is not there',
      card('window: { size: 2 x 3, in: fornt }'),
      ['error unknown-reference at "fornt": card has no panel "fornt"'],
    ],
    [
      'as large as its piece',
      'card: { stock: cream, cut: 4 x 3, openings: { window: { size: 4 x 3 } } }',
      ['error opening-at-edge at "4": card.window goes right across card, 4 in wide: card falls apart'],
    ],
    [
      'as a slot from edge to edge',
      'card: { stock: cream, cut: 3 x 4, openings: { slit: { slot: 4, turn: 90 } } }',
      ['error opening-at-edge at "4": card.slit goes right across card, 4 in high: card falls apart'],
    ],
    [
      'up to one edge',
      'card: { stock: cream, cut: 4 x 3, openings: { window: { size: 1 x 1, at: { left: 0 } } } }',
      [
        'warning opening-at-edge at "0": card.window is cut up to the edge of card: nothing is left beside it',
      ],
    ],
    [
      'as a slot with an outline',
      card('slit: { slot: 2, in: front, shape: arch, rise: 1/2 }'),
      ['error unexpected-value at "shape": "shape" says nothing of a slot, which is one straight cut'],
    ],
    ['of no size', card('window: { in: front }'), ['error missing-value at "window": window has no "size:"']],
    [
      'of two',
      card('window: { size: 2 x 3, slot: 2, in: front }'),
      ['error unexpected-value at "slot": "size" and "slot" stand for each other, and both are here'],
    ],
    [
      'that runs into another',
      card(`${WINDOW}, slit: { slot: 1, in: front, at: { top: 2 } }`),
      ['error openings-meet at "slit": slit and window of card run into each other'],
    ],
    [
      'a sixteenth from another',
      card(`${WINDOW}, slit: { slot: 1, in: front, at: { bottom: 1 3/16 } }`),
      [
        'warning openings-meet at "slit": slit and window of card leave only 1/16 in of paper between them; 1/8 in is the least that does not tear',
      ],
    ],
    ['beside a joint', `${BOX}size: 1 x 2, in: front } } }`, []],
    [
      'in a joint',
      `${BOX}size: 1/2 x 2, in: left, at: { left: 1/8 } } } }`,
      [
        'error opening-in-joint at "window": box.window is cut where tab is stuck to left: 3/8 × 2 in of the joint is gone',
      ],
    ],
  ])('%s', (_, pieces, expected) => {
    expect(said(pieces)).toEqual(expected);
  });
});

describe('a layer at an opening', () => {
  const layer = (lines: string): string => card(WINDOW, `mat: { stock: cream, ${lines} }`);
  it.each<[string, string, string[]]>([
    ['behind it', layer('cut: 2 1/2 x 3 1/2, behind: card.window'), []],
    ['beside it', layer('cut: 3 x 1, on: card.front, at: { top: 1/8 }'), []],
    [
      'behind it, and just as wide',
      layer('cut: 2 x 3 1/2, behind: card.window'),
      [
        'error opening-uncovered at "card.window": mat reaches nothing past the edge of card.window; the glue takes 1/8 in',
      ],
    ],
    [
      'behind it, and a little wider',
      layer('cut: 2 1/8 x 3 1/2, behind: card.window'),
      [
        'error opening-uncovered at "card.window": mat reaches only 1/16 in past the edge of card.window; the glue takes 1/8 in',
      ],
    ],
    [
      'behind it, and too small',
      layer('cut: 1 3/4 x 3 1/2, behind: card.window'),
      [
        'error opening-uncovered at "card.window": mat stays 1/8 in short of the edge of card.window, which it is behind',
      ],
    ],
    [
      'on it',
      layer('cut: 2 1/2 x 3 1/2, on: card.window'),
      [
        'error no-such-side at "card.window": mat lies on card.window, which is an opening: there is no paper',
      ],
    ],
    [
      'over it',
      layer('cut: 4 x 5 1/4, on: card.front'),
      ['error layer-off-paper at "card.front": mat covers card.window: nothing shows through it'],
    ],
    [
      'over a part of it',
      layer('cut: 2 x 1, on: card.front, at: { top: 1/2 }'),
      [
        'error layer-off-paper at "card.front": mat covers 2 × 1/4 in of card.window, with nothing to stick to',
      ],
    ],
    [
      'inside it',
      layer('cut: 4 x 5 1/4, on: inside card.front'),
      ['error layer-off-paper at "inside card.front": mat covers card.window: nothing shows through it'],
    ],
    [
      'inside, over the back of what is behind it',
      layer('cut: 4 x 5 1/4, on: inside card.front }\nview: { stock: cream, cut: 3 x 4, behind: card.window'),
      [],
    ],
    [
      'over it, with the same one cut in it',
      layer('cut: 4 x 5 1/4, on: card.front, openings: { window: { size: 2 x 3 } }'),
      [],
    ],
    [
      'over a slot',
      card('slit: { slot: 2, in: front }', 'mat: { stock: cream, cut: 4 x 5 1/4, on: card.front }'),
      [
        'error layer-off-paper at "card.front": mat covers the slot card.slit: nothing goes through it any more',
      ],
    ],
    [
      'behind one that is not there',
      layer('cut: 2 1/2 x 3 1/2, behind: card.door'),
      ['error unknown-reference at "card.door": mat lies on card.door, but card has no panel "door"'],
    ],
    [
      'in a box that is glued shut, behind its window',
      `${BOX}size: 1 x 2, in: front } } }\nfilm: { stock: cream, cut: 1 1/2 x 2 1/2, behind: box.window }`,
      [],
    ],
  ])('%s', (_, pieces, expected) => {
    expect(said(pieces)).toEqual(expected);
  });
});

describe('a pop-up', () => {
  const pop = (entry: string, more = '', form = 'single-fold card'): string =>
    `card: { stock: cream, form: ${form}, size: 4 1/4 x 5 1/2, openings: { step: { ${entry} } } }\n${more}`;
  const STEP = 'pop-up: 2, depth: 1';
  const figure = (cut: string, at: string): string =>
    `figure: { stock: cream, cut: ${cut}, on: inside card.step-front, at: { ${at} }, overhang: yes }`;

  it.each<[string, string, string[]]>([
    ['in the middle', pop(STEP), []],
    ['that a figure stands on', pop(STEP, figure('2 x 1', 'left: 1/4')), []],
    // 1 in deep on either side, closed it reaches 2 in from the fold; the figure begins 1 in from that.
    [
      'with a figure that is too long for the closed card',
      pop(STEP, figure('3 1/2 x 1', 'left: 1/8')),
      [
        'error popup-sticks-out at "3 1/2": figure, on card.step, sticks out of the closed card by 3/8 in: it reaches 4 5/8 in from the fold, and the card 4 1/4 in',
      ],
    ],
    ['with one that just fits', pop(STEP, figure('3 1/8 x 1', 'left: 1/8')), []],
    [
      'with a figure that is longer than the fold',
      pop(STEP, figure('1 x 6', 'left: 1/4')),
      [
        'error popup-sticks-out at "6": figure, on card.step, sticks out of the closed card by 1/4 in: it is 6 in along the fold, and the card 5 1/2 in',
      ],
    ],
    [
      'with a figure that goes down past it',
      pop(STEP, figure('2 x 1', 'right: 1/4')),
      [
        'error popup-hits-card at "inside card.step-front": figure reaches 1 1/4 in past the fold between card.step-front and front: it runs into front when the card is opened',
      ],
    ],
    [
      'longer than the closed card, with a figure on it',
      pop('pop-up: 2, depth: [2, 2 1/2], across: back|front', figure('1 x 1', 'left: 1/4')),
      [
        'error popup-sticks-out at "2": card.step sticks out of the closed card by 1/4 in: it reaches 4 1/2 in from the fold, and the card 4 1/4 in',
      ],
    ],
    [
      'that leaves a sixteenth of the fold',
      pop(`${STEP}, at: { bottom: 1/16 }`),
      [
        'warning popup-at-edge at "step": card.step leaves 1/16 in of the fold at one end; 1/8 in is the least that does not tear',
      ],
    ],
    [
      'up to the end of its fold',
      pop(`${STEP}, at: { bottom: 0 }`),
      ['error popup-at-edge at "0": card.step runs up to the end of its fold: it is 2 in wide on 5 1/2 in'],
    ],
    [
      'past the end of its fold',
      pop(`${STEP}, at: { top: 4 }`),
      [
        'error popup-at-edge at "4": card.step runs past the end of its fold by 1/2 in: it is 2 in wide on 5 1/2 in',
      ],
    ],
    [
      'as wide as its fold',
      pop('pop-up: 5 1/2, depth: 1'),
      ['error popup-at-edge at "5 1/2": card.step is 5 1/2 in wide on a fold of 5 1/2 in'],
    ],
    [
      'cut to the edge of a panel',
      pop('pop-up: 2, depth: 4 1/4'),
      [
        'error popup-at-edge at "4 1/4": card.step is cut 4 1/4 in deep into back, which is 4 1/4 in from the fold to its edge',
      ],
    ],
    [
      'in a box, where nothing closes flat',
      'card: { stock: cream, form: tray, inside: 4 x 3 x 1, openings: { step: { pop-up: 1, depth: 1/2 } } }',
      [
        'error popup-at-edge at "step": card.step has no fold to lie across: nothing in card is folded by 180°',
      ],
    ],
    [
      'across one of two folds',
      pop(STEP, '', 'gate-fold card'),
      [`error missing-value at "{ ${STEP} }": "openings step" of card has no "across:"`],
    ],
    [
      'across a fold that is not there',
      pop(`${STEP}, across: front|bakc`),
      ['error unknown-reference at "front|bakc": card has no fold of 180° "front|bakc"'],
    ],
    [
      'across what is no fold',
      pop(`${STEP}, across: back`),
      ['error unexpected-value at "back": "back" is not a valid value for "across"'],
    ],
    [
      'of two depths across nothing',
      pop('pop-up: 2, depth: [1, 2]'),
      ['error missing-value at "step": step has no "across:"'],
    ],
    ['of no depth', pop('pop-up: 2'), ['error missing-value at "step": step has no "depth:"']],
    [
      'of three depths',
      pop('pop-up: 2, depth: [1, 2, 3], across: back|front'),
      ['error unexpected-value at "3": "3" is not a valid value for "depth"'],
    ],
    [
      'in a panel, and turned',
      pop(`${STEP}, in: front, turn: 5`),
      [
        'error unexpected-value at "in": "in" says nothing of a pop-up, which lies straight across its fold',
        'error unexpected-value at "turn": "turn" says nothing of a pop-up, which lies straight across its fold',
      ],
    ],
    [
      'away from its fold',
      pop(`${STEP}, at: { left: 1 }`),
      ['error unexpected-value at "1": "left" says nothing of a pop-up, which lies straight across its fold'],
    ],
    [
      'with a window on its strip, and a window of some depth',
      `card: { stock: cream, form: single-fold card, size: 4 1/4 x 5 1/2, openings: { step: { ${STEP} }, hole: { size: 1/2 x 1/2, in: step-front }, other: { size: 1 x 1, in: front, depth: 1 } } }`,
      ['error unexpected-value at "depth": "depth" says something of a pop-up only'],
    ],
    [
      'that runs into another',
      `card: { stock: cream, form: single-fold card, size: 4 1/4 x 5 1/2, openings: { step: { ${STEP} }, low: { pop-up: 1, depth: 1/2, at: { bottom: 1 } } } }`,
      ['error popup-at-edge at "1": card.low, 1 in wide, runs into another pop-up on the same fold'],
    ],
    [
      'beside another',
      `card: { stock: cream, form: single-fold card, size: 4 1/4 x 5 1/2, openings: { step: { ${STEP} }, low: { pop-up: 1, depth: 1/2, at: { bottom: 1/4 } } } }`,
      [],
    ],
  ])('%s', (_, pieces, expected) => {
    expect(said(pieces)).toEqual(expected);
  });

  // By hand: turned over like a page, what hangs on the back's right hangs on its left, and the top stays at the top.
  it.each([
    ['left', 'front', 'right: 1/4', 'left'],
    ['left', 'back', 'left: 1/4', 'right'],
    ['top', 'back', 'bottom: 1/4', 'top'],
    ['top', 'front', 'top: 1/4', 'bottom'],
  ])('folded at the %s says from where its figure on the %s is to stand', (fold, part, at, edge) => {
    const pieces = `card: { stock: cream, form: single-fold card, size: 5 x 5, fold: ${fold}, openings: { step: { ${STEP} } } }
figure: { stock: cream, cut: 2 x 2, on: inside card.step-${part}, at: { ${at} }, overhang: yes }`;
    const [found, ...others] = findingsOf(sheetWith({ pieces, head: KNIFE }));
    expect(others).toEqual([]);
    expect(found?.remedy).toContain(`with "at: { ${edge}: 0 }" or more`);
    expect(said(pieces.replace(at, `${edge}: 0`))).toEqual([]);
  });
});

describe('a stamped image', () => {
  const stamped = (mat: string, image: string): string[] =>
    findingsOf(
      sheetWith({
        pieces: `mat: { stock: cream, ${mat}, impressions: [{ stamp: leaf, ${image} }] }`,
        head: 'supplies: [{ item: Leaf stamp, kind: stamp }]',
      }),
    ).map((finding) => `${finding.rule} at "${blamed(finding)}": ${finding.message}`);
  const off = (at: string, part: string, size: string): string[] => [
    `impression-off-paper at "${at}": ${part} in of the Leaf stamp, ${size} in, lies where mat is cut away`,
  ];
  const WINDOW_OF_TWO = 'cut: 4 x 4, openings: { window: { size: 2 x 2 } }';

  it.each<[string, string, string, string[]]>([
    ['within a window', WINDOW_OF_TWO, 'size: 1 x 1', off('1', '1 × 1', '1 × 1')],
    ['that frames a window', WINDOW_OF_TWO, 'size: 3 x 3', []],
    ['beside a window', WINDOW_OF_TWO, 'size: 1 x 1, at: { left: 0, top: 0 }', []],
    ['on a slot', 'cut: 4 x 4, openings: { slit: { slot: 2 } }', 'size: 1 x 1', []],
    [
      'where a circle has no corner',
      'cut: 4 x 4, shape: circle',
      'size: 1/2 x 1/2, at: { left: 0, top: 0 }',
      off('0', '1/2 × 1/2', '1/2 × 1/2'),
    ],
    ['as round as its circle', 'cut: 4 x 4, shape: circle', 'size: 4 x 4', []],
    ['in a rounded corner', 'cut: 4 x 4, corners: 1/4', 'size: 1 x 1, at: { left: 1/16, top: 1/16 }', []],
  ])('%s', (_, mat, image, expected) => {
    expect(stamped(mat, image)).toEqual(expected);
  });
});

it.each<[string, string, string]>([
  ['too large to leave enough on both sides', 'slot: 4', 'make it at most 3 7/8 in wide'],
  ['too near one side', 'size: 2 x 3, at: { top: 1/16 }', 'move it 1/16 in inward, or make it smaller'],
])('an opening that is %s is to be mended so', (_, words, remedy) => {
  const pieces = card(`w: { in: front, ${words} }`).replace('4 1/4', '4 1/8');
  expect(findingsOf(sheetWith({ pieces })).map((each) => each.remedy)).toEqual([remedy]);
});

it('an opening is not called as a panel is', () => {
  expect(said(card('front: { size: 2 x 3, in: front }'))).toEqual([
    'error unexpected-value at "front": "front" is what a panel of card is called already',
  ]);
});

it('every word of another outline is told, and one limit of a length', () => {
  expect(said('a: { stock: cream, cut: 3 x 3, shape: circle, sides: 3, notch: 1 }')).toEqual([
    'error unexpected-value at "3": "sides" says nothing of a circle',
    'error unexpected-value at "1": "notch" says nothing of a circle',
  ]);
  expect(said('a: { stock: cream, cut: 3 x 3, shape: arch, rise: 9 }')).toEqual([
    'error form-limit at "9": the rise of a is 9 in, more than 1 1/2 in: more than half the width is no arc of a circle',
  ]);
});

describe('the corners of an opening', () => {
  it.each<[string, string, string[]]>([
    ['rounded', 'size: 2 x 3, corners: 1/4', []],
    ['rounded to a half circle', 'size: 2 x 3, corners: { top: 1 }', []],
    [
      'rounded too far',
      'size: 2 x 3, corners: { top: 1 1/4 }',
      [
        'error corners-too-round at "1 1/4": the upper corners of card.window are rounded by 1 1/4 in, but it is 2 × 3 in: there is room for 1 in',
      ],
    ],
    [
      'of another outline',
      'size: 2 x 2, shape: oval, corners: 1/4',
      ['error unexpected-value at "1/4": "corners" rounds those of a rectangle, and this is an oval'],
    ],
    [
      'of a slot',
      'slot: 2, corners: 1/4',
      ['error unexpected-value at "corners": "corners" says nothing of a slot, which is one straight cut'],
    ],
  ])('%s', (_, window, expected) => {
    expect(said(card(`window: { in: front, ${window} }`))).toEqual(expected);
  });
});

describe('a punched edge', () => {
  const punched = (cut: string, edge: string, more = ''): string[] =>
    findingsOf(
      sheetWith({
        pieces: `mat: { stock: cream, ${cut}, edge: ${edge}${more} }`,
        head: 'supplies: [{ item: Leaf stamp, kind: stamp }]',
      }),
    ).map(({ severity, rule, message }) => `${severity} ${rule}: ${message}`);
  const row = (along: string, depth = '1/8', more = ''): string =>
    `{ along: ${along}, pitch: 1/4, hole: 1/8, depth: ${depth}${more} }`;
  const runs = (message: string, severity = 'error'): string[] => [
    `${severity} edge-runs-into: the motifs along the ${message}`,
  ];
  const FOUR = 'cut: 4 x 4';
  const window = (left: string): string =>
    `, openings: { window: { size: 1 x 1, at: { left: ${left} } }, slit: { slot: 1, at: { right: 3/8 } } }`;

  it.each<[string, string, string, string, string[]]>([
    ['round a whole mat', FOUR, '{ along: all, pitch: 3/8, hole: 1/4 }', '', []],
    ['along the straight sides of an arch', 'cut: 3 x 3, shape: arch', row('[left, right, bottom]'), '', []],
    ['along the foot of a polygon', 'cut: 3 x 3, shape: polygon', row('[top, bottom]'), '', []],
    [
      'that runs on through rounded corners',
      'cut: 3 x 3, corners: 1/4',
      row('left', '1/8', ', through: yes'),
      '',
      [
        'warning edge-in-corner: the last motif along the left edge of mat lies 1/16 in from the end, but the corner there is cut back by 1/4 in',
      ],
    ],
    [
      'at the point of a pentagon',
      'cut: 3 x 3, shape: polygon, sides: 5',
      row('left'),
      '',
      ['error edge-pitch: the left edge of mat has no straight stretch for a motif of 1/8 in'],
    ],
    ['deep on two edges that meet', FOUR, `[${row('left', '1')}, ${row('top', '1')}]`, '', []],
    ['of a card, over its fold', 'form: single-fold card, size: 4 x 5', row('[top, bottom]'), '', []],
    ['as deep as leaves enough', 'cut: 1 x 4', row('[left, right]', '7/16'), '', []],
    [
      'that leaves too small',
      'cut: 1 x 4',
      row('[left, right]', '15/32'),
      '',
      runs(
        'right edge of mat reach 15/32 in into the paper and leave only 1/16 in of paper before those along the left edge; 1/8 in is the least that does not tear',
        'warning',
      ),
    ],
    [
      'that cuts its piece in two',
      'cut: 1 x 4',
      row('[left, right]', '1/2'),
      '',
      runs(
        'right edge of mat reach 1/2 in into the paper and those along the left edge 1/2 in, so that they meet: mat falls apart',
      ),
    ],
    [
      'deeper than its paper',
      FOUR,
      row('left', '30'),
      '',
      runs('left edge of mat reach 30 in into the paper, and mat is 4 in wide'),
    ],
    [
      'twice along one edge',
      FOUR,
      `[${row('left')}, { along: left, pitch: 3/8, hole: 1/8 }]`,
      '',
      runs('left edge of mat reach 1/8 in into the paper, over another row along that edge, 1/8 in deep'),
    ],
    [
      'begun in the corner',
      FOUR,
      `[${row('left', '1/2', ', start: 1/16')}, ${row('top', '1/2', ', start: 1/16')}]`,
      '',
      runs(
        'top edge of mat reach 1/2 in into the paper, and run into those along the left edge, which reach 1/2 in',
        'warning',
      ),
    ],
    ['beside a window and a slot', FOUR, row('all', '1/4'), window('3/8'), []],
    [
      'near a window',
      FOUR,
      row('left', '1/4'),
      window('5/16'),
      runs(
        'left edge of mat reach 1/4 in into the paper and leave only 1/16 in of paper before window; 1/8 in is the least that does not tear',
        'warning',
      ),
    ],
    [
      'that runs into a window',
      FOUR,
      row('left', '1/4'),
      window('1/8'),
      runs(
        'left edge of mat reach 1/4 in into the paper and run into window, which begins 1/8 in from that edge',
      ),
    ],
    [
      'that runs into a slot',
      FOUR,
      row('right', '1/2'),
      window('1'),
      runs(
        'right edge of mat reach 1/2 in into the paper and run into slit, which begins 3/8 in from that edge',
      ),
    ],
    [
      'over the notch of a banner',
      'cut: 4 x 2, shape: banner',
      row('right'),
      '',
      runs(
        'right edge of mat reach 1/8 in into the paper, and 1/8 × 1 5/8 in of that strip is cut away from mat',
      ),
    ],
    [
      'over a stamped image',
      FOUR,
      row('left'),
      ', impressions: { stamp: leaf, size: 1 x 1, at: { left: 1/16 } }',
      runs(
        'left edge of mat reach 1/8 in into the paper, and take 1/16 × ≈1/2 in off the Leaf stamp',
        'warning',
      ),
    ],
    [
      'past the fold of a flap',
      'cut: 4 x 4, score: [{ from: left, at: [1/4] }]',
      row('left', '1/2'),
      '',
      runs(
        'left edge of mat reach 1/2 in into the paper, past the fold between mat.A1 and mat.B1, which lies 1/4 in from that edge',
        'warning',
      ),
    ],
    [
      'of a circle',
      'cut: 4 x 4, shape: circle',
      row('left'),
      '',
      ['error edge-pitch: the left edge of mat has no straight stretch for a motif of 1/8 in'],
    ],
    [
      'begun beyond its end',
      FOUR,
      row('left', '1/8', ', start: 5'),
      '',
      [
        'error edge-pitch: the row along the left edge of mat begins 5 in from its end, and the edge is 4 in long: there is no room for a motif of 1/8 in',
      ],
    ],
  ])('%s', (_, cut, edge, more, expected) => {
    expect(punched(cut, edge, more)).toEqual(expected);
  });
});

describe('many of them on one sheet', () => {
  /** A quarter of an inch from one to the next, in rows; a test that takes over five seconds fails. */
  const many = (count: number, each: (left: string, top: string, index: number) => string): string =>
    Array.from({ length: count }, (_, index) =>
      each(`${1 + (index % 56)}/4`, `${1 + Math.floor(index / 56)}/4`, index),
    ).join(', ');

  it('are looked at in no time, circles', () => {
    const holes = many(
      50,
      (left, top, index) =>
        `c${index}: { shape: circle, size: 1/8 x 1/8, at: { left: ${left}, top: ${top} } }`,
    );
    expect(said(`mat: { stock: cream, cut: 15 x 5, openings: { ${holes} } }`).join()).not.toContain(
      'openings-meet',
    );
  });

  it('are looked at in no time, stamped images', () => {
    const images = many(
      1000,
      (left, top) => `{ stamp: leaf, size: 1/8 x 1/8, at: { left: ${left}, top: ${top} } }`,
    );
    const pieces = `mat: { stock: cream, cut: 15 x 10, impressions: [${images}] }`;
    const head = 'supplies: [{ item: Leaf stamp, kind: stamp }]';
    const told = findingsOf(sheetWith({ pieces, head }));
    expect(told.map(({ rule }) => rule)).not.toContain('impressions-overlap');
  });
});
