import type { FoldSetting } from '../project/net-as-written.ts';
import { type CellReader, seamName } from './cell-reader.ts';
import { type Patch, patchName, type Seam } from './patches.ts';
import { unionOutlines } from './union-outline.ts';

/** What is said of a seam; undefined where it is slit. */
export type SaidOf = (seam: Seam) => Pick<FoldSetting, 'direction' | 'angle'> | undefined;

/** Patches with no line between them, as one panel each. */
export class JoinedPanels {
  readonly #patches: readonly Patch[];
  readonly #first = new Map<string, string>();
  readonly #reader: CellReader;

  constructor(patches: readonly Patch[], seams: readonly Seam[], said: SaidOf, reader: CellReader) {
    this.#patches = patches;
    this.#reader = reader;
    for (const seam of seams) {
      const [a, b] = [this.#root(patchName(seam.patches[0])), this.#root(patchName(seam.patches[1]))];
      const isJoined = said(seam)?.direction === 'none' && !reader.isTrimmed(a) && !reader.isTrimmed(b);
      if (isJoined && a !== b) this.#first.set(this.#isBefore(a, b) ? b : a, this.#isBefore(a, b) ? a : b);
    }
  }

  /** The panel that a patch is part of: its name, or the address of its first patch. */
  idOf(address: string): string {
    const root = this.#root(address);
    const named = [...this.#reader.names].find(([, other]) => this.#root(other) === root);
    return named?.[0] ?? root;
  }

  /** Says which names are for a panel that has another already. */
  reportNames(): void {
    for (const [name, address] of this.#reader.names) {
      const first = this.idOf(address);
      if (first !== name) this.#reader.reportNamed(name, first);
    }
  }

  /** Panels of several patches that have a line in them, or go round others. */
  faults(
    seams: readonly Seam[],
    said: SaidOf,
  ): readonly { readonly panel: string; readonly lines: readonly string[] }[] {
    const panels = [...new Set([...this.#first.keys()].map((address) => this.idOf(address)))];
    return panels.flatMap((panel) => {
      const own = this.#patches.filter((patch) => this.idOf(patchName(patch)) === panel);
      const within = seams.filter((seam) => {
        const direction = said(seam)?.direction;
        return (
          seam.patches.every((patch) => own.includes(patch)) &&
          direction !== undefined &&
          direction !== 'none'
        );
      });
      const lines = within.map(seamName);
      const isRound = unionOutlines(own.map(({ outline }) => outline)).length > 1;
      return lines.length > 0 || isRound ? [{ panel, lines }] : [];
    });
  }

  #root(address: string): string {
    const first = this.#first.get(address);
    return first === undefined ? address : this.#root(first);
  }

  #isBefore(a: string, b: string): boolean {
    const place = (address: string): number =>
      this.#patches.findIndex((patch) => patchName(patch) === address);
    return place(a) < place(b);
  }
}
