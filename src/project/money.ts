import type { Money } from './model.ts';
import { type ReadValue, refuse } from './reader.ts';
import type { At } from './source.ts';

/** `0.45`, `12` or `$0.45`, exactly, in the currency's smallest unit. More decimals than it has are refused. */
export const asMoney: ReadValue<At<Money>> = (node, key, reader) => {
  const text = node.kind === 'text' ? node.text.trim() : '';
  const match = /^\p{Sc}?\s*(\d{1,9})(?:\.(\d{1,4}))?$/u.exec(text);
  const decimals = reader.moneyDecimals;
  const [, whole = '', part = ''] = match ?? [];
  if (!match || part.length > decimals) {
    const expected =
      decimals === 0 ? 'a whole price, such as 45' : `a price, such as 0.${'45'.padEnd(decimals, '0')}`;
    return refuse(node, key, expected, reader);
  }
  return { value: { minor: BigInt(whole + part.padEnd(decimals, '0')) }, at: node.at };
};
