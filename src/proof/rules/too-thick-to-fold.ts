import { Length } from '../../measure/length.ts';
import type { Place } from '../../project/source.ts';
import { isFlatOn } from '../../shape/tube.ts';
import { foldedSheets, foldPlace, type OfPiece } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';
import { sayCaliper, sayLength } from '../words.ts';

type Facts = OfPiece & { readonly caliper: Length; readonly folds: number };

/** Thicker paper is no longer folded flat on itself along one line. Common practice, no source. */
const MOST: Length = Length.of(1, 1, 'mm');

export const tooThickToFold: Rule<Facts> = {
  severity: 'error',
  summary: 'Board more than a millimeter (3/64 in) thick is not folded flat along a single line.',
  why: 'Folded all the way, thick board has nowhere to go: it cracks along the line or springs open. A spine of two lines, as far apart as the board is thick, gives it room.',
  fails: {
    stock: 'board: { name: Gray board, sheet: 12 x 18, caliper: 3 mm }',
    pieces: 'card: { stock: board, form: accordion card, size: 3 x 4 }',
    blames: 'accordion card',
  },
  passes: { with: 'caliper: 0.3 mm', insteadOf: 'caliper: 3 mm' },
  *check(context) {
    const told = new Set<string>();
    for (const sheet of foldedSheets(context)) {
      const [first, ...others] = sheet.net.folds.filter(isFlatOn);
      if (!first || !sheet.caliper.greaterThan(MOST) || told.has(sheet.of.piece)) continue;
      told.add(sheet.of.piece);
      const at: Place = foldPlace(sheet, first);
      yield { at, facts: { ...sheet.of, caliper: sheet.caliper, folds: others.length + 1 } };
    }
  },
  say: ({ piece, caliper, folds, unit }) => {
    const thick = sayCaliper(caliper, unit);
    const where = folds === 1 ? 'a single line' : `${folds} single lines`;
    return {
      message: `${piece} is ${thick} thick and folded flat on itself along ${where}; more than ${sayLength(MOST, unit)} does not fold that way`,
      remedy: `make each fold a spine of two lines ${thick} apart, folded by 90 degrees each, or take a thinner stock`,
    };
  },
};
