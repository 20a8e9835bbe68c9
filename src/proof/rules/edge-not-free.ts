import { type Edge, isUpright } from '../../project/net-as-written.ts';
import type { EdgeRow, FlatPoint, Net } from '../../shape/net.ts';
import { type OnPaper, rowsIn, sayEdge } from '../decoration.ts';
import type { Rule } from '../rule.ts';

type Facts = Omit<OnPaper, 'unit'> & { readonly side: Edge; readonly lies: 'folded' | 'glued' };

export const edgeNotFree: Rule<Facts> = {
  severity: 'error',
  summary: 'A punched edge is a free edge: neither a fold nor the edge of a glue tab.',
  why: 'A border punch slides onto the paper from its edge. Where two panels are joined there is no edge to slide onto, and a tab with holes in it does not hold.',
  fails: {
    pieces:
      'card: { stock: cream, form: single-fold card, size: 4 x 5, edge: { along: left, in: front, pitch: 1/4, hole: 1/8 } }',
    blames: '{ along: left, in: front, pitch: 1/4, hole: 1/8 }',
  },
  passes: { with: 'along: right', insteadOf: 'along: left' },
  ownEditionOnly: true,
  *check(context) {
    for (const { it, net, facts } of rowsIn(context)) {
      const lies = whyNotFree(it, net);
      if (lies) yield { at: it.written.at, facts: { on: facts.on, side: it.side, lies } };
    }
  },
  say: ({ on, side, lies }) =>
    lies === 'folded'
      ? {
          message: `${sayEdge(side, on)} is a fold: no punch can reach it`,
          remedy: 'name an edge where the paper ends',
        }
      : {
          message: `${on} is glued down, so ${sayEdge(side, on)} is not to be seen, and holds less with holes in it`,
          remedy: 'name the edge of a panel that shows',
        },
};

function whyNotFree({ panel, side, box }: EdgeRow, { folds, glue }: Net): Facts['lies'] | undefined {
  if (!panel) return undefined;
  const axis = isUpright(side) ? 'x' : 'y';
  const isOn = (point: FlatPoint): boolean => point[axis].equals(box[side]);
  const own = folds.filter(({ panels }) => panels.includes(panel.id));
  if (own.some(({ from, to }) => isOn(from) && isOn(to))) return 'folded';
  return glue.some(({ from }) => from === panel.id || from === panel.name) ? 'glued' : undefined;
}
