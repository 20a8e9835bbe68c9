import { describe, expect, it } from 'vitest';
import { sheetWith } from './sheet-with.ts';
import { blamed, findingsOf } from './workspace.ts';

const [M, V] = ['mountain 180', 'valley 180'];
const RIGHT = `A|B: ${M}, B|C: ${M}, 1|2: ${M}, 2|3: ${M}`;

/** An envelope by its score lines: two side flaps, a back and a flap about a front. */
const envelope = (folds = RIGHT, glue = 'left: back, right: back'): string => `box:
  stock: cream
  cut: 7 1/2 x 8 1/4
  score: [{ from: left, at: [3/4, 6 3/4] }, { from: top, at: [1, 4 3/4] }]
  panels: { flap: B1, left: A2, front: B2, right: C2, back: B3 }
  trim: [A1, C1, A3, C3]
  taper: [A2, C2]
  folds: { ${folds} }
  glue: { ${glue} }`;

/** A strip of leaves. */
const strip = (width: string, at: string, folds: string, more = ''): string =>
  `box: { stock: cream, cut: ${width} x 4, score: [{ from: left, at: [${at}] }], folds: { ${folds} }${more} }`;

/** An envelope 5 1/2 in wide of a back with tabs, a front `high` and a flap, which turns so. */
const backed = (flap: string, high = '4 1/4', more = ''): string => {
  const total = high === '4 1/4' ? '10 1/4' : '9 1/2';
  const last = high === '4 1/4' ? '8 1/4' : '7 1/2';
  return `box:
  stock: cream
  cut: 7 x ${total}
  score: [{ from: left, at: [3/4, 6 1/4] }, { from: top, at: [4, ${last}] }]
  panels: { back: B1, front: B2, flap: B3 }
  trim: [A2, C2, A3, C3]
  taper: [A1, C1]
  folds: { A|B: ${M}, B|C: ${M}, 1|2: ${M}, 2|3: ${flap} }
  glue: { A1: front, C1: front }${more}`;
};

/** A pocket that is folded up in front of its back, with two tabs. */
const pocket = (tabs: string): string => `box:
  stock: cream
  cut: 4 x 7
  score: [{ from: left, at: [1/2, 3 1/2] }, { from: bottom, at: [2] }]
  panels: { back: B1, left: A2, pocket: B2, right: C2 }
  trim: [A1, C1]
  folds: { A|B: ${tabs}, B|C: ${tabs}, 1|2: ${M} }
  glue: { left: back, right: back }`;

const tube = (first: string, second: string, glue = 'tab: front'): string =>
  strip(
    '6 1/2',
    '3, 6',
    `A|B: ${first}, B|C: ${second}`,
    `, panels: { front: A1, back: B1, tab: C1 }, glue: { ${glue} }`,
  );

/** Errors and warnings, with the words they point at. */
const said = (pieces: string): string[] =>
  findingsOf(sheetWith({ pieces }))
    .filter(({ severity }) => severity !== 'note')
    .map((finding) => `${finding.rule} at "${blamed(finding)}": ${finding.message}; ${finding.remedy}`);

