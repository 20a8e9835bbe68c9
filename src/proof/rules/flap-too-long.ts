import type { Length } from '../../measure/length.ts';
import { longFlaps, tubeEnds } from '../../shape/closure/ends.ts';
import { overhangingFlaps } from '../../shape/closure/flat-flaps.ts';
import { closedSheets, foldPlace, type OfPiece } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

type Facts = OfPiece & {
  readonly panel: string;
  readonly depth: Length;
  /** How far the facing wall is, or how far the panel reaches that it is folded flat on. */
  readonly across: Length;
  readonly on?: string;
};

export const flapTooLong: Rule<Facts> = {
  severity: 'error',
  summary: 'No flap is longer than the end it closes, or than what it is folded flat on.',
  why: 'A flap longer than the way to the facing wall stands against it and will not lie flat, or sticks out behind it. A flap of an envelope longer than the envelope shows at its other side.',
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
      for (const { fold, ...flap } of overhangingFlaps(sheet.net, sheet.caliper)) {
        yield { at: foldPlace(sheet, fold), facts: { ...sheet.of, ...flap } };
      }
    }
  },
  say: ({ piece, panel, on, depth, across, unit }) => {
    const [reach, room, excess] = [depth, across, depth.minus(across)].map((each) => sayLength(each, unit));
    const where = on === undefined ? 'to the facing wall' : `of ${piece}.${on}, which it is folded flat on`;
    return {
      message: `${piece}.${panel} is ${reach} long, ${excess} more than the ${room} ${where}`,
      remedy: `make ${panel} ${room} long at most: move its score line or trim its edge`,
    };
  },
};
