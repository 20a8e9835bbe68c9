import { describe, expect, it } from 'vitest';
import { sheetWith } from './sheet-with.ts';
import { findingsOf } from './workspace.ts';

/** Errors and warnings. */
const said = (piece: string): string[] =>
  findingsOf(sheetWith({ stock: 'cream: { sheet: 24 x 24 }', pieces: `card:\n  stock: cream\n  ${piece}` }))
    .filter(({ severity }) => severity !== 'note')
    .map(({ rule, message }) => `${rule}: ${message}`);

const strip = (cut: string, at: string, more = ''): string =>
  `cut: ${cut}\n  score: [{ from: left, at: [${at}] }]${more}`;

/** A box 3 × 2 × 4 in whose floor is the flap of its back, in two rows with a line between them that stays flat. */
const fullFlap = (height: string): string => `cut: 10 1/2 x ${height}
  score: [{ from: left, at: [3, 5, 8, 10] }, { from: top, at: [4, 4 1/2] }]
  panels: { front: A1, back: C1, tab: E1 }
  trim: [A3, B3, D3, E2, E3]
  slit: [A|B 2, B|C 2-3, C|D 2-3]
  taper: [B2, D2]
  folds: { 2|3: flat }
  glue: { tab: front, A2: C3, B2: C2, D2: C2 }`;

/** A box whose back is in two halves, the right one 2 in wide of 3, and no line where they overlap. */
const HALF_BACKS = `cut: 10 1/2 x 6
  score: [{ from: right, at: [2, 4, 7, 9] }, { from: bottom, at: [2] }]
  trim: [A2, E2]
  slit: [B|C 2, C|D 2]
  taper: [B2, D2]
  glue: { E1: A1, B2: C2, D2: C2 }`;

/** A folder with a pocket that a strip in three folds lets grow; its last fold is glued to the back. */
const growing = (cut: string): string => `cut: ${cut} x 7
  score: [{ from: left, at: [8, 8 1/2, 9] }, { from: bottom, at: [3] }]
  panels: { back: A1, pocket: A2 }
  trim: [B1, C1, D1]
  folds: { 1|2: valley 180, A|B: valley 180, B|C: mountain 180, C|D: valley 180 }
  glue: { D2: back }`;

/** A box with flanges 1/2 in wide at its foot. */
const flanged = (more: string): string => `cut: 10 1/2 x 4 1/2
  score: [{ from: left, at: [3, 5, 8, 10] }, { from: bottom, at: [1/2] }]
  panels: { front: A1, tab: E1 }
  trim: [E2]
  slit: [A|B 2, B|C 2, C|D 2]
  taper: [A2, B2, C2, D2, tab]
  glue: { tab: front }${more}`;

const underneath = (cut: string): string =>
  flanged(`\nunder:\n  stock: cream\n  cut: ${cut}\n  on: card.A2\n  overhang: yes`);

/** A tray 4 × 4 in, 2 in high, whose front is as high as the paper leaves it; its tabs hang on front and back, or on the sides. */
const lowFront = (height: string, on: 'front' | 'sides' = 'front', more = ''): string => `cut: 8 x ${height}
  score: [{ from: left, at: [2, 6] }, { from: top, at: [2, 6] }]
  panels: { floor: B2, back: B1, front: B3, left: A2, right: C2 }
  slit: ${on === 'front' ? '[1|2 A, 1|2 C, 2|3 A, 2|3 C]' : '[A|B 1, B|C 1, A|B 3, B|C 3]'}
  taper: [A1, C1, A3, C3]
  glue: { ${on === 'front' ? 'A1: left, C1: right, A3: left, C3: right' : 'A1: back, C1: back, A3: front, C3: front'} }${more}`;

/** A chest of two sides, whose tabs hang on its front and back; a tuck at the edge of its lid goes behind the front. */
const CHEST = `cut: 7 x 11
  score: [{ from: left, at: [1, 6] }, { from: top, at: [1, 5, 6, 10] }]
  panels: { front: B1, floor: B2, back: B3, top: B4, tuck: B5, left: A2, right: C2 }
  trim: [A4, C4, A5, C5]
  slit: [1|2 A, 1|2 C, 2|3 A, 2|3 C]
  glue: { A1: left, C1: right, A3: left, C3: right }`;

