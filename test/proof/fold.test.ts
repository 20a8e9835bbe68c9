import { describe, expect, it } from 'vitest';
import { shapesOf, sheetOf } from '../shape/boxes.ts';
import { boxWith, trayWith, tuckBoxWith } from './box-with.ts';
import { sheetWith } from './sheet-with.ts';
import { blamed, findingsOf } from './workspace.ts';

const said = (sheet: string): string[] =>
  findingsOf(sheet)
    .filter(({ severity }) => severity !== 'note')
    .map((finding) => `${finding.rule} at "${blamed(finding)}": ${finding.message}; ${finding.remedy}`);

/** An envelope 4 in wide, scored from the top, its flap first and its back last. */
const envelopeWith = (top: string, height: string): string =>
  sheetWith({
    pieces: `envelope: { stock: cream, cut: 5 x ${height}, score: [{ from: left, at: [1/2, 4 1/2] }, { from: top, at: [${top}] }], panels: { flap: B1, front: B2, back: B3 }, trim: [A1, C1, A3, C3], taper: [A2, C2], folds: { A|B: mountain 180, B|C: mountain 180, 1|2: mountain 180, 2|3: mountain 180 }, glue: { A2: back, C2: back } }`,
  });

/** One slip each, and the one finding it should make: what is wrong, with both numbers, and what would put it right. */
describe('the proof of the fold', () => {
  it.each([
    ['nothing at all of a sound box', boxWith(), []],
    ['nothing of a sound tuck box', tuckBoxWith(), []],
    ['nothing of a sound tray', trayWith(), []],
    [
      'a tab that is off',
      boxWith({ left: '1 1/4, 3 3/4, 5, 7 5/8' }),
      [
        'walls-unequal at "7 5/8": box.front is 2 1/2 in wide, but the facing box.back is 2 5/8 in: a difference of 1/8 in; score from the left at 7 1/2 in instead of 7 5/8 in',
      ],
    ],
    [
      'one written from the other edge',
      boxWith({ left: '1 1/4, 3 3/4, 5, 7 5/8' }).replace(
        'from: left, at: [1 1/4, 3 3/4, 5, 7 5/8]',
        'from: right, at: [3/8, 3, 4 1/4, 6 3/4]',
      ),
      [
        'walls-unequal at "3/8": box.front is 2 1/2 in wide, but the facing box.back is 2 5/8 in: a difference of 1/8 in; score from the right at 1/2 in instead of 3/8 in',
      ],
    ],
    [
      'two lines of which either may be wrong',
      boxWith({ left: '1 1/8, 3 3/4, 5, 7 1/2' }),
      [
        'walls-unequal at "1 1/8": box.A3 is 1 1/8 in wide, but the facing box.C3 is 1 1/4 in: a difference of 1/8 in; box.front is 2 5/8 in wide, but the facing box.back is 2 1/2 in: a difference of 1/8 in; score from the left at 1 1/4 in instead of 1 1/8 in or score from the left at 4 7/8 in instead of 5 in',
      ],
    ],
    [
      'a narrow tab',
      boxWith({ cut: '7 11/16 x 6 3/4' }),
      [
        'glue-overlap at "tab: A3": box.tab overlaps box.A3, which it sticks to, by only 3/16 in; 1/4 in is the least that holds; make tab at least 1/16 in larger, or move its fold',
      ],
    ],
    [
      'a flap folded outward',
      boxWith({ folds: '1|2: valley 90, 3|4: valley 90' }),
      [
        'glue-misses at "3|4: valley 90": as 3|4 is folded, box.A4, box.C4 and box.B4 do not land on box.D4; say "3|4: mountain 90" under "folds:"',
      ],
    ],
    [
      'flaps too long for the bottom, both',
      boxWith({ bottom: '1 1/2, 5 1/2, 6 1/8' }),
      [
        'flap-too-long at "1 1/2": box.B4 and box.D4 are 1 1/2 in long, 1/4 in more than the 1 1/4 in to the facing wall; make B4 and D4 1 1/4 in long at most: move their score line or trim their edges',
      ],
    ],
    [
      'flanges that turn down into the box',
      boxWith({ folds: '1|2: mountain 90' }),
      [
        'flap-wrong-way at "1|2: mountain 90": box.B1 and box.D1 fold down inside the box, 5/8 in before the facing wall: there is nothing to tuck them behind; fold B1 and D1 the other way',
      ],
    ],
    [
      'a lid and dust flaps folded outward',
      tuckBoxWith().replace('taper:', 'folds: { 2|3: valley 90 }\n      taper:'),
      [
        'flap-wrong-way at "2|3: valley 90": box.lid folds outward, and the end it would close stays open; fold lid the other way',
      ],
    ],
    [
      'a closing flap longer than its envelope',
      envelopeWith('3, 5 1/2', '8'),
      [
        'flap-too-long at "3": envelope.flap is 3 in long, 1/2 in more than the 2 1/2 in of envelope.front, which it is folded flat on; make flap 2 1/2 in long at most: move its score line or trim its edge',
      ],
    ],
    [
      'an envelope whose back is longer than its front, past the fold of its flap',
      envelopeWith('1 1/4, 3 3/4', '6 3/4'),
      [
        'flap-too-long at "3 3/4": envelope.back is 3 in long, 1/2 in more than the 2 1/2 in of envelope.front, which it is folded flat on; make back 2 1/2 in long at most: move its score line or trim its edge',
      ],
    ],
    ['nothing of a pocket with a hem, whose back stands out', envelopeWith('1/2, 3', '6'), []],
    [
      'a lid that ends before its wall, above dust flaps',
      tuckBoxWith({ bottom: '1 1/2, 4 1/2, 5 3/4' }),
      [
        'tuck-does-not-fit at "5 3/4": box.lid is 1 1/4 in deep, 1/4 in less than the 1 1/2 in to the facing wall, so tuck goes down in front of the wall, not behind it; make lid 1 1/2 in deep: move the score line of tuck',
      ],
    ],
    [
      'every slit that was left out, once',
      tuckBoxWith().replace(/^ *slit:.*\n/mu, ''),
      [
        'missing-slit at "box": these panels of box are still joined and must be cut apart for their corners to fold: A2 and lid; lid and C2; A4 and B4; B4 and C4; C4 and D4; add "A|B 2, B|C 2, A|B 4, B|C 4, C|D 4" under "slit:", or trim off what is waste',
      ],
    ],
    [
      'a slit that was left out of a tray',
      trayWith().replace('A|B 1, ', ''),
      [
        'missing-slit at "tray": A1 and back of tray are still joined, so the panels around that corner cannot fold; add "A|B 1" under "slit:", or trim off what is waste',
      ],
    ],
    [
      'a floor of two flaps that do not meet',
      boxWith({
        cut: '8 x 4 3/4',
        bottom: '1/2',
        trim: 'E2, A2, C2',
        slit: 'C|D 2',
        folds: '1|2: mountain 90',
        glue: 'tab: A1',
      })
        .replace('B3, back: D3, tab: E3', 'B1, back: D1, tab: E1')
        .replace('A2, C2, A4, C4, tab', 'tab'),
      [
        'bottom-gap at "1/2": box.B2 (1/2 in) and box.D2 (1/2 in) leave a gap of 1/4 in across 1 1/4 in; make B2 and D2 each 1/8 in longer, or one of them 1/4 in',
      ],
    ],
    [
      'a tuck flap longer than the box',
      tuckBoxWith({ bottom: '1 1/2, 2 1/2, 4', cut: '7 1/2 x 5 1/4' }),
      [
        'tuck-does-not-fit at "4": box.tuck is 1 1/4 in long and the box only 1 in high; trim tuck to less than 1 in',
      ],
    ],
    [
      'a part that falls off',
      boxWith({ slit: 'A|B 1-2, B|C 1-2, C|D 1-2, A|B 4, B|C 4, C|D 4, 1|2 B' }),
      [
        'loose-part at "box": B1 of box is cut off from the rest by slits and trims; leave one edge of it uncut, or trim it off',
      ],
    ],
    [
      'a tray with one wall lower',
      trayWith('1 1/4, 6 1/2'),
      [
        'walls-unequal at "A1: back": tray.A2 is 1 1/4 in high and tray.back and tray.front, which it meets at its corners, 1 1/2 in: a difference of 1/4 in; move the score line of A2 so that it is 1 1/2 in high, or those of the others; leave it if one wall is meant to be lower',
      ],
    ],
  ])('says %s', (_, sheet, expected) => {
    expect(said(sheet)).toEqual(expected);
  });
});

