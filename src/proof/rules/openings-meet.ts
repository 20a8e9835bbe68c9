import type { Length } from '../../measure/length.ts';
import { roundFolded } from '../../measure/round.ts';
import { rulerUnit } from '../../measure/ruler-unit.ts';
import type { Place } from '../../project/source.ts';
import { commonPart, distanceBetween } from '../../shape/flat-polygon.ts';
import { upright } from '../../shape/fold.ts';
import { gapOf } from '../../shape/openings/gap.ts';
import { pairsOf } from '../../shape/pairs.ts';
import { type CutOpening, leastPaper, type OfOpening, openingsOf } from '../openings.ts';
import type { Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

type Facts = OfOpening & {
  readonly other: string;
  readonly otherAt: Place;
  /** What is left between the two; nothing where they meet. */
  readonly left: Length;
};

export const openingsMeet: Rule<Facts> = {
  severity: 'error',
  summary: 'Two openings leave paper between them.',
  why: 'Where two openings run into each other, the strip between them falls out. One thinner than 1/8 in (3 mm) tears.',
  fails: {
    pieces:
      'card: { stock: cream, cut: 4 x 5, openings: { window: { size: 2 x 2, at: { top: 1 } }, slit: { slot: 1, at: { top: 3 } } } }',
    blames: 'slit',
  },
  passes: { with: 'slot: 1, at: { top: 3 1/4', insteadOf: 'slot: 1, at: { top: 3' },
  *check(context) {
    for (const [first, second] of pairsOf(openingsOf(context))) {
      const left = first.net === second.net ? paperBetween(first, second) : undefined;
      if (!left?.lessThan(leastPaper(first.of.unit))) continue;
      const other = { other: first.opening.name, otherAt: first.written.name.at };
      yield { at: second.written.name.at, facts: { ...second.of, ...other, left } };
    }
  },
  say: ({ piece, opening, other, otherAt, left, unit }) => {
    const least = sayLength(leastPaper(unit), unit);
    const notes = [{ message: `${other} is cut here`, at: otherAt }];
    const remedy = `leave ${least} between them, or more`;
    if (left.sign === 0)
      return { message: `${opening} and ${other} of ${piece} run into each other`, remedy, notes };
    const message = `${opening} and ${other} of ${piece} leave only ${sayLength(left, unit)} of paper between them; ${least} is the least that does not tear`;
    return { message, remedy, notes, severity: 'warning' };
  },
};

function paperBetween(first: CutOpening, second: CutOpening): Length {
  const { opening: one } = first;
  const { opening: other } = second;
  const isOver = commonPart(gapOf(one), gapOf(other)).area > 0;
  const distance = distanceBetween(one.outline.map(upright), other.outline.map(upright));
  return roundFolded(isOver ? 0 : distance, rulerUnit(first.of.unit));
}
