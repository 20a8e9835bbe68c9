import { type WrongWay, wrongWayFlaps } from '../../shape/closure/wrong-way.ts';
import { closedSheets, foldWords, type OfPiece } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';
import { sayLength, sayList, sayPanels } from '../words.ts';

type Facts = OfPiece & Omit<WrongWay, 'fold'>;

export const flapWrongWay: Rule<Facts> = {
  severity: 'warning',
  summary: 'Flaps that match fold the same way, and a tuck flap has a wall to go behind.',
  why: 'A flap folded outward closes nothing and gets in the way. One folded in at the edge of half a lid hangs down in the middle of the box, with nothing to tuck it behind. And an envelope whose flap is folded to its front stays open.',
  fails: { box: { folds: '1|2: mountain 90' }, blames: '1|2: mountain 90' },
  passes: { box: {} },
  *check(context) {
    for (const sheet of closedSheets(context)) {
      for (const { fold, ...flaps } of wrongWayFlaps(sheet.net)) {
        yield { at: foldWords(sheet, fold), facts: { ...sheet.of, ...flaps } };
      }
    }
  },
  say: ({ piece, panels, wrong, unit }) => {
    const names = sayPanels(piece, panels);
    const other = `fold ${sayList(panels)} the other way`;
    const [verb, pronoun] = panels.length > 1 ? ['fold', 'they'] : ['folds', 'it'];
    if (wrong.kind === 'outward') {
      const but = wrong.isOpen
        ? `the end ${pronoun} would close stays open`
        : 'the other flaps at that end fold in';
      return { message: `${names} ${verb} outward, and ${but}`, remedy: other };
    }
    if (wrong.kind === 'away') {
      const others = sayPanels(piece, wrong.others);
      return { message: `${names} folds to the other side than ${others}`, remedy: other };
    }
    if (wrong.kind === 'up') {
      return {
        message: `${names} stands up at the edge of ${wrong.lid}, and nothing keeps ${wrong.lid} shut`,
        remedy: other,
      };
    }
    const short = sayLength(wrong.short, unit);
    return {
      message: `${names} ${verb} down inside the box, ${short} before the facing wall: there is nothing to tuck ${panels.length > 1 ? 'them' : 'it'} behind`,
      remedy: panels.length > 1 ? other : `${other}, or make ${wrong.lid} ${short} deeper`,
    };
  },
};
