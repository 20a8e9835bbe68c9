/** A queue that gives the entry with the greatest rank first (a binary heap). */
export class RankedQueue<T> {
  readonly #entries: { readonly rank: number; readonly value: T }[] = [];

  /** The greatest rank; undefined when there is none. */
  get topRank(): number | undefined {
    return this.#entries[0]?.rank;
  }

  push(rank: number, value: T): void {
    const entries = this.#entries;
    entries.push({ rank, value });
    let index = entries.length - 1;
    while (index > 0) {
      const parent = (index - 1) >> 1;
      if (this.#rankAt(parent) >= rank) break;
      this.#swap(index, parent);
      index = parent;
    }
  }

  pop(): T | undefined {
    const entries = this.#entries;
    const top = entries[0];
    const last = entries.pop();
    if (!top || !last) return undefined;
    if (entries.length > 0) {
      entries[0] = last;
      this.#sink();
    }
    return top.value;
  }

  #sink(): void {
    let index = 0;
    for (;;) {
      const [left, right] = [2 * index + 1, 2 * index + 2];
      const child = this.#rankAt(right) > this.#rankAt(left) ? right : left;
      if (this.#rankAt(child) <= this.#rankAt(index)) return;
      this.#swap(index, child);
      index = child;
    }
  }

  #rankAt(index: number): number {
    return this.#entries[index]?.rank ?? Number.NEGATIVE_INFINITY;
  }

  #swap(one: number, other: number): void {
    const [first, second] = [this.#entries[one], this.#entries[other]];
    if (!first || !second) return;
    this.#entries[one] = second;
    this.#entries[other] = first;
  }
}
