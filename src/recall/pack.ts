import { dirname, join } from 'node:path';
import { compare } from '../measure/numbers.ts';
import { keepNewest, readSealed, seal, writeWhole } from './sealed.ts';

/** The cache keeps the packs of so many workspaces and output folders, those used last. */
const MOST_PACKS = 60;

/**
 * Data by keys, kept as one file of the user's cache. All of it may be deleted at any time: what is gone, damaged or of
 * another version of the program was never there, and a cache that cannot be written keeps nothing.
 */
export class Pack {
  readonly #path: string;
  readonly #whose: string;
  readonly #entries: Map<string, unknown>;
  #isChanged = false;

  /** @param whose What tells apart all that would make other data of the same key in a pack of this name. */
  constructor(folder: string, name: string, whose: string) {
    this.#path = join(folder, `${name}.json`);
    this.#whose = `${name} ${whose}`;
    const kept = readSealed(this.#path, this.#whose);
    this.#entries = new Map(Array.isArray(kept) ? kept : []);
  }

  get(key: string): unknown {
    return this.#entries.get(key);
  }

  set(key: string, data: unknown): void {
    this.#entries.set(key, data);
    this.#isChanged = true;
  }

  /** Forgets what has a key that nobody asks for any more. */
  keep(isWanted: (key: string) => boolean): void {
    for (const key of this.#entries.keys()) {
      if (isWanted(key)) continue;
      this.#entries.delete(key);
      this.#isChanged = true;
    }
  }

  /** Writes it, if anything in it is new. */
  save(): void {
    if (!this.#isChanged) return;
    try {
      // In the order of their keys: the same file, whichever thread was done first.
      const entries = [...this.#entries].sort(([a], [b]) => compare(a, b));
      writeWhole(this.#path, seal(entries, this.#whose));
      this.#isChanged = false;
      keepNewest(dirname(this.#path), MOST_PACKS);
    } catch {
      // A cache on a full or closed disk is no reason to stop: next time it is all worked out again.
    }
  }
}
