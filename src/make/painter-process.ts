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

type Expecting = { resolve(painted: unknown): void; reject(error: unknown): void };

/**
 * What the C library of Linux is asked for, which is read as a program starts: one store of memory for all threads, and what
 * lies free at its end given back. Others know neither and do no worse.
 */
const THRIFT = { MALLOC_ARENA_MAX: '1', MALLOC_TRIM_THRESHOLD_: '1000000' };

/** A process that paints, by its first file. It starts with the first thing it is asked; after one that died, another. */
export class PainterProcess {
  readonly #script: string;
  readonly #waiting = new Map<number, Expecting>();
  #process: ChildProcess | undefined;
  #asked = 0;

  constructor(script: string) {
    this.#script = script;
  }

  ask<T>(name: keyof Painting, given: readonly unknown[]): Promise<T> {
    this.#asked += 1;
    const number = this.#asked;
    return new Promise((resolve, reject) => {
      this.#waiting.set(number, { resolve: (painted) => resolve(painted as T), reject });
      this.#process ??= this.#start();
      this.#process.send({ number, name, given } satisfies PaintOrder);
    });
  }

  /** Ends it and waits until it is gone; whoever still waits is refused. */
  async close(): Promise<void> {
    const child = this.#process;
    if (!child) return;
    const gone = once(child, 'exit');
    child.disconnect();
    await gone;
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
      for (const { reject } of this.#waiting.values()) reject(new Error('what paints pictures broke off'));
      this.#waiting.clear();
    };
    child.once('error', end);
    child.once('disconnect', end);
    return child;
  }

  #hear(report: PaintReport): void {
    const waiting = this.#waiting.get(report.number);
    this.#waiting.delete(report.number);
    if (report.kind === 'done') waiting?.resolve(report.painted);
    else waiting?.reject(paintErrorFrom(report.fault));
  }
}
