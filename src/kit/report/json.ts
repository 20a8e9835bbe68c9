import type { Money } from '../../project/model.ts';
import type { Kit } from '../kit.ts';
import type { Box, Cut, Layout, Naming, PieceKind, StockPlan } from '../plan.ts';
import { type Amount, lengthOf } from '../shopping/amount.ts';
import type { Sum } from '../shopping/cost.ts';
import type { Line } from '../shopping/line.ts';
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
    layouts: layouts.flatMap((layout) => layout.namings.map((naming) => layoutValue(layout, naming, kinds))),
  };
}

/** Sheets that are cut alike but give pieces of other names are layouts of their own. */
function layoutValue(
  { size, placements, cuts }: Layout,
  naming: Naming,
  kinds: readonly PieceKind[],
): object {
  return {
    sheet: { width: lengthFigures(size.width), height: lengthFigures(size.height) },
    count: naming.count,
    placements: placements.map((placement, index) => {
      const piece = naming.names[index] ?? '';
      const flipped = kinds[placement.kind]?.pieces.find(({ name }) => name === piece)?.flipped === true;
      return { piece, ...boxValue(placement), turned: placement.turned !== flipped };
    }),
    cuts: cuts.map(cutValue),
  };
}

function boxValue({ left, top, width, height }: Box): object {
  return {
    x: lengthFigures(left),
    y: lengthFigures(top),
    width: lengthFigures(width),
    height: lengthFigures(height),
  };
}

function cutValue({ step, part, from, setting, length }: Cut): object {
  return {
    step,
    part: boxValue(part),
    from,
    setting: lengthFigures(setting),
    length: lengthFigures(length),
  };
}

function lineValue(line: Line, currency: Currency): object {
  const { item, kind, sheet, each, written, needed, onHand, toGet, pack, buy, price, cost, gaps } = line;
  return {
    item,
    kind,
    ...(sheet ? { sheet: { width: lengthFigures(sheet.width), height: lengthFigures(sheet.height) } } : {}),
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
  const sum = ({ total, without }: Sum): object => ({ total: moneyValue(total, currency), without });
  const priced = stocks.flatMap(({ stock, price, proven }) =>
    price
      ? [
          {
            stock: stock.id.value,
            total: moneyValue(price.total, currency),
            bound: moneyValue(price.bound, currency),
            proven,
          },
        ]
      : [],
  );
  return {
    currency: currency.code,
    toBuy: sum(cost.toBuy),
    used: sum(cost.used),
    perAttendee: moneyValue(cost.perAttendee, currency),
    price: cost.price
      ? { marginPercent: cost.price.margin.valueOf(), each: moneyValue(cost.price.each, currency) }
      : null,
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
