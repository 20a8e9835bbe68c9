import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { examine } from '../../src/examine/examine.ts';
import type { Size } from '../../src/measure/size.ts';
import { boxSize } from '../../src/shape/net.ts';
import { ownNet } from '../../src/shape/sheets.ts';
import { sheetWith } from './sheet-with.ts';
import { blamed, findingsOf, workspaceOf } from './workspace.ts';

const STOCK = 'cream: { name: Cream cardstock, sheet: 12 x 18 }';
const CARD = 'card: { stock: cream, form: single-fold card, size: 5 1/2 x 4 1/4 }';
const ENVELOPE = 'envelope: { stock: cream, form: envelope, card: 5 1/2 x 4 1/4 }';
const BOX = 'box: { stock: cream, form: tuck-end box, inside: 4 1/2 x 1 x 6 }';

function say(pieces: string, more = ''): string[] {
  return findingsOf(sheetWith({ stock: STOCK, pieces, more })).map(
    (each) => `${each.severity} ${each.rule} at "${blamed(each)}": ${each.message}; ${each.remedy}`,
  );
}

/** A piece with something else said of it. */
function and(piece: string, words: string): string {
  return piece.replace(/ \}$/u, `, ${words} }`);
}

const together = (...pieces: readonly string[]): string => pieces.join('\n');

