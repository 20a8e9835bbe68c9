import type { KitProgress } from '../kit/kit.ts';
import type { StockPlan } from '../kit/plan.ts';
import { type Currency, moneyFigure } from '../kit/report/figures.ts';
import type { Cost } from '../kit/shopping/cost.ts';
import type { ClassPrice, PricePart } from '../kit/shopping/price.ts';
import type { Project } from '../project/model.ts';
import type { Money } from '../project/stock.ts';
import { printFindings } from '../proof/print.ts';
import type { Told } from '../proof/told.ts';
import { sayCount } from '../proof/words.ts';
import { type CommonOptions, inkFor, type Terminal } from './terminal.ts';

/** How a search is told: `tell` at each better plan, `end` once. */
type KitTelling = { readonly tell: KitProgress; readonly end: () => void };

/** One line that changes on a terminal, a plain line each elsewhere, nothing when quiet. */
export function kitProgressOn({ stderr }: Terminal, options: CommonOptions): KitTelling {
  if (options.quiet) return { tell: () => {}, end: () => {} };
  const isTerminal = stderr.isTTY === true;
  return {
    tell: (stock, { cost, bound, isPriced }) => {
      const found = isPriced
        ? `plan found; the cheapest possible costs at least ${Math.floor((100 * bound) / cost)}% of it`
        : `${cost} found, at least ${bound} needed`;
      const text = `planning ${stock}: ${found}`;
      stderr.write(isTerminal ? `\r\u001b[K${text}` : `${text}\n`);
    },
    end: () => {
      if (isTerminal) stderr.write('\r\u001b[K');
    },
  };
}

/** With `--json` or `--csv` nothing but that may stand on the standard output. */
export function tellFindings(
  findings: readonly Told[],
  projects: readonly Project[],
  options: CommonOptions & { readonly json?: boolean; readonly csv?: boolean },
  terminal: Terminal,
): void {
  const isData = options.json === true || options.csv === true;
  const ink = inkFor(terminal, isData ? { ...options, color: false } : options);
  const text = printFindings(findings, {
    ink,
    projects,
    summary: options.quiet !== true && !isData,
  });
  (isData ? terminal.stderr : terminal.stdout).write(text);
}

/** A line for each paper: how many sheets, and how sure it is that no fewer or cheaper ones would do. */
export function stockLines(stocks: readonly StockPlan[], currency: Currency): readonly string[] {
  const width = Math.max(...stocks.map(({ stock }) => stock.name.length));
  return stocks.map((plan) => `  ${plan.stock.name.padEnd(width)}  ${standing(plan, currency)}`);
}

/** What is paid and what is used up, each with what it leaves out. */
export function costLines(
  { toBuy, used, perAttendee, price }: Cost,
  currency: Currency,
  whom = 'each attendee',
): readonly string[] {
  const sum = (money: Money | undefined): string => (money ? moneyText(money, currency) : 'cost unknown');
  const without = (names: readonly string[]): string =>
    names.length > 0 ? `, without ${names.join(', ')}` : '';
  const each = perAttendee ? `, ${sum(perAttendee)} for ${whom}` : '';
  return [
    `to buy now: ${sum(toBuy.total)}${without(toBuy.without)}`,
    `used by the kits: ${sum(used.total)}${each}${without(used.without)}`,
    ...(price ? [priceLine(price, sum)] : []),
  ];
}

const PARTS: Readonly<Record<PricePart['kind'], string>> = {
  materials: 'materials',
  wear: 'tool wear',
  work: 'hours',
  room: 'room',
  platform: 'platform',
  postage: 'postage',
};

/** The price of a place, and what nothing is said of. */
function priceLine({ price, margin, parts }: ClassPrice, sum: (money: Money | undefined) => string): string {
  const missing = parts.flatMap(({ kind, shares }) => (shares ? [] : [PARTS[kind]]));
  const without = missing.length > 0 ? `; not given: ${missing.join(', ')}` : '';
  const left = margin ? ` at a margin of ${margin.toString()} %` : '';
  return `price of a place${left}: ${sum(price?.each)}${without}`;
}

function moneyText(money: Money, { code, decimals }: Currency): string {
  return `${moneyFigure(money, decimals)} ${code}`;
}

/** `24 sheets, proven the fewest`. */
function standing({ total, bound, proven, price, layouts, seconds }: StockPlan, currency: Currency): string {
  const least = price ? moneyText(price.bound, currency) : bound;
  const proof = proven ? `proven the ${price ? 'cheapest' : 'fewest'}` : `at least ${least} are needed`;
  return `${sayCount(total, 'sheet')} in ${sayCount(layouts.length, 'layout')}, ${proof} (${seconds.toFixed(1)} s)`;
}
