import type { CutGrid } from './grid.ts';

/**
 * What the copies that are left could add to a block by their area alone, parts of a copy allowed: those worth most
 * for their area first (G. B. Dantzig, Operations Research 5, 1957).
 */
export class AreaCeiling {
  readonly #order: readonly { readonly blank: number; readonly value: number; readonly area: number }[];
  readonly #demand: readonly number[];
  readonly #area: number;

  constructor({ blanks, sheet }: CutGrid, values: readonly number[], demand: readonly number[]) {
    this.#demand = demand;
    this.#area = sheet.width * sheet.height;
    this.#order = blanks
      .map(({ width, height }, blank) => ({ blank, value: values[blank] ?? 0, area: width * height }))
      .filter(({ value }) => value > 0)
      .sort((a, b) => b.value / b.area - a.value / a.area);
  }

  /** Rounded up, so that nothing is lost to floating point. */
  beside(counts: ArrayLike<number>, width: number, height: number): number {
    let room = this.#area - width * height;
    let worth = 0;
    for (const { blank, value, area } of this.#order) {
      const left = (this.#demand[blank] ?? 0) - (counts[blank] ?? 0);
      if (left * area >= room) return worth + Math.ceil((room / area) * value + 1e-6);
      worth += left * value;
      room -= left * area;
    }
    return worth;
  }
}