/** A bag without its bottom: 3 in wide, 2 in deep, its sides scored down the middle. */
const bagWith = (left: string, edge = 'left'): string =>
  sheetWith({
    pieces: `bag: { stock: cream, cut: 10 1/2 x 6, score: [{ from: ${edge}, at: [${left}] }], folds: { B|C: flat, E|F: flat }, taper: [G1], glue: { G1: A1 } }`,
  });

describe('a gusset', () => {
  const off = (first: string, second: string): unknown =>
    expect.stringContaining(`their crease is ${first} off the middle, so that front and back end ${second}`);

  it('is scored down the middle', () => {
    expect(said(bagWith('3, 4, 5, 8, 9, 10'))).toEqual([]);
    expect(said(bagWith('3, 4 1/8, 5, 8, 9, 10'))).toEqual([
      'gusset-off-middle at "4 1/8": bag.B1 is 1 1/8 in wide and bag.C1 7/8 in: their crease is 1/8 in off the middle, so that front and back end 1/4 in apart when the bag is folded flat; score it from the left at 4 in instead of 4 1/8 in',
    ]);
  });

  it('is told of by the number it is written as, from either edge', () => {
    expect(said(bagWith('1/2, 1 1/2, 2 1/2, 5 1/2, 6 3/8, 7 1/2', 'right'))).toEqual([
      expect.stringContaining('score it from the right at 6 1/2 in instead of 6 3/8 in'),
    ]);
  });

  it('is told of on either side, and never where a score is plainly no gusset’s', () => {
    expect(said(bagWith('3, 4 1/8, 5, 8, 8 7/8, 10'))).toEqual([
      off('1/8 in', '1/4 in'),
      off('1/8 in', '1/4 in'),
    ]);
    expect(said(bagWith('3, 4 1/2, 5, 8, 8 1/2, 10'))).toEqual([]);
    const oneSide = bagWith('3, 4 1/8, 5, 8, 10').replace(', E|F: flat', '').replace(/G1/gu, 'F1');
    expect(said(oneSide)).toEqual([]);
  });
});

