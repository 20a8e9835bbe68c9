import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Readable, Writable } from 'node:stream';
import { setTimeout } from 'node:timers/promises';
import type { Process } from '@puppeteer/browsers';
import type { Browser } from 'puppeteer-core';
import { clearDead, ownMark } from '../recall/process-mark.ts';
import type { Candidate } from './candidate.ts';
import { diagnose, type Ending, wantsNoSandbox } from './diagnosis.ts';
import { BrowserKilled, BrowserMissing, isUnwritable, NAME_ANOTHER, unwritable } from './fault.ts';
import { type Guard, guardHere } from './guard.ts';
import { pipeTransport } from './pipe.ts';
import type { Surroundings } from './surroundings.ts';

/** A browser that answers. */
export type Running = {
  readonly browser: Browser;
  readonly pid: number;
  /** Which browser it is, where its program is and how it was found. */
  readonly name: string;
  hasDied(): boolean;
  /** Ends it, gently if it still listens, and waits until it is gone. */
  stop(): Promise<void>;
};

export type LaunchOptions = {
  readonly surroundings: Pick<Surroundings, 'env' | 'root'>;
  /** How long a browser may take to answer, in milliseconds. */
  readonly timeout: number;
  /** Hosts it may talk to by name or address; none when it only prints. */
  readonly hosts?: readonly string[];
  /** Default: that of the program's own thread. */
  readonly guard?: Guard;
};

/** Flags beside Puppeteer's own: no talk with anything but us, and letters spaced as on paper, not as on a screen. */
const FLAGS = [
  '--remote-debugging-pipe',
  '--disable-component-update',
  '--disable-domain-reliability',
  '--no-default-browser-check',
  '--no-pings',
  '--disable-gpu',
  '--font-render-hinting=none',
];

/** How long a browser asked to close, or one that hung up, is waited for before it is ended, in milliseconds. */
const PATIENCE = 2000;

function environment(
  { kind, libraries, fonts }: Candidate,
  env: Surroundings['env'],
  profile: string,
): Surroundings['env'] {
  const others = env.LD_LIBRARY_PATH;
  return {
    ...env,
    // What a shell leaves behind when it is killed goes with its profile. A whole browser keeps a socket there, whose
    // path may hold hardly more than a hundred characters.
    ...(kind === 'shell' && { TMPDIR: profile }),
    ...(libraries && { LD_LIBRARY_PATH: others ? `${libraries}:${others}` : libraries }),
    ...(fonts && { FONTCONFIG_FILE: fonts }),
  };
}

/** Every name leads nowhere, but those of `hosts`. */
function resolverRules(hosts: readonly string[]): string {
  const excluded = hosts.map((host) => `, EXCLUDE ${host}`);
  return `--host-resolver-rules=MAP * ~NOTFOUND${excluded.join('')}`;
}

/** Rejects after a while, for which no process is kept alive. */
export async function expiry(milliseconds: number, late: () => Error): Promise<never> {
  await setTimeout(milliseconds, undefined, { ref: false });
  throw late();
}

function patience(): Promise<void> {
  return setTimeout(PATIENCE, undefined, { ref: false });
}

/** Resolves when the program ended or could not be run at all; its last words have then been read. */
function ending(program: Process): Promise<Ending> {
  const { nodeProcess } = program;
  return new Promise((resolve) => {
    nodeProcess.once('error', (error) => {
      const refused = 'code' in error ? String(error.code) : error.message;
      resolve({ refused, code: null, signal: null, log: [] });
    });
    nodeProcess.once('exit', async (code, signal) => {
      await Promise.race([new Promise((closed) => nodeProcess.once('close', closed)), patience()]);
      resolve({ code, signal, log: program.getRecentLogs() });
    });
  });
}

const PROFILE = 'sheetwright-browser-';

/** A profile's folder names the process it belongs to. Those that killed ones left are cleared away. */
async function newProfile(): Promise<string> {
  try {
    await clearDead(tmpdir(), PROFILE);
    return await mkdtemp(join(tmpdir(), `${PROFILE}${ownMark()}-`));
  } catch (error) {
    const isMissing = error instanceof Error && 'code' in error && error.code === 'ENOENT';
    throw isMissing || isUnwritable(error) ? unwritable(tmpdir(), 'TMPDIR', error) : error;
  }
}

/** A program on its way to be a browser. */
type Launching = {
  readonly program: Process;
  readonly ended: Promise<Ending>;
  /** Ends it, if it runs, and clears away its profile. */
  readonly discard: () => Promise<void>;
};

