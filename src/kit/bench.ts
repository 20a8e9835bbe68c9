import { Length } from '../measure/length.ts';
import type { Size } from '../measure/size.ts';
import type { StockSheet } from '../project/stock.ts';

/** How paper is cut at this bench. */
export type CuttingBench = {
  /** What the blade takes away with each cut; zero for a knife or a trimmer. */
  readonly kerf: Length;
  /** What is trimmed off all four edges of a sheet before anything is cut. */
  readonly trimMargin: Length;
  /** The longest cut the trimmer makes. */
  readonly trimmer: Length;
};

/** What is left of a sheet when its edges are trimmed off. */
export function usableSize({ size }: StockSheet, { trimMargin, kerf }: CuttingBench): Size {
  const lost = trimMargin.sign > 0 ? trimMargin.plus(kerf).times(2) : Length.zero;
  const left = (length: Length): Length => Length.max(Length.zero, length.minus(lost));
  return { width: left(size.width.value), height: left(size.height.value) };
}
