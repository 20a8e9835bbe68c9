import { Presets, SingleBar } from 'cli-progress';
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
