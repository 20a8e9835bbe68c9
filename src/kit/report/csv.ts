import type { Length, Unit } from '../../measure/length.ts';
import { printDecimal } from '../../measure/print.ts';
import type { Size } from '../../measure/size.ts';
import type { Money } from '../../project/stock.ts';
import type { CutPiece, Kit, SheetLayout, StockPlan } from '../plan.ts';
import { offcutsIn } from '../sheet-tree.ts';
import { type Amount, lengthOf } from '../shopping/amount.ts';
import type { ClassPrice, Shares } from '../shopping/price.ts';
import { type Currency, countFigure, lengthFigures, moneyFigure } from './figures.ts';
import { type CsvField, tableCsv } from './table.ts';

/** What a row says, by column; what a row has not is empty. */
type CsvRow = Readonly<Partial<Record<CsvColumn, CsvField>>>;

/** What is cut, bought and paid. */
export type BenchWork = Pick<Kit, 'stocks' | 'shopping' | 'cost'>;

/** `list` says what a row is: a sheet size to cut, a piece, a cut, an off-cut, a thing to buy, a sum. */
export const COLUMNS = [
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

type CsvColumn = (typeof COLUMNS)[number];

/** A kit as one table for a spreadsheet. */
export function kitCsv(kit: Kit, currency: Currency): string {
  return tableCsv(COLUMNS, benchRows(kit, currency));
}

/** What is cut, bought and paid: of a kit, or of several sessions together. */
export function benchRows(work: BenchWork, currency: Currency): readonly CsvRow[] {
  return [
    ...work.stocks.flatMap(stockRows),
    ...shoppingRows(work.shopping, currency),
    ...sumRows(work.cost, currency),
  ];
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

function shoppingRows(shopping: Kit['shopping'], { decimals }: Currency): readonly CsvRow[] {
  return shopping.map(({ unit, item, sheet, needed, written, toGet, pack, buy, price, cost, gaps }) => ({
    list: 'buy',
    item,
    ...(sheet && sizeOf(sheet)),
    needed: amountIn(unit, needed) ?? written,
    'to get': amountIn(unit, toGet),
    pack: amountIn(unit, pack),
    buy,
    price: price && moneyFigure(price, decimals),
    cost: cost && moneyFigure(cost, decimals),
    unknown: gaps.join(' '),
  }));
}

function sumRows(
  { toBuy, used, perAttendee, price }: Kit['cost'],
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
    ...(price ? priceRows(price, used.without, decimals) : []),
  ];
}

/** A row for each part of the price: `price` is for each person, `cost` for the class. */
function priceRows(
  { parts, margin, left, price }: ClassPrice,
  without: readonly string[],
  decimals: number,
): readonly CsvRow[] {
  const row = (item: string, shares: Shares | undefined, count?: number): CsvRow => ({
    list: 'price',
    item,
    count,
    price: shares && moneyFigure(shares.each, decimals),
    cost: shares && moneyFigure(shares.all, decimals),
    unknown: shares ? undefined : 'not given',
  });
  const own = parts.map(({ kind, shares, count }) => ({
    ...row(kind, shares, count && countFigure(count)),
    ...(kind === 'materials' && without.length > 0 && { unknown: `without ${without.join('; ')}` }),
  }));
  const last = margin ? `margin ${margin.toString()} %` : 'rounding';
  return [...own, row(last, left), row('price', price)];
}

function amountIn(unit: Unit, amount: Amount | undefined): string | undefined {
  if (!amount) return undefined;
  if (amount.kind === 'count') return `${countFigure(amount.value)}`;
  const length = lengthOf(amount);
  return unit === 'in' ? `${printDecimal(length, 'in', 3)} in` : `${printDecimal(length, 'cm', 1)} cm`;
}
