import { Length } from '../../measure/length.ts';
import { rulerUnit } from '../../measure/ruler-unit.ts';
import { made, mapOf, orShort, taken, turned, type Value } from '../grammar/grammar.ts';
import { listed, optional, required } from '../grammar/keys.ts';
import { refuse } from '../grammar/reader.ts';
import { asChoice, asCount, asDate, asLength, asMatch, asMoney, asSize, asText } from '../grammar/values.ts';
import { PAPER_NAMES, sheetNamed, sheetsOfEditions } from '../paper-sizes.ts';
import type { At } from '../source.ts';
import { GRADES, type PaperUnit, type PaperWeight, type Stock, type StockSheet } from '../stock.ts';
import { asColor } from './read-color.ts';
import { sharing, USE } from './shared.ts';

const WEIGHT =
  /^(\d{1,4}(?:\.\d{1,3}|,\d{1,2})?)\s*(?:(?:lbs?\.?|#|pounds?)\s*([a-z]+)|gsm|g(?:\s*\/\s*m(?:2|²|\^2))?)$/iu;

/** `80 lb cover` or `216 gsm`. A basis weight says nothing without its grade, so it is refused without one. */
const asWeight: Value<At<PaperWeight>> = asMatch(
  `a weight with its grade, such as 80 lb cover (${GRADES.join(', ')}), or 216 gsm`,
  WEIGHT,
  ([, number, written]): PaperWeight | undefined => {
    const amount = Number(number?.replace(',', '.'));
    if (amount === 0) return undefined;
    if (written === undefined) return { kind: 'grammage', gsm: amount };
    const grade = GRADES.find((known) => known === written.toLowerCase());
    return grade && { kind: 'basis', pounds: amount, grade };
  },
);

/** Thicker than any board that is cut by hand; common practice, no source. Points are thousandths of an inch: 12 of them are no 12 in. */
const THICKEST = Length.of(10, 1, 'mm');

const asCaliper: Value<At<Length>> = {
  ...made(asLength, (length, { node, spot, reader }) =>
    length.value.greaterThan(THICKEST)
      ? refuse(node, spot.key, 'the thickness of one sheet with its unit, such as 0.012 in or 0.3 mm', reader)
      : length,
  ),
  schema: asLength.schema,
};

/** A sheet by its name or its size. */
const asSheetSize: Value<StockSheet> = turned(
  { anyOf: [asChoice(PAPER_NAMES).schema, asSize.schema] },
  ({ node, reader }) => {
    const name = node.kind === 'text' ? node.text : '';
    const sheet = sheetNamed(name, node.at);
    if (sheet || !NAME.test(name)) return { value: sheet ? taken({}, () => sheet) : asMeasuredSheet };
    const names = PAPER_NAMES.map((each) => each.charAt(0).toUpperCase() + each.slice(1));
    const facts = { what: 'paper', name, among: [...names, 'its size, such as 8 1/2 x 11'] };
    reader.report({ rule: 'unknown-reference', at: node.at, facts });
    return undefined;
  },
);

/** What is meant as the name of a paper; there are papers such as B4, though they are not among ours. */
const NAME = /^(?![a-z]\d$)[a-z](?!.*\bx\b)/iu;

const asMeasuredSheet: Value<StockSheet> = made(asSize, (size, { reader }) => ({
  size,
  unit: rulerUnit(size.unit ?? reader.unit),
}));

const PACK = asCount(1, 10_000);
const ON_HAND = asCount(0, 100_000);

const asSheet: Value<StockSheet> = orShort(
  asSheetSize,
  made(
    mapOf('a size, such as 3 x 4', {
      size: required(asSheetSize, 'The size it is sold in.'),
      price: optional(asMoney, 'For one sheet of this size.'),
      pack: optional(PACK, 'How many sheets of this size come in a pack.'),
      'on hand': optional(ON_HAND, 'How many sheets of this size you have already.'),
    }),
    ({ size, ...bought }) => ({ ...size, ...bought }),
  ),
);

/** A sheet of the edition that its key names: bare numbers are in that unit, whatever the sheet is written in. */
function inUnit(unit: PaperUnit): Value<StockSheet> {
  return turned(asSheet.schema, ({ reader }) => ({
    value: asSheet,
    reader: { ...reader, unit, shared: { ...reader.shared, units: new Map() } },
  }));
}

const PRINT = asChoice(['upright', 'any way'] as const);
const GRAIN = asChoice(['width', 'height'] as const);

const STOCK = mapOf('a stock, such as { sheet: 8 1/2 x 11 }', {
  use: optional(asText, USE),
  name: optional(asText, 'As it is called on the sheet. Without it, the short name is used.'),
  sheet: listed(asSheet, 'The size it is sold in: `8 1/2 x 11`, or a name such as `Letter` or `A4`.'),
  sheets: listed(asSheet, 'Where there are several: `[8 1/2 x 11, 12 x 12]`.'),
  'metric sheet': listed(
    inUnit('mm'),
    'Its size for the metric edition, in mm, if it is not the usual pair.',
  ),
  'inch sheet': listed(inUnit('in'), 'Its size for the inch edition, in inches, likewise.'),
  weight: optional(asWeight, '`80 lb cover` or `216 gsm`. A weight in pounds needs its grade.'),
  caliper: optional(asCaliper, 'The thickness, if you have measured it: `0.012 in`, `0.3 mm`.'),
  color: optional(asColor, 'For the drawings, **in quotes**: `"#6b7f5b"`.'),
  price: optional(asMoney, 'For one sheet, in the currency of the site.'),
  print: optional(PRINT, '`upright` where the pattern has a right way up, `any way` where it has none.'),
  from: optional(asText, 'The set or range it comes from.'),
  grain: optional(GRAIN, 'Which way the fibers run on the sheet as given: `width` or `height`.'),
  until: optional(asDate, 'The last day it can be had, such as `2027-03-31`.'),
  instead: optional(asText, 'The stock that takes its place then, by its name.'),
  pack: optional(PACK, 'How many sheets come in a pack.'),
  'on hand': optional(ON_HAND, 'How many sheets you have already, of the size named first.'),
});

/** One entry of `stock:`. A `price:` and a `pack:` hold for those of its sheets that name none. */
export const asStock: Value<Stock> = sharing(
  'stock',
  made(
    STOCK,
    (
      { name, sheet, sheets, metricSheet, inchSheet, price, pack, onHand, ...stock },
      { spot: { key, at }, reader },
    ) => {
      const all = { ...(price && { price }), ...(pack && { pack }) };
      const bought = (each: readonly StockSheet[]): readonly StockSheet[] =>
        each.map((own, index) => ({ ...all, ...(index === 0 && onHand && { onHand }), ...own }));
      const written = { any: bought([...sheet, ...sheets]), in: bought(inchSheet), mm: bought(metricSheet) };
      return {
        ...stock,
        id: { value: key, at },
        name: name?.value ?? spoken(key),
        ...sheetsOfEditions(written, rulerUnit(reader.unit)),
      };
    },
  ),
);

/** The name of what has none: its id as a person says it. */
function spoken(id: string): string {
  const words = id
    .replace(/^shared\./u, '')
    .replace(/[-_]+/gu, ' ')
    .trim();
  return words.charAt(0).toUpperCase() + words.slice(1);
}