describe('flaps that are alike', () => {
  const envelope = (folds: string, glue: string): string[] =>
    said(
      envelopeWith('1 1/4, 3 3/4', '6').replace(/folds: .*$/mu, `folds: { ${folds} }, glue: { ${glue} } }`),
    );
  const alike = 'A|B: mountain 180, B|C: mountain 180, 1|2: mountain 180, 2|3: mountain 180';

  it('are stuck alike', () => {
    expect(envelope(alike, 'A2: back, C2: back')).toEqual([]);
    expect(envelope(alike, 'A2: front, C2: back')).toEqual([
      'flap-left-out at "A2: front": envelope.A2 is stuck to envelope.front, which it hangs on, and C2, which is like it, to back; stick A2 to back',
    ]);
  });

  it('fold to one side, as the flap of an envelope does with the others', () => {
    expect(envelope(alike.replace('1|2: mountain', '1|2: valley'), 'A2: back, C2: back')).toEqual([
      'flap-wrong-way at "1|2: valley 180": envelope.flap folds to the other side than envelope.A2, envelope.C2 and envelope.back; fold flap the other way',
    ]);
  });

  it('may be pockets, each stuck to what it hangs on, and both of them', () => {
    const folder = (glue: string, direction = 'mountain'): string[] =>
      said(
        sheetWith({
          pieces: `folder: { stock: cream, cut: 8 x 7, score: [{ from: left, at: [4] }, { from: bottom, at: [1 1/2] }], panels: { back: A1, front: B1 }, slit: [A|B 2], taper: [A2, B2], folds: { A|B: ${direction} 90, 1|2: mountain 180 }, glue: { ${glue} } }`,
        }),
      );
    expect(folder('A2: back, B2: front')).toEqual([]);
    expect(folder('A2: back')).toEqual([
      'flap-left-out at "folder": folder.B2 is stuck to nothing, and A2, which is like it, to back; stick B2 too, or say "opens: [B2]" where it is meant to hang loose',
    ]);
    expect(folder('A2: back, B2: front', 'valley')).toEqual([
      expect.stringContaining(
        'front-inside at "A|B: valley 90": once folder is folded, the outside of front',
      ),
    ]);
  });
});

