import { type BigIntStats, readFileSync, statSync } from 'node:fs';
import type { Pack } from './pack.ts';
import { sha256 } from './sealed.ts';

/** What the file system says of a file that is as it was. */
type Stamp = readonly [size: string, modified: string, changed: string, node: string, digest: string];

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
    const stats = statSync(path, { bigint: true, throwIfNoEntry: false });
    if (!stats?.isFile()) return undefined;
    const known = this.#pack.get(path) as Stamp | undefined;
    const signs = signsOf(stats);
    if (known && signs.every((sign, index) => known[index] === sign)) return known[4];
    return this.#read(path, stats);
  }

  #read(path: string, stats: BigIntStats): string | undefined {
    const began = Date.now();
    try {
      const digest = sha256(readFileSync(path));
      const isSettled = Math.max(Number(stats.mtimeMs), Number(stats.ctimeMs)) < began - UNSETTLED;
      if (isSettled) this.#pack.set(path, [...signsOf(stats), digest] satisfies Stamp);
      return digest;
    } catch {
      return undefined;
    }
  }
}

function signsOf({ size, mtimeNs, ctimeNs, ino }: BigIntStats): readonly [string, string, string, string] {
  return [String(size), String(mtimeNs), String(ctimeNs), String(ino)];
}
