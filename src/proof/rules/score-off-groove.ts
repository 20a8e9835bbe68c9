import type { Length, Unit } from '../../measure/length.ts';
import type { Edge, Project, Site } from '../../project/model.ts';
import { type Shapes, sheetsOf } from '../../shape/shapes.ts';
import { sheetWith } from '../example.ts';
import type { Found, ProofContext, Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

declare module '../../project/finding.ts' {
  interface Facts {
    readonly 'score-off-groove': ScoredAt & {
      /** From one groove of the board to the next. */
      readonly pitch: Length;
      readonly unit: Unit;
    };
  }
}

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
  *check({ workspace, project, shapes }: ProofContext) {
    const { unit } = project;
    const pitch = pitchFor(project, workspace.site);
    if (!pitch) return;
    for (const { at, facts } of positionsOf(project, shapes)) {
      if (!facts.position.isMultipleOf(pitch)) yield { at, facts: { ...facts, pitch, unit } };
    }
  },
  say: ({ sheet, from, position, isWritten, pitch, unit }) => {
    const say = (length: Length): string => sayLength(length, unit);
    const below = pitch.times(grooves(position, pitch));
    const nearest = [below, below.plus(pitch)].filter(({ sign }) => sign > 0).map(say);
    return {
      message: `${sheet} is scored at ${say(position)} from the ${from}, between two grooves of the board (one every ${say(pitch)})`,
      remedy: `score at ${nearest.join(' or ')}, or say in the step that this line is ruled by hand`,
      severity: isWritten ? 'warning' : 'note',
    };
  },
};

/** A board in inches is used for sheets in inches only, a metric one for the others. */
function pitchFor(project: Project, { bench }: Site): Length | undefined {
  return project.unit === 'in' ? bench.board.value : bench.metricBoard?.value;
}

type ScoredAt = {
  readonly sheet: string;
  readonly from: Edge;
  readonly position: Length;
  /** A form works its lines out by itself: nobody wrote the number, and there may be nothing to mend. */
  readonly isWritten: boolean;
};

type Scored = Pick<Found<'score-off-groove'>, 'at'> & { readonly facts: ScoredAt };

function positionsOf({ pieces }: Project, shapes: Shapes): Scored[] {
  return [...pieces].flatMap(([sheet, { body }]) => {
    if (body.kind === 'flat') return [];
    if (body.kind === 'form') {
      return formPositions(sheet, shapes).map((facts) => ({ at: body.form.at, facts }));
    }
    return body.score.flatMap(({ from, at: positions }) =>
      positions.map(({ value: position, at }) => ({
        at,
        facts: { sheet, from: from.value, position, isWritten: true },
      })),
    );
  });
}

function formPositions(piece: string, { nets }: Shapes): ScoredAt[] {
  return sheetsOf(nets, piece).flatMap(({ name, net }) => {
    const sheet = name === undefined ? piece : `${piece}.${name}`;
    return net.scores.flatMap(({ from, at }) =>
      at.map((position) => ({ sheet, from, position, isWritten: false })),
    );
  });
}

/** How many whole pitches lie below a position. */
function grooves(position: Length, pitch: Length): bigint {
  const { numerator, denominator } = position.over(pitch);
  return numerator / denominator;
}
