import type { Size } from '../../measure/size.ts';
import type { Money } from '../../project/model.ts';
import type { PieceKind } from '../demand.ts';
import type { Kit } from '../kit.ts';
import type { PieceNames } from '../piece-names.ts';
import type { SheetLayout, StockPlan } from '../plan.ts';
import { type PaperBox, piecesIn } from '../sheet-tree.ts';
import { type Amount, lengthOf } from '../shopping/amount.ts';
import type { Sum } from '../shopping/cost.ts';
import type { ShoppingLine } from '../shopping/line.ts';
import { lengthFigures, moneyFigure } from './figures.ts';

/** The currency of all prices, and how many decimals it has. */
export type Currency = { readonly code: string; readonly decimals: number };

/**
 * A kit for another program, as one JSON object: `{project, attendees, spares, stocks, shopping, cost}`. Lengths are
 * `{"in": "2 1/4", "mm": 57.15}`, `x` and `y` from a sheet's left and top edge; money is text with all its decimals;
 * what is not known is `null`.
 */
export function kitJson(kit: Kit, currency: Currency): string {
  const { project, attendees, spares, stocks, shopping } = kit;
  const value = {
    project: project.slug,
    attendees,
    spares,
    stocks: stocks.map(stockValue),
    shopping: shopping.map((line) => lineValue(line, currency)),
    cost: costValue(kit, currency),
  };
  return `${JSON.stringify(value, null, 1)}\n`;
}

function stockValue({ stock, kinds, total, bound, proven, seconds, layouts }: StockPlan): object {
  return {
    stock: stock.id.value,
    total,
    bound,
    proven,
    seconds: Math.round(seconds * 1000) / 1000,
    layouts: layouts.flatMap((layout) => layout.names.map((names) => layoutValue(layout, names, kinds))),
  };
}

/** Sheets that are cut alike but give pieces of other names are layouts of their own. */
function layoutValue(
  { tree, steps }: SheetLayout,
  { count, names }: PieceNames,
  kinds: readonly PieceKind[],
): object {
  return {
    sheet: sizeValue(tree),
    count,
    placements: piecesIn(tree).map((placed, index) => {
      const piece = names[index] ?? '';
      const flipped = kinds[placed.blank]?.pieces.find(({ name }) => name === piece)?.flipped === true;
      return { piece, ...boxValue(placed), turned: placed.turned !== flipped };
    }),
    cuts: steps.flatMap(({ cuts, from, setting, length }, index) =>
      cuts.flat().map((part) => ({
        step: index + 1,
        part: boxValue(part),
        from,
        setting: lengthFigures(setting),
        length: lengthFigures(length),
      })),
    ),
  };
}

function sizeValue({ width, height }: Size): object {
  return { width: lengthFigures(width), height: lengthFigures(height) };
}

function boxValue(box: PaperBox): object {
  return { x: lengthFigures(box.left), y: lengthFigures(box.top), ...sizeValue(box) };
}

function lineValue(line: ShoppingLine, currency: Currency): object {
  const { item, kind, sheet, each, written, needed, onHand, toGet, pack, buy, price, cost, gaps } = line;
  return {
    item,
    kind,
    ...(sheet && { sheet: sizeValue(sheet) }),
    each: each ? amountValue(each) : (written ?? null),
    needed: amountValue(needed),
    onHand: amountValue(onHand),
    toGet: amountValue(toGet),
    pack: amountValue(pack),
    buy: buy === undefined ? null : Number(buy),
    price: moneyValue(price, currency),
    cost: moneyValue(cost, currency),
    unknown: gaps,
  };
}

function amountValue(amount: Amount | undefined): object | number | null {
  if (!amount) return null;
  return amount.kind === 'length' ? lengthFigures(lengthOf(amount)) : amount.value.valueOf();
}

function costValue({ cost, weight, attendees, spares, stocks }: Kit, currency: Currency): object {
  const money = (value: Money | undefined): string | null => moneyValue(value, currency);
  const sum = ({ total, without }: Sum): object => ({ total: money(total), without });
  const priced = stocks.flatMap(({ stock, price, proven }) =>
    price ? [{ stock: stock.id.value, total: money(price.total), bound: money(price.bound), proven }] : [],
  );
  return {
    currency: currency.code,
    toBuy: sum(cost.toBuy),
    used: sum(cost.used),
    perAttendee: money(cost.perAttendee),
    price: cost.price ? { marginPercent: cost.price.margin.valueOf(), each: money(cost.price.each) } : null,
    severalSheetSizes: priced,
    weight: {
      gramsPerKit: tenths(weight.gramsPerKit),
      grams: tenths(weight.gramsPerKit * (attendees + spares)),
      without: weight.without,
    },
  };
}

function moneyValue(money: Money | undefined, { decimals }: Currency): string | null {
  return money ? moneyFigure(money, decimals) : null;
}

function tenths(grams: number): number {
  return Math.round(grams * 10) / 10;
}
