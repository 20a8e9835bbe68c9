import { createHash } from 'node:crypto';
import { closeSync, openSync, readSync, type Stats, statSync } from 'node:fs';
import type { Pack } from './pack.ts';

/** What the file system says of a file that is as it was. */
type Stamp = readonly [size: number, modified: number, changed: number, node: number, digest: string];

/** A file written so few milliseconds before could be written again without a sign: some file systems count in two seconds. */
const UNSETTLED = 2000;

/**
 * The digests of files, by content. One that the file system says is untouched since it was read is not read again; where
 * it cannot tell, the content decides.
 */
export class Stamps {
  readonly #pack: Pack;

  constructor(pack: Pack) {
    this.#pack = pack;
  }

  /** Undefined where there is no file that can be read. */
  digestOf(path: string): string | undefined {
    const stats = statSync(path, { throwIfNoEntry: false });
    if (!stats?.isFile()) return undefined;
    const known = this.#pack.get(path) as Stamp | undefined;
    const signs = signsOf(stats);
    if (known && signs.every((sign, index) => known[index] === sign)) return known[4];
    return this.#read(path, stats);
  }

  #read(path: string, stats: Stats): string | undefined {
    const began = Date.now();
    try {
      const digest = digestOfFile(path);
      const isSettled = Math.max(stats.mtimeMs, stats.ctimeMs) < began - UNSETTLED;
      if (isSettled) this.#pack.set(path, [...signsOf(stats), digest] satisfies Stamp);
      return digest;
    } catch {
      return undefined;
    }
  }
}

/** Bytes. */
const PART = 1 << 20;

/** Of a file's content, read part by part: a browser's program would take its two hundred megabytes. @throws As `node:fs` does. */
function digestOfFile(path: string): string {
  const hash = createHash('sha256');
  const file = openSync(path, 'r');
  try {
    const part = Buffer.allocUnsafe(PART);
    for (let read = readSync(file, part); read > 0; read = readSync(file, part)) {
      hash.update(part.subarray(0, read));
    }
  } finally {
    closeSync(file);
  }
  return hash.digest('hex');
}

/** In milliseconds with their fractions, as fine as a number is: to a quarter of a millionth. */
function signsOf({ size, mtimeMs, ctimeMs, ino }: Stats): readonly [number, number, number, number] {
  return [size, mtimeMs, ctimeMs, ino];
}
