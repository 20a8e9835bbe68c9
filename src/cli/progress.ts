import { Presets, SingleBar } from 'cli-progress';
import type { KitProgress } from '../kit/kit.ts';
import type { MakeProgress } from '../make/make.ts';
import type { CommonOptions, Terminal } from './terminal.ts';

/** A bar on a terminal, a plain line per file elsewhere, nothing when quiet. */
export function progressOn(terminal: Terminal, options: CommonOptions): MakeProgress | undefined {
  if (options.quiet) return undefined;
  return terminal.stderr.isTTY === true ? barOn(terminal) : linesOn(terminal);
}

function linesOn({ stderr }: Terminal): MakeProgress {
  return {
    begin: () => {},
    working: (path) => void stderr.write(`making ${path}\n`),
    passed: () => {},
    end: () => {},
  };
}

function barOn({ stderr }: Terminal): MakeProgress {
  const bar = new SingleBar(
    { stream: stderr, format: '{bar} {value}/{total}  {path}', hideCursor: true, clearOnComplete: true },
    Presets.shades_classic,
  );
  let running = false;
  return {
    begin: (projects) => {
      bar.start(projects, 0, { path: '' });
      running = true;
    },
    working: (path) => bar.update({ path }),
    passed: () => bar.increment(),
    end: () => {
      if (running) bar.stop();
      running = false;
    },
  };
}

/** How a search is told: `tell` at each better plan, `end` once. */
type KitTelling = { readonly tell: KitProgress; readonly end: () => void };

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