/** A carton whose two long flaps are glued, and the short ones under them are not. */
const carton = (more = ''): string => `cut: 9 1/2 x 6 1/2
  score: [{ from: left, at: [3, 4 1/2, 7 1/2, 9] }, { from: bottom, at: [1 1/2] }]
  panels: { front: A1, back: C1, tab: E1, inner: A2, outer: C2, d1: B2, d2: D2 }
  trim: [E2]
  slit: [A|B 2, B|C 2, C|D 2]
  glue: { tab: front, inner: outer${more} }`;

/** What somebody may well want to make, and is right. */
describe('a right sheet', () => {
  it.each([
    [
      'an envelope with walls, whose closing flap hangs on a narrow wall and opens',
      `cut: 8 x 11 1/2
  score: [{ from: left, at: [3/4, 1, 7, 7 1/4] }, { from: top, at: [2, 2 1/4, 6 3/4, 7] }]
  panels: { flap: C1, top: C2, back: C3, foot: C4, front: C5, l: A3, r: E3 }
  trim: [A1, B1, D1, E1, A2, B2, D2, E2, A4, B4, D4, E4, A5, B5, D5, E5]
  opens: [flap]
  glue: { l: front, r: front }`,
    ],
    ['a rail whose returns meet in the middle', strip('3 x 6', '1/2, 1, 2, 2 1/2')],
    ['a rail whose returns leave a gap', strip('3 1/2 x 6', '1/2, 1, 2 1/2, 3')],
    [
      'a gate card with a pocket on its middle',
      `cut: 11 x 6
  score: [{ from: left, at: [2 3/4, 8 1/4] }, { from: top, at: [4] }]
  panels: { left: A1, middle: B1, right: C1, pocket: B2 }
  trim: [A2, C2]
  folds: { A|B: mountain 180, B|C: mountain 180, 1|2: valley 180 }
  glue: { pocket: middle }`,
    ],
    [
      'a card of three leaves with a pocket on the middle one',
      `cut: 11 7/8 x 7
  score: [{ from: left, at: [3 7/8, 7 7/8] }, { from: top, at: [5] }]
  panels: { first: A1, middle: B1, last: C1, pocket: B2 }
  trim: [A2, C2]
  folds: { A|B: mountain 180, B|C: mountain 180, 1|2: valley 180 }
  glue: { pocket: middle }`,
    ],
    [
      'a letter fold of two full leaves and an inner one that is shorter',
      strip('11 7/8 x 5', '4, 8', '\n  folds: { A|B: mountain 180, B|C: mountain 180 }'),
    ],
    [
      'a map of two rows of four',
      `cut: 12 x 8
  score: [{ from: left, at: [3, 6, 9] }, { from: top, at: [4] }]
  folds: { A|B: mountain 180, B|C: valley 180, C|D: mountain 180, 1|2: mountain 180 }`,
    ],
    [
      'a map of three rows of three',
      `cut: 9 x 12
  score: [{ from: left, at: [3, 6] }, { from: top, at: [4, 8] }]
  folds: { A|B: mountain 180, B|C: valley 180, 1|2: mountain 180, 2|3: valley 180 }`,
    ],
    [
      'a tent card with a foot',
      `cut: 5 x 10
  score: [{ from: top, at: [4, 8] }]
  folds: { 1|2: mountain 180, 2|3: valley 90 }`,
    ],
    [
      'a zigzag left standing',
      strip('12 x 4', '3, 6, 9', '\n  folds: { A|B: mountain 180, B|C: valley 90, C|D: mountain 180 }'),
    ],
    [
      'a square envelope whose closing flap is as large as the one it faces',
      `cut: 10 x 10
  score: [{ from: left, at: [2 1/2, 7 1/2] }, { from: top, at: [2 1/2, 7 1/2] }]
  panels: { flap: B1, front: B2, bottom: B3, left: A2, right: C2 }
  trim: [A1, C1, A3, C3]
  taper: [flap, bottom, left, right]
  folds: { A|B: mountain 180, B|C: mountain 180, 1|2: mountain 180, 2|3: mountain 180 }
  glue: { bottom: left, right: bottom }`,
    ],
    [
      'a pouch whose seam is in the middle of its back',
      `cut: 9 1/2 x 7
  score: [{ from: left, at: [2 1/4, 6 3/4] }, { from: top, at: [1, 6] }]
  panels: { front: B2, left: A2, right: C2, flap: B1, bottom: B3 }
  trim: [A1, C1, A3, C3]
  folds: { A|B: mountain 180, B|C: mountain 180, 1|2: mountain 180, 2|3: mountain 180 }
  glue: { right: left, bottom: right }`,
    ],
    [
      'an envelope that opens at its short side',
      `cut: 8 1/2 x 9
  score: [{ from: left, at: [1, 7 1/2] }, { from: top, at: [1, 5] }]
  panels: { flap: A2, front: B2, back: B3 }
  trim: [A1, C1, A3, C3]
  taper: [A2, B1, C2]
  folds: { A|B: mountain 180, B|C: mountain 180, 1|2: mountain 180, 2|3: mountain 180 }
  glue: { B1: back, C2: back }`,
    ],
    ['a frame with returns on two sides', strip('8 x 4', '1, 2, 6, 7')],
    [
      'a frame with returns all round, glued at its sides only',
      `cut: 8 x 8
  score: [{ from: left, at: [1, 2, 6, 7] }, { from: top, at: [1, 2, 6, 7] }]
  trim: [A1, A2, B1, E1, D1, E2, A5, A4, B5, E5, E4, D5]
  slit: [B|C 2, C|D 2, B|C 4, C|D 4]
  glue: { B2: C2, D2: C2, B4: C4, D4: C4 }`,
    ],
    ['a floor of one flap that reaches across and three short ones', fullFlap('6')],
    [
      'a gable top that is pinned together',
      `cut: 8 1/2 x 7
  score: [{ from: left, at: [2, 4, 6, 8] }, { from: bottom, at: [2, 5, 6 1/2] }]
  panels: { front: A3, tab: E3 }
  trim: [B1, D1, B2, D2, E1, E2, E4]
  slit: [A|B 4, B|C 4, C|D 4]
  taper: [B4, D4, tab]
  folds: { 2|3: mountain 42, 1|2: valley 42 }
  glue: { tab: front, B4: A4, D4: A4, C4: A4 }`,
    ],
    ['a pocket that grows', growing('10')],
    ['a back of two halves that overlap', HALF_BACKS],
    ['flanges with a piece stuck over them', underneath('3 x 2')],
    ['flanges that are said to open', flanged('\n  opens: [A2, B2, C2, D2]')],
    [
      'a chest whose lip is said to open',
      `cut: 8 x 11
  score: [{ from: left, at: [2, 6] }, { from: top, at: [2, 5, 7, 10] }]
  panels: { front: B1, floor: B2, back: B3, top: B4, lip: B5 }
  trim: [A5, C5, A4, C4]
  slit: [A|B 1, B|C 1, A|B 3, B|C 3]
  glue: { A1: front, C1: front, A3: back, C3: back }
  opens: [lip]`,
    ],
    ['a tray with a low front', lowFront('6 1/2')],
    ['a tray with a front that is said to open', lowFront('7 3/4', 'front', '\n  opens: [front]')],
    ['a chest whose tabs hang on its front and back', CHEST],
    [
      'a case of two trays that a spine joins',
      `cut: 7 x 11
  score: [{ from: left, at: [1, 6] }, { from: top, at: [1, 5, 6, 10] }]
  panels: { front: B1, floor: B2, spine: B3, top: B4, lip: B5 }
  slit: [1|2 A, 1|2 C, 2|3 A, 2|3 C, 3|4 A, 3|4 C, 4|5 A, 4|5 C]
  trim: [A3, C3]
  glue: { A1: A2, C1: C2, A5: A4, C5: C4 }`,
    ],
    [
      'a slipcase that is stuck at its ends',
      `cut: 9 x 8
  score: [{ from: left, at: [4, 5] }, { from: top, at: [1, 7] }]
  panels: { front: A2, spine: B2, back: C2 }
  slit: [A|B 1, B|C 1, A|B 3, B|C 3]
  glue: { A1: C1, B1: A1, A3: C3, B3: A3 }`,
    ],
    [
      'a cup whose floor has tabs, and whose sides hang on its front',
      `cut: 5 1/2 x 9
  score: [{ from: left, at: [1/2, 1 1/4, 4 1/4, 5] }, { from: top, at: [5, 5 3/4] }]
  panels: { back: C1, floor: C2, front: C3, ls: B3, rs: D3, lt: A3, rt: E3 }
  trim: [A1, B1, D1, E1, A2, E2]
  slit: [2|3 B, 2|3 D]
  taper: [B2, D2, lt, rt]
  glue: { B2: ls, D2: rs, lt: back, rt: back }`,
    ],
    ['a carton whose long flaps alone are glued', carton()],
  ])('has nothing said of it: %s', (_, piece) => {
    expect(said(piece)).toEqual([]);
  });
});

