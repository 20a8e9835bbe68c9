import type { Length } from '../../measure/length.ts';
import { foldedLength } from '../../measure/round.ts';
import { glueFits, LEAST_GLUE } from '../../shape/closure/glue.ts';
import { closedSheets, type OfPiece } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

/** What the folded model, which is made of floating-point numbers, may be off by, in millimeters. */
const ROUNDING = 1e-6;

type Facts = OfPiece & {
  readonly from: string;
  readonly to: string;
  /** The width of the glue where it is narrowest. */
  readonly overlap: Length;
};

export const glueOverlap: Rule<Facts> = {
  severity: 'error',
  summary: 'Every glue area overlaps what it is stuck to by at least a quarter inch in both directions.',
  why: 'A narrow strip of tape lets go when the box is first opened. A quarter inch is the minimum, and half an inch is usual for a tab.',
  fails: { box: { cut: '7 5/8 x 6 3/4' }, blames: 'tab: A3' },
  passes: { box: {} },
  *check(context) {
    for (const sheet of closedSheets(context)) {
      for (const { mate, verdict, overlap } of glueFits(sheet.shape, sheet.caliper)) {
        const narrowest = Math.min(overlap.width, overlap.height);
        if (verdict !== 'meets' || narrowest >= LEAST_GLUE.mm - ROUNDING) continue;
        const { from, to, at = sheet.at } = mate;
        yield { at, facts: { ...sheet.of, from, to, overlap: foldedLength(narrowest) } };
      }
    }
  },
  say: ({ piece, from, to, overlap, unit }) => {
    const say = (length: Length): string => sayLength(length, unit);
    return {
      message: `${piece}.${from} overlaps ${piece}.${to}, which it sticks to, by only ${say(overlap)}; ${say(LEAST_GLUE)} is the least that holds`,
      remedy: `make ${from} at least ${say(LEAST_GLUE.minus(overlap))} larger, or move its fold`,
    };
  },
};
