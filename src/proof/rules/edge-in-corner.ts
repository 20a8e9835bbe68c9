import type { Length } from '../../measure/length.ts';
import type { Edge } from '../../project/net-as-written.ts';
import type { EdgeRow } from '../../shape/net.ts';
import { eachEntry, type OnPaper, sayEdge } from '../decoration.ts';
import type { Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

type Facts = OnPaper & { readonly side: Edge; readonly end: Length; readonly cut: Length };

export const edgeInCorner: Rule<Facts> = {
  severity: 'warning',
  summary: 'A row of motifs keeps clear of rounded and clipped corners.',
  why: 'A motif that runs into a rounding is cut a second time, and the point left between the two cuts tears off.',
  fails: {
    pieces:
      'mat: { stock: cream, cut: 3 x 4, corners: 1/4, edge: { along: left, pitch: 1/4, hole: 1/8, through: yes } }',
    blames: '{ along: left, pitch: 1/4, hole: 1/8, through: yes }',
  },
  passes: { with: 'hole: 1/8 }', insteadOf: 'hole: 1/8, through: yes }' },
  ownEditionOnly: true,
  *check(context) {
    for (const { it, facts } of eachEntry(context, (row) => endInCorner(row) !== undefined)) {
      const { written, side, cut } = it;
      const end = endInCorner(it);
      if (end) yield { at: (written.start ?? written).at, facts: { ...facts, side, end, cut } };
    }
  },
  say: ({ on, unit, side, end, cut }) => ({
    message: `the last motif along ${sayEdge(side, on)} ${end.sign > 0 ? `lies ${sayLength(end, unit)} from the end` : 'runs to the end'}, but the corner there is cut back by ${sayLength(cut, unit)}`,
    remedy: 'stop before the corners: leave out "through:" or "start:", or leave the corners square',
  }),
};

/** How far from the end of its edge a row ends, where that is within the corner. */
function endInCorner({ ends, cut, count }: EdgeRow): Length | undefined {
  return count > 0 && cut.sign > 0 ? ends.find((end) => end.lessThan(cut)) : undefined;
}
