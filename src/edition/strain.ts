import { Length } from '../measure/length.ts';
import type { Piece } from '../project/model.ts';
import type { Numbers, Options, Rung } from './candidates.ts';

/** A piece whose numbers had to move farther than they should, or to half steps, or that has a fault all the same. */
export type Strain = {
  /** The length that had to give way, as written and in the edition. */
  readonly own: Length;
  readonly edition: Length;
  /** Whether nothing was found that folds and fits as the piece does as written. */
  readonly faulty: boolean;
};

/** What the primary lengths of a piece may become in steps of one size. */
export type OptionsOfRung = Rung & { readonly options: readonly Options[] };

/** Whether no length is farther from the one as written than the first rung allows. */
export function staysNear(candidate: Numbers, [whole]: readonly OptionsOfRung[]): boolean {
  if (!whole) return true;
  const moves = whole.options.map(({ key, own }) => candidate.get(key)?.minus(own).abs());
  return moves.every((move) => !move?.greaterThan(whole.reach));
}

/** The length that had to give way: one between two marks, else the one that moved farthest. */
export function yielding(candidate: Numbers, [whole]: readonly OptionsOfRung[]): Omit<Strain, 'faulty'> {
  const moved = (whole?.options ?? []).map(({ key, own }) => ({ own, edition: candidate.get(key) ?? own }));
  const far = ({ own, edition }: (typeof moved)[number]): Length => edition.minus(own).abs();
  const between = moved.filter(({ edition }) => whole && !edition.isMultipleOf(whole.step));
  const [first = { own: Length.zero, edition: Length.zero }, ...others] =
    between.length > 0 ? between : moved;
  return others.reduce((most, each) => (far(each).greaterThan(far(most)) ? each : most), first);
}

/** Whether a flat piece is cut near enough to its size as written, also where its size follows from a border. */
export function cutsWithin(reach: Length, { body: own }: Piece, { body }: Piece): boolean {
  if (own.kind !== 'flat' || body.kind !== 'flat') return true;
  return (['width', 'height'] as const).every(
    (side) => !body.cut[side].value.minus(own.cut[side].value).abs().greaterThan(reach),
  );
}
