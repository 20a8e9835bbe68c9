import { Length } from '../measure/length.ts';
import { roundDown } from '../measure/round.ts';
import type { PunchedEdge } from '../project/decoration.ts';
import type { Edge } from '../project/net-as-written.ts';
import type { PunchedRow } from './net.ts';

type Motif = Pick<PunchedRow, 'pitch' | 'hole'>;
type Spread = Pick<PunchedRow, 'start' | 'count' | 'ends' | 'middle'>;

/**
 * Lays a row along an edge so that both ends come out alike: with a motif or a gap on the middle, whichever is better.
 * Whole motifs keep to the straight part of the edge, between the roundings of its corners.
 */
export function rowAlong(side: Edge, length: Length, written: PunchedEdge, cut: Length): PunchedRow {
  const tool = { pitch: written.pitch.value, hole: written.hole.value };
  const { depth = written.hole, start, through } = written;
  const runs = start
    ? [runFrom(start.value, length, tool, through)]
    : (['hole', 'gap'] as const).map((middle) => ({
        ...runAbout(middle, length, cut, tool, through),
        middle,
      }));
  return { written, side, length, depth: depth.value, cut, ...tool, ...bestOf(runs, tool, cut) };
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
  cut: Length,
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
    : stepsWithin(room.minus(cut), pitch);
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
