import type { Length } from '../../measure/length.ts';
import { printDecimal } from '../../measure/print.ts';
import type { Size } from '../../measure/size.ts';
import type { Money } from '../../project/stock.ts';
import type { CutPiece, Kit, SheetLayout, StockPlan } from '../plan.ts';
import { offcutsIn } from '../sheet-tree.ts';
import { type Amount, lengthOf } from '../shopping/amount.ts';
import { type Currency, lengthFigures, moneyFigure } from './figures.ts';

/** What a row says, by column; what a row has not is empty. */
type CsvRow = Readonly<Partial<Record<Column, string | number | bigint | undefined>>>;

/** `list` says what a row is: a sheet size to cut, a piece, a cut, an off-cut, a thing to buy, a sum. */
const COLUMNS = [
  'list',
  'stock',
  'layout',
  'step',
  'item',
  'count',
  'width in',
  'height in',
  'width mm',
  'height mm',
  'from',
  'setting in',
  'setting mm',
  'needed',
  'to get',
  'pack',
  'buy',
  'price',
  'cost',
  'unknown',
] as const;

type Column = (typeof COLUMNS)[number];

/** A kit as one table for a spreadsheet: RFC 4180, with a header, every record ended by CR and LF. */
export function kitCsv(kit: Kit, currency: Currency): string {
  const rows = [...kit.stocks.flatMap(stockRows), ...shoppingRows(kit, currency), ...sumRows(kit, currency)];
  const records = [
    COLUMNS.map(String),
    ...rows.map((row) => COLUMNS.map((column) => String(row[column] ?? ''))),
  ];
  return records.map((fields) => `${fields.map((field) => quoted(asText(field))).join(',')}\r\n`).join('');
}

/**
 * A spreadsheet takes a field for a formula that begins like one, and a name from somebody else's project must not be
 * worked out: an apostrophe before it makes it text (OWASP, "CSV Injection"). A number below nothing stays one.
 */
function asText(field: string): string {
  return /^[=+\-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20]/u.test(field) && !/^-\d+(?:\.\d+)?$/u.test(field)
    ? `'${field}`
    : field;
}

/** RFC 4180, 2.5 to 2.7: a field with a comma, a quote or a line break is quoted, a quote within it doubled. */
function quoted(field: string): string {
  return /[",\r\n]/u.test(field) ? `"${field.replaceAll('"', '""')}"` : field;
}

function stockRows({ stock, layouts }: StockPlan): readonly CsvRow[] {
  return layouts.flatMap((layout, index) =>
    layoutRows(layout, stock.name).map((row) => ({ stock: stock.id.value, layout: index + 1, ...row })),
  );
}

/** Counts are those of all sheets of the layout; of cuts those of one sheet. */
function layoutRows({ tree, count, named, steps }: SheetLayout, stock: string): readonly CsvRow[] {
  const pieces = new Map<CutPiece, number>();
  for (const sheets of named)
    for (const piece of sheets.pieces) pieces.set(piece, (pieces.get(piece) ?? 0) + sheets.count);
  return [
    { list: 'sheet', item: stock, count, ...sizeOf(tree) },
    ...[...pieces].map(([{ name, size }, cut]) => ({
      list: 'piece',
      item: name,
      count: cut,
      ...sizeOf(size),
    })),
    ...steps.map(({ cuts, from, setting }, index) => ({
      list: 'cut',
      step: index + 1,
      count: cuts.flat().length,
      ...(cuts[0]?.[0] && sizeOf(cuts[0][0])),
      from,
      ...lengthIn('setting', setting),
    })),
    ...offcutsIn(tree).map((box) => ({ list: 'off-cut', count, ...sizeOf(box) })),
  ];
}

function sizeOf({ width, height }: Size): CsvRow {
  return { ...lengthIn('width', width), ...lengthIn('height', height) };
}

function lengthIn(column: 'width' | 'height' | 'setting', length: Length): CsvRow {
  const { in: inches, mm } = lengthFigures(length);
  return { [`${column} in`]: inches, [`${column} mm`]: mm };
}

function shoppingRows({ shopping, project: { unit } }: Kit, { decimals }: Currency): readonly CsvRow[] {
  const amount = (value: Amount | undefined): string | undefined => value && amountText(value, unit);
  return shopping.map(({ item, sheet, needed, written, toGet, pack, buy, price, cost, gaps }) => ({
    list: 'buy',
    item,
    ...(sheet && sizeOf(sheet)),
    needed: amount(needed) ?? written,
    'to get': amount(toGet),
    pack: amount(pack),
    buy,
    price: price && moneyFigure(price, decimals),
    cost: cost && moneyFigure(cost, decimals),
    unknown: gaps.join(' '),
  }));
}

function sumRows(
  { cost: { toBuy, used, perAttendee, price } }: Kit,
  { decimals }: Currency,
): readonly CsvRow[] {
  const row = (item: string, total: Money | undefined, without: readonly string[]): CsvRow => ({
    list: 'sum',
    item,
    cost: total && moneyFigure(total, decimals),
    unknown: without.length > 0 ? `without ${without.join('; ')}` : undefined,
  });
  return [
    row('to buy', toBuy.total, toBuy.without),
    row('used by the kits', used.total, used.without),
    row('used for each attendee', perAttendee, used.without),
    ...(price ? [row(`price at a margin of ${price.margin.toString()} %`, price.each, used.without)] : []),
  ];
}

function amountText(amount: Amount, unit: 'in' | 'mm' | 'cm'): string {
  if (amount.kind === 'count') return String(amount.value.valueOf());
  const length = lengthOf(amount);
  return unit === 'in' ? `${printDecimal(length, 'in', 3)} in` : `${printDecimal(length, 'cm', 1)} cm`;
}