/** What is right is tried as often as what is wrong. */
describe('the proof of what is folded flat', () => {
  it.each([
    ['an envelope', envelope()],
    [
      'one whose back is folded first, and its flaps stuck on that',
      envelope(RIGHT, 'back: left, right: back'),
    ],
    ['one that is sealed', envelope(RIGHT, 'left: back, right: back, flap: back')],
    [
      'a wrap whose sides are stuck to one another, and its bottom to the first of them',
      `box:
  stock: cream
  cut: 8 1/4 x 8
  score: [{ from: left, at: [2 3/4, 5 1/2] }, { from: top, at: [4] }]
  panels: { left: A1, back: B1, right: C1, bottom: B2 }
  trim: [A2, C2]
  folds: { A|B: ${M}, B|C: ${M}, 1|2: ${M} }
  glue: { left: right, bottom: left }`,
    ],
    ['leaves to and fro', strip('8 1/2', '2 1/8, 4 1/4, 6 3/8', `A|B: ${M}, B|C: ${V}, C|D: ${M}`)],
    [
      'a roll whose leaves get narrower',
      strip('7 3/4', '2 1/8, 4 1/8, 6', `A|B: ${M}, B|C: ${M}, C|D: ${M}`),
    ],
    [
      'the same scored from the other side',
      strip('7 3/4', '1 3/4, 3 5/8, 5 5/8', `A|B: ${M}, B|C: ${M}, C|D: ${M}`),
    ],
    ['a flat tube', tube(M, M)],
    [
      'a flat band',
      strip(
        '9',
        '4 1/4, 8 1/2',
        `A|B: ${M}, B|C: ${M}`,
        ', panels: { back: A1, front: B1, tab: C1 }, glue: { tab: back }',
      ),
    ],
    ['a pocket', pocket(M)],
    ['an envelope whose tabs hang on its back', backed(M)],
    ['one whose flap is said to stay open', backed(V, '4 1/4', '\n  opens: [flap]')],
    ['a pocket shorter than its back, with a cuff', backed(V, '3 1/2')],
    ['a gate that stays open', strip('8', '2, 6', `A|B: ${M}, B|C: flat`)],
    ['a stand with a leg', strip('8', '2, 4', `A|B: ${M}, B|C: mountain 90`)],
  ])('says nothing of %s', (_, pieces) => {
    expect(said(pieces)).toEqual([]);
  });

  it.each([
    [
      'a side flap folded outward',
      envelope(`A|B: ${V}, B|C: ${M}, 1|2: ${M}, 2|3: ${M}`),
      'glue-other-side at "A|B: valley 180": box.left is to stick to back, but it is folded onto the outside of front and back onto the inside: front lies between them; fold left the other way, mountain instead of valley',
    ],
    [
      'a back folded to the front, once for both flaps',
      envelope(`A|B: ${M}, B|C: ${M}, 1|2: ${M}, 2|3: ${V}`),
      'glue-other-side at "2|3: valley 180": box.back is to stick to left and right, but it is folded onto the outside of front and left and right onto the inside: front lies between them; fold back the other way, mountain instead of valley; or else left and right, valley instead of mountain',
    ],
    [
      'an envelope folded inside out',
      envelope(`A|B: ${V}, B|C: ${V}, 1|2: ${V}, 2|3: ${V}`),
      'front-inside at "1|2: valley 180": once box is folded, the outside of front ends up inside; fold the other way, mountain instead of valley as seen from outside',
    ],
    [
      'a standing card inside out',
      'box: { stock: cream, cut: 8 1/2 x 4, score: [{ from: left, at: [4 1/4] }], panels: { back: A1, front: B1 }, folds: { A|B: valley 90 } }',
      'front-inside at "A|B: valley 90": once box is folded, the outside of front ends up inside; fold the other way, mountain instead of valley as seen from outside',
    ],
    [
      'a map whose rows are folded inside out',
      `box:
  stock: cream
  cut: 8 x 8
  score: [{ from: left, at: [2, 4, 6] }, { from: top, at: [4] }]
  folds: { A|B: ${M}, B|C: ${V}, C|D: ${M}, 1|2: ${V} }`,
      'front-inside at "1|2: valley 180": once box is folded, the outside of B1 ends up inside; fold the other way, mountain instead of valley as seen from outside',
    ],
    [
      'gates folded to both sides',
      strip('8', '2, 6', `A|B: ${M}, B|C: ${V}`),
      'gates-apart at "B|C: valley 180": box.A1 is folded onto one side of B1 and C1 onto the other, though together they are as wide as it is; fold C1 the other way, so that the two meet, unless you want it that way',
    ],
    [
      'one gate that is folded only halfway',
      strip('8', '2, 6', `A|B: mountain 90, B|C: ${M}`),
      'gates-apart at "A|B: mountain 90": box.C1 is folded flat onto B1 and A1 by only 90°, though together they are as wide as it is; fold A1 by 180° too, so that the two meet, unless you want it that way',
    ],
    [
      'a closing flap folded to the front',
      backed(V),
      'flap-wrong-way at "2|3: valley 180": box.flap folds to the other side than box.back; fold flap the other way',
    ],
    [
      'tabs that are stuck to the closing flap',
      backed(M).replace('A1: front, C1: front', 'A1: flap, C1: flap'),
      'flap-left-out at "A1: flap": box.A1 and box.C1 are stuck to box.flap, the flap of front, and not to front itself: nothing is left to close it; stick A1 and C1 to front',
    ],
    [
      'a tab folded to the wrong side',
      tube(M, V),
      'glue-other-side at "B|C: valley 180": box.tab is to stick to front, but it is folded onto the outside of back and front onto the inside: back lies between them; fold tab the other way, mountain instead of valley; or else front, valley instead of mountain',
    ],
    [
      'leaves of one width rolled up',
      strip('9', '3, 6', `A|B: ${M}, B|C: ${M}`),
      'rolled-leaf at "A|B: mountain 180": box.A1, 3 in wide, is rolled in between C1 and B1, which leaves 3 in: it jams in the fold and buckles; cut A1 at 2 15/16 in, or fold it the other way, back and forth',
    ],
    [
      'leaves of which none can be the inner one',
      strip('9', '4, 6', `A|B: ${M}, B|C: ${M}`),
      'fold-blocked at "B|C: mountain 180": the fold between box.B1 and box.C1 cannot be closed: A1 lies in it and reaches 2 in past it; make A1 narrower by that much, or fold it the other way',
    ],
    [
      'a pocket whose tabs are folded to its face',
      pocket(V),
      'glue-other-side at "A|B: valley 180": box.left and box.right are to stick to back, but they are folded onto the outside of pocket and back onto the inside: pocket lies between them; fold left and right the other way, mountain instead of valley; or else back, valley instead of mountain',
    ],
  ])('says one thing of %s', (_, pieces, finding) => {
    expect(said(pieces)).toEqual([finding]);
  });
});

/** An envelope whose tabs hang on its back; the front it is folded on is 4 1/4 in high, and the flap closes over it. */
describe('a back with tabs', () => {
  const told = (cut: string, at: string, trim: string): string[] =>
    findingsOf(
      sheetWith({
        stock: 'cream: { sheet: 12 x 12 }',
        pieces: `box:
  stock: cream
  cut: 7 x ${cut}
  score: [{ from: left, at: [3/4, 6 1/4] }, { from: top, at: [${at}] }]
  panels: { back: B1, front: B2 }
  trim: [${trim}]
  taper: [A1, C1]
  folds: { A|B: ${M}, B|C: ${M}, 1|2: ${M}${at.includes(',') ? `, 2|3: ${M}` : ''} }
  glue: { A1: front, C1: front }`,
      }),
    )
      .filter(({ severity }) => severity === 'error')
      .map((each) => `${blamed(each)}: ${each.message}`);

  it('is no longer than its front where a flap closes over it', () => {
    expect(told('10 1/4', '4, 8 1/4', 'A2, C2, A3, C3')).toEqual([]);
    expect(told('10 5/8', '4 3/8, 8 5/8', 'A2, C2, A3, C3')).toEqual([
      '4 3/8: box.back is 4 3/8 in long, 1/8 in more than the 4 1/4 in of box.front, which it is folded flat on',
    ]);
  });

  it('may be longer where nothing does', () => {
    expect(told('8 5/8', '4 3/8', 'A2, C2')).toEqual([]);
  });
});
