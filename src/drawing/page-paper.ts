import type { Length } from '../measure/length.ts';
import type { Paper } from '../project/model.ts';
import type { DrawnBox } from './region.ts';

/** A printed page, upright or on its side, and the part of it a printer reaches. Millimetres. */
export type Page = {
  readonly paper: Paper;
  readonly landscape: boolean;
  readonly width: number;
  readonly height: number;
  readonly printable: DrawnBox;
};

/** Letter is 8½ × 11 in, exactly 215.9 × 279.4 mm; A4 is 210 × 297 mm (ISO 216). */
export const SIDES_OF: Readonly<Record<Paper, readonly [number, number]>> = {
  letter: [215.9, 279.4],
  a4: [210, 297],
};

export function pageOf(paper: Paper, margin: Length, landscape: boolean): Page {
  const [short, long] = SIDES_OF[paper];
  const [width, height] = landscape ? [long, short] : [short, long];
  const edge = margin.mm;
  const printable = { left: edge, top: edge, right: width - edge, bottom: height - edge };
  return { paper, landscape, width, height, printable };
}
