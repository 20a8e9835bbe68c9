import type { Length } from '../../measure/length.ts';
import { type Edge, isUpright } from '../../project/net-as-written.ts';
import { type OnPaper, rowsIn, sayEdge } from '../decoration.ts';
import { type Obstacle, obstacleOf } from '../obstacles.ts';
import { leastPaper } from '../openings.ts';
import type { Rule } from '../rule.ts';
import type { Words } from '../told.ts';
import { sayLength, sayPanels, saySize } from '../words.ts';

type Facts = OnPaper & { readonly side: Edge; readonly depth: Length; readonly obstacle: Obstacle };

export const edgeRunsInto: Rule<Facts> = {
  severity: 'error',
  summary:
    'The motifs of a punched edge are cut in paper, and into nothing else that is cut, folded or stamped.',
  why: 'What is cut from two sides falls out. A row that reaches a window or the row along the opposite edge cuts its piece apart, and a strip thinner than 1/8 in (3 mm) tears.',
  fails: {
    pieces:
      'mat: { stock: cream, cut: 1 x 4, edge: { along: [left, right], pitch: 1/4, hole: 1/8, depth: 3/4 } }',
    blames: '3/4',
  },
  passes: { with: 'depth: 3/8', insteadOf: 'depth: 3/4' },
  ownEditionOnly: true,
  *check(context) {
    const rows = rowsIn(context);
    const told = new Set<object>();
    for (const [index, placed] of rows.entries()) {
      const { side, depth, written } = placed.it;
      // What is wrong with one side of an entry is mostly wrong with all of them.
      const obstacle = told.has(written) ? undefined : obstacleOf(placed, rows.slice(0, index));
      if (!obstacle) continue;
      told.add(written);
      const { at } = written.depth ?? written.hole;
      yield { at, facts: { ...placed.facts, side, depth, obstacle } };
    }
  },
  say: ({ on, unit, side, depth, obstacle }) => {
    const edge = `the motifs along ${sayEdge(side, on)} reach ${sayLength(depth, unit)} into the paper`;
    return sayObstacle(obstacle, { edge, on, unit, side, depth });
  },
};

type EdgeOnPaper = OnPaper & { readonly edge: string; readonly side: Edge; readonly depth: Length };

function sayObstacle(obstacle: Obstacle, row: EdgeOnPaper): Words {
  const { edge, on, unit, side } = row;
  switch (obstacle.kind) {
    case 'end of paper': {
      const is = isUpright(side) ? 'wide' : 'high';
      const message = `${edge}, and ${on} is ${sayLength(obstacle.room, unit)} ${is}`;
      return { message, remedy: 'correct "depth:", or leave this edge plain' };
    }
    case 'no paper':
      return {
        message: `${edge}, and ${saySize(obstacle.missing, unit)} of that strip is cut away from ${on}`,
        remedy: 'leave this edge plain, or make "depth:" smaller',
      };
    case 'row':
      return sayRow(obstacle, row);
    case 'opening':
      return sayOpening(obstacle, row);
    case 'image':
      return {
        message: `${edge}, and take ${saySize(obstacle.covered, unit)} off the ${obstacle.stamp}`,
        remedy: 'move the image farther in, or make "depth:" smaller',
        notes: [{ message: 'it is stamped here', at: obstacle.at }],
        severity: 'warning',
      };
    case 'fold':
      return {
        message: `${edge}, past the fold between ${sayPanels(on, obstacle.panels)}, which lies ${sayLength(obstacle.in, unit)} from that edge`,
        remedy: 'make "depth:" smaller, or leave this edge plain',
        severity: 'warning',
      };
  }
}

function sayRow(
  { meets, side, depth, at, left }: Extract<Obstacle, { readonly kind: 'row' }>,
  { edge, on, unit }: EdgeOnPaper,
): Words {
  const notes = [{ message: `the ${side} edge is punched here`, at }];
  const deep = sayLength(depth, unit);
  if (meets === 'along') {
    const message = `${edge}, over another row along that edge, ${deep} deep`;
    return { message, remedy: 'leave one of the two out', notes };
  }
  if (meets === 'in the corner') {
    const message = `${edge}, and run into those along the ${side} edge, which reach ${deep}`;
    const remedy = `leave "start:" out, or start ${deep} from the corner`;
    return { message, remedy, notes, severity: 'warning' };
  }
  const remedy = 'make "depth:" smaller, or leave one of the two edges plain';
  if (left.sign === 0) {
    const message = `${edge} and those along the ${side} edge ${deep}, so that they meet: ${on} falls apart`;
    return { message, remedy, notes };
  }
  return {
    message: `${edge} and ${sayThin(left, `those along the ${side} edge`, unit)}`,
    remedy,
    notes,
    severity: 'warning',
  };
}

function sayOpening(
  { name, from, left }: Extract<Obstacle, { readonly kind: 'opening' }>,
  { edge, unit, depth }: EdgeOnPaper,
): Words {
  const far = sayLength(depth.plus(leastPaper(unit)), unit);
  const remedy = `move ${name} until it is ${far} from that edge, or make "depth:" smaller`;
  if (left.sign > 0)
    return { message: `${edge} and ${sayThin(left, name, unit)}`, remedy, severity: 'warning' };
  const where = from.sign > 0 ? `begins ${sayLength(from, unit)} from that edge` : 'lies on that edge';
  return { message: `${edge} and run into ${name}, which ${where}`, remedy };
}

function sayThin(left: Length, before: string, unit: OnPaper['unit']): string {
  const least = sayLength(leastPaper(unit), unit);
  return `leave only ${sayLength(left, unit)} of paper before ${before}; ${least} is the least that does not tear`;
}
