import type { Length } from '../measure/length.ts';
import type { Finding, RuleFacts } from '../project/finding.ts';
import type { GridCorner, Slant } from '../project/net-as-written.ts';
import type { At, Place } from '../project/source.ts';
import { cellName } from './cells.ts';
import { areCrossing, isSamePoint } from './exact.ts';
import type { FlatPoint, FlatSegment } from './net.ts';
import { pairsOf } from './pairs.ts';
import type { GridLines } from './patches.ts';

/** Angled score lines where they lie, and what is wrong with them. */
type AngledScores = { readonly slants: readonly FlatSegment[]; readonly findings: readonly Finding[] };

type LaidScore = FlatSegment & { readonly name: string; readonly at: Place };

/** Lays the angled score lines of a piece from corner to corner of its grid. What cannot be is reported and left out. */
export function layAngledScores(piece: string, written: readonly Slant[], lines: GridLines): AngledScores {
  const findings: Finding[] = [];
  const report = (at: Place, wrong: RuleFacts['angled-score']['wrong']): void => {
    findings.push({ rule: 'angled-score', at, facts: { piece, wrong } });
  };
  const stops = {
    x: [zeroOf(lines), ...lines.across, lines.size.width],
    y: [zeroOf(lines), ...lines.down, lines.size.height],
  };
  const pointOf = ({ value, at }: At<GridCorner>): FlatPoint | undefined => {
    const point = cornerAt(value, stops);
    const last = { column: lines.across.length, row: lines.down.length };
    const wrong = { kind: 'no cell', key: 'score', name: cellName(value.cell) } as const;
    if (!point) findings.push({ rule: 'unknown-reference', at, facts: { piece, last, wrong } });
    return point;
  };
  const laid = written.flatMap((slant): LaidScore[] => {
    const [from, to] = [pointOf(slant.from), pointOf(slant.to)];
    if (!from || !to) return [];
    const name = `${sayCorner(slant.from.value)} to ${sayCorner(slant.to.value)}`;
    const isLevel = from.x.equals(to.x) || from.y.equals(to.y);
    if (isSamePoint(from, to)) report(slant.to.at, { kind: 'no length', name });
    else if (isLevel) report(slant.to.at, { kind: 'level', name });
    return isLevel ? [] : [{ from, to, name, at: slant.to.at }];
  });
  for (const [first, second] of pairsOf(laid)) {
    if (areCrossing(first, second)) report(second.at, { kind: 'crossed', name: second.name, other: first });
    else if (isSameLine(first, second)) report(second.at, { kind: 'twice', name: second.name });
  }
  return { slants: laid.map(({ from, to }) => ({ from, to })), findings };
}

function zeroOf({ size: { width } }: GridLines): Length {
  return width.minus(width);
}

function cornerAt(
  { cell: { column, row }, upper, left }: GridCorner,
  { x, y }: Readonly<Record<'x' | 'y', readonly Length[]>>,
): FlatPoint | undefined {
  // The last of the lines is the edge behind the last cell.
  if (column > x.length - 2 || row > y.length - 2) return undefined;
  const [across, down] = [x[left ? column : column + 1], y[upper ? row : row + 1]];
  return across && down && { x: across, y: down };
}

/** `corner B3`, `corner B3 bottom right`. */
function sayCorner({ cell, upper, left }: GridCorner): string {
  const where = upper && left ? '' : ` ${upper ? 'top' : 'bottom'} ${left ? 'left' : 'right'}`;
  return `corner ${cellName(cell)}${where}`;
}

function isSameLine(first: FlatSegment, second: FlatSegment): boolean {
  const [a, b] = [isSamePoint(first.from, second.from), isSamePoint(first.from, second.to)];
  return (a && isSamePoint(first.to, second.to)) || (b && isSamePoint(first.to, second.from));
}