/** What is a slip in one of them. */
describe('a sheet that is nearly right', () => {
  it.each([
    [
      'a floor whose one flap stops short',
      fullFlap('5 1/4').replace('A2: C3, ', ''),
      [
        'not-held: card.A2 is stuck to nothing, and the rest does not close that end',
        'bottom-gap: card.A2 (1/2 in) and card.C2 (1 1/4 in) leave a gap of 1/4 in across 2 in',
      ],
    ],
    [
      'half a back that passes the corner',
      `cut: 11 3/4 x 6
  score: [{ from: left, at: [1 1/2, 3 1/2, 6 1/2, 8 1/2] }, { from: bottom, at: [2] }]
  trim: [E2]
  slit: [A|B 2, B|C 2, C|D 2]
  glue: { E1: A1, A2: C2, B2: C2, D2: C2 }`,
      ['glue-sticks-out: card.E1 sticks out 1/4 in past card.A1, which it is stuck to'],
    ],
    [
      'a pocket whose last fold passes the back',
      growing('18'),
      ['glue-sticks-out: card.D2 sticks out 1 in past card.back, which it is stuck to'],
    ],
    [
      'flanges with too small a piece over them',
      underneath('3 x 1'),
      [
        'not-held: card.A2, card.B2, card.C2 and card.D2 close an end of card and are stuck to nothing: that end falls open',
        'bottom-gap: card.A2 (1/2 in) and card.C2 (1/2 in) leave a gap of 1 in across 2 in',
      ],
    ],
    [
      'a front that is a groove or two too low',
      lowFront('7 3/4'),
      [
        'walls-unequal: card.front is 1 3/4 in high and card.left and card.right, which it meets at its corners, 2 in: a difference of 1/4 in',
      ],
    ],
    [
      'a low front, and tabs on the sides that stand up past it',
      lowFront('7', 'sides'),
      ['glue-sticks-out: card.A3 and card.C3 stick out ≈1 in past card.front, which they are stuck to'],
    ],
    [
      'a front that leans, once',
      lowFront('8', 'front', '\n  folds: { 2|3: mountain 110 }'),
      [
        'glue-sticks-out: as 2|3 is folded, card.A3 and card.C3 stick out past card.left and card.right, which they are stuck to',
      ],
    ],
    [
      'a chest with a corner that is not stuck',
      CHEST.replace(', C3: right', ''),
      ['not-held: card.C3 lies where it could be stuck, and nothing holds it'],
    ],
    [
      'a carton of which one of two alike flaps is glued',
      carton(', d1: outer'),
      ['not-held: card.d2 is stuck to nothing, unlike the rest of that end'],
    ],
    [
      'a tab that is wider than the wall it is stuck to',
      strip('11 3/4 x 4', '1 1/4, 4 1/4, 5 1/2, 8 1/2', '\n  panels: { tab: E1 }\n  glue: { tab: A1 }'),
      ['glue-sticks-out: card.tab sticks out 2 in past card.A1, which it is stuck to'],
    ],
    [
      'a triangle whose walls turn by their own angles',
      strip(
        '6 1/2 x 4',
        '2, 4, 6',
        `
  folds: { A|B: mountain 60, B|C: mountain 60, C|D: mountain 60 }
  glue: { D1: A1 }`,
      ),
      ['does-not-close: the folds from card.A1 around to card.D1 turn by 180°, not by a full circle of 360°'],
    ],
    [
      'a pocket whose tabs are stuck to what they hang on',
      `cut: 5 x 8 1/4
  score: [{ from: left, at: [1/2, 4 1/2] }, { from: bottom, at: [3 1/2] }]
  panels: { back: B1, front: B2 }
  trim: [A1, C1]
  taper: [A2, C2]
  folds: { A|B: mountain 180, B|C: mountain 180, 1|2: mountain 180 }
  glue: { A2: front, C2: front }`,
      ['flap-left-out: card.A2 and card.C2 are stuck to card.front, which they hang on: that joins nothing'],
    ],
  ])('is found: %s', (_, piece, expected) => {
    expect(said(piece)).toEqual(expected);
  });
});

