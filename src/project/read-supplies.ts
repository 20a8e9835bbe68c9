import { Fields } from './fields.ts';
import { KNOWN_KEYS, SUPPLY_KINDS } from './known-keys.ts';
import type { Supply } from './model.ts';
import { asMoney } from './money.ts';
import { present } from './optional.ts';
import { type Reader, type ReadValue, refuse } from './reader.ts';
import { findShared, isShared, withShared } from './shared.ts';
import { asChoice, asCount, asLink, asText, asYes } from './values.ts';
import type { YamlNode } from './yaml-tree.ts';

/** One entry of `supplies:`; a text alone is the item, of kind `other`. */
export const asSupply: ReadValue<Supply> = (written, key, reader) => {
  const node = supplyNode(written, reader);
  if (!node) return undefined;
  if (node.kind === 'text') {
    const item = asText(node, key, reader);
    return item && { item, kind: { value: 'other', at: item.at }, paid: false, at: item.at };
  }
  if (node.kind !== 'map')
    return refuse(node, key, 'a supply, such as { item: Bone folder, kind: tool }', reader);
  const fields = new Fields(node, 'supplies', reader, node.at, KNOWN_KEYS.supply);
  const item = fields.require('item', asText);
  const supply = {
    kind: fields.read('kind', asChoice(SUPPLY_KINDS)) ?? { value: 'other' as const, at: node.at },
    ...present('instead', fields.read('instead', asText)),
    ...present('link', fields.read('link', asLink)),
    paid: fields.read('paid', asYes)?.value ?? false,
    ...present('each', fields.read('each', asText)),
    ...present('pack', fields.read('pack', asText)),
    ...present('onHand', fields.read('on hand', asText)),
    ...present('price', fields.read('price', asMoney)),
    ...present('share', fields.read('share', asCount(1, 1000))),
    at: node.at,
  };
  return item && { item, ...supply };
};

/** What `shared.bone-folder` alone, or behind `use:`, stands for. */
function supplyNode(written: YamlNode, reader: Reader): YamlNode | undefined {
  if (written.kind !== 'text' || !isShared(written.text)) return withShared(written, 'supplies', reader);
  const entry = findShared('supplies', { value: written.text, at: written.at }, reader);
  return entry && withShared(entry.value, 'supplies', reader);
}
