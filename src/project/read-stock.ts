import { Fields } from './fields.ts';
import { KNOWN_KEYS } from './known-keys.ts';
import type { Stock, StockSheet } from './model.ts';
import { asMoney } from './money.ts';
import { present } from './optional.ts';
import { asColor, asWeight } from './paper.ts';
import { type Reader, type ReadValue, refuse } from './reader.ts';
import { withShared } from './shared.ts';
import type { At } from './source.ts';
import { asChoice, asCount, asLength, asSize, asText } from './values.ts';
import type { YamlNode } from './yaml-tree.ts';

/**
 * One entry of `stock:`. `sheet:` is one size, `sheets:` several, each alone or as `{ size: 12 x 12, price: 1.20 }`;
 * a `price:` beside them holds for those that name none.
 */
export function readStock(id: At<string>, written: YamlNode, reader: Reader): Stock | undefined {
  const node = withShared(written, 'stock', reader);
  if (!node) return undefined;
  if (node.kind !== 'map') return refuse(node, id.value, 'a stock, such as { sheet: 8 1/2 x 11 }', reader);
  const fields = new Fields(node, `stock.${id.value}`, reader, id.at, KNOWN_KEYS.stock);
  const price = fields.read('price', asMoney);
  const sheets = [...fields.list('sheet', asSheet), ...fields.list('sheets', asSheet)];
  return {
    id,
    name: fields.read('name', asText)?.value ?? spoken(id.value),
    sheets: price ? sheets.map((sheet) => ({ price, ...sheet })) : sheets,
    ...present('weight', fields.read('weight', asWeight)),
    ...present('caliper', fields.read('caliper', asLength)),
    ...present('color', readColor(fields, reader)),
    ...present('print', fields.read('print', asChoice(['upright', 'any way'] as const))),
    ...present('grain', fields.read('grain', asChoice(['width', 'height'] as const))),
    ...present('pack', fields.read('pack', asCount(1, 10_000))),
    ...present('onHand', fields.read('on hand', asCount(0, 100_000))),
  };
}

/** A colour typed without quotes is a comment to YAML, and looks like nothing at all. */
function readColor(fields: Fields, reader: Reader): At<string> | undefined {
  const at = fields.keyPlace('color');
  if (!fields.has('color') || fields.node('color')) return fields.read('color', asColor);
  const [line = ''] = at.file.text.slice(at.end).split(/\r\n|\r|\n/u, 1);
  const [before, actual] = /^\s*:\s*(#\S*)/u.exec(line) ?? [];
  if (before === undefined || actual === undefined) return fields.read('color', asColor);
  const expected = 'a color in quotes, such as "#6b7f5b": a bare # begins a comment';
  const end = at.end + before.length;
  const place = { file: at.file, start: end - actual.length, end };
  reader.report({ rule: 'unexpected-value', at: place, facts: { key: 'color', expected, actual } });
  return undefined;
}

const asSheet: ReadValue<StockSheet> = (node, key, reader) => {
  if (node.kind !== 'map') {
    const size = asSize(node, key, reader);
    return size && { size };
  }
  const fields = new Fields(node, key, reader, node.at, KNOWN_KEYS.stockSheet);
  const size = fields.require('size', asSize);
  return size && { size, ...present('price', fields.read('price', asMoney)) };
};

/** The name of what has none: its id as a person says it. */
function spoken(id: string): string {
  const words = id
    .replace(/^shared\./u, '')
    .replace(/[-_]+/gu, ' ')
    .trim();
  return words.charAt(0).toUpperCase() + words.slice(1);
}
