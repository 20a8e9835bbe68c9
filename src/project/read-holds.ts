import { Fields } from './fields.ts';
import { KNOWN_KEYS } from './known-keys.ts';
import type { Holds } from './model.ts';
import { present } from './optional.ts';
import { type ReadValue, refuse } from './reader.ts';
import { asCount, asText, asVolume, asYes } from './values.ts';

/** `holds:`, what the finished box is for. Allergens are kept as written; a rule knows their names. */
export const asHolds: ReadValue<Holds> = (node, key, reader) => {
  if (node.kind !== 'map') return refuse(node, key, '{ item: seed packet, size: 3 x 4 x 1/8 }', reader);
  const fields = new Fields(node, key, reader, node.at, KNOWN_KEYS.holds);
  return {
    item: fields.require('item', asText)?.value ?? '',
    ...present('size', fields.read('size', asVolume)),
    count: fields.read('count', asCount(1, 1000)) ?? { value: 1, at: node.at },
    food: fields.read('food', asYes)?.value ?? false,
    allergens: fields.list('allergens', asText),
    at: node.at,
  };
};
