import { Length } from '../../measure/length.ts';
import type { Edge } from '../../project/net-as-written.ts';
import type { BoardScores, Net } from '../net.ts';

/** The lines of a pop-up's strip, from the left or the top edge of the sheet. */
type StripLines = {
  readonly isUpright: boolean;
  /** Where the strip begins and ends along the fold. */
  readonly from: Length;
  readonly to: Length;
  /** The fold that it crosses, and the one in its middle. */
  readonly line: Length;
  readonly middle: Length;
  /** Where it hangs on the two panels. */
  readonly ends: readonly [Length, Length];
};

/** A sheet's scores as said at the board with those of a strip, whose middle may leave its fold: that ends at the slits then. */
export function scoresWithStrip({ scores, size }: Net, strip: StripLines): readonly BoardScores[] {
  const { isUpright, line, middle, from, to, ends } = strip;
  const isOnFold = middle.equals(line);
  const high = size.height;
  const lines = [...ends, ...(isOnFold ? [] : [middle])].map((each) => (isUpright ? each : high.minus(each)));
  const at = lines.sort((a, b) => a.compare(b));
  const own: BoardScores = { from: isUpright ? 'left' : 'bottom', at, run: { from, to } };
  const before = isOnFold ? scores : scores.flatMap((row) => parted(row, size, strip));
  return [...before, own];
}

/** A row of scores in which the line that the strip crosses runs only as far as that, and on from there. */
function parted(
  row: BoardScores,
  size: Net['size'],
  { isUpright, line, from, to }: StripLines,
): BoardScores[] {
  const isAlong = row.from === 'left' || row.from === 'right' ? isUpright : !isUpright;
  const [extent, length] = isUpright ? [size.width, size.height] : [size.height, size.width];
  const position = isFar(row.from) ? extent.minus(line) : line;
  const whole = row.run ?? { from: Length.zero, to: length };
  // From the edge that lies along the top of the board.
  const [near, far] = isMirrored(row.from) ? [length.minus(to), length.minus(from)] : [from, to];
  const isCrossed = row.at.some((each) => each.equals(position));
  if (!isAlong || !isCrossed || near.lessThan(whole.from) || far.greaterThan(whole.to)) return [row];
  const others = row.at.filter((each) => !each.equals(position));
  return [
    ...(others.length > 0 ? [{ ...row, at: others }] : []),
    { from: row.from, at: [position], run: { from: whole.from, to: near } },
    { from: row.from, at: [position], run: { from: far, to: whole.to } },
  ];
}

function isFar(from: Edge): boolean {
  return from === 'right' || from === 'bottom';
}

/** Whether the edge at the top of the board is the right or the lower one of the sheet. */
function isMirrored(from: Edge): boolean {
  return from === 'right' || from === 'top';
}
