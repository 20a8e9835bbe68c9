import type { Length } from '../../measure/length.ts';
import type { Project, ScoreGroup, Site } from '../../project/model.ts';
import type { At } from '../../project/source.ts';
import { sheetWith } from '../example.ts';
import type { ProofContext, Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

const folded = (positions: string): string =>
  sheetWith({
    pieces: `fold: { stock: cream, cut: 8 1/2 x 5 1/2, score: [{ from: left, at: [${positions}] }] }`,
  });

export const scoreOffGroove: Rule = {
  id: 'score-off-groove',
  severity: 'warning',
  summary: 'Every score line lies on a groove of the score board.',
  why: 'A score board has a groove every eighth of an inch (common practice; `bench: { board: 1/16 in }` in `site.yaml` says otherwise). A line between two grooves must be measured and ruled by hand, which a class will get wrong. A sheet in millimetres is checked only if `metric board` is given.',
  fails: { sheet: folded('4 1/4, 8 3/16'), blames: '8 3/16' },
  passes: { sheet: folded('4 1/4, 8 1/8') },
  check: ({ workspace, project, report }: ProofContext) => {
    const pitch = pitchFor(project, workspace.site);
    if (!pitch) return;
    const say = (length: Length): string => sayLength(length, project.unit);
    for (const { piece, from, position } of positionsOf(project)) {
      if (position.value.isMultipleOf(pitch)) continue;
      const below = pitch.times(grooves(position.value, pitch));
      const nearest = [below, below.plus(pitch)].filter(({ sign }) => sign > 0).map(say);
      report({
        message: `${piece} is scored at ${say(position.value)} from the ${from}, between two grooves of the board (one every ${say(pitch)})`,
        remedy: `score at ${nearest.join(' or ')}, or say in the step that this line is ruled by hand`,
        at: position.at,
      });
    }
  },
};

/** A board in inches is used for sheets in inches only, a metric one for the others. */
function pitchFor(project: Project, { bench }: Site): Length | undefined {
  return project.unit === 'in' ? bench.board.value : bench.metricBoard?.value;
}

type Position = { readonly piece: string; readonly from: ScoreGroup['from']; readonly position: At<Length> };

function positionsOf(project: Project): Position[] {
  return [...project.pieces].flatMap(([piece, { body }]) =>
    body.kind === 'net'
      ? body.score.flatMap(({ from, at }) => at.map((position) => ({ piece, from, position })))
      : [],
  );
}

/** How many whole pitches lie below a position. */
function grooves(position: Length, pitch: Length): bigint {
  const { numerator, denominator } = position.over(pitch);
  return numerator / denominator;
}
