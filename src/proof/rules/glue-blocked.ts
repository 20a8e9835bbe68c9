import { flapsTooLong } from '../../shape/closure/too-long.ts';
import type { Mate } from '../../shape/net.ts';
import { type BlockedGlue, blockedGlue } from '../../shape/stacking/blocked-glue.ts';
import { stackOf } from '../../shape/stacking/folding.ts';
import { closedSheets, type OfPiece } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';
import { sayList } from '../words.ts';

type Facts = OfPiece & Pick<Mate, 'from' | 'to'> & Pick<BlockedGlue, 'between'>;

export const glueBlocked: Rule<Facts> = {
  severity: 'error',
  summary: 'Once folded, nothing lies between two panels that stick together.',
  why: 'Where flaps lie on top of one another, glue holds only those that touch. A flap that should stick to the one beyond its neighbor sticks to nothing.',
  fails: {
    pieces: `wrap:
  stock: cream
  cut: 8 1/4 x 8
  score:
    - { from: left, at: [2 3/4, 5 1/2] }
    - { from: top, at: [4] }
  panels: { left: A1, back: B1, right: C1, bottom: B2 }
  trim: [A2, C2]
  folds: { A|B: mountain 180, B|C: mountain 180, 1|2: mountain 180 }
  glue: { right: left, bottom: right, left: bottom }`,
    blames: 'bottom: right',
  },
  passes: { with: 'bottom: right }', insteadOf: 'bottom: right, left: bottom }' },
  *check(context) {
    for (const sheet of closedSheets(context)) {
      const blocked = blockedGlue(stackOf(sheet.net, sheet.caliper.mm));
      // What is too long lies on more than it should.
      const tooLong = blocked.length > 0 ? flapsTooLong(sheet.shape, sheet.caliper) : [];
      for (const { mate, between } of blocked) {
        const { from, to, at = sheet.at } = mate;
        if ([from, to, ...between].some((panel) => tooLong.includes(panel))) continue;
        yield { at, facts: { ...sheet.of, from, to, between } };
      }
    }
  },
  say: ({ piece, from, to, between }) => {
    const verb = between.length === 1 ? 'lies' : 'lie';
    return {
      message: `${piece}.${from} is to stick to ${piece}.${to}, but once folded ${sayList(between)} ${verb} between them`,
      remedy: `stick ${from} to ${between[0] ?? to} instead`,
    };
  },
};
