import type { Length } from '../../measure/length.ts';
import { roundFolded } from '../../measure/round.ts';
import { rulerUnit } from '../../measure/ruler-unit.ts';
import type { Place } from '../../project/source.ts';
import { commonPart } from '../../shape/common-parts.ts';
import { distanceBetween, type Point2 } from '../../shape/flat-polygon.ts';
import { upright } from '../../shape/fold.ts';
import { gapOf } from '../../shape/openings/gap.ts';
import { nearPairs } from '../../shape/pairs.ts';
import { type CutOpening, everyOpening, leastPaper, type OfOpening } from '../openings.ts';
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
    const least = leastPaper(context.project.unit);
    for (const [first, second] of nearPairs(everyOpening(context).map(holeOf), least.mm)) {
      if (first.cut.net !== second.cut.net) continue;
      const left = paperBetween(first, second);
      if (!left.lessThan(least)) continue;
      const other = { other: first.cut.opening.name, otherAt: first.cut.written.name.at };
      yield { at: second.cut.written.name.at, facts: { ...second.cut.of, ...other, left } };
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

/** An opening with its outline in millimeters, read once, and where it leaves no paper. */
type Hole = {
  readonly cut: CutOpening;
  readonly outline: readonly Point2[];
  readonly gap: readonly Point2[];
};

function holeOf(cut: CutOpening): Hole {
  return { cut, outline: cut.opening.outline.map(upright), gap: gapOf(cut.opening) };
}

function paperBetween(first: Hole, second: Hole): Length {
  const isOver = commonPart(first.gap, second.gap).area > 0;
  const distance = isOver ? 0 : distanceBetween(first.outline, second.outline);
  return roundFolded(distance, rulerUnit(first.cut.of.unit));
}