/** What obeying would glue shut, or turn inside out, is no remedy. */
describe('nothing at all', () => {
  const BARE = 'cream: { name: Cream cardstock, sheet: 24 x 24, weight: 80 lb cover }';
  it.each([
    [
      'is said of a box that is filled just as its inside says',
      'box: { stock: cream, form: tuck-end box, inside: 4 x 1 x 3 }',
      'holds: { item: soap, size: 2 x 3 x 1, count: 2 }',
    ],
    // 4 in is 102 mm; a quarter of that is the usual depth, half of which is cut.
    ['is strained in a pillow box', 'box: { stock: cream, form: pillow box, size: 4 x 5 }', ''],
    [
      'is said of a seal past the edge of a gate, and a strip that ends flush',
      'box: { stock: cream, form: gate-fold card, size: 5 1/2 x 4 1/4 }\nseal: { stock: cream, cut: 1 1/2 x 1 1/2, shape: circle, on: box.left, at: { right: -3/4 }, overhang: yes }\nstrip: { stock: cream, cut: 1 x 4 1/4, on: box.left, at: { left: 0 } }',
      '',
    ],
  ])('%s', (_, pieces, more) => {
    expect(findingsOf(sheetWith({ stock: BARE, pieces, more })).map(({ message }) => message)).toEqual([]);
  });
});

