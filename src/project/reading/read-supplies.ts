import { made, mapOf, orShort, type ToRead, type Value } from '../grammar/grammar.ts';
import { flag, optional, required, usually } from '../grammar/keys.ts';
import { asChoice, asCount, asDate, asLink, asMatch, asMoney, asText } from '../grammar/values.ts';
import { unitMeant } from '../misspelled-unit.ts';
import type { At } from '../source.ts';
import { SUPPLY_KINDS, type Supply } from '../supply.ts';
import { asColor } from './read-color.ts';
import { sharing, USE } from './shared.ts';

/** Nothing, or less than nothing, is neither used nor sold. */
const asQuantity: typeof asText = made(
  asMatch(
    'an amount above nothing, such as 24 in or 10',
    /^(?![-−]\s*\d|0+(?:[.,/]0+)?(?![\d.,/])).+$/su,
    ([text]) => text,
  ),
  checkUnit,
);

/** An amount ends in one word. */
const UNIT_OF_AMOUNT = /\d\P{L}*(\p{L}+)\.?$/u;

/** Reports a word that is a slip of a unit: it would be counted as a thing of that name. */
function checkUnit(amount: At<string>, { reader }: ToRead): At<string> {
  const [, word = ''] = UNIT_OF_AMOUNT.exec(amount.value) ?? [];
  const other = unitMeant(word);
  if (other !== undefined)
    reader.report({
      rule: 'unexpected-value',
      at: amount.at,
      facts: { misfit: 'unit misspelled', actual: word, other },
    });
  return amount;
}

const SUPPLY = mapOf('a supply, such as { item: Bone folder, kind: tool }', {
  use: optional(asText, USE),
  item: required(asText, 'What it is called.'),
  kind: usually(asChoice(SUPPLY_KINDS), 'other', `One of: ${SUPPLY_KINDS.join(', ')}.`),
  for: optional(asText, 'What it is used for: `the leaves`.'),
  from: optional(asText, 'The set or range it comes from: `Meadow set`.'),
  color: optional(asColor, 'Of an ink, say, **in quotes**: `"#6b7f5b"`. The list shows it.'),
  instead: optional(asText, 'What does as well.'),
  until: optional(asDate, 'The last day it can be had, such as `2027-03-31`.'),
  link: optional(asLink, 'A web address where it can be seen: `https://` and so on.'),
  paid: flag('`yes` if the link earns you something. The sheet then says so beside it.'),
  each: optional(asQuantity, 'How much one person uses: `24 in`, or a number of things.'),
  pack: optional(asQuantity, 'How it is sold: `10 yd`, or how many are in a pack.'),
  'on hand': optional(made(asText, checkUnit), 'What you have already.'),
  price: optional(asMoney, 'Of one pack.'),
  share: optional(asCount(1, 1000), 'How many people share one: for tools.'),
});

/** One entry of `supplies:`; a text alone is the item, of kind `other`. */
export const asSupply: Value<Supply> = sharing(
  'supplies',
  orShort<Supply>(
    made(asText, (item, { spot: { at } }) => ({ item, kind: { value: 'other', at }, paid: false, at })),
    made(SUPPLY, (supply, { node: { at } }) => ({ ...supply, at })),
  ),
);
