import { networkInterfaces } from 'node:os';
import { resolve } from 'node:path';
import { openPreview } from '../preview/preview.ts';
import type { Preview, PreviewOptions } from '../preview/preview-options.ts';
import { printFindings } from '../proof/print.ts';
import type { Told } from '../proof/told.ts';
import { sayCount } from '../proof/words.ts';
import { today } from './make.ts';
import { type CommandRun, type CommonOptions, inkFor, Refusal, type Terminal } from './terminal.ts';
import { workspaceFolder } from './workspace-folder.ts';

type PreviewCommand = CommonOptions & {
  readonly port: string;
  readonly host?: boolean;
  readonly out: string;
  readonly browser?: string;
};

/** `sheetwright preview [workspace]` */
export const run: CommandRun<PreviewCommand> = async ([named], options, terminal) => {
  const wanted = portOf(options.port);
  const invite = (port: number, key: string): void => {
    for (const address of ownAddresses()) terminal.stdout.write(`  http://${address}:${port}/?key=${key}\n`);
  };
  const preview: Preview = await openPreview({
    root: workspaceFolder(named, terminal.cwd),
    out: resolve(terminal.cwd, options.out),
    namedFrom: terminal.cwd,
    today: today(),
    port: wanted,
    host: options.host,
    entered: (key) => {
      terminal.stdout.write('a device came in; for another:\n');
      invite(preview.port, key);
    },
    browser: options.browser,
    told: teller(terminal, options),
  });
  const { port, address, key } = preview;
  if (wanted !== 0 && port !== wanted) {
    terminal.stdout.write(
      `port ${wanted} is taken, perhaps by another preview: this one is on ${port}; end the other, or choose with --port\n`,
    );
  }
  terminal.stdout.write(`preview at ${address} (Ctrl-C ends it)\n`);
  if (options.host) {
    terminal.stdout.write(OPEN);
    invite(port, key);
  }
  await ended(terminal);
  await preview.close();
  return 0;
};

const OPEN = `on your phone, in the same network, open this address; it lets one device in:
(what is shown is not encrypted: use --host at home, not in a network that you share with strangers)
`;

/** Where other devices of the network find this one. */
function ownAddresses(): readonly string[] {
  const all = Object.values(networkInterfaces()).flatMap((each) => each ?? []);
  return all.filter(({ family, internal }) => family === 'IPv4' && !internal).map(({ address }) => address);
}

/** Prints what a make brought: the findings of those files alone in which they are others than before. */
function teller(terminal: Terminal, options: PreviewCommand): PreviewOptions['told'] {
  const ink = inkFor(terminal, options);
  let before: FoundIn = new Map();
  let isHalted = false;
  return ({ findings, trouble, touched, seconds }) => {
    if (trouble !== undefined) {
      terminal.stderr.write(`sheetwright: ${trouble}\n`);
    } else {
      if (isHalted) terminal.stdout.write('the preview goes on\n');
      const found = printByFile(findings, ink);
      terminal.stdout.write(sayFound(before, found));
      before = found;
    }
    isHalted = trouble !== undefined;
    if (options.quiet || touched.length === 0) return;
    terminal.stdout.write(`${sayTouched(touched)} in ${seconds.toFixed(1)} s\n`);
  };
}

/** What was found in each file, by its path, as it is printed. */
type FoundIn = ReadonlyMap<string, string>;

function printByFile(findings: readonly Told[], ink: ReturnType<typeof inkFor>): FoundIn {
  const files = new Map<string, Told[]>();
  for (const finding of findings) {
    const { path } = finding.at.file;
    files.set(path, [...(files.get(path) ?? []), finding]);
  }
  return new Map(Array.from(files, ([path, own]) => [path, printFindings(own, { ink, summary: false })]));
}

function sayFound(before: FoundIn, now: FoundIn): string {
  const clean = [...before.keys()].filter((path) => !now.has(path));
  if (clean.length > 0 && now.size === 0) return 'no findings left\n';
  const others = [...now].filter(([path, found]) => before.get(path) !== found).map(([, found]) => found);
  return `${clean.map((path) => `no findings left in ${path}\n`).join('')}${others.join('\n')}`;
}

const FEW = 3;

/** `seed-box: 2 files new or changed`, with the projects that they are of where these are few. */
function sayTouched(paths: readonly string[]): string {
  const projects = new Set(paths.flatMap((path) => /^site\/(?!assets\/)([^/]+)\//u.exec(path)?.[1] ?? []));
  const files = `${sayCount(paths.length, 'file')} new or changed`;
  return projects.size > 0 && projects.size <= FEW ? `${[...projects].join(', ')}: ${files}` : files;
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
