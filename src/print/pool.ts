import type { Desk } from './desk.ts';
import { BrowserOwner, type PrinterOptions } from './owner.ts';

/** Our own browser, or those that run elsewhere: each job goes to the one with the fewest before it. */
export class BrowserPool {
  readonly #owners: readonly { readonly owner: BrowserOwner; waiting: number }[];

  constructor({ endpoints = [], ...options }: PrinterOptions) {
    const failed = new Map<string, number>();
    const places = endpoints.length > 0 ? endpoints : [undefined];
    this.#owners = places.map((endpoint) => ({
      owner: new BrowserOwner({ ...options, endpoint, failed }),
      waiting: 0,
    }));
  }

  /** Which browsers serve or served last. */
  get name(): string {
    return this.#owners.map(({ owner }) => owner.name).join(', ');
  }

  /** As `BrowserOwner.inTurn`. */
  async inTurn<T>(what: string, job: (desk: Desk) => Promise<T>, batch?: string): Promise<T> {
    const free = this.#owners.reduce((least, each) => (each.waiting < least.waiting ? each : least));
    free.waiting += 1;
    try {
      return await free.owner.inTurn(what, job, batch);
    } finally {
      free.waiting -= 1;
    }
  }

  warmUp(): void {
    for (const { owner } of this.#owners) owner.warmUp();
  }

  rest(): void {
    for (const { owner } of this.#owners) owner.rest();
  }

  async close(): Promise<void> {
    await Promise.all(this.#owners.map(({ owner }) => owner.close()));
  }
}
