import { GRADES } from './known-keys.ts';
import type { PaperWeight } from './model.ts';
import { type ReadValue, refuse } from './reader.ts';
import type { At } from './source.ts';
import { asMatch } from './values.ts';

const WEIGHT =
  /^(?<number>\d{1,4}(?:\.\d{1,3})?)\s*(?:(?:lbs?\.?|#|pounds?)\s*(?<grade>[a-z]+)|gsm|g\s*\/\s*m(?:2|²|\^2))$/iu;

/** `80 lb cover` or `216 gsm`. A basis weight says nothing without its grade, so it is refused without one. */
export const asWeight: ReadValue<At<PaperWeight>> = asMatch(
  `a weight with its grade, such as 80 lb cover (${GRADES.join(', ')}), or 216 gsm`,
  WEIGHT,
  ({ groups }): PaperWeight | undefined => {
    const amount = Number(groups?.number);
    if (amount === 0) return undefined;
    if (groups?.grade === undefined) return { kind: 'grammage', gsm: amount };
    const grade = GRADES.find((known) => known === groups.grade?.toLowerCase());
    return grade && { kind: 'basis', pounds: amount, grade };
  },
);

/** `#rgb` or `#rrggbb`, given as `#rrggbb` in lower case. */
export const asColor: ReadValue<At<string>> = (node, key, reader) => {
  const match = node.kind === 'text' ? /^#([0-9a-f]{3}|[0-9a-f]{6})$/iu.exec(node.text.trim()) : null;
  const digits = match?.[1]?.toLowerCase();
  if (digits === undefined) return refuse(node, key, 'a color in quotes, such as "#6b7f5b"', reader);
  const six = digits.length === 3 ? digits.replace(/./gu, '$&$&') : digits;
  return { value: `#${six}`, at: node.at };
};
