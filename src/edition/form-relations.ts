import { Length } from '../measure/length.ts';
import type { Piece, Project } from '../project/model.ts';
import { buildShapes } from '../shape/build.ts';
import { boxSize, type Net } from '../shape/net.ts';
import { sheetsOf } from '../shape/shapes.ts';
import type { Quantities } from './quantities.ts';
import type { Bases } from './relations.ts';
import { formLengths, type Respelling, rewritePiece } from './rewrite.ts';

/** One measurement a form works out: a sheet's size, a score position, a panel. */
export type Derived = { readonly name: string; readonly value: Length };

/** Where a form is tried: what its own lengths become there. */
export type Trial = {
  readonly step: Length;
  readonly unit: 'in' | 'mm';
  readonly at: (own: Length) => Length;
};

/**
 * Relates what a form works out to what it was given, by making it anew at a trial and at one neighbour for each of
 * its lengths: a form is linear in its lengths but for the allowances it rounds. `false` when it cannot be made there.
 */
export function relateForm(
  piece: Piece,
  project: Project,
  own: ReadonlyMap<string, Net>,
  trial: Trial,
  quantities: Quantities,
  bases: Bases,
): boolean {
  const { body } = piece;
  if (body.kind !== 'form') return true;
  const id = piece.id.value;
  const lengths = formLengths(body);
  const given = [...new Map(lengths.map((length) => [length.toString(), length])).values()];
  const parameters = given.map((length) => quantities.of(length, `${id} setting`));
  const before = derivedOf(own, piece);
  const here = made(piece, project, trial, new Map());
  const slopes = given.map((length) => slope(piece, project, trial, length, here));
  if (here.length !== before.length || slopes.some((each) => each.length !== here.length)) return false;

  before.forEach(({ name, value }, index) => {
    const derived = quantities.apart(value, name);
    const constant = remainder(here[index]?.value ?? value, slopes, index, given, trial);
    const coefficients = slopes.map((each) => each[index] ?? { numerator: 0n, denominator: 1n });
    const common = [...coefficients, constant].reduce((all, { denominator }) => all * denominator, 1n);
    const whole = ({ numerator, denominator }: Coefficient): number =>
      Number((numerator * common) / denominator);
    quantities.equal({
      terms: [
        { quantity: derived, coefficient: Number(common) },
        ...parameters.map((quantity, parameter) => ({
          quantity,
          coefficient: -whole(coefficients[parameter] ?? { numerator: 0n, denominator: 1n }),
        })),
      ],
      constant: whole(constant),
    });
    noteBase(bases, name, derived);
  });
  return true;
}

type Coefficient = { readonly numerator: bigint; readonly denominator: bigint };

/** In steps: two first, so that what a form halves moves by a whole one; fewer where two make another shape. */
const NUDGES: readonly number[] = [2, -2, 1, -1];

function slope(
  piece: Piece,
  project: Project,
  trial: Trial,
  length: Length,
  here: readonly Derived[],
): Coefficient[] {
  const key = length.toString();
  for (const steps of NUDGES) {
    const there = made(piece, project, trial, new Map([[key, trial.step.times(steps)]]));
    if (there.length !== here.length) continue;
    return there.map(({ value }, index) => {
      const moved = value.minus(here[index]?.value ?? value).over(trial.step.times(steps));
      return moved;
    });
  }
  return [];
}

/** What is left of a derived length, in steps, when its parameters' share is taken off. */
function remainder(
  value: Length,
  slopes: readonly (readonly Coefficient[])[],
  index: number,
  given: readonly Length[],
  trial: Trial,
): Coefficient {
  const share = given.map((length, parameter) => {
    const { numerator, denominator } = slopes[parameter]?.[index] ?? { numerator: 0n, denominator: 1n };
    return trial.at(length).times(numerator, denominator);
  });
  return value.minus(Length.sum(share)).over(trial.step);
}

/** The form made with its lengths as the trial has them, some of them moved. */
function made(
  piece: Piece,
  project: Project,
  trial: Trial,
  moved: ReadonlyMap<string, Length>,
): readonly Derived[] {
  const respelling: Respelling = {
    unit: trial.unit,
    length: (own) => trial.at(own).plus(moved.get(own.toString()) ?? Length.zero),
    distance: (own) => own,
    sheet: (own) => own,
    position: (_, own) => own,
  };
  const rewritten = rewritePiece(piece, respelling);
  const alone = { ...project, unit: trial.unit, pieces: new Map([[piece.id.value, rewritten]]) };
  return derivedOf(buildShapes(alone).nets, piece);
}

/** Everything a form worked out that is cut, scored or stuck on, by name; nothing for other pieces. */
export function derivedOf(nets: ReadonlyMap<string, Net>, { id: { value: id }, body }: Piece): Derived[] {
  if (body.kind !== 'form') return [];
  return sheetsOf(nets, id).flatMap(({ name, net }) => {
    const sheet = name === undefined ? id : `${id}.${name}`;
    return [
      { name: `${sheet} width`, value: net.size.width },
      { name: `${sheet} height`, value: net.size.height },
      ...net.scores.flatMap(({ from, at }) =>
        at.map((value, index) => ({ name: `${sheet} score ${index + 1} from ${from}`, value })),
      ),
      ...net.panels.flatMap((panel) => {
        const { width, height } = boxSize(panel.box);
        return [
          { name: `${id}.${panel.id} width`, value: width },
          { name: `${id}.${panel.id} height`, value: height },
        ];
      }),
    ];
  });
}

/** A panel's two quantities make a base. */
function noteBase(bases: Bases, name: string, quantity: number): void {
  const [base = '', side] = name.split(/ (?=width$|height$)/u);
  if (side !== 'width' && side !== 'height') return;
  bases.set(base, { ...(bases.get(base) ?? { width: quantity, height: quantity }), [side]: quantity });
}