async function spawn(candidate: Candidate, options: LaunchOptions, sandbox: boolean): Promise<Launching> {
  const { launch: run } = await import('@puppeteer/browsers');
  const { default: puppeteer } = await import('puppeteer-core');
  const profile = await newProfile();
  const clear = (): Promise<void> =>
    rm(profile, { recursive: true, force: true, maxRetries: 5 }).catch(() => {});
  const program = run({
    executablePath: candidate.path,
    args: puppeteer.defaultArgs({
      headless: candidate.kind === 'shell' ? 'shell' : true,
      userDataDir: profile,
      args: [...FLAGS, resolverRules(options.hosts ?? []), ...(sandbox ? [] : ['--no-sandbox'])],
    }),
    env: environment(candidate, options.surroundings.env, profile),
    pipe: true,
    // A signal is ours to handle: Puppeteer would end this process itself, or not end it at all.
    handleSIGINT: false,
    handleSIGTERM: false,
    handleSIGHUP: false,
    onExit: clear,
  });
  const ended = ending(program);
  const { guard = guardHere } = options;
  const forget = guard({ pid: program.nodeProcess.pid, profile });
  program.nodeProcess.once('exit', forget);
  const discard = async (): Promise<void> => {
    forget();
    program.kill();
    await clear();
  };
  return { program, ended, discard };
}

/** Connects to a program just started. @returns How it ended instead, when it did. */
async function connect({ program, ended }: Launching): Promise<Browser | Ending> {
  const { default: puppeteer } = await import('puppeteer-core');
  // Its standard streams come first; these two are what --remote-debugging-pipe talks through.
  const [, , , toBrowser, fromBrowser] = program.nodeProcess.stdio;
  const transport = pipeTransport(toBrowser as Writable, fromBrowser as Readable);
  const answer = puppeteer.connect({ transport, defaultViewport: null });
  const hungUp = (): Promise<Ending> =>
    patience().then(() => ({ code: null, signal: null, log: program.getRecentLogs() }));
  return Promise.race([answer.catch(hungUp), ended]);
}

async function asRunning(browser: Browser, { program }: Launching, candidate: Candidate): Promise<Running> {
  const { nodeProcess } = program;
  return {
    browser,
    pid: nodeProcess.pid ?? 0,
    name: `${await browser.version()} (${candidate.path}, ${candidate.found})`,
    hasDied: () => nodeProcess.exitCode !== null || nodeProcess.signalCode !== null || !browser.connected,
    stop: async () => {
      await Promise.race([browser.close().catch(() => {}), patience()]);
      program.kill();
      await program.hasClosed();
    },
  };
}

async function attempt(candidate: Candidate, options: LaunchOptions, sandbox: boolean): Promise<Running> {
  const { timeout } = options;
  const silent = (): BrowserMissing =>
    new BrowserMissing(
      `${candidate.path} (${candidate.found}) did not answer within ${timeout / 1000} s`,
      `try again when the machine is less busy, ${NAME_ANOTHER}`,
    );
  const started = await spawn(candidate, options, sandbox);
  try {
    const result = await Promise.race([connect(started), expiry(timeout, silent)]);
    if (!('log' in result)) return await asRunning(result, started, candidate);
    // Without a sandbox is how root and most containers must run it. What it shows is made by us, holds no script
    // that runs and reaches no network, so that the sandbox guards little here.
    if (sandbox && wantsNoSandbox(result)) return await attempt(candidate, options, false);
    throw diagnose(candidate, result);
  } catch (error) {
    await started.discard();
    throw error;
  }
}

/**
 * Starts a browser, without its sandbox where that cannot work: for root, or where the kernel grants none. One that is
 * killed as it starts is started once more.
 * @throws BrowserMissing when it does not start, with what to do about it.
 */
export async function launch(candidate: Candidate, options: LaunchOptions): Promise<Running> {
  const start = (): Promise<Running> => attempt(candidate, options, !options.surroundings.root);
  const startAgain = (error: unknown): Promise<Running> => {
    if (error instanceof BrowserKilled) return start();
    throw error;
  };
  try {
    return await start().catch(startAgain);
  } catch (error) {
    if (error instanceof BrowserMissing) throw error;
    const cause = error instanceof Error ? error.message : error;
    const fact = `${candidate.path} (${candidate.found}) could not be started (${cause})`;
    throw new BrowserMissing(fact, `install it again, ${NAME_ANOTHER}`);
  }
}
