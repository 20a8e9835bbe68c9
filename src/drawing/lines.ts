/**
 * What a line on a drawing means. Told apart by type alone, never by color: cut edges wide and continuous, folds
 * narrow and broken (valley dashed, mountain chain). Widths follow ISO 128's pairs of wide 0.5 mm and narrow 0.25 mm;
 * the lengths of dashes are ours, shortened so that a half-inch flap still shows several.
 */
export type LineKind = keyof typeof LINES;

/** Width and dashes in millimeters of paper. */
export type LineType = { readonly width: number; readonly dashes?: readonly number[] };

export const LINES = {
  cut: { width: 0.5 },
  blank: { width: 0.18 },
  valley: { width: 0.25, dashes: [2.4, 1] },
  mountain: { width: 0.25, dashes: [4.8, 0.9, 0.7, 0.9] },
  flat: { width: 0.18, dashes: [0.8, 0.8] },
  score: { width: 0.13 },
  layer: { width: 0.35 },
  edge: { width: 0.25 },
  move: { width: 0.5 },
  'move-hidden': { width: 0.35, dashes: [1, 1] },
  hatch: { width: 0.13 },
  'glue-outside': { width: 0.45 },
  'glue-inside': { width: 0.2 },
  dimension: { width: 0.18 },
  extension: { width: 0.13 },
  mark: { width: 0.25 },
  motif: { width: 0.25 },
  image: { width: 0.18, dashes: [0.25, 0.7] },
} as const;
