import { Length } from '../../measure/length.ts';
import { roundDecimals } from '../../measure/round.ts';
import type { Size } from '../../measure/size.ts';
import type { Money } from '../../project/stock.ts';
import type { Kit, NamedSheets, SheetLayout, StockPlan } from '../plan.ts';
import { type PaperBox, piecesIn } from '../sheet-tree.ts';
import { type Amount, lengthOf } from '../shopping/amount.ts';
import type { Sum } from '../shopping/cost.ts';
import type { ShoppingLine } from '../shopping/line.ts';
import type { ClassPrice, Shares } from '../shopping/price.ts';
import type { BenchWork } from './csv.ts';
import { type Currency, countFigure, lengthFigures, moneyFigure } from './figures.ts';

/**
 * A kit for another program, as one JSON object: `{project, attendees, spares, stocks, shopping, cost}`, of a
 * project with variants also `variants: [{variant, attendees}]`. Lengths are
 * `{"in": "2 1/4", "mm": 57.15}`, `x` and `y` from a sheet's left and top edge; money is text with all its decimals;
 * what is not known is `null`.
 */
export function kitJson(kit: Kit, currency: Currency): string {
  const { project, makings, attendees, spares, weight } = kit;
  const work = benchValue(kit, currency);
  return jsonText({
    project: project.slug,
    attendees,
    spares,
    ...(project.variant && {
      variants: makings.map(({ variant, attendees: own }) => ({ variant, attendees: own })),
    }),
    ...work,
    cost: { ...work.cost, weight: weightValue(weight, attendees + spares) },
  });
}

/** What is cut, bought and paid: of a kit, or of several sessions together. */
export function benchValue(
  work: BenchWork,
  { code, decimals }: Currency,
): { readonly stocks: object; readonly shopping: object; readonly cost: object } {
  const money = (value: Money | undefined): string | undefined => value && moneyFigure(value, decimals);
  return {
    stocks: work.stocks.map(stockValue),
    shopping: work.shopping.map((line) => lineValue(line, money)),
    cost: { currency: code, ...costValue(work, money) },
  };
}

/** A value as JSON, its lengths and amounts as they are given to other programs. */
export function jsonText(value: object): string {
  return `${JSON.stringify(value, asPlain, 1)}\n`;
}

type MoneyText = (value: Money | undefined) => string | undefined;

function asPlain(_: string, value: unknown): unknown {
  if (value instanceof Length) return lengthFigures(value);
  return typeof value === 'bigint' ? Number(value) : (value ?? null);
}

function stockValue({ stock, total, bound, proven, seconds, layouts }: StockPlan): object {
  return {
    stock: stock.id.value,
    total,
    bound,
    proven,
    seconds: roundDecimals(seconds, 3),
    layouts: layouts.flatMap((layout) => layout.named.map((sheets) => layoutValue(layout, sheets))),
  };
}

/** Sheets that are cut alike but give pieces of other names are layouts of their own. */
function layoutValue({ tree, steps }: SheetLayout, { count, pieces }: NamedSheets): object {
  return {
    sheet: sizeValue(tree),
    count,
    placements: piecesIn(tree).map((placed, index) => {
      const { name, flipped } = pieces[index] ?? {};
      return { piece: name, ...boxValue(placed), turned: placed.turned !== flipped };
    }),
    cuts: steps.flatMap(({ cuts, from, setting, length }, index) =>
      cuts.flat().map((part) => ({ step: index + 1, part: boxValue(part), from, setting, length })),
    ),
  };
}

function sizeValue({ width, height }: Size): Size {
  return { width, height };
}

function boxValue({ left, top, ...size }: PaperBox): object {
  return { x: left, y: top, ...sizeValue(size) };
}

function lineValue(line: ShoppingLine, money: MoneyText): object {
  const { item, kind, sheet, each, written, needed, onHand, toGet, pack, buy, price, cost, gaps } = line;
  return {
    item,
    kind,
    ...(sheet && { sheet }),
    each: amountValue(each) ?? written,
    needed: amountValue(needed),
    onHand: amountValue(onHand),
    toGet: amountValue(toGet),
    pack: amountValue(pack),
    buy,
    price: money(price),
    cost: money(cost),
    unknown: gaps,
  };
}

function amountValue(amount: Amount | undefined): Length | number | undefined {
  return amount && (amount.kind === 'length' ? lengthOf(amount) : countFigure(amount.value));
}

function costValue({ cost, stocks }: BenchWork, money: MoneyText): object {
  const { toBuy, used, perAttendee, price } = cost;
  const priced = stocks.flatMap(({ stock, price: own, proven }) =>
    own ? [{ stock: stock.id.value, total: money(own.total), bound: money(own.bound), proven }] : [],
  );
  const sum = ({ total, without }: Sum): object => ({ total: money(total), without });
  return {
    toBuy: sum(toBuy),
    used: sum(used),
    perAttendee: money(perAttendee),
    price: price && priceValue(price, money),
    severalSheetSizes: priced,
  };
}

function priceValue({ parts, margin, left, price }: ClassPrice, money: MoneyText): object {
  const value = (shares: Shares | undefined): object => ({
    all: money(shares?.all),
    each: money(shares?.each),
  });
  return {
    marginPercent: margin && countFigure(margin),
    ...value(price),
    parts: parts.map(({ kind, shares, count }) => ({
      part: kind,
      ...(count && { count: countFigure(count) }),
      ...value(shares),
    })),
    left: value(left),
  };
}

function weightValue({ gramsPerKit, without }: Kit['weight'], kits: number): object {
  return {
    gramsPerKit: roundDecimals(gramsPerKit, 1),
    grams: roundDecimals(gramsPerKit * kits, 1),
    without,
  };
}
