import type { Length } from '../../measure/length.ts';
import { longFlaps, tubeEnds } from '../../shape/closure/ends.ts';
import { closedSheets, foldPlace, type OfPiece } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

type Facts = OfPiece & {
  readonly panel: string;
  readonly depth: Length;
  /** How far the facing wall is. */
  readonly across: Length;
};

export const flapTooLong: Rule<Facts> = {
  severity: 'error',
  summary: 'No flap that closes an end of a box is longer than the box is deep.',
  why: 'A flap longer than the way to the facing wall stands against it and will not lie flat, or sticks out behind it.',
  fails: { box: { bottom: '1 3/8, 5 1/2, 6 1/8' }, blames: '1 3/8' },
  passes: { box: {} },
  *check(context) {
    for (const sheet of closedSheets(context)) {
      for (const end of tubeEnds(sheet.net)) {
        for (const { panel, tuck, fold, depth, across } of longFlaps(end, sheet.caliper)) {
          if (tuck) continue;
          yield { at: foldPlace(sheet, fold), facts: { ...sheet.of, panel, depth, across } };
        }
      }
    }
  },
  say: ({ piece, panel, depth, across, unit }) => {
    const [reach, room, excess] = [depth, across, depth.minus(across)].map((each) => sayLength(each, unit));
    return {
      message: `${piece}.${panel} is ${reach} long, ${excess} more than the ${room} to the facing wall`,
      remedy: `make ${panel} ${room} long at most: move its score line or trim its edge`,
    };
  },
};
