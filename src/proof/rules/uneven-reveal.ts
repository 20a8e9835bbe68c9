import { Length, type Unit } from '../../measure/length.ts';
import type { Project } from '../../project/model.ts';
import type { Layer } from '../../shape/shapes.ts';
import { type Axis, axesOf, sizePlace } from '../axis.ts';
import { sheetWith } from '../example.ts';
import type { ProofContext, Rule, Statement } from '../rule.ts';
import { sayLength } from '../words.ts';

export const unevenReveal: Rule<'uneven-reveal'> = {
  id: 'uneven-reveal',
  severity: 'warning',
  summary: 'The border round a centred layer is the same on all sides, unless it plainly means to differ.',
  why: 'A border of 1/8 in at the sides and 3/16 in above and below is rarely meant: more often one number was subtracted wrongly. The eye sees the difference at once. Borders that differ by more than 1/8 in, or are wider than 1/2 in, are taken as meant. A layer placed by distances that is almost centred, but not quite, gets a note.',
  fails: {
    sheet: sheetWith({
      pieces: 'card: { stock: cream, cut: 4 1/4 x 5 1/2 }\nmat: { stock: cream, cut: 4 x 5 1/8, on: card }',
    }),
    blames: '5 1/8',
  },
  passes: {
    sheet: sheetWith({
      pieces: 'card: { stock: cream, cut: 4 1/4 x 5 1/2 }\nmat: { stock: cream, cut: 4 x 5 1/4, on: card }',
    }),
  },
  check: ({ project, shapes, report }: ProofContext) => {
    for (const layer of shapes.layers) {
      for (const statement of [
        differs(layer, project),
        ...axesOf(layer).map((axis) => offCentre(axis, project)),
      ]) {
        if (statement) report(statement);
      }
    }
  },
};

/** A centred layer whose border at the sides is a little different from that above and below. */
function differs(layer: Layer, project: Project): Statement | undefined {
  const [across, upright] = axesOf(layer);
  if (!across?.centred || !upright?.centred) return undefined;
  const [sides, ends] = [across.reveals[0], upright.reveals[0]];
  const { widest, slip } = tolerances(project.unit);
  const border = sides.sign > 0 && ends.sign > 0 && !Length.max(sides, ends).greaterThan(widest);
  if (!border || sides.equals(ends) || sides.minus(ends).abs().greaterThan(slip)) return undefined;
  const say = (length: Length): string => sayLength(length, project.unit);
  const wider = sides.greaterThan(ends) ? across : upright;
  const even = Length.min(sides, ends);
  const cut = wider.base.minus(even.times(2));
  return {
    message: `${layer.piece.id.value} leaves ${say(sides)} of ${layer.baseName} to show at the sides, but ${say(ends)} above and below`,
    remedy: `cut it ${say(cut)} ${wider.layerIs} for ${say(even)} all round`,
    at: sizePlace(wider),
  };
}

/** A layer placed by a distance that all but centres it. */
function offCentre(axis: Axis, project: Project): Statement | undefined {
  const { layer, reveals, sides } = axis;
  const apart = reveals[0].minus(reveals[1]).abs();
  const from = sides.find((side) => layer.piece.placement[side]);
  const given = from && layer.piece.placement[from];
  if (!given || apart.sign === 0 || !apart.lessThan(tolerances(project.unit).slip)) return undefined;
  const say = (length: Length): string => sayLength(length, project.unit);
  return {
    severity: 'note',
    message: `${layer.piece.id.value} lies ${say(reveals[0])} from the ${sides[0]} of ${layer.baseName} and ${say(reveals[1])} from the ${sides[1]}: almost centred, but not quite`,
    remedy: `leave out "${from}" to centre it, or let it stand if it is meant so`,
    at: given.at,
  };
}

/** Our judgement, no source: the widest border that is looked at as one, and the largest difference that is a slip. */
function tolerances(unit: Unit): { widest: Length; slip: Length } {
  return unit === 'in'
    ? { widest: Length.of(1, 2, 'in'), slip: Length.of(1, 8, 'in') }
    : { widest: Length.of(12, 1, 'mm'), slip: Length.of(3, 1, 'mm') };
}
