import type { Tube } from '../tube.ts';
import { coversHalf } from './end-cover.ts';
import { endGap, isFlapStuck, standingTucks, type TubeEnd, tubeEnds } from './ends.ts';
import type { Holding, Unheld } from './holding.ts';
import { isSquare } from './seam.ts';

/** All that hangs on the walls of a tube at one of its ends. */
export function endPanels(holding: Holding, { flaps }: TubeEnd): readonly string[] {
  return [...holding.branches(flaps.map(({ panel }) => panel))];
}

/**
 * Ends of a tube with flaps that should be stuck. A box must open somewhere, and one end may do so as soon as the other
 * is stuck; of an end that is stuck no flap may be left out.
 */
export function openEnds(holding: Holding, tube: Tube): readonly Unheld[] {
  const ends = tubeEnds(holding.net)
    .filter((end) => end.tube === tube)
    .map((end) => ({ end, panels: endPanels(holding, end), state: stateOf(holding, end) }));
  const leftOut = ends.flatMap(({ end, panels, state }) =>
    state === 'glued' ? flapsLeftOut(holding, end, panels) : [],
  );
  const isOneStuck = ends.some(({ state }) => state === 'glued');
  const free = isOneStuck ? [] : ends.filter(({ state }) => state === 'free');
  // What hangs on flaps is a flange or the like, to open and close by; else the end that lies lower is the bottom.
  const further = ({ end, panels }: (typeof free)[number]): number => panels.length - end.flaps.length;
  const [closing] = free.toReversed().toSorted((a, b) => further(a) - further(b));
  if (!closing) return leftOut;
  const panels = closing.end.flaps.map(({ panel }) => panel);
  return [...leftOut, { kind: 'end', panels, glue: holding.glueFor(closing.panels) }];
}

/** How an end is closed: `open` where nothing closes it, `free` where flaps lie across it and that is all. */
function stateOf(holding: Holding, end: TubeEnd): 'open' | 'meant' | 'tucked' | 'glued' | 'free' {
  const { glue, opens } = holding.net;
  const panels = endPanels(holding, end);
  if (glue.some(({ from, to }) => panels.includes(from) || panels.includes(to))) return 'glued';
  if (end.flaps.some(({ tuck }) => tuck) || standingTucks(holding.net, end).length > 0) return 'tucked';
  if (opens?.some((panel) => panels.includes(panel))) return 'meant';
  const canBeStuck = (part: string): boolean => holding.liesOnOther(part);
  // One flap at the upper end may be there to close it by; one at the foot is a floor, and so are those that meet.
  const doMeet = (end.flaps.length > 1 || end.end === 'bottom') && !endGap(holding.net, end, holding.caliper);
  const isFloor = doMeet || end.flaps.some(({ parts }) => parts.some(canBeStuck));
  return isFloor && coversHalf(holding.shape, end, holding.caliper) ? 'free' : 'open';
}

function flapsLeftOut(holding: Holding, end: TubeEnd, panels: readonly string[]): Unheld[] {
  // A flap is as good as stuck where any part of it is.
  const held = end.flaps.filter((flap) => isFlapStuck(holding.net, flap)).flatMap(({ parts }) => parts);
  const left = panels.filter(
    (panel) => !held.includes(panel) && holding.loose.has(panel) && holding.liesOnOther(panel),
  );
  if (left.length === 0) return [];
  const stuck = end.flaps.filter(({ parts }) => !parts.some((part) => left.includes(part)));
  const covers = stuck.length > 0 && !endGap(holding.net, { ...end, flaps: stuck }, holding.caliper);
  if (covers && areShort(end, stuck)) return [];
  const found = { kind: 'flaps', panels: left, glue: holding.glueFor(left) } as const;
  return [covers ? { ...found, covered: true } : found];
}

/** Whether two facing flaps are stuck and neither of those beside them: common practice for a carton, no source. */
function areShort({ tube }: TubeEnd, stuck: TubeEnd['flaps']): boolean {
  const sides = new Set(stuck.map(({ side }) => side));
  return isSquare(tube) && sides.size === 2 && [0, 1].some((side) => sides.has(side) && sides.has(side + 2));
}
