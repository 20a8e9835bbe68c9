import type { Length, Unit } from '../../measure/length.ts';
import { editionIn } from '../../measure/ruler-unit.ts';
import type { Piece } from '../../project/model.ts';
import type { Edge } from '../../project/net-as-written.ts';
import { writeName } from '../../project/ref.ts';
import type { Place } from '../../project/source.ts';
import type { ScoredAt } from '../../shape/score-lines.ts';
import type { Shapes } from '../../shape/shapes.ts';
import { ownNet, sheetsOf } from '../../shape/sheets.ts';
import type { Rule } from '../rule.ts';
import { sayLength, sayList } from '../words.ts';

type Facts = Omit<ScoredAt, 'position'> & {
  /** A form has them all from one measurement: they are told at once. */
  readonly positions: readonly Length[];
  /** From one groove of the board to the next. */
  readonly pitch: Length;
  /** A form works its lines out by itself: nobody wrote the number, and there may be nothing to fix. */
  readonly isWritten: boolean;
};

export const scoreOffGroove: Rule<Facts> = {
  severity: 'warning',
  summary: 'Every score line falls on a groove of the score board.',
  why: 'A score board has a groove every eighth of an inch (common practice; `bench: { board: 1/16 in }` in `site.yaml` says otherwise). A line between two grooves must be measured and ruled by hand, which a class will get wrong. A sheet in millimeters is checked only if `metric board` is given.',
  fails: {
    pieces: 'fold: { stock: cream, cut: 8 1/2 x 5 1/2, score: [{ from: left, at: [4 1/4, 8 3/16] }] }',
    blames: '8 3/16',
  },
  passes: { with: '8 1/8', insteadOf: '8 3/16' },
  ownEditionOnly: true,
  *check({ workspace, project, shapes }) {
    const { unit, units } = project;
    // Nobody scores by an edition that isn't printed.
    if (units !== 'both' && units !== editionIn(unit)) return;
    const pitch = unit === 'in' ? workspace.site.bench.board.value : workspace.site.bench.metricBoard?.value;
    if (!pitch) return;
    for (const [id, piece] of project.pieces) {
      // What is worked out of a piece in the other unit is not for anybody to fix: as written it lies on grooves, or not.
      if (editionIn(unitWritten(piece) ?? unit) !== editionIn(unit)) continue;
      for (const { at, ...scored } of positionsOf(id, piece, shapes)) {
        const positions = scored.positions.filter((each) => !each.isMultipleOf(pitch));
        if (positions.length > 0) yield { at, facts: { ...scored, positions, pitch, unit } };
      }
    }
  },
  say: ({ piece, from, positions, isWritten, pitch, unit }) => {
    const say = (length: Length): string => sayLength(length, unit);
    const [position, second] = positions;
    return {
      message: `${piece} is scored at ${sayList(positions.map(say))} from the ${from}, between two grooves of the board (one every ${say(pitch)})`,
      remedy:
        position && !second
          ? `score at ${nearestTo(position, pitch).map(say).join(' or ')}, or say in the step that this line is ruled by hand`
          : 'change a measurement of its form by a little, or say in the step that these lines are ruled by hand',
      severity: isWritten ? 'warning' : 'note',
    };
  },
};

/** The grooves on either side of a line. */
function nearestTo(position: Length, pitch: Length): readonly Length[] {
  const below = pitch.times(grooves(position, pitch));
  return [below, below.plus(pitch)].filter(({ sign }) => sign > 0);
}

/** The unit a piece was measured in, where that is said: a shared one may be in millimeters in a sheet in inches. */
function unitWritten({ body }: Piece): Unit | undefined {
  if (body.kind !== 'form') return body.cut.unit;
  return [...body.settings.values()].flatMap((setting) =>
    setting.kind === 'lengths' ? (setting.unit ?? []) : [],
  )[0];
}

type Position = Omit<Facts, 'pitch' | 'unit'> & { readonly at: Place };

/** Every score line as it is written, or at a form's name as the form works it out for each of its sheets. */
function positionsOf(id: string, { body }: Piece, { nets }: Shapes): readonly Position[] {
  if (body.kind === 'flat') return [];
  if (body.kind === 'net') {
    const scored = ownNet(nets, id)?.scores.filter(({ isCut }) => !isCut);
    const isScored = (from: Edge, position: Length): boolean =>
      scored?.some((row) => row.from === from && row.at.some((each) => each.equals(position))) ?? true;
    return body.score.flatMap(({ from, at: positions }) =>
      positions
        .filter(({ value }) => isScored(from.value, value))
        .map(({ value, at }) => ({ piece: id, from: from.value, positions: [value], isWritten: true, at })),
    );
  }
  const { at } = body.form;
  return sheetsOf(nets, id).flatMap(({ name, net }) => {
    const piece = writeName({ piece: id, part: name });
    return net.scores.map(({ from, at: positions }) => ({ piece, from, positions, isWritten: false, at }));
  });
}

/** How many whole pitches lie below a position. */
function grooves(position: Length, pitch: Length): bigint {
  const { numerator, denominator } = position.over(pitch);
  return numerator / denominator;
}
