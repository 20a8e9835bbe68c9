import { type ChildProcess, spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { join, relative } from 'node:path';
import { inject } from 'vitest';
import { builtPackage } from '../built.ts';
import { emptyFolder } from '../cli/terminal.ts';

/** Two states of one workspace: as it was published, and with the next change in it. */
const OLD = sheet('4 x 5');
const NEW = sheet('4 x 5 1/4');

function sheet(size: string): string {
  return `---
title: Card
measurements:
  unit: in
  stock: { cream: { name: Cream cardstock, sheet: 8 1/2 x 11 } }
  pieces:
    card: { stock: cream, cut: ${size} }
    front: { stock: cream, cut: 3 x 4, on: card }
supplies:
  - { item: Tape, kind: adhesive }
---
A card.

## Cut it
Cut :piece[card] and :piece[front].

## Stick it
Stick :piece[front] on :piece[card].
`;
}

/** The digest of every file of a folder that a reader sees: all but our own records, by its path. */
export type Bytes = ReadonlyMap<string, string>;

export type Ended = { readonly code: number | null; readonly signal: string | null; readonly told: string };

/** A running command, and how it ends. */
export type Running = { readonly child: ChildProcess; readonly ended: Promise<Ended> };

export type Command = 'make' | 'publish' | 'preview';

/** How a command line is run here. */
export type Conditions = {
  /** Put before the program, such as a shell that sets a limit. */
  readonly shell?: string | undefined;
  /** As another user than root, where we are root. */
  readonly isNobody?: boolean;
  readonly env?: Readonly<Record<string, string>>;
  /** Further arguments. */
  readonly args?: readonly string[];
  readonly cwd?: string;
};

/** Where the ordeal takes place: both states as they are made by a machine that nothing happens to. */
export class Ground {
  readonly folder: string;
  readonly #program: string;
  readonly #isPrinted: boolean;
  /** What is made of both states, by each command. */
  readonly clean: Map<string, Bytes> = new Map<string, Bytes>();
  readonly ledgers: Map<string, string> = new Map<string, string>();
  #count = 0;

  private constructor(program: string, folder: string, isPrinted: boolean) {
    this.#program = program;
    this.folder = folder;
    this.#isPrinted = isPrinted;
  }

  /** @param isPrinted Whether PDFs are made too. */
  static async open(isPrinted: boolean): Promise<Ground> {
    const program = join(await builtPackage(), 'dist', 'lib', 'bin.js');
    const ground = new Ground(program, emptyFolder(), isPrinted);
    // For the rounds that run as nobody.
    for (const folder of [inject('temporary'), ground.folder]) chmodSync(folder, 0o711);
    await ground.#makeClean();
    return ground;
  }

  /** A place of its own for a round: the old state made and published, its sheet changed to the new one. */
  place(): string {
    this.#count += 1;
    const place = join(this.folder, `round-${this.#count}`);
    cpSync(join(this.folder, 'start'), place, { recursive: true });
    writeFileSync(join(place, 'ws/card/sheet.md'), NEW);
    return place;
  }

  start(place: string, command: Command, conditions: Conditions = {}): Running {
    const { shell, isNobody = false, env = {}, args = [], cwd = place } = conditions;
    const own = [...(command === 'preview' ? ['--port', '0'] : this.#isPrinted ? [] : ['--no-pdf'])];
    const line = [process.execPath, this.#program, command, ...own, '--out', join(place, 'dist'), ...args];
    const [program = '', ...words] = shell ? ['sh', '-c', shell, ...line] : line;
    const temporary = join(place, 'tmp');
    mkdirSync(temporary, { recursive: true });
    const child = spawn(program, [...words, join(place, 'ws')], {
      cwd,
      env: { ...process.env, TMPDIR: temporary, XDG_CACHE_HOME: join(place, 'cache'), ...env },
      stdio: ['ignore', 'pipe', 'pipe'],
      ...(isNobody && process.getuid?.() === 0 ? { uid: NOBODY, gid: NOBODY } : {}),
    });
    return { child, ended: endOf(child) };
  }

  async #makeClean(): Promise<void> {
    const start = join(this.folder, 'start');
    mkdirSync(join(start, 'ws/card'), { recursive: true });
    writeFileSync(join(start, 'ws/card/sheet.md'), OLD);
    await this.#note(start, 'publish', 'old');
    for (const command of ['make', 'publish'] as const) {
      const place = this.place();
      rmSync(join(place, 'dist'), { recursive: true });
      await this.#note(place, command, `new ${command}`);
      rmSync(place, { recursive: true });
    }
  }

  /** A preview's pages offer what it prints when it is asked to. */
  async notePreview(): Promise<void> {
    const place = this.place();
    const running = this.start(place, 'preview');
    await heard(running, 'preview at');
    this.clean.set('new preview', bytesOf(join(place, 'dist')));
    running.child.kill();
    await running.ended;
    rmSync(place, { recursive: true });
  }

  async #note(place: string, command: 'make' | 'publish', name: string): Promise<void> {
    const { code, told } = await this.start(place, command).ended;
    if (code !== 0) throw new Error(`the clean ${command} ended with ${code}: ${told}`);
    this.clean.set(name, bytesOf(join(place, 'dist')));
    this.ledgers.set(name, ledgerAt(place));
  }
}

const NOBODY = 65534;

function endOf(child: ChildProcess): Promise<Ended> {
  let told = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream?.on('data', (chunk) => {
      told += String(chunk);
    });
  }
  return new Promise((resolve, reject) => {
    child.once('error', reject);
    child.once('close', (code, signal) => resolve({ code, signal, told }));
  });
}

/** Resolves when a command has said something, or has ended. */
export async function heard({ child, ended }: Running, words: string): Promise<void> {
  const hears = new Promise<void>((resolve) => {
    child.stdout?.on('data', (chunk) => String(chunk).includes(words) && resolve());
  });
  await Promise.race([hears, ended]);
}

export function ledgerAt(place: string): string {
  const path = join(place, 'ws/card/revisions.yaml');
  return existsSync(path) ? readFileSync(path, 'utf8') : '';
}

/** Every file below a folder, by its path with `/` between. */
export function filesBelow(folder: string): string[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
    .sort();
}

export function bytesOf(folder: string): Bytes {
  const seen = filesBelow(folder).filter((path) => /^(?:site|host)\//u.test(path));
  const digest = (path: string): string =>
    createHash('sha256')
      .update(readFileSync(join(folder, path)))
      .digest('hex');
  return new Map(seen.map((path) => [path, digest(path)]));
}

/** What lies about that a run should have taken with it. */
export function litterIn(place: string): string[] {
  const named = (path: string): boolean => /\.making|sheetwright-browser-/u.test(path);
  return filesBelow(place).filter((path) => named(path) || path.startsWith('tmp/'));
}
