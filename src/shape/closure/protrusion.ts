import type { Length } from '../../measure/length.ts';
import { uncovered } from '../common-parts.ts';
import { breadthOf } from '../flat-polygon.ts';
import { type FoldedShape, foldedPanelOf, lieAlike, onPanel, outlineOn } from '../folded-shape.ts';
import type { Mate, Net } from '../net.ts';
import { boxArea } from '../panel-area.ts';
import { foldsOf, panelOf, pathBetween } from '../panel-tree.ts';
import { perNet } from '../per-net.ts';
import { reachFrom, tubesOf } from '../tube.ts';
import { tubeEnds } from './ends.ts';
import { overhangingFlaps } from './flat-flaps.ts';
import { glueFits } from './glue.ts';
import { unequalRims } from './rims.ts';
import { isLap, isSquare, sideWidth } from './seam.ts';
import { tolerance } from './tolerance.ts';

/** A glue area that sticks out past what it is stuck to, by so many millimeters. */
export type Protrusion = {
  readonly mate: Mate;
  readonly tab: string;
  readonly wall: string;
  readonly by: number;
};

/**
 * Every glue area of which a part comes to lie on nothing; none where a fold goes astray or the walls of a tray differ,
 * which says enough. Inside an envelope it may reach past its mate as long as there
 * is paper under it; flaps of an end need only stay between the walls.
 */
export const protrusions: (shape: FoldedShape, caliper: Length) => readonly Protrusion[] = perNet(
  (shape: FoldedShape, caliper: Length) => {
    const allowed = tolerance(caliper).mm;
    // Of a flap that is longer than what it is folded on that says enough.
    const tooLong = new Set(overhangingFlaps(shape.net, caliper).map(({ panel }) => panel));
    const fits = glueFits(shape, caliper);
    const areUnequal = unequalRims(shape.net, caliper).some(({ mayBeMeant }) => !mayBeMeant);
    if (areUnequal || fits.some(({ verdict }) => verdict !== 'meets')) return [];
    return fits.flatMap(({ mate }) => {
      const [tab, wall] = tabFirst(shape, mate);
      if (tab === undefined || wall === undefined || tooLong.has(tab)) return [];
      const by = beyondFacing(shape.net, tab) ?? beyond(shape, tab, allowed);
      return by > 0 ? [{ mate, tab, wall, by }] : [];
    });
  },
);

/**
 * A mate's panels, the tab first: a tube's own, else the one that bears nothing, hangs further from the base, or is smaller.
 * None where they close an end.
 */
function tabFirst({ net, base }: FoldedShape, mate: Mate): readonly string[] {
  const panels = [mate.from, mate.to];
  const flaps = tubeEnds(net).flatMap((end) => end.flaps.flatMap(({ parts }) => parts));
  if (flaps.some((part) => panels.includes(part))) return [];
  const tab = tubesOf(net).find((tube) => tube.mate === mate)?.tab;
  const rank = (panel: string): number =>
    panel === tab ? Number.POSITIVE_INFINITY : (pathBetween(net, base, panel)?.length ?? 0);
  const bears = (panel: string): number => (panel !== tab && foldsOf(net, panel).length > 1 ? 1 : 0);
  const size = (panel: string): number => boxArea(panelOf(net, panel).box);
  return panels.toSorted((a, b) => bears(a) - bears(b) || rank(b) - rank(a) || size(a) - size(b));
}

/** Of a panel that makes up the side of a square tube with what it is stuck to: how much wider it is than the facing side. */
function beyondFacing(net: Net, tab: string): number | undefined {
  const tube = tubesOf(net).find((each) => each.tab === tab);
  if (!tube || !isSquare(tube) || !isLap(net, tube)) return undefined;
  return reachFrom(tube.lines, net, tab).minus(sideWidth(net, tube, 2)).mm;
}

/** How broad the widest part of a panel is that lies on no other. */
function beyond(shape: FoldedShape, id: string, allowed: number): number {
  const panel = foldedPanelOf(shape, id);
  const under = [...shape.panels.values()].filter(
    (other) => other !== panel && lieAlike(panel, other, allowed),
  );
  // Where a corner is rounded or cut off, what shows behind it is no more than a corner.
  const covers = under.flatMap((other) => [
    outlineOn(panel, other),
    other.box.map((corner) => onPanel(panel, corner)),
  ]);
  return Math.max(0, ...uncovered(outlineOn(panel, panel), covers, allowed).map(breadthOf));
}
