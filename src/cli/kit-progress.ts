import type { KitProgress } from '../kit/kit.ts';
import type { CommonOptions, Terminal } from './terminal.ts';

/** How a search is told: `tell` at each better plan, `end` once. */
export type KitTelling = { readonly tell: KitProgress; readonly end: () => void };

/** One line that changes on a terminal, a plain line each elsewhere, nothing when quiet. */
export function kitProgressOn({ stderr }: Terminal, options: CommonOptions): KitTelling {
  if (options.quiet) return { tell: () => {}, end: () => {} };
  const isTerminal = stderr.isTTY === true;
  return {
    tell: (stock, { cost, bound, isPriced }) => {
      const found = isPriced
        ? `a plan found, the cheapest costs at least ${Math.floor((100 * bound) / cost)} % of this one`
        : `${cost} found, at least ${bound} needed`;
      const text = `planning ${stock}: ${found}`;
      stderr.write(isTerminal ? `\r\u001b[K${text}` : `${text}\n`);
    },
    end: () => {
      if (isTerminal) stderr.write('\r\u001b[K');
    },
  };
}
