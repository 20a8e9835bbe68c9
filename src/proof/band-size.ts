import type { Length, Unit } from '../measure/length.ts';
import { printNear } from '../measure/print.ts';
import { nextMark } from '../measure/round.ts';
import { rulerUnit } from '../measure/ruler-unit.ts';
import type { Piece } from '../project/model.ts';
import { goesRound } from '../shape/links.ts';
import { sayLengths } from './words.ts';

/** What a band by its form is given to go round, as its author wrote it: the form adds the paper and room to slide. */
export type BandSize = {
  /** The key that it follows: `inside`, or `around`. */
  readonly key: string;
  readonly width: Length;
  readonly thickness: Length;
};

/** What a piece is given to go round; undefined unless it is a band by its form. */
export function bandSizeOf(piece: Pick<Piece, 'body'>): BandSize | undefined {
  const { body } = piece;
  if (body.kind !== 'form' || !goesRound(piece)) return undefined;
  for (const [key, setting] of body.settings) {
    const [width, thickness, more] = setting.kind === 'lengths' ? setting.lengths : [];
    if (width && thickness && !more) return { key, width: width.value, thickness: thickness.value };
  }
  return undefined;
}

/** `4 1/4 × 1/8 in`. */
export function sayBand({ width, thickness }: BandSize, unit: Unit): string {
  return sayLengths([width, thickness], unit, printNear);
}

/** `write "inside: 4 1/4 x 1/8 in"`: each length as it is where it will do for what goes in, else that on the ruler's marks. */
export function sayBetterBand(
  { key, width, thickness }: BandSize,
  [across, , deep]: readonly [Length, Length, Length],
  which: 'at least' | 'at most',
  unit: Unit,
): string {
  const better = (now: Length, needed: Length): Length => {
    const least = nextMark(needed, rulerUnit(unit));
    return now.lessThan(least) === (which === 'at least') ? least : now;
  };
  const size = sayLengths([better(width, across), better(thickness, deep)], unit);
  return `write "${key}: ${size.replace('×', 'x')}"`;
}

/** How a thing lies in a band: as width, height and depth; where the band is tightest, or that it is folded flat. */
type LyingBand = {
  readonly takes: readonly [Length, Length, Length];
  readonly direction: 0 | 1 | 2;
  readonly round?: unknown;
};

/** What is left of the size that a band is given, where it is tightest; in all, of one that is folded flat. */
export function leftOf({ width, thickness }: BandSize, { takes, round, direction }: LyingBand): Length {
  const [across, deep] = [width.minus(takes[0]), thickness.minus(takes[2])];
  if (round) return across.plus(deep);
  return direction === 0 ? across : deep;
}
