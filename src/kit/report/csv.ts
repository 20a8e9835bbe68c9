import { printDecimal, printInches } from '../../measure/print.ts';
import { quarterTurned, type Size } from '../../measure/size.ts';
import type { Money } from '../../project/model.ts';
import type { PieceKind } from '../demand.ts';
import type { Kit } from '../kit.ts';
import type { SheetLayout, StockPlan } from '../plan.ts';
import { offcutsIn } from '../sheet-tree.ts';
import { type Amount, lengthOf } from '../shopping/amount.ts';
import { mmFigure, moneyFigure } from './figures.ts';
import type { Currency } from './json.ts';

/** What a row says, by column; what a row has not is empty. */
type CsvRow = Readonly<Partial<Record<Column, string | number>>>;

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
  return records.map((fields) => `${fields.map(quoted).join(',')}\r\n`).join('');
}

/** RFC 4180, 2.5 to 2.7: a field with a comma, a quote or a line break is quoted, a quote within it doubled. */
function quoted(field: string): string {
  return /[",\r\n]/u.test(field) ? `"${field.replaceAll('"', '""')}"` : field;
}

function stockRows(plan: StockPlan): readonly CsvRow[] {
  return plan.layouts.flatMap((layout, index) => layoutRows(plan, layout, index + 1));
}

/** Counts are those of all sheets of the layout; of cuts those of one sheet. */
function layoutRows({ stock, kinds }: StockPlan, layout: SheetLayout, number: number): readonly CsvRow[] {
  const common = { stock: stock.id.value, layout: number };
  const { tree, count } = layout;
  return [
    { ...common, list: 'sheet', item: stock.name, count, ...sizeOf(tree) },
    ...countNames(layout).map(([name, cut]) => {
      const kind = kinds.find(({ pieces }) => pieces.some((piece) => piece.name === name));
      return { ...common, list: 'piece', item: name, count: cut, ...(kind && sizeOf(sizeNamed(kind, name))) };
    }),
    ...layout.steps.map(({ cuts, from, setting }, index) => ({
      ...common,
      list: 'cut',
      step: index + 1,
      count: cuts.flat().length,
      ...(cuts[0]?.[0] && sizeOf(cuts[0][0])),
      from,
      'setting in': printInches(setting, 'plain'),
      'setting mm': mmFigure(setting),
    })),
    ...offcutsIn(tree).map((box) => ({ ...common, list: 'off-cut', count, ...sizeOf(box) })),
  ];
}

/** How many of each piece all sheets of a layout give, in the order they are cut. */
function countNames({ names: ways }: SheetLayout): readonly (readonly [string, number])[] {
  const counts = new Map<string, number>();
  for (const { count, names } of ways)
    for (const name of names) counts.set(name, (counts.get(name) ?? 0) + count);
  return [...counts];
}

/** A piece's size as the project gives it, however it lies on the sheet. */
function sizeNamed({ pieces, size }: PieceKind, name: string): Size {
  const isFlipped = pieces.some((piece) => piece.name === name && piece.flipped);
  return isFlipped ? quarterTurned(size) : size;
}

function sizeOf({ width, height }: Size): CsvRow {
  return {
    'width in': printInches(width, 'plain'),
    'height in': printInches(height, 'plain'),
    'width mm': mmFigure(width),
    'height mm': mmFigure(height),
  };
}

function shoppingRows({ shopping, project }: Kit, currency: Currency): readonly CsvRow[] {
  const amount = (value: Amount | undefined): string => (value ? amountText(value, project.unit) : '');
  return shopping.map((line) => ({
    list: 'buy',
    item: line.item,
    ...(line.sheet ? sizeOf(line.sheet) : {}),
    needed: line.needed ? amount(line.needed) : (line.written ?? ''),
    'to get': amount(line.toGet),
    pack: amount(line.pack),
    buy: line.buy === undefined ? '' : String(line.buy),
    price: money(line.price, currency),
    cost: money(line.cost, currency),
    unknown: line.gaps.join(' '),
  }));
}

function sumRows({ cost }: Kit, currency: Currency): readonly CsvRow[] {
  const row = (item: string, total: Money | undefined, without: readonly string[]): CsvRow => ({
    list: 'sum',
    item,
    cost: money(total, currency),
    unknown: without.length > 0 ? `without ${without.join('; ')}` : '',
  });
  return [
    row('to buy', cost.toBuy.total, cost.toBuy.without),
    row('used by the kits', cost.used.total, cost.used.without),
    row('used for each attendee', cost.perAttendee, cost.used.without),
    ...(cost.price
      ? [row(`price at a margin of ${cost.price.margin.toString()} %`, cost.price.each, cost.used.without)]
      : []),
  ];
}

function money(value: Money | undefined, { decimals }: Currency): string {
  return value ? moneyFigure(value, decimals) : '';
}

function amountText(amount: Amount, unit: 'in' | 'mm' | 'cm'): string {
  if (amount.kind === 'count') return String(amount.value.valueOf());
  const length = lengthOf(amount);
  return unit === 'in' ? `${printDecimal(length, 'in', 3)} in` : `${printDecimal(length, 'cm', 1)} cm`;
}