describe('the leaves of a card', () => {
  const cardWith = (lines: string): string[] =>
    findingsOf(sheetWith({ pieces: `card: { stock: cream, ${lines} }` }))
      .filter(({ rule }) => rule === 'uneven-fold')
      .map(({ message }) => message);

  it('end together, folded flat or standing', () => {
    const scored = (at: string, folds: string): string =>
      `cut: 8 1/2 x 5 1/2, score: [{ from: left, at: [${at}] }], folds: { ${folds} }`;
    for (const angle of [90, 180]) {
      expect(cardWith(scored('4 1/4', `A|B: mountain ${angle}`))).toEqual([]);
      expect(cardWith(scored('4 1/8', `A|B: mountain ${angle}`))).toEqual([
        'when folded, card.A1 is 1/4 in shorter than card.B1',
      ]);
    }
  });

  it('end together beside the pockets of a folder', () => {
    const folder = (at: string): string =>
      `cut: 8 x 7, score: [{ from: left, at: [${at}] }, { from: bottom, at: [1 1/2] }], slit: [A|B 2], folds: { A|B: mountain 90, 1|2: mountain 180 }, glue: { A2: A1, B2: B1 }`;
    expect(cardWith(folder('4'))).toEqual([]);
    expect(cardWith(folder('3 7/8'))).toEqual(['when folded, card.A1 is 1/4 in shorter than card.B1']);
  });

  it('are not looked for in gates, however narrow', () => {
    const gates =
      'cut: 1 x 4, score: [{ from: left, at: [1/4, 3/4] }], folds: { A|B: mountain 180, B|C: mountain 180 }';
    expect(cardWith(gates)).toEqual([]);
  });
});

