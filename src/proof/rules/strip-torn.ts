import { brokenRings } from '../../shape/closure/sound.ts';
import { type RingPanel, tornStrip } from '../../shape/closure/torn-strip.ts';
import { lineOf, positionOf } from '../../shape/tube.ts';
import {
  type Better,
  foldedSheets,
  type LineMove,
  moveScore,
  type OfPiece,
  refoldedLine,
  sayRefold,
} from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';
import { sayLength, sayList } from '../words.ts';

type Facts = OfPiece &
  (
    | { readonly opposite: readonly [RingPanel, RingPanel]; readonly move?: LineMove }
    | {
        readonly panels: readonly string[];
        readonly refold?: { readonly name: string; readonly better: Better };
      }
  );

export const stripTorn: Rule<Facts> = {
  severity: 'error',
  summary: 'A strip between two cuts folds with the paper it stands out from.',
  why: 'A pop-up’s step and the card behind it fold together like a parallelogram: opposite sides must be equally deep, or the paper tears when the card is closed.',
  fails: {
    pieces:
      'card: { stock: cream, cut: 4 x 8, score: [{ from: left, at: [1, 3] }, { from: top, at: [3, 4, 5 1/4] }], panels: { back: A1, riser: B2, tread: B3, front: A4 }, slit: [A|B 2-3, B|C 2-3], folds: { 2|3: valley 90, B2|B3: mountain 90, B1|B2: valley 90, B3|B4: valley 90, 1|2: none, 3|4: none, A|B 1: none, B|C 1: none, A|B 4: none, B|C 4: none } }',
    blames: '5 1/4',
  },
  passes: { with: '[3, 4, 5]', insteadOf: '[3, 4, 5 1/4]' },
  *check(context) {
    for (const sheet of foldedSheets(context)) {
      const { of, shape, at } = sheet;
      const strip = tornStrip(shape);
      if (!strip) continue;
      const { panels, opposite, last, by } = strip;
      if (by.sign === 0) {
        const refold = refoldedLine(sheet, panels, (each) => brokenRings(each).length === 0);
        yield { at: refold?.at ?? at, facts: { ...of, panels, ...(refold && { refold }) } };
        continue;
      }
      const line = lineOf(last);
      const moved = line === 'slanted' ? undefined : moveScore(sheet, line, positionOf(last), by);
      yield { at: moved?.at ?? at, facts: { ...of, opposite, ...(moved && { move: moved.move }) } };
    }
  },
  say: (facts) => {
    const { piece, unit } = facts;
    if ('panels' in facts)
      return {
        message: `${sayList(facts.panels)} of ${piece} are torn apart where the strip between the cuts is folded as is said`,
        remedy: facts.refold
          ? sayRefold(facts.refold.name, facts.refold.better)
          : 'fold the lines at the ends of the strip one way, the one in its middle the other way, all at one angle',
      };
    const [one, other] = facts.opposite;
    const { move } = facts;
    return {
      message: `${one.panel} of ${piece} is ${sayLength(one.depth, unit)} deep, and ${other.panel} opposite it ${sayLength(other.depth, unit)} from fold to fold: the strip between the cuts cannot fold`,
      remedy: move
        ? `score it from the ${move.from} at ${sayLength(move.better, unit)} instead of ${sayLength(move.now, unit)}, or move the other lines, so that both are equally deep`
        : 'move a line, so that both are equally deep',
    };
  },
};