describe('the remedy for a slip', () => {
  const remedies = (piece: string): string[] =>
    findingsOf(sheetWith({ pieces: `card:\n  stock: cream\n  ${piece}` }))
      .filter(({ severity }) => severity !== 'note')
      .map(({ remedy }) => `${remedy}`);

  it('names the panels that crossed pockets lie on, and does not close the folder', () => {
    const folder = `cut: 8 x 8
  score: [{ from: left, at: [4] }, { from: bottom, at: [2] }]
  panels: { back: A1, front: B1, left: A2, right: B2 }
  slit: [A|B 2]
  taper: [left, right]
  folds: { A|B: mountain 90, 1|2: mountain 180 }
  glue: { left: front, right: back }`;
    expect(remedies(folder)).toEqual([
      'stick left to back, which it lies on, or change how left folds',
      'stick right to front, which it lies on, or change how right folds',
    ]);
  });

  it('turns the tuck in that stands up at the edge of a lid, and does not glue the lid shut', () => {
    const tuckBox = `cut: 8 1/2 x 7
  score: [{ from: left, at: [2, 4, 6, 8] }, { from: top, at: [1/2, 2 1/2] }, { from: bottom, at: [1/2] }]
  panels: { front: A3, back: C3, lid: C2, tuck: C1, tab: E3 }
  trim: [A1, A2, B1, D1, E1, E2, E4, A4, B4, C4, D4]
  slit: [B|C 2, C|D 2]
  taper: [B2, D2, tab, tuck]
  folds: { 1|2: valley 90 }
  glue: { tab: front }`;
    expect(remedies(tuckBox)).toEqual(['fold tuck the other way']);
    expect(remedies(tuckBox.replace('valley', 'mountain'))).toEqual([]);
  });

  it('closes the seam of an envelope that is not stuck, and does not close its flap', () => {
    const coin = `cut: 5 1/2 x 4 3/4
  score: [{ from: left, at: [1 1/2, 4] }, { from: top, at: [3/4, 4 1/4] }]
  panels: { flap: B1, front: B2, l: A2, r: C2, foot: B3 }
  trim: [A1, C1, A3, C3]
  taper: [foot, flap]
  folds: { A|B: mountain 180, B|C: mountain 180, 1|2: mountain 180, 2|3: mountain 180 }
  glue: { foot: l }`;
    expect(remedies(coin)).toEqual(['add "glue: { r: l }", or "opens: [r]" where that is meant to open']);
  });

  /** A box 2 in square and 3 1/2 in high with four flaps for a floor; what glues its tab, and how some lines fold. */
  const square = (tab: string, folds = ''): string => `cut: 8 1/2 x 5
  score: [{ from: left, at: [2, 4, 6, 8] }, { from: top, at: [3 1/2] }]
  panels: { front: A1, right: B1, back: C1, left: D1, tab: E1 }
  trim: [E2]
  slit: [A|B 2, B|C 2, C|D 2]
  folds: { ${folds} }
  glue: { tab: ${tab}, B2: A2, D2: A2, A2: C2 }`;

  it('names the wall that a tab lies on, and turns no walls for a tab that is stuck to another', () => {
    expect(remedies(square('front'))).toEqual([]);
    const stick = 'stick tab to front, which it lies on, or change how tab folds';
    expect(remedies(square('right'))).toEqual([stick]);
    expect(remedies(square('back'))).toEqual([stick]);
  });

  it('folds the one line of a tube that was left flat', () => {
    expect(remedies(square('front', 'D|E: flat'))).toEqual(['say "D|E: mountain 90" under "folds:"']);
  });

  it('names the stretch of a line that is folded wrongly, by its cells as they are written', () => {
    const turned = square('front', 'A1|A2: valley 90');
    expect(remedies(turned)).toEqual(['say "A1|A2: mountain 90" under "folds:"']);
    expect(remedies(turned.replace('valley', 'mountain'))).toEqual([]);
  });

  it('lengthens a lid that ends short of the wall above its dust flaps', () => {
    const lidded = (height: string): string => `cut: 8 1/2 x ${height}
  score: [{ from: left, at: [2, 4, 6, 8] }, { from: bottom, at: [1 1/2, 4 1/2] }]
  panels: { front: A2, back: C2, lid: C1, tab: E2 }
  trim: [A1, E1, E3]
  slit: [B|C 1, C|D 1, A|B 3, B|C 3, C|D 3]
  glue: { tab: front, B3: A3, D3: A3, C3: A3 }`;
    expect(remedies(lidded('6 1/2'))).toEqual([]);
    expect(remedies(lidded('6 5/16'))).toEqual(['make lid 3/16 in longer']);
  });

  it('sticks the tab of one pocket of a wallet as that of the other', () => {
    const wallet = (glue: string): string => `cut: 8 1/2 x 7
  score: [{ from: left, at: [1/2, 4 1/4, 8] }, { from: bottom, at: [2 1/2] }]
  panels: { back: B1, front: C1, lp: B2, rp: C2 }
  trim: [A1, D1]
  slit: [B|C 2]
  folds: { 1|2: mountain 180, A|B: mountain 180, B|C: mountain 180, C|D: mountain 180 }
  glue: { ${glue} }`;
    expect(remedies(wallet('A2: back, D2: front'))).toEqual([]);
    expect(remedies(wallet('D2: front'))).toEqual([
      'stick A2 too, or say "opens: [A2]" where it is meant to hang loose',
    ]);
  });

  it('cuts a circle smaller both ways at once', () => {
    const layer = (size: string): string =>
      `cut: 4 x 5\nseal: { stock: cream, cut: ${size}, shape: circle, on: card }`;
    expect(remedies(layer('5 1/2 x 5 1/2'))).toEqual(['cut it at 3 3/4 in both ways for a 1/8 in reveal']);
    expect(remedies(layer('3 3/4 x 3 3/4'))).toEqual([]);
  });

  it('does not cut the card for a pop-up that is too deep', () => {
    const card = `form: single-fold card
  size: 7 x 5
  fold: top
  openings: { step: { pop-up: 2, depth: 3 } }`;
    expect(remedies(card)).toEqual(['cut its slits less deep, by 1 in or more in all']);
  });

  it('does not turn a roof outward that is a little too steep', () => {
    const gable = `cut: 8 1/2 x 7
  score: [{ from: left, at: [2, 4, 6, 8] }, { from: top, at: [1/2, 2, 5] }]
  trim: [B1, D1, B2, D2, E1, E2, E4]
  slit: [A|B 4, B|C 4, C|D 4]
  folds: { 2|3: mountain 48, 1|2: valley 48 }
  glue: { E3: A3, B4: A4, D4: A4, C4: A4 }`;
    // Half of 2 in over slopes of 1 1/2: the sine of 41.8 degrees.
    expect(remedies(gable)).toEqual(['say "2|3: mountain 41.8" under "folds:", and fold 1|2 back as far']);
  });
});
