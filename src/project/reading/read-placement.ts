import { type Key, sectionOf, type ToRead, type Value } from '../grammar/grammar.ts';
import { optional } from '../grammar/keys.ts';
import { asDistance, asTurn } from '../grammar/values.ts';
import type { Placement } from '../sizes-as-written.ts';
import { type At, byPlace } from '../source.ts';

export const TURN: Key<At<number>, false> = optional(
  asTurn,
  'Degrees clockwise about its own middle; a minus turns it the other way.',
);

/** Where something lies on its base. */
export const asPlacement: Value<Placement> = sectionOf('distances from edges, such as { left: 1/4 }', {
  left: optional(
    asDistance,
    'The distance from the left edge of the base: `0` is flush with it, and a minus reaches past it.',
  ),
  right: optional(asDistance, 'The distance from its right edge.'),
  top: optional(asDistance, 'The distance from its upper edge.'),
  bottom: optional(asDistance, 'The distance from its lower edge.'),
  turn: TURN,
});

/** `turn:` may stand in `at:` or beside it; said in both places it is reported, and the first one counts. */
export function turnedPlacement(
  at: Placement,
  turn: At<number> | undefined,
  { reader }: Pick<ToRead, 'reader'>,
): Placement {
  const [first, second] = [turn, at.turn].filter((each) => each !== undefined).toSorted(byPlace);
  const facts = first && second && { key: 'turn', first: first.at };
  if (facts) reader.report({ rule: 'repeated-key', at: second.at, facts });
  return { ...at, ...(first && { turn: first }) };
}
