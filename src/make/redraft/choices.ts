import { keyOf, movePiece, primariesOf } from '../../edition/primaries.ts';
import type { Length } from '../../measure/length.ts';
import type { FormSetting } from '../../project/grammar/form-grammar.ts';
import type { Piece } from '../../project/model.ts';

/** What of a piece can be chosen anew: each length of a form, each distance of a net that no other is alike. */
export function choicesOf(piece: Piece): readonly Length[] {
  const { body } = piece;
  if (body.kind !== 'form')
    return primariesOf(piece).flatMap(({ key, own }) => (key === keyOf(own, 'part') ? [own] : []));
  return [...body.settings.values()].flatMap((setting) =>
    setting.kind === 'lengths' ? setting.lengths.map(({ value }) => value) : [],
  );
}

/**
 * A piece with its choices made anew, in the order of `choicesOf`. Of a net `withHalves`, what was half of one that moves
 * stays half of it, as the flaps of a box are.
 */
export function choose(piece: Piece, values: readonly Length[], withHalves: boolean): Piece {
  const { body } = piece;
  if (body.kind !== 'form') return chooseOfNet(piece, values, withHalves);
  let next = 0;
  const settings = [...body.settings].map(([key, setting]): readonly [string, FormSetting] => {
    if (setting.kind !== 'lengths') return [key, setting];
    const lengths = setting.lengths.map((length) => ({ ...length, value: values[next++] ?? length.value }));
    return [key, { ...setting, lengths }];
  });
  return { ...piece, body: { ...body, settings: new Map(settings) } };
}

function chooseOfNet(piece: Piece, values: readonly Length[], withHalves: boolean): Piece {
  const moved = choicesOf(piece).flatMap((from, index) => {
    const to = values[index] ?? from;
    return to.equals(from) ? [] : [{ from, to }];
  });
  return movePiece(piece, 'in', (own, kind) => {
    if (kind === 'place') return own;
    const whole = moved.find(({ from }) => from.equals(own));
    const half = withHalves && moved.find(({ from }) => from.half().equals(own));
    return whole?.to ?? (half ? half.to.half() : own);
  });
}
