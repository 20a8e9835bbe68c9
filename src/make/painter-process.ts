import { type ChildProcess, fork } from 'node:child_process';
import { once } from 'node:events';
import { type PaintFault, paintErrorFrom } from './paint-fault.ts';
import type { Painting } from './painting.ts';

/** What the process is asked: one of all that is painted, by its name; answered by its number. */
export type PaintOrder = {
  readonly number: number;
  readonly name: keyof Painting;
  readonly given: readonly unknown[];
};

export type PaintReport = { readonly number: number } & (
  | { readonly kind: 'done'; readonly painted: unknown }
  | { readonly kind: 'failed'; readonly fault: PaintFault }
);

type Expecting = {
  readonly order: PaintOrder;
  resolve(painted: unknown): void;
  reject(error: unknown): void;
  /** Whether a process has died of it, or beside it. */
  readonly isAgain: boolean;
};

/**
 * What the C library of Linux is asked for, which is read as a program starts: one store of memory for all threads, and what
 * lies free at its end given back. Others know neither and do no worse.
 */
const THRIFT = { MALLOC_ARENA_MAX: '1', MALLOC_TRIM_THRESHOLD_: '1000000' };

/**
 * A process that paints, by its first file. It starts with the first thing it is asked. After one that died, as where memory is
 * short, another is asked once more for what that owed.
 */
export class PainterProcess {
  readonly #script: string;
  readonly #waiting = new Map<number, Expecting>();
  #process: ChildProcess | undefined;
  #asked = 0;
  #isClosing = false;

  constructor(script: string) {
    this.#script = script;
  }

  ask<T>(name: keyof Painting, given: readonly unknown[]): Promise<T> {
    this.#asked += 1;
    const number = this.#asked;
    return new Promise((resolve, reject) => {
      const order = { number, name, given };
      this.#send({ order, resolve: (painted) => resolve(painted as T), reject, isAgain: false });
    });
  }

  /** Ends it and waits until it is gone; whoever still waits is refused. */
  async close(): Promise<void> {
    const child = this.#process;
    if (!child) return;
    const gone = child.exitCode ?? child.signalCode ?? once(child, 'exit');
    this.#isClosing = true;
    child.disconnect();
    await gone;
    this.#isClosing = false;
  }

  #send(expecting: Expecting): void {
    this.#waiting.set(expecting.order.number, expecting);
    this.#process ??= this.#start();
    this.#process.send(expecting.order);
  }

  #start(): ChildProcess {
    const child = fork(this.#script, {
      serialization: 'advanced',
      stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
      env: { ...process.env, ...THRIFT },
      execArgv: [],
    });
    child.on('message', (report: PaintReport) => this.#hear(report));
    const end = (): void => {
      if (this.#process !== child) return;
      this.#process = undefined;
      const owed = [...this.#waiting.values()];
      this.#waiting.clear();
      for (const each of owed) {
        if (each.isAgain || this.#isClosing) each.reject(new Error('what paints pictures broke off'));
        else this.#send({ ...each, isAgain: true });
      }
    };
    child.on('error', end);
    child.on('disconnect', end);
    return child;
  }

  #hear(report: PaintReport): void {
    const waiting = this.#waiting.get(report.number);
    this.#waiting.delete(report.number);
    if (report.kind === 'done') waiting?.resolve(report.painted);
    else waiting?.reject(paintErrorFrom(report.fault));
  }
}
