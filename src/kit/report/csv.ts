import { printDecimal, printInches } from '../../measure/print.ts';
import { quarterTurned, type Size } from '../../measure/size.ts';
import type { Money } from '../../project/model.ts';
import type { Kit } from '../kit.ts';
import type { Layout, PieceKind, StockPlan } from '../plan.ts';
import { type Amount, lengthOf } from '../shopping/amount.ts';
import { mmFigure, moneyFigure } from './figures.ts';
import type { Currency } from './json.ts';

/** What a row says, by column; what a row has not is empty. */
type Row = Readonly<Partial<Record<Column, string | number>>>;

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

function stockRows(plan: StockPlan): readonly Row[] {
  return plan.layouts.flatMap((layout, index) => layoutRows(plan, layout, index + 1));
}

/** Counts are those of all sheets of the layout; of cuts those of one sheet. */
function layoutRows({ stock, kinds }: StockPlan, layout: Layout, number: number): readonly Row[] {
  const common = { stock: stock.id.value, layout: number };
  const pieces = layout.namings.flatMap(({ count, names }) =>
    layout.placements.map((placement, index) => ({ name: names[index] ?? '', placement, count })),
  );
  const named = [...new Set(pieces.map(({ name }) => name))].flatMap((name) => {
    const own = pieces.filter((piece) => piece.name === name);
    const [first] = own;
    const count = own.reduce((sum, piece) => sum + piece.count, 0);
    const kind = first && kinds[first.placement.kind];
    return kind ? [{ ...common, list: 'piece', item: name, count, ...sizeOf(sizeNamed(kind, name)) }] : [];
  });
  return [
    { ...common, list: 'sheet', item: stock.name, count: layout.count, ...sizeOf(layout.size) },
    ...named,
    ...layout.steps.map((step) => ({
      ...common,
      list: 'cut',
      step: step.number,
      count: step.part.count * step.cutsEach,
      ...sizeOf(step.part),
      from: step.from,
      'setting in': printInches(step.setting, 'plain'),
      'setting mm': mmFigure(step.setting),
    })),
    ...layout.offcuts.map((box) => ({ ...common, list: 'off-cut', count: layout.count, ...sizeOf(box) })),
  ];
}

/** A piece's size as the project gives it, however it lies on the sheet. */
function sizeNamed({ pieces, size }: PieceKind, name: string): Size {
  const isFlipped = pieces.some((piece) => piece.name === name && piece.flipped);
  return isFlipped ? quarterTurned(size) : size;
}

function sizeOf({ width, height }: Size): Row {
  return {
    'width in': printInches(width, 'plain'),
    'height in': printInches(height, 'plain'),
    'width mm': mmFigure(width),
    'height mm': mmFigure(height),
  };
}

function shoppingRows({ shopping, project }: Kit, currency: Currency): readonly Row[] {
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

function sumRows({ cost }: Kit, currency: Currency): readonly Row[] {
  const row = (item: string, total: Money | undefined, without: readonly string[]): Row => ({
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