describe('what the box holds', () => {
  const holding = (size: string, count = 1, box = boxWith({ more: holds(size, count) })): string[] =>
    said(box);
  const holds = (size: string, count: number): string =>
    `holds: { item: card, size: ${size}, count: ${count} }`;

  it.each([
    ['as written', '2 1/4 x 4 x 1', 1],
    ['the other way round', '1 x 4 x 2 1/4', 1],
    ['stacked', '2 1/4 x 4 x 1/16', 19],
    ['side by side', '1 1/8 x 1 1/8 x 1 1/8', 6],
  ])('fits %s', (_, size, count) => {
    expect(holding(size, count)).toEqual([]);
  });

  it('is too big by what is missing', () => {
    expect(holding('2 3/4 x 4 x 1')).toEqual([
      'holds-too-big at "2 3/4 x 4 x 1": 1 × card takes 2 3/4 × 4 × 1 in (width × height × depth), and box has 2 1/2 × 4 1/4 × 1 1/4 in inside: 1/4 in too small; make box 5/16 in wider',
    ]);
  });

  it('is one too many', () => {
    const [finding] = holding('2 1/4 x 4 x 1/4', 6);
    expect(finding).toContain('6 × card takes 2 1/4 × 4 × 1 1/2 in');
  });

  it('is only warned of where the paper’s thickness decides', () => {
    const tight = findingsOf(boxWith({ more: holds('2 1/2 x 4 x 1', 1) }));
    expect(tight.map(({ rule, severity }) => [rule, severity])).toEqual([['holds-too-big', 'warning']]);
  });

  describe('a band', () => {
    const BAND =
      '\n  cut: 11 x 2\n  score: [{ from: left, at: [4 1/2, 4 7/8, 9 3/8, 9 3/4] }]\n  panels: { back: A1, tab: E1 }\n  glue: { tab: back }';
    const around = (size: string, count: number): string[] =>
      said(sheetOf(BAND, '').replace('---\n##', `  ${holds(size, count)}\n---\n##`));

    it('takes what is longer than it is high', () => {
      expect(around('4 1/4 x 5 3/4 x 1/20', 6)).toEqual([]);
    });

    it('takes no more than go through it, and nothing behind one another', () => {
      expect(around('4 1/4 x 5 3/4 x 1/16', 7)).toEqual([
        'holds-too-big at "4 1/4 x 5 3/4 x 1/16": 7 × card takes 4 1/4 × 5 3/4 × 7/16 in (width × height × depth), and box has 4 1/2 × 2 × 3/8 in inside, its height open at both ends: 1/16 in too small; make box 1/8 in deeper',
      ]);
      expect(around('4 1/4 x 4 x 1/4', 2)).toHaveLength(1);
    });
  });

  it('is judged by the drawer, not by the sleeve that is open', () => {
    const sheet = (size: string): string =>
      sheetWith({
        pieces: 'box: { stock: cream, form: slide box, inside: 2 1/4 x 3 3/4 x 3/4 }',
        more: holds(size, 20),
      });
    expect(said(sheet('2 x 3 1/2 x 1/32'))).toEqual([]);
    expect(said(sheet('2 x 4 x 1/32'))).toEqual([expect.stringContaining('holds-too-big')]);
  });

  describe('with other rooms than a box', () => {
    const fits = (pieces: string, held: string): string[] =>
      said(sheetWith({ pieces, more: `holds: { item: card, ${held} }` }));
    const ENVELOPE = 'envelope: { stock: cream, form: envelope, card: 6 x 4 }';
    const PILLOW = 'box: { stock: cream, form: pillow box, size: 3 x 4 1/2, depth: 1 }';
    const TRAYS =
      'small: { stock: cream, form: tray, inside: 1 x 1 x 1 }\nlarge: { stock: cream, form: tray, inside: 3 x 3 x 1 }';

    it('takes a card in its envelope, turned or not', () => {
      expect(fits(ENVELOPE, 'size: 6 x 4 x 1/32')).toEqual([]);
      expect(fits(ENVELOPE, 'size: 4 x 6 x 1/32')).toEqual([]);
    });

    it('has no room for nine large cards in a small envelope', () => {
      expect(fits(ENVELOPE, 'size: 8 x 7 x 1/16, count: 9')).toEqual([
        'holds-too-big at "8 x 7 x 1/16": 9 × card takes 8 × 7 × 9/16 in (width × height × depth), and envelope, lying flat, has 6 1/4 × 4 1/4 in inside, where depth comes off the width: 2 3/4 in too small; make envelope 2 13/16 in higher',
      ]);
    });

    it('counts the thickness of a stack', () => {
      expect(fits(ENVELOPE, 'size: 6 x 4 x 1/16, count: 2')).toEqual([]);
      expect(fits(ENVELOPE, 'size: 6 x 4 x 1/16, count: 9')).toEqual([
        expect.stringContaining('5/16 in too small; make envelope 3/8 in wider'),
      ]);
    });

    it('warns of what a pillow box has to bulge for, and refuses what it has no paper for', () => {
      expect(fits(PILLOW, 'size: 2 x 3 x 3/8')).toEqual([]);
      const bulging = findingsOf(
        sheetWith({ pieces: PILLOW, more: 'holds: { item: soap, size: 2 x 3 x 3/4 }' }),
      );
      expect(bulging.map(({ severity, message }) => `${severity}: ${message}`)).toEqual([
        expect.stringMatching(/^warning: 1 × soap takes .* pressed open it bulges less than that, by /u),
      ]);
      expect(fits(PILLOW, 'size: 2 3/4 x 3 x 3/4')).toEqual([expect.stringContaining('1/2 in too small')]);
    });

    it('goes into one of two boxes, or into the one that is named', () => {
      expect(fits(TRAYS, 'size: 2 x 2 x 1/2')).toEqual([]);
      expect(fits(TRAYS, 'size: 2 x 2 x 1/2, in: large')).toEqual([]);
      expect(fits(TRAYS, 'size: 2 x 2 x 1/2, in: small')).toEqual([
        expect.stringContaining('and small has 1 × 1 × 1 in inside: 1 in too small'),
      ]);
      expect(fits(TRAYS, 'size: 4 x 4 x 1/2')).toEqual([expect.stringContaining('and large has')]);
      expect(fits(TRAYS, 'size: 2 x 2 x 1/2, in: larg')).toEqual([
        'unknown-reference at "larg": there is no piece "larg"; write "large"',
      ]);
    });

    it('may stand out of a bag or a tray, but not out of a box with a lid', () => {
      const held = (form: string): string[] =>
        findingsOf(
          sheetWith({
            pieces: `box: { stock: cream, form: ${form} }`,
            more: 'holds: { item: candle, size: 1 x 1 x 3 1/2, count: 2 }',
          }),
        ).map(({ severity, message }) => `${severity}: ${message}`);
      expect(held('tray, inside: 3 x 2 x 1')).toEqual([
        'note: 2 × candle takes 2 × 3 1/2 × 1 in (width × height × depth), and box has 3 × 1 × 2 in inside: it stands out by 2 1/2 in',
      ]);
      expect(held('gusseted bag, inside: 2 1/2 x 1 1/2 x 3')).toEqual([
        expect.stringMatching(/^note: .* it stands out by 1\/2 in$/u),
      ]);
      expect(held('lidded tray, inside: 3 x 2 x 1')).toEqual([
        expect.stringMatching(/^error: .* too small$/u),
      ]);
      expect(held('tray, inside: 3 x 1 x 2')).toEqual([
        expect.stringMatching(/^note: .* it stands out by 1 1\/2 in$/u),
      ]);
      expect(held('tray, inside: 3 x 2 x 3/4')).toEqual([
        expect.stringMatching(/^warning: .* it stands out by 2 3\/4 in, most of its length$/u),
      ]);
      expect(held('tray, inside: 3/4 x 3 x 2')).toEqual([expect.stringMatching(/^error: /u)]);
    });

    it('goes where it only stands out, before where it does not go at all', () => {
      const pieces =
        'tray: { stock: cream, form: tray, inside: 3 x 2 x 1 }\nbox: { stock: cream, form: lidded tray, inside: 3 1/4 x 2 x 1 }';
      const found = findingsOf(sheetWith({ pieces, more: 'holds: { item: candle, size: 1 x 1 x 3 1/2 }' }));
      expect(found.map(({ message }) => message)).toEqual([
        expect.stringContaining('tray has 3 × 1 × 2 in inside: it stands out'),
      ]);
    });

    it('lies between six walls by the circle or the rectangle that goes in there', () => {
      const told = (held: string, more = ''): string[] =>
        findingsOf(
          sheetWith({
            pieces: `pot: { stock: cream, form: polygon box, sides: 6, side: 1 1/2, height: 4${more} }`,
            more: `holds: { item: thing, ${held} }`,
          }),
        )
          .filter(({ rule }) => rule === 'holds-too-big')
          .map(({ severity, message }) => `${severity}: ${message}`);
      expect(told('size: 1 3/4 x 3 x 1 3/4')).toEqual([]);
      // A square of 2 in is larger than (3 - √3) × 1 1/2 in, the largest that lies in the hexagon; a jar of 2 in goes in.
      expect(told('size: 2 x 2 x 3')).toEqual([
        'note: 1 × thing takes 2 × 3 × 2 in (width × height × depth), and pot has 6 walls with a circle of ≈2 5/8 in between them, 4 in high: it goes in only if it is round',
      ]);
      expect(told('size: 2 3/4 x 3 x 2 3/4')).toEqual([expect.stringMatching(/^error: .* too small$/u)]);
      expect(told('size: 1 x 1 x 6')).toEqual([expect.stringMatching(/^note: .* it stands out by 2 in$/u)]);
      expect(told('size: 1 x 1 x 4 1/4', ', lid: 1')).toEqual([
        expect.stringMatching(/^error: .* too small$/u),
      ]);
      expect(told('size: 1 x 3 x 1, count: 6')).toEqual([
        expect.stringMatching(/^warning: .* side by side in rows they are \S+ in too large$/u),
      ]);
    });

    it('has to go into a piece that has a room', () => {
      const card = 'card: { stock: cream, cut: 3 x 4 }';
      expect(fits(`${card}\n${TRAYS}`, 'size: 2 x 2 x 1/2, in: card')).toEqual([
        'holds-too-big at "card": card is to hold 1 × card, but nothing in it makes a space to hold it; name the box, the bag or the envelope that it goes in, or delete "in"',
      ]);
    });

    it('may be a band, where the box beside it is for something else', () => {
      const pieces = `${TRAYS}\nband: { stock: cream, form: belly band, around: 4 1/4 x 1/16 }`;
      expect(fits(pieces, 'size: 4 1/4 x 6 x 1/16')).toEqual([]);
    });
  });

  it('needs only one piece with room for it, and none that has no inside', () => {
    const sheet = sheetOf('\n  cut: 4 x 6', '').replace(
      '---\n##',
      '  holds: { item: card, size: 9 x 9 x 9 }\n---\n##',
    );
    expect(said(sheet)).toEqual([]);
    expect(shapesOf(sheet).nets.size).toBe(1);
  });
});