describe('what goes in', () => {
  it('is told once that its layer passes its edge, and not of the envelope that is then too small too', () => {
    const found = say(together(CARD, 'front: { stock: cream, cut: 6 x 4, on: card.front }', ENVELOPE));
    expect(found).toEqual([expect.stringMatching(/^error layer-overhang at "6"/u)]);
  });

  it.each([
    ['a card in its envelope', together(CARD, and(ENVELOPE, 'holds: card'))],
    ['a card in its envelope without a word', together(CARD, ENVELOPE)],
    [
      'an envelope the other way round',
      together(CARD, and(ENVELOPE, 'holds: card')).replace(/(?<=card: )5 1\/2 x 4 1\/4/u, '4 1/4 x 5 1/2'),
    ],
    ['a card in a box', together(CARD, and(BOX, 'holds: card'))],
    ['twelve cards in a box', together(and(CARD, 'count: 12'), and(BOX, 'holds: card'))],
    [
      'a card in a band, snug',
      together(CARD, 'band: { stock: cream, form: belly band, inside: 4 3/8 x 1/16, around: card }'),
    ],
    [
      'an envelope in a band',
      together(
        CARD,
        and(ENVELOPE, 'holds: card'),
        'band: { stock: cream, form: belly band, inside: 4 5/8 x 1/16, around: envelope }',
      ),
    ],
    [
      'a set in a band: a card, its envelope and a note across them',
      together(
        CARD,
        and(ENVELOPE, 'holds: card'),
        'note: { stock: cream, cut: 4 x 5 1/2 }',
        'band: { stock: cream, form: belly band, inside: 4 5/8 x 1/8, around: [envelope, note] }',
      ),
    ],
    [
      'a card and a note in one envelope',
      together(CARD, 'note: { stock: cream, cut: 4 x 5 }', and(ENVELOPE, 'holds: [card, note]')),
    ],
    [
      'a band by its own size about a box',
      together(BOX, 'band: { stock: cream, form: belly band, around: 4 1/2 x 1, holds: box }'),
    ],
    [
      'two cards of which nobody knows whose envelope it is',
      together(CARD, CARD.replace('card:', 'other:').replace('5 1/2', '7'), ENVELOPE),
    ],
    [
      'an envelope for what the project holds',
      together(CARD.replace('5 1/2', '7'), ENVELOPE),
      'holds: { item: note, size: 5 x 4 x 1/32, in: envelope }',
    ],
    [
      'a note higher than the back of an envelope, under the flap of its front',
      'envelope: { stock: cream, cut: 8 x 9, score: [{ from: left, at: [3/4, 7 1/4] }, { from: top, at: [2 1/2, 6] }], trim: [A1, C1, A2, C2], folds: { A|B: mountain 180, B|C: mountain 180, 1|2: mountain 180, 2|3: mountain 180 }, glue: { A3: B2, C3: B2 } }',
      'holds: { item: note, size: 6 1/4 x 3 1/4 x 1/32 }',
    ],
    ['a long strip beside an envelope', together('strip: { stock: cream, cut: 11 x 2 }', ENVELOPE)],
  ])('%s', (_, pieces, ...more) => {
    expect(say(pieces, ...more)).toEqual([]);
  });

  it.each([
    [
      'a card wider than its envelope',
      together(CARD, 'envelope: { stock: cream, form: envelope, card: 5 x 4 1/4, holds: card }'),
      'error does-not-go-in at "card": envelope has 5 1/4 × 4 1/2 in inside, and card, closed, is 5 1/2 × 4 1/4 in and ≈1/32 in thick: ≈1/4 in too small; make envelope at least 5 11/16 in wide inside, or card smaller',
    ],
    [
      'the same without a word',
      together(CARD, 'envelope: { stock: cream, form: envelope, card: 5 x 4 1/4 }'),
      'error does-not-go-in at "5 x 4 1/4": envelope has 5 1/4 × 4 1/2 in inside, and card, closed, is 5 1/2 × 4 1/4 in and ≈1/32 in thick: ≈1/4 in too small; make envelope at least 5 11/16 in wide inside, or card smaller',
    ],
    [
      'a card with a layer that stands out',
      together(CARD, 'front: { stock: cream, cut: 6 x 4, on: card.front, overhang: yes }', ENVELOPE),
      'error does-not-go-in at "5 1/2 x 4 1/4": envelope has 5 3/4 × 4 1/2 in inside, and card, closed, is 6 × 4 1/4 in and ≈1/32 in thick: ≈5/16 in too small; make envelope at least 6 3/16 in wide inside, or card smaller',
    ],
    [
      'a card as large as its envelope',
      together(CARD, 'envelope: { stock: cream, form: envelope, inside: 5 1/2 x 4 1/4, holds: card }'),
      'warning does-not-go-in at "card": envelope has 5 1/2 × 4 1/4 in inside, and card, closed, is 5 1/2 × 4 1/4 in and ≈1/32 in thick: with the thickness of the paper that is too tight in width; make envelope at least 5 11/16 in wide and 4 3/8 in high inside',
    ],
    [
      'a card longer than its box',
      together(CARD, 'box: { stock: cream, form: tuck-end box, inside: 4 1/2 x 1 x 5, holds: card }'),
      'error does-not-go-in at "card": box has 4 1/2 × 5 × 1 in inside, and card, closed, is 4 1/4 × 5 1/2 × ≈1/32 in: 1/2 in too small; make box at least 5 5/8 in high inside, or card smaller',
    ],
    [
      'fifty cards, two sheets of 0.3 mm each',
      together(and(CARD, 'count: 50'), and(BOX, 'holds: card')),
      'error does-not-go-in at "card": box has 4 1/2 × 6 × 1 in inside, and 50 × card take 4 1/4 × 5 1/2 × ≈1 3/16 in: ≈3/16 in too small; make box at least 1 5/16 in deep inside, or card smaller',
    ],
    [
      'a card that stands in a tray lower than a fourth of it',
      together(CARD, 'box: { stock: cream, form: tray, inside: 4 1/2 x 1/2 x 1, holds: card }'),
      'warning does-not-go-in at "card": box has 4 1/2 × 1 × 1/2 in inside, and card, closed, is 4 1/4 × 5 1/2 × ≈1/32 in: it stands out by 4 1/2 in, most of its length; leave it if you meant it, or make box at least 5 5/8 in high inside',
    ],
    [
      'a tag wider than its pocket',
      together(
        'card: { stock: cream, cut: 4 1/4 x 9, score: [{ from: top, at: [6] }], panels: { back: A1, pocket: A2 }, glue: { pocket: back }, folds: { 1|2: valley 180 }, holds: tag }',
        'tag: { stock: cream, cut: 4 1/2 x 5 }',
      ),
      'error does-not-go-in at "tag": card has 4 1/4 × 3 in inside, and tag is 4 1/2 × 5 in and less than 1/32 in thick: ≈1/4 in too small; make card at least 4 11/16 in wide inside, or tag smaller',
    ],
    [
      'a band too short, without a word',
      together(CARD, 'band: { stock: cream, form: belly band, around: 3 3/4 x 1/16 }'),
      'error does-not-go-in at "3 3/4 x 1/16": band goes around 3 3/4 × 1/16 in, and card, closed, is 4 1/4 × ≈1/32 in: ≈7/16 in too small; write "around: 4 1/4 x 1/16 in", or make card smaller',
    ],
    [
      // Thirty notes of one sheet, about 0.3 mm each, and the card of two are 9.6 mm together: 3/8 in.
      'a set thicker than its band',
      together(
        CARD,
        'note: { stock: cream, cut: 4 x 5, count: 30 }',
        'band: { stock: cream, form: belly band, inside: 4 5/8 x 1/4, around: [card, note] }',
      ),
      'error does-not-go-in at "card": band goes around 4 5/8 × 1/4 in, and card and note together are 4 1/4 × ≈3/8 in: ≈1/8 in too small; write "inside: 4 5/8 x 7/16 in", or make card and note smaller',
    ],
    [
      'a set of which one piece is not there',
      together(CARD, 'band: { stock: cream, form: belly band, inside: 4 3/8 x 1/16, around: [card, nota] }'),
      'error unknown-reference at "nota": there is no piece "nota"; write one of: card, band',
    ],
    [
      'a band that falls off',
      together(CARD, 'band: { stock: cream, form: belly band, inside: 6 1/4 x 1/16, around: card }'),
      'warning band-loose at "card": band is ≈1 11/16 in too long for card: it would slide off; write "inside: 5 1/2 x 1/16 in"',
    ],
    [
      'a drawer as wide as its sleeve, by their score lines and without a word',
      together(
        'sleeve: { stock: cream, cut: 12 1/2 x 3, score: [{ from: left, at: [4, 6, 10, 12] }], glue: { E1: A1 } }',
        'drawer: { stock: cream, cut: 8 x 7, score: [{ from: left, at: [2, 6] }, { from: top, at: [2, 5] }], slit: [A|B 1, B|C 1, A|B 3, B|C 3], glue: { A1: B1, C1: B1, A3: B3, C3: B3 } }',
      ),
      'warning does-not-go-in at "12 1/2 x 3": sleeve goes around 4 × 2 in, and drawer, closed, is ≈4 × ≈2 in: less than 1/32 in too small; make sleeve at least 4 3/16 in wide and 2 3/16 in deep inside, or drawer smaller',
    ],
    [
      'a drawer half an inch wider than its sleeve',
      together(
        'sleeve: { stock: cream, cut: 12 1/2 x 3, score: [{ from: left, at: [4, 6, 10, 12] }], glue: { E1: A1 } }',
        'drawer: { stock: cream, cut: 8 1/4 x 8 3/4, score: [{ from: left, at: [1 7/8, 6 3/8] }, { from: top, at: [1 7/8, 6 7/8] }], slit: [A|B 1, B|C 1, A|B 3, B|C 3], glue: { A1: B1, C1: B1, A3: B3, C3: B3 } }',
      ),
      expect.stringMatching(
        /^warning does-not-go-in at "12 1\/2 x 3": sleeve goes around 4 × 2 in, and drawer, closed, is .* ≈1\/2 in too small/u,
      ),
    ],
    [
      'a card wider than an envelope by its score lines, whose flap hangs on its front',
      together(
        CARD,
        'envelope: { stock: cream, cut: 6 1/2 x 10 3/4, score: [{ from: left, at: [3/4, 5 3/4] }, { from: top, at: [4 1/4, 8 3/4] }], trim: [A2, C2, A3, C3], folds: { A|B: mountain 180, B|C: mountain 180, 1|2: mountain 180, 2|3: mountain 180 }, glue: { A1: B2, C1: B2 } }',
      ),
      'warning does-not-go-in at "6 1/2 x 10 3/4": envelope has 5 × 4 1/2 in inside, and card, closed, is 5 1/2 × 4 1/4 in and ≈1/32 in thick: ≈1/2 in too small; make envelope at least 5 11/16 in wide inside, or card smaller',
    ],
    [
      'a card with no pocket',
      together(and(CARD, 'holds: note'), 'note: { stock: cream, cut: 5 x 4 }'),
      'error does-not-go-in at "note": card is to hold note, but nothing in it makes a space to hold it; put note on it with "on:", give card a pocket that is glued at its sides, or take "holds" out',
    ],
    [
      'a flat piece',
      together(and('plate: { stock: cream, cut: 7 x 7 }', 'around: card'), CARD),
      'error does-not-go-in at "card": plate is to go around card, but nothing in it goes all the way around; score it in panels and glue the last to the first, or take "around" out',
    ],
    [
      'itself',
      together(CARD, and(ENVELOPE, 'holds: envelope')),
      'error circular-link at "envelope": envelope holds itself; name another piece there, or take one of the two out',
    ],
    [
      'one another',
      together(and(CARD, 'holds: envelope'), and(ENVELOPE, 'holds: card')),
      'error circular-link at "envelope": card holds envelope, and envelope holds card; name another piece there, or take one of the two out',
    ],
    [
      'nobody knows what',
      together(CARD, and(ENVELOPE, 'holds: crad')),
      'error unknown-reference at "crad": there is no piece "crad"; write "card"',
    ],
    [
      'a band without a size',
      together(CARD, 'band: { stock: cream, form: belly band, around: card }'),
      'error missing-value at "band": band has no "inside:"; add "inside:"',
    ],
  ])('%s: once', (_, pieces, expected) => {
    expect(say(pieces)).toEqual([expected]);
  });
});

