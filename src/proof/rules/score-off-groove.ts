import type { Length } from '../../measure/length.ts';
import type { Edge, Project, Site } from '../../project/model.ts';
import type { Place } from '../../project/source.ts';
import { type Shapes, sheetsOf } from '../../shape/shapes.ts';
import { sheetWith } from '../example.ts';
import type { Severity } from '../finding.ts';
import type { ProofContext, Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

const folded = (positions: string): string =>
  sheetWith({
    pieces: `fold: { stock: cream, cut: 8 1/2 x 5 1/2, score: [{ from: left, at: [${positions}] }] }`,
  });

export const scoreOffGroove: Rule<'score-off-groove'> = {
  id: 'score-off-groove',
  severity: 'warning',
  summary: 'Every score line lies on a groove of the score board.',
  why: 'A score board has a groove every eighth of an inch (common practice; `bench: { board: 1/16 in }` in `site.yaml` says otherwise). A line between two grooves must be measured and ruled by hand, which a class will get wrong. A sheet in millimetres is checked only if `metric board` is given.',
  fails: { sheet: folded('4 1/4, 8 3/16'), blames: '8 3/16' },
  passes: { sheet: folded('4 1/4, 8 1/8') },
  check: ({ workspace, project, shapes, report }: ProofContext) => {
    const pitch = pitchFor(project, workspace.site);
    if (!pitch) return;
    const say = (length: Length): string => sayLength(length, project.unit);
    for (const { piece, from, position, at, severity } of positionsOf(project, shapes)) {
      if (position.isMultipleOf(pitch)) continue;
      const below = pitch.times(grooves(position, pitch));
      const nearest = [below, below.plus(pitch)].filter(({ sign }) => sign > 0).map(say);
      report({
        message: `${piece} is scored at ${say(position)} from the ${from}, between two grooves of the board (one every ${say(pitch)})`,
        remedy: `score at ${nearest.join(' or ')}, or say in the step that this line is ruled by hand`,
        at,
        severity,
      });
    }
  },
};

/** A board in inches is used for sheets in inches only, a metric one for the others. */
function pitchFor(project: Project, { bench }: Site): Length | undefined {
  return project.unit === 'in' ? bench.board.value : bench.metricBoard?.value;
}

type Position = {
  readonly piece: string;
  readonly from: Edge;
  readonly position: Length;
  readonly at: Place;
  readonly severity: Severity;
};

function positionsOf({ pieces }: Project, shapes: Shapes): Position[] {
  return [...pieces].flatMap(([piece, { body }]) => {
    if (body.kind === 'flat') return [];
    if (body.kind === 'form') return formPositions(piece, body.form.at, shapes);
    return body.score.flatMap(({ from, at: positions }) =>
      positions.map(({ value, at }) => ({
        piece,
        from: from.value,
        position: value,
        at,
        severity: 'warning',
      })),
    );
  });
}

/** A form works its lines out by itself, so that nobody wrote the number and there may be nothing to mend: a note. */
function formPositions(piece: string, at: Place, { nets }: Shapes): Position[] {
  return sheetsOf(nets, piece).flatMap(({ name, net }) =>
    net.scores.flatMap(({ from, at: positions }) =>
      positions.map((position) => {
        const sheet = name === undefined ? piece : `${piece}.${name}`;
        return { piece: sheet, from, position, at, severity: 'note' as const };
      }),
    ),
  );
}

/** How many whole pitches lie below a position. */
function grooves(position: Length, pitch: Length): bigint {
  const { numerator, denominator } = position.over(pitch);
  return numerator / denominator;
}
