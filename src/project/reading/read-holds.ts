import { made, mapOf, type Value } from '../grammar/grammar.ts';
import { flag, listed, needed, optional, usually } from '../grammar/keys.ts';
import { asCount, asText, asVolume } from '../grammar/values.ts';
import type { Holds } from '../model.ts';

/** What the finished box is for. Allergens are kept as written; a rule knows their names. */
export const asHolds: Value<Holds> = made(
  mapOf('{ item: seed packet, size: 3 x 4 x 1/8 }', {
    item: needed(optional(asText, 'What goes in, in the singular.')),
    size: optional(asVolume, 'Three lengths.'),
    count: usually(asCount(1, 1000), '1', 'How many.'),
    in: optional(asText, 'The piece it goes in. If you say nothing, one of several has to take it.'),
    food: flag('`yes` if it is something to eat. The sheet then says what to watch for.'),
    allergens: listed(asText, 'What is in it, as a list: `[wheat, milk]`.'),
  }),
  ({ item, ...holds }, { node: { at } }) => ({ ...holds, item: item?.value ?? '', at }),
);