/**
 * The girth of a flat pocket, 2 w, goes round a card of w and d where it is 2 (w + d), and a thickness of paper is what the
 * proof wants to spare. Rounded by themselves, a card of 139.7 mm and an envelope 1/16 in wider are 140 and 141 mm.
 */
describe('what is told of a band', () => {
  const PILLOW = 'pillow: { stock: cream, form: pillow box, size: 3 x 4 }';
  it.each([
    ['too narrow', CARD, 'inside: 4 x 1/8', 'card'],
    ['folded flat, round something thick', PILLOW, 'inside: 3 x 1/16', 'pillow'],
    ['too deep', PILLOW, 'inside: 3 x 1', 'pillow'],
    ['too wide', CARD, 'inside: 6 1/4 x 1/16', 'card'],
  ])('puts it right: %s', (_, thing, size, around) => {
    const written = together(
      thing,
      `band: { stock: cream, form: belly band, ${size}, height: 1, around: ${around} }`,
    );
    const [told = '', ...others] = say(written);
    expect(others).toEqual([]);
    const [, better = ''] = /; write "([^"]+)"/u.exec(told) ?? [];
    expect(better).not.toBe('');
    expect(say(written.replace(size, better))).toEqual([]);
  });
});

describe('an envelope of the other edition', () => {
  const caliper = 0.45;
  const sides = fc.integer({ min: 48, max: 104 });

  it('still takes its card', () => {
    fc.assert(
      fc.property(sides, sides, (width, height) => {
        const size = (more: number): string => `${width + more}/16 x ${height + more}/16`;
        const stock = `cream: { name: Thick cardstock, sheet: 18 x 24, caliper: ${caliper} mm }`;
        const pieces = together(
          `card: { stock: cream, form: single-fold card, size: ${size(0)} }`,
          `envelope: { stock: cream, form: envelope, inside: ${size(1)}, holds: card }`,
        );
        const [study] = examine(workspaceOf(sheetWith({ stock, pieces })));
        for (const edition of [study?.editions.inch, study?.editions.metric]) {
          const front = (piece: string): Size => {
            const net = edition && ownNet(edition.shapes.nets, piece);
            const panel = net?.panels.find(({ id }) => id === 'front');
            if (!panel) throw new Error(`no front of ${piece}`);
            return boxSize(panel.box);
          };
          const [card, envelope] = [front('card'), front('envelope')];
          expect(envelope.width.mm - card.width.mm - 2 * caliper).toBeGreaterThanOrEqual(caliper);
          expect(envelope.height.mm - card.height.mm).toBeGreaterThanOrEqual(caliper);
        }
      }),
      { seed: 20261127, numRuns: 12 },
    );
  });
});
