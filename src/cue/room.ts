/** How much goes on a card. Cuts, scores and the clock are the last to go, and are never smaller than 16 points. */
export type CardRoom = {
  readonly points: 18 | 16;
  /** The cautions that stand in the steps; the usual ones are always said. */
  readonly stepCautions: boolean;
  /** What may take a supply's place. */
  readonly instead: boolean;
  readonly table: boolean;
  readonly notes: boolean;
  /** The most rows of any list. */
  readonly rows: number;
};

const ALL: CardRoom = {
  points: 18,
  stepCautions: true,
  instead: true,
  table: true,
  notes: true,
  rows: Number.POSITIVE_INFINITY,
};

/**
 * From everything in large type to the least: first the type gets smaller, then what stands on the sheet as well is
 * left out, then the demonstrator's own notes, which are in the project's file; last, the lists are cut short.
 */
export const ROOMS: readonly [CardRoom, ...CardRoom[]] = [
  ALL,
  { ...ALL, points: 16 },
  { ...ALL, points: 16, stepCautions: false },
  { ...ALL, points: 16, stepCautions: false, instead: false },
  { ...ALL, points: 16, stepCautions: false, instead: false, table: false },
  { ...ALL, points: 16, stepCautions: false, instead: false, table: false, notes: false },
  { points: 16, stepCautions: false, instead: false, table: false, notes: false, rows: 12 },
  { points: 16, stepCautions: false, instead: false, table: false, notes: false, rows: 8 },
];

/** The first rows of a list, and how many more there are. */
export function shortened(
  rows: readonly object[],
  { rows: most }: CardRoom,
): { readonly rows: readonly object[]; readonly left: number } {
  return { rows: rows.slice(0, most), left: Math.max(0, rows.length - most) };
}
