import { resolve } from 'node:path';
import { openPreview, type PreviewOptions } from '../preview/preview.ts';
import { printFindings } from '../proof/print.ts';
import { today } from './make.ts';
import { type CommandRun, type CommonOptions, count, inkFor, Refusal, type Terminal } from './terminal.ts';
import { workspaceFolder } from './workspace-folder.ts';

type PreviewCommand = CommonOptions & {
  readonly port: string;
  readonly out: string;
  readonly browser?: string;
};

/** `sheetwright preview [workspace]` */
export const run: CommandRun<PreviewCommand> = async ([named], options, terminal) => {
  const preview = await openPreview({
    root: workspaceFolder(named, terminal.cwd),
    out: resolve(terminal.cwd, options.out),
    namedFrom: terminal.cwd,
    today: today(),
    port: portOf(options.port),
    browser: options.browser,
    told: teller(terminal, options),
  });
  terminal.stdout.write(`preview at ${preview.address} (Ctrl-C ends it)\n`);
  await ended(terminal);
  await preview.close();
  return 0;
};

/** Prints what a make brought: findings only where they are others than before. */
function teller(terminal: Terminal, options: PreviewCommand): PreviewOptions['told'] {
  const ink = inkFor(terminal, options);
  let before = '';
  return ({ findings, trouble, touched, seconds }) => {
    if (trouble !== undefined) terminal.stderr.write(`sheetwright: ${trouble}\n`);
    const found = printFindings(findings, { ink, summary: false });
    if (found !== before && trouble === undefined) terminal.stdout.write(found || 'nothing found any more\n');
    before = found;
    if (options.quiet || touched === 0) return;
    terminal.stdout.write(`${count(touched, 'file')} new or changed in ${seconds.toFixed(1)} s\n`);
  };
}

function portOf(text: string): number {
  const port = Number(text);
  if (Number.isInteger(port) && port >= 0 && port < 65_536) return port;
  throw new Refusal(`"${text}" is no port: give a number from 1 to 65535, or 0 for any free one`);
}

/** Until Ctrl-C, or whatever ends the command in its place. */
function ended({ ends }: Terminal): Promise<void> {
  return new Promise((resolve) => {
    const signals = ['SIGINT', 'SIGTERM'] as const;
    const end = (): void => {
      for (const signal of signals) process.off(signal, end);
      resolve();
    };
    if (ends?.aborted) return resolve();
    ends?.addEventListener('abort', end, { once: true });
    for (const signal of signals) process.on(signal, end);
  });
}
