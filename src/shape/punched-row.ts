import { Length } from '../measure/length.ts';
import { roundDown } from '../measure/round.ts';
import type { PunchedEdge } from '../project/decoration.ts';
import type { PunchedRow } from './net.ts';

type Motif = Pick<PunchedRow, 'pitch' | 'hole'>;
type Spread = Pick<PunchedRow, 'start' | 'count' | 'ends' | 'middle'>;

/** The edge that a row is laid along. */
type RowBed = Pick<PunchedRow, 'side' | 'length' | 'cut' | 'clear'>;

/**
 * Lays a row along an edge so that both ends come out alike: with a motif or a gap on the middle, whichever is better, or
 * with as many motifs as the edition that it comes from. Whole motifs keep out of the corners.
 */
export function rowAlong({ side, length, cut, clear }: RowBed, written: PunchedEdge): PunchedRow {
  const bed = { side, length, cut, clear };
  const tool = { pitch: written.pitch.value, hole: written.hole.value };
  const spread = countedRow(bed, written, tool) ?? freeRow(bed, written, tool);
  return { written, ...bed, depth: (written.depth ?? written.hole).value, ...tool, ...spread };
}

function freeRow({ length, cut, clear }: RowBed, { start, through }: PunchedEdge, tool: Motif): Spread {
  if (start) return runFrom(start.value, length, tool, through);
  const runs = (['hole', 'gap'] as const).map((middle) => ({
    ...runAbout(middle, length, clear, tool, through),
    middle,
  }));
  return bestOf(runs, tool, cut);
}

/** A row of the number of motifs that is handed on; undefined where there is none, or where they no longer fit. */
function countedRow(
  { side, length }: RowBed,
  { counts, start, through }: PunchedEdge,
  tool: Motif,
): Spread | undefined {
  const count = counts?.get(side) ?? 0;
  if (count === 0 || (start && through)) return undefined;
  const whole = tool.pitch.times(count - 1).plus(tool.hole);
  const run = runOf(start?.value ?? length.minus(whole).half(), count, length, tool);
  const least = through ? tool.hole.times(-1) : Length.zero;
  if (run.ends.some((end) => end.sign < 0 && !end.greaterThan(least))) return undefined;
  return start ? run : { ...run, middle: count % 2 === 1 ? 'hole' : 'gap' };
}

/** As many motifs from a start on as there is room for; a tool that runs through cuts what it meets of others. */
function runFrom(start: Length, length: Length, { pitch, hole }: Motif, through: boolean): Spread {
  if (!through) {
    const count = stepsWithin(length.minus(start).minus(hole), pitch) + 1;
    return runOf(start, count, length, { pitch, hole });
  }
  const before = stepsWithin(start.plus(hole), pitch, 'before');
  const first = start.minus(pitch.times(before));
  const count = stepsWithin(length.minus(first), pitch, 'before') + 1;
  return runOf(first, count, length, { pitch, hole });
}

/** The row with a motif or a gap on the middle of the edge. */
function runAbout(
  middle: 'hole' | 'gap',
  length: Length,
  clear: Length,
  tool: Motif,
  through: boolean,
): Spread {
  const { pitch, hole } = tool;
  const half = length.half();
  // How far the motif nearest to the middle reaches from there, to its far side.
  const near = (middle === 'hole' ? hole : pitch.plus(hole)).half();
  const room = half.minus(near);
  const further = through
    ? stepsWithin(room.plus(hole), pitch, 'before')
    : stepsWithin(room.minus(clear), pitch);
  const count = 2 * further + (middle === 'hole' ? 1 : 2);
  return runOf(half.minus(near).minus(pitch.times(further)), Math.max(count, 0), length, tool);
}

function runOf(start: Length, count: number, length: Length, { pitch, hole }: Motif): Spread {
  const end = start.plus(pitch.times(count - 1)).plus(hole);
  return { start, count: Math.max(count, 0), ends: [start, length.minus(end)] };
}

/** How many whole steps there are within a length, or strictly before its end; −1 where there is no length. */
function stepsWithin(length: Length, step: Length, kind: 'within' | 'before' = 'within'): number {
  if (length.sign < 0 || (kind === 'before' && length.sign === 0)) return -1;
  const whole = roundDown(length, step);
  const steps = Number(whole.over(step).numerator);
  return kind === 'before' && whole.equals(length) ? steps - 1 : steps;
}

/**
 * Whole motifs before cut ones; of whole ones those whose ends are most like the gaps between them, and rather with more
 * paper there than with less; of cut ones those of which most nearly half is left.
 */
function bestOf(runs: readonly Spread[], tool: Motif, cut: Length): Spread {
  const [best = runs[0], other] = runs.filter(({ count }) => count > 0);
  if (!best) throw new Error('a row of motifs was not laid at all');
  return other && isBetter(other, best, tool, cut) ? other : best;
}

function isBetter(one: Spread, other: Spread, { pitch, hole }: Motif, cut: Length): boolean {
  const [end, otherEnd] = [one.ends[0], other.ends[0]];
  if (end.sign < 0 !== otherEnd.sign < 0) return end.sign >= 0;
  const wanted = end.sign < 0 ? hole.half().times(-1) : pitch.minus(hole).plus(cut);
  const [off, otherOff] = [end.minus(wanted).abs(), otherEnd.minus(wanted).abs()];
  return off.equals(otherOff) ? end.greaterThan(otherEnd) : off.lessThan(otherOff);
}

/** No ruler shows less: ends that differ by no more are alike. */
const ALIKE = Length.of(1, 32, 'in');

/** How the two ends come out: with whole motifs and like paper, with motifs cut alike, or unlike. */
export function endsOf({ ends: [first, last] }: Pick<PunchedRow, 'ends'>): 'whole' | 'half' | 'unlike' {
  if (first.minus(last).abs().greaterThan(ALIKE)) return 'unlike';
  return first.sign < 0 || last.sign < 0 ? 'half' : 'whole';
}
