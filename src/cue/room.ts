import type { DrawingRoom } from '../drawing/style.ts';

/** How much goes on a card. Cuts, scores and the clock are the last to go, and are never smaller than 16 points. */
export type CardRoom = {
  readonly points: 18 | 16;
  /** The most that is said of a step. */
  readonly actions: 0 | 1 | 2 | 3;
  /** Which steps have the list of what is glued or cut in them, and not only a line that it is on the sheet. */
  readonly lists: 'all' | 'without a sentence' | 'none';
  /** Room for a picture beside what is said, in millimeters. */
  readonly picture: DrawingRoom | undefined;
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
  actions: 3,
  lists: 'all',
  picture: { width: 24, height: 17 },
  stepCautions: true,
  instead: true,
  table: true,
  notes: true,
  rows: Number.POSITIVE_INFINITY,
};

/** What is left out, one after the other, until all that is left fits. */
const LESS: readonly Partial<CardRoom>[] = [
  { lists: 'without a sentence' },
  { points: 16 },
  { instead: false },
  { lists: 'none' },
  { actions: 2 },
  { actions: 1 },
  { picture: { width: 16, height: 11 } },
  { picture: undefined },
  { stepCautions: false },
  { table: false },
  { notes: false, actions: 0 },
  { rows: 12 },
  { rows: 8 },
];

/**
 * From everything in large type to the least: first lists beside what is said go, then the type gets smaller, then what
 * stands on the sheet as well is left out, then the demonstrator's own notes, which are in the project's file; last, the lists are cut short.
 */
export const ROOMS: readonly [CardRoom, ...CardRoom[]] = [
  ALL,
  ...LESS.map((_, index) => Object.assign({}, ALL, ...LESS.slice(0, index + 1)) as CardRoom),
];

/** The first rows of a list, and how many more there are. */
export function shortened(
  rows: readonly object[],
  { rows: most }: CardRoom,
): { readonly rows: readonly object[]; readonly left: number } {
  return { rows: rows.slice(0, most), left: Math.max(0, rows.length - most) };
}
