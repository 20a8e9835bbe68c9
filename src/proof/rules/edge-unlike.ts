import type { Length } from '../../measure/length.ts';
import { rulerMark } from '../../measure/round.ts';
import { rulerUnit } from '../../measure/ruler-unit.ts';
import type { Edge } from '../../project/net-as-written.ts';
import type { EdgeRow } from '../../shape/net.ts';
import { endsOf, rowAlong } from '../../shape/punched-row.ts';
import { eachEntry, type OnPaper, sayEdge } from '../decoration.ts';
import type { Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

type Facts = OnPaper & {
  readonly side: Edge;
  /** The paper beyond the first and the last motif; less than nothing where that is cut. */
  readonly ends: readonly [Length, Length];
  /** The start that makes both alike. */
  readonly better: Length;
};

export const edgeUnlike: Rule<Facts> = {
  severity: 'warning',
  summary: 'A row of motifs ends the same way at both ends.',
  why: 'A border that begins at one end ends wherever it happens to at the other. The eye goes to the corners first, and sees at once that they differ. Without `start:` the row is placed so that both ends are the same.',
  fails: {
    pieces: 'mat: { stock: cream, cut: 3 x 4, edge: { along: left, pitch: 3/8, hole: 1/4, start: 1/4 } }',
    blames: '1/4',
  },
  passes: { with: 'hole: 1/4 }', insteadOf: 'hole: 1/4, start: 1/4 }' },
  ownEditionOnly: true,
  *check(context) {
    for (const { it, facts } of eachEntry(context, isUnlike)) {
      const { written, side, ends } = it;
      const { start, ...free } = written;
      const better = rulerMark(rowAlong(it, free).start, rulerUnit(facts.unit));
      if (start) yield { at: start.at, facts: { ...facts, side, ends, better } };
    }
  },
  say: ({ on, unit, side, ends, better }) => ({
    message: `${sayEdge(side, on)} comes out unlike: ${ends.map((end) => sayEnd(end, unit)).join(' at one end, ')} at the other`,
    remedy: `start ${sayLength(better, unit)} in, or leave "start:" out`,
  }),
};

/** Whether a start was written that makes the ends unlike, and there is a better one. */
function isUnlike(row: EdgeRow): boolean {
  const { start, ...free } = row.written;
  if (!start || row.count === 0 || endsOf(row) !== 'unlike') return false;
  return rowAlong(row, free).start.sign >= 0;
}

function sayEnd(end: Length, unit: OnPaper['unit']): string {
  if (end.sign < 0) return `a motif cut off by ${sayLength(end.abs(), unit)}`;
  return end.sign === 0 ? 'no paper' : `${sayLength(end, unit)} of paper`;
}
