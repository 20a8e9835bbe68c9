import { execFileSync } from 'node:child_process';
import { chmodSync, chownSync, cpSync, mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { readLedger } from '../../src/project/ledger/read-ledger.ts';
import { bytesOf, type Command, type Ended, type Ground, heard, ledgerAt, litterIn } from './ground.ts';

/** A number from 0 up to 1, the next of a series. */
export type Random = () => number;

/** A series of numbers that a seed stands for (mulberry32, T. Ettinger, public domain). */
export function randomOf(seed: number): Random {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** What was lost or left in a round; nothing, if all is well. */
export type Losses = readonly string[];

export type Round = (ground: Ground, random: Random) => Promise<Losses>;

const SIGNALS = ['SIGKILL', 'SIGKILL', 'SIGTERM', 'SIGINT', 'SIGHUP', 'SIGQUIT'] as const;

/** Ends a command at any moment of its work. */
function killed(command: Command, longest: number): Round {
  return async (ground, random) => {
    const place = ground.place();
    const running = ground.start(place, command);
    if (command === 'preview') await heard(running, 'preview at');
    await Promise.race([setTimeout(random() * longest), running.ended]);
    running.child.kill(SIGNALS[Math.floor(random() * SIGNALS.length)]);
    const ended = await running.ended;
    return [...complaints(ended), ...(await aftermath(ground, place, command))];
  };
}

/** Gives so little room that it ends while something is written: a disk of its own, or a limit for each file. */
function onFullDisk(command: 'make' | 'publish'): Round {
  return async (ground, random) => {
    const place = ground.place();
    const kilobytes = Math.floor(random() * 120);
    const disk = mountSmall(place, kilobytes);
    // Blocks of 512 bytes, as POSIX has it.
    const shell = disk ? undefined : `ulimit -f ${kilobytes * 2}; exec "$0" "$@"`;
    const ended = await ground.start(place, command, { shell }).ended;
    const full = whole(ground, place);
    disk?.free();
    return [...complaints(ended), ...full, ...(await aftermath(ground, place, command))];
  };
}

/** Takes a folder away while a command is at work, and puts it back. */
function vanishing(name: 'ws' | 'dist', longest: number): Round {
  return async (ground, random) => {
    const place = ground.place();
    const running = ground.start(place, 'make');
    await Promise.race([setTimeout(random() * longest), running.ended]);
    renameSync(join(place, name), join(place, 'away'));
    const ended = await running.ended;
    rmSync(join(place, name), { recursive: true, force: true });
    renameSync(join(place, 'away'), join(place, name));
    return [...complaints(ended), ...(await aftermath(ground, place, 'make'))];
  };
}

/** Lets nobody write where something is to be put. */
function readOnly(command: 'make' | 'publish', name: 'ws/card' | 'dist'): Round {
  return async (ground) => {
    const place = ground.place();
    handOver(place, name);
    const ended = await ground.start(place, command, { isNobody: true }).ended;
    chmodSync(join(place, name), 0o755);
    const lost = whole(ground, place);
    handOver(place);
    const told =
      ended.code === 2 || name === 'ws/card' ? [] : [`a folder without rights ended in ${ended.code}`];
    return [...complaints(ended), ...told, ...lost, ...(await aftermath(ground, place, command, true))];
  };
}

/** A browser that never answers, or one that ends at once. */
function badBrowser(lines: string): Round {
  return async (ground) => {
    const place = ground.place();
    const browser = join(place, 'browser');
    writeFileSync(browser, `#!/bin/sh\n${lines}\n`, { mode: 0o755 });
    const ended = await ground.start(place, 'make', { args: ['--browser', browser] }).ended;
    const told = ended.code === 2 ? [] : [`a browser that fails ended in ${ended.code}: ${ended.told}`];
    return [...complaints(ended), ...told, ...(await aftermath(ground, place, 'make'))];
  };
}

/** Ends a make while it unpacks the browser that comes with the package. */
const unpacking: Round = async (ground, random) => {
  const place = ground.place();
  const running = ground.start(place, 'make', { env: { PUPPETEER_CACHE_DIR: join(place, 'none') } });
  await Promise.race([setTimeout(random() * 6000), running.ended]);
  running.child.kill('SIGKILL');
  return [...complaints(await running.ended), ...(await aftermath(ground, place, 'make'))];
};

/** Without a browser. The first few are what every run of the tests has time for. */
export const ROUNDS: Readonly<Record<string, Round>> = {
  'a make is ended': killed('make', 1200),
  'a publish is ended': killed('publish', 1200),
  'the disk is full at a make': onFullDisk('make'),
  'nothing may be written': readOnly('make', 'dist'),
  'a preview is ended': killed('preview', 800),
  'the disk is full at a publish': onFullDisk('publish'),
  'the workspace is taken away': vanishing('ws', 900),
  'what is made is taken away': vanishing('dist', 900),
  'no revision may be written': readOnly('publish', 'ws/card'),
};

/** What needs one that prints, or the lack of it. */
export const PRINTING_ROUNDS: Readonly<Record<string, Round>> = {
  'a make is ended': killed('make', 5000),
  'a publish is ended': killed('publish', 5000),
  'the disk is full at a make': onFullDisk('make'),
  'the browser is ended while it is unpacked': unpacking,
  'the browser ends at once': badBrowser('exit 1'),
  'the browser never answers': badBrowser('exec sleep 600'),
};

/** What no run may end with: a trace of ours, or one that never ends. */
function complaints({ told }: Ended): Losses {
  return /mistake of ours|\n {4}at |Unhandled|\[internal\]/u.test(told) ? [`it said: ${told}`] : [];
}

/** After whatever happened: all is whole, the next run makes what a clean one makes, and nothing lies about. */
async function aftermath(ground: Ground, place: string, command: Command, isNobody = false): Promise<Losses> {
  const lost = whole(ground, place);
  const next = command === 'publish' ? 'publish' : 'make';
  const { code, told } = await ground.start(place, next, { isNobody }).ended;
  const failed = code === 0 ? [] : [`the next ${next} ended with ${code}: ${told}`];
  const differing = differences(ground, place, next);
  const isDirty = litterIn(place).some((path) => path.includes('sheetwright-browser-'));
  // What a browser left goes when the next one starts.
  if (isDirty) await ground.start(place, next, { isNobody, args: ['--all'] }).ended;
  const litter = litterIn(place).map((path) => `left: ${path}`);
  const losses = [...lost, ...failed, ...differing, ...litter];
  if (losses.length === 0) rmSync(place, { recursive: true, force: true });
  return losses;
}

/** What is neither as it was nor as it is to be. */
function whole(ground: Ground, place: string): Losses {
  const now = bytesOf(join(place, 'dist'));
  const states = [...ground.clean.values()];
  const half = [...now].filter(([path, digest]) => !states.some((state) => state.get(path) === digest));
  const ledger = ledgerAt(place);
  const problems: string[] = [];
  readLedger({ path: 'revisions.yaml', text: ledger }, ({ rule }) => problems.push(`the ledger: ${rule}`));
  if (![...ground.ledgers.values()].includes(ledger))
    problems.push(`the ledger is neither old nor new: ${ledger}`);
  return [...half.filter(([path]) => !path.startsWith('.')).map(([path]) => `half: ${path}`), ...problems];
}

function differences(ground: Ground, place: string, command: 'make' | 'publish'): Losses {
  const isPublished = ledgerAt(place) === ground.ledgers.get('new publish');
  const wanted = ground.clean.get(isPublished ? 'new publish' : 'new make') ?? new Map<string, string>();
  const now = bytesOf(join(place, 'dist'));
  const paths = new Set([...wanted.keys(), ...now.keys()]);
  const others = [...paths].filter((path) => wanted.get(path) !== now.get(path));
  const isRecorded = command === 'make' || isPublished;
  return [
    ...others.map((path) => `differs: ${path}`),
    ...(isRecorded ? [] : ['the revision is not recorded']),
  ];
}

/** A disk with hardly more room than what was made takes; undefined where none may be mounted. */
function mountSmall(place: string, kilobytes: number): { readonly free: () => void } | undefined {
  const [dist, kept] = [join(place, 'dist'), join(place, 'kept')];
  renameSync(dist, kept);
  mkdirSync(dist);
  try {
    const taken = Number(execFileSync('du', ['-sk', kept], { encoding: 'utf8' }).split('\t')[0]);
    execFileSync('mount', ['-t', 'tmpfs', '-o', `size=${taken + kilobytes}k`, 'tmpfs', dist], {
      stdio: 'pipe',
    });
  } catch {
    rmSync(dist, { recursive: true });
    renameSync(kept, dist);
    return undefined;
  }
  cpSync(kept, dist, { recursive: true });
  return {
    free: () => {
      rmSync(kept, { recursive: true });
      cpSync(dist, kept, { recursive: true });
      execFileSync('umount', [dist]);
      rmSync(dist, { recursive: true });
      renameSync(kept, dist);
    },
  };
}

/** Gives a place to a user without special rights, but for one folder, where nothing can be written. */
function handOver(place: string, closed?: string): void {
  if (process.getuid?.() === 0) execFileSync('chown', ['-R', '65534', place]);
  if (closed === undefined) return;
  const path = join(place, closed);
  if (process.getuid?.() === 0) chownSync(path, 0, 0);
  chmodSync(path, 0o555);
}
