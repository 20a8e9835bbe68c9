import { Length } from '../measure/length.ts';
import { roundMillimeters } from '../measure/round.ts';
import type { Piece, Project } from '../project/model.ts';
import type { Grade, PaperWeight, Stock } from '../project/stock.ts';

/** A paper's thickness, and how sure it is: measured by its maker, guessed from its weight, or the usual cardstock. */
type Caliper = {
  readonly thickness: Length;
  readonly source: 'given' | 'estimated' | 'assumed';
};

/** A thick everyday cardstock, for a stock of which nothing is known. Common practice, no source. */
const ASSUMED: Length = Length.of(3, 10, 'mm');

/**
 * Thickness of common basis weights.
 * Index: Government Paper Specification Standards No. 11, JCP K10. Text: the same, JCP A91.
 * Cover: a trade chart in points of 1/1000 in that calls itself a guide only.
 */
const OF_BASIS: Partial<Record<Grade, Readonly<Record<number, Length>>>> = {
  index: { 90: microns(190), 110: microns(230), 140: microns(290), 170: microns(350) },
  text: { 70: microns(140), 80: microns(160), 100: microns(200) },
  cover: { 65: tenthsOfPoint(80), 80: tenthsOfPoint(95), 100: tenthsOfPoint(110) },
};

/** Square inches of each grade's basic sheet, of which 500 weigh the basis weight. */
const BASIC_SHEET: Record<Grade, number> = {
  cover: 20 * 26,
  text: 25 * 38,
  index: 25.5 * 30.5,
  bristol: 22.5 * 28.5,
  tag: 24 * 36,
  bond: 17 * 22,
};

/** g/m² of one pound on a basic sheet of one square inch: 453.59237 / (500 × 0.00064516). */
const GRAMMAGE_OF_POUND = 453.59237 / (500 * 0.00064516);

/** Microns a g/m² is thick. From the index and cover rows above: between 1.12 and 1.15; a paper may differ widely. */
const BULK = 1.15;

/** What a piece is cut from; undefined where it names none that is there. */
export function stockOf(piece: Piece | undefined, { stock }: Project): Stock | undefined {
  return piece?.stock && stock.get(piece.stock.value);
}

/** The thickness a stock is reckoned with. Without a stock, or a weight, that of an everyday cardstock. */
export function caliperOf(stock: Stock | undefined): Caliper {
  if (stock?.caliper) return { thickness: stock.caliper.value, source: 'given' };
  if (stock?.weight) return { thickness: estimate(stock.weight.value), source: 'estimated' };
  return { thickness: ASSUMED, source: 'assumed' };
}

/** Grams per square meter of a paper weight; for a basis weight a floating-point number, exact to its factor. */
export function grammageOf(weight: PaperWeight): number {
  if (weight.kind === 'grammage') return weight.gsm;
  return (weight.pounds * GRAMMAGE_OF_POUND) / BASIC_SHEET[weight.grade];
}

function estimate(weight: PaperWeight): Length {
  const known = weight.kind === 'basis' ? OF_BASIS[weight.grade]?.[weight.pounds] : undefined;
  return known ?? roundMillimeters((grammageOf(weight) * BULK) / 1000, 100);
}

function microns(count: number): Length {
  return Length.of(count, 1000, 'mm');
}

function tenthsOfPoint(count: number): Length {
  return Length.of(count, 10_000, 'in');
}
