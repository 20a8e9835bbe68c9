import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { builtPackage } from '../built.ts';
import { CARD_SHEET } from '../card-sheet.ts';
import { folderWith } from '../cli/terminal.ts';

const folder = mkdtempSync(join(tmpdir(), 'processes-test-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

let built = '';
beforeAll(async () => {
  built = await builtPackage();
});

const PRINT = `await printer.pdf('<!doctype html><title>x</title><p>x</p>', { title: 'x', date: '2026-12-10' });`;

/** Runs lines of a program that has a printer, with a folder for temporary files of its own. */
function run(lines: string, temporary: string): ChildProcess {
  const printer = pathToFileURL(join(built, 'dist', 'lib', 'index.js'));
  const program = `import { openPrinter } from '${printer}';
    const printer = openPrinter({ download: false });
    ${lines}`;
  return spawn(process.execPath, ['--input-type=module', '-e', program], {
    env: { ...process.env, TMPDIR: temporary },
    stdio: ['pipe', 'pipe', 'inherit'],
  });
}

/** The processes that a process started, and theirs, without those that have ended but were not yet collected. */
function descendants(pid: number): number[] {
  const rows = execFileSync('ps', ['-A', '-o', 'pid=,ppid=,stat='], { encoding: 'utf8' }).trim().split('\n');
  const living = rows.map((row) => row.trim().split(/\s+/u)).filter(([, , state]) => !state?.startsWith('Z'));
  const under = (parent: number): number[] =>
    living.flatMap(([child, of]) => (Number(of) === parent ? [Number(child), ...under(Number(child))] : []));
  return under(pid);
}

function lives(pid: number): boolean {
  const state = execFileSync('sh', ['-c', `ps -o stat= -p ${pid} || true`], { encoding: 'utf8' }).trim();
  return state !== '' && !state.startsWith('Z');
}

/** Waits until nothing of a list lives, at most five seconds. @returns What still does. */
async function survivors(pids: readonly number[]): Promise<number[]> {
  const until = Date.now() + 5000;
  while (Date.now() < until && pids.some(lives)) await new Promise((resolve) => setTimeout(resolve, 50));
  return pids.filter(lives);
}

/** Resolves when a child says something. @throws When it ends before it does. */
function said(child: ChildProcess): Promise<void> {
  return new Promise((resolve, reject) => {
    child.stdout?.once('data', () => resolve());
    child.once('exit', (code, signal) => reject(new Error(`the child ended (${code ?? signal})`)));
  });
}

/** The profiles of browsers in a folder for temporary files. */
function profiles(temporary: string): string[] {
  return readdirSync(temporary).filter((name) => name.startsWith('sheetwright-browser-'));
}

function ended(child: ChildProcess): Promise<{ code: number | null; signal: string | null }> {
  return new Promise((resolve) => child.once('exit', (code, signal) => resolve({ code, signal })));
}

describe.runIf(process.platform !== 'win32')('no browser outlives us', () => {
  const WAIT = `${PRINT} console.log('ready'); setInterval(() => {}, 1000);`;

  async function started(
    lines: string,
  ): Promise<{ child: ChildProcess; browser: number[]; temporary: string }> {
    const temporary = mkdtempSync(join(folder, 'temporary-'));
    const child = run(lines, temporary);
    await said(child);
    const browser = descendants(child.pid ?? 0);
    expect(profiles(temporary)).toHaveLength(1);
    expect(browser.length).toBeGreaterThan(1);
    return { child, browser, temporary };
  }

  it.each(['SIGINT', 'SIGTERM', 'SIGHUP', 'SIGQUIT'] as const)(
    'when %s ends us, which it still does',
    async (signal) => {
      const { child, browser, temporary } = await started(WAIT);
      const end = ended(child);
      child.kill(signal);
      expect(await end).toEqual({ code: null, signal });
      expect(await survivors(browser)).toEqual([]);
      expect(profiles(temporary)).toEqual([]);
    },
  );

  it.each(['SIGINT', 'SIGTERM'] as const)(
    'when %s ends a make, whose printer is in another thread',
    async (signal) => {
      const temporary = mkdtempSync(join(folder, 'temporary-'));
      const workspace = folderWith({ 'a/sheet.md': CARD_SHEET });
      const program = join(built, 'dist', 'lib', 'bin.js');
      const child = spawn(process.execPath, [program, 'make', workspace, '--out', join(temporary, 'out')], {
        env: { ...process.env, TMPDIR: temporary },
        stdio: 'ignore',
      });
      const end = ended(child);
      const isPrinting = (): boolean => descendants(child.pid ?? 0).length > 1;
      while (child.exitCode === null && !isPrinting())
        await new Promise((resolve) => setTimeout(resolve, 50));
      const browser = descendants(child.pid ?? 0);
      expect(profiles(temporary)).toHaveLength(1);
      child.kill(signal);
      expect(await end).toEqual({ code: null, signal });
      expect(await survivors(browser)).toEqual([]);
      expect(profiles(temporary)).toEqual([]);
    },
  );

  it('when a command has its own way to end on a signal', async () => {
    const { child, browser } = await started(`process.on('SIGINT', () => process.exit(7)); ${WAIT}`);
    const end = ended(child);
    child.kill('SIGINT');
    expect(await end).toEqual({ code: 7, signal: null });
    expect(await survivors(browser)).toEqual([]);
  });

  it('when we are killed, and the profile it leaves goes at the next start', async () => {
    const { child, browser, temporary } = await started(WAIT);
    child.kill('SIGKILL');
    expect(await survivors(browser)).toEqual([]);
    const left = profiles(temporary);
    const next = run(WAIT, temporary);
    await said(next);
    expect(profiles(temporary).filter((name) => left.includes(name))).toEqual([]);
    const end = ended(next);
    next.kill('SIGTERM');
    await end;
  });

  it('when we exit without closing', async () => {
    const { child, browser, temporary } = await started(
      `${PRINT} console.log('ready'); process.stdin.once('data', () => process.exit(3));`,
    );
    const end = ended(child);
    child.stdin?.write('go\n');
    expect(await end).toEqual({ code: 3, signal: null });
    expect(await survivors(browser)).toEqual([]);
    expect(profiles(temporary)).toEqual([]);
  });

  it('when we close, after which nothing keeps us from ending', async () => {
    const { child, browser, temporary } = await started(
      `${PRINT} console.log('ready'); process.stdin.once('data', () => { process.stdin.destroy(); printer.close(); });`,
    );
    const end = ended(child);
    child.stdin?.write('go\n');
    expect(await end).toEqual({ code: 0, signal: null });
    expect(await survivors(browser)).toEqual([]);
    expect(profiles(temporary)).toEqual([]);
  });
});
