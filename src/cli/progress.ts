import { Presets, SingleBar } from 'cli-progress';
import type { Progress } from '../make/work.ts';
import type { CommonOptions, Terminal } from './terminal.ts';

/** A bar on a terminal, a plain line per file elsewhere, nothing when quiet. */
export function progressOn(terminal: Terminal, options: CommonOptions): Progress {
  if (options.quiet) return { begin: () => {}, working: () => {}, end: () => {} };
  return terminal.stderr.isTTY === true ? barOn(terminal) : linesOn(terminal);
}

function linesOn({ stderr }: Terminal): Progress {
  return {
    begin: () => {},
    working: (path) => void stderr.write(`making ${path}\n`),
    end: () => {},
  };
}

function barOn({ stderr }: Terminal): Progress {
  const bar = new SingleBar(
    { stream: stderr, format: '{bar} {value}/{total}  {path}', hideCursor: true, clearOnComplete: true },
    Presets.shades_classic,
  );
  let running = false;
  return {
    begin: (total) => {
      if (total === 0) return;
      bar.start(total, 0, { path: '' });
      running = true;
    },
    working: (path) => {
      if (running) bar.increment(1, { path });
    },
    end: () => {
      if (running) bar.stop();
      running = false;
    },
  };
}
