import type { Length } from '../../measure/length.ts';
import type { FoldedShape } from '../folded-shape.ts';
import type { Fold, Net } from '../net.ts';
import { gather } from '../pairs.ts';
import { boxArea } from '../panel-area.ts';
import { foldBetween } from '../panel-tree.ts';
import { perNet } from '../per-net.ts';
import { areFacing, bentRows, isFlatOn, lineOf, reachFrom, signedAngle, tubesOf } from '../tube.ts';
import { tubeEnds } from './ends.ts';
import { allMeet } from './glue.ts';
import { Holding, type Unheld } from './holding.ts';
import { loosePockets } from './loose-pocket.ts';
import { endPanels, openEnds } from './open-ends.ts';
import { freeCorners, leftOutFlaps } from './twins.ts';

/** The share of what it is folded onto that a gate reaches at least. Common practice, no source: two make a half each. */
const LEAST_LEAF = 0.4;

/** Panels that hang together and move. */
type MovingPart = readonly string[];

/**
 * Everything of a folded shape that should be held and isn't; what opens on purpose is not among it. Of a card, nothing;
 * nor where what is glued doesn't meet, for then it is not the shape that is meant.
 */
export const unheldParts: (shape: FoldedShape, caliper: Length) => readonly Unheld[] = perNet(
  (shape: FoldedShape, caliper: Length) => {
    const { net } = shape;
    const holding = new Holding(shape, caliper);
    if (net.glue.length === 0 && net.folds.every(isFlatOn)) return loosePockets(holding);
    if (!allMeet(shape, caliper)) return [];
    const tabs = missingTabs(holding);
    if (tabs.length > 0) return tabs;
    const corners = net.glue.length === 0 && !isFlat(net) ? freeCorners(net) : [];
    if (corners.length > 1) {
      const panels = corners.map(({ panel }) => panel);
      return [
        { kind: 'panels', panels, glue: corners.map(({ panel, wall }) => ({ from: panel, to: wall })) },
      ];
    }
    const [seam] = openSeams(holding);
    const ends = tubesOf(net).flatMap((tube) => openEnds(holding, tube));
    // Where nothing is stuck at all, that is one cause.
    const glue = [...(seam?.glue ?? []), ...ends.flatMap((end) => end.glue)];
    const ofTubes = seam && net.glue.length === 0 ? [{ ...seam, glue }] : [...(seam ? [seam] : []), ...ends];
    return [...ofTubes, ...openParts(holding)];
  },
);

function openSeams({ net }: Holding): Unheld[] {
  const { opens = [] } = net;
  return tubesOf(net).flatMap(({ isGlued, tab, mate: { from, to } }) => {
    const wall = from === tab ? to : from;
    return isGlued || opens.includes(tab)
      ? []
      : [{ kind: 'seam', panels: [tab, wall], glue: [{ from: tab, to: wall }] }];
  });
}

/** Where a row of walls comes round edge to edge; a lid, which comes down on the wall it faces, is none. */
function missingTabs(holding: Holding): Unheld[] {
  const { net } = holding;
  if (tubesOf(net).length > 0) return [];
  const lids = lidsAmong(holding, partsOf(net, [...holding.loose]));
  const ends = bentRows(net).map((row) => [row[0]?.parent ?? '', row.at(-1)?.child ?? ''] as const);
  const open = ends.find(([first, last]) => {
    const isStuck = net.glue.some(({ from, to }) => [from, to].every((each) => [first, last].includes(each)));
    const isOnLid = lids.some((lid) => lid.includes(first) || lid.includes(last));
    return !isStuck && !isOnLid && holding.meet(first, last) === 'edge';
  });
  return open ? [{ kind: 'no tab', panels: open, glue: [] }] : [];
}

/** Whatever else moves, and meets what it could be stuck to. */
function openParts(holding: Holding): Unheld[] {
  const { net, loose } = holding;
  const ofTubes = tubesOf(net).flatMap(({ walls, tab }) => [...walls, tab]);
  const elsewhere = new Set([...ofTubes, ...tubeEnds(net).flatMap((end) => endPanels(holding, end))]);
  const parts = partsOf(
    net,
    [...loose].filter((panel) => !elsewhere.has(panel)),
  );
  const lids = lidsAmong(holding, parts);
  const kept = parts.filter((part) => meetsOthers(holding, part) && !lids.includes(part));
  const forgotten = leftOutFlaps(net).flatMap(({ panel, to }) => (to === undefined ? [panel] : []));
  const isForgotten = (part: MovingPart): boolean => part.every((panel) => forgotten.includes(panel));
  const flaps = isFlat(net) ? kept.filter((part) => isForgotten(part) || !isLeaf(net, part)) : kept;
  const mayOpen = isFlat(net) && !net.opens && flaps.length === kept.length;
  const closing = mayOpen
    ? largestOf(
        kept.filter((part) => !isForgotten(part)),
        net,
      )
    : undefined;
  const unheld = flaps.filter((part) => part !== closing);
  const causes = gather(unheld, (one, other) => one.some((a) => other.some((b) => holding.meet(a, b))));
  return causes.map((panels) => ({
    kind: 'panels',
    panels: panels.filter((panel) => !holding.hangsOn(panel, panels)),
    glue: holding.glueFor(panels),
  }));
}

function partsOf(net: Net, panels: readonly string[]): readonly MovingPart[] {
  const single = panels.map((panel) => [panel]);
  return gather(single, (one, other) => one.some((a) => other.some((b) => foldBetween(net, a, b))));
}

/**
 * What meets along the very line that a part turns about meets so however far it is turned; and so does what is folded
 * flat on a neighbor, along the next line of that.
 */
function meetsOthers(holding: Holding, part: MovingPart): boolean {
  const { net } = holding;
  const own = hingesOf(net, part);
  const others = net.panels.filter(({ id }) => !part.includes(id));
  return others.some(({ id }) =>
    part.some((panel) => {
      const touch = holding.meet(panel, id);
      if (touch !== 'edge') return touch === 'face';
      const lies = net.folds.some(
        (fold) => isFlatOn(fold) && (fold.panels.includes(panel) || fold.panels.includes(id)),
      );
      const lines = net.glue.length === 0 && lies ? net.folds : own;
      return !lines.some((fold) => holding.bothEndOn(fold, panel, id));
    }),
  );
}

/**
 * What hangs on a wall and comes down on others is a lid; a single flap is one where it lies on nothing but such flaps, as
 * the returns of a frame do.
 */
function lidsAmong(holding: Holding, parts: readonly MovingPart[]): readonly MovingPart[] {
  if (isFlat(holding.net)) return [];
  const opening = parts.filter((part) => bearsOpening(holding, part));
  const hanging = parts.filter((part) => !opening.includes(part) && hangsOnWall(holding, part));
  const isSingle = (part: MovingPart): boolean => part.length === 1;
  return [
    ...opening,
    ...hanging.filter((part) => !isSingle(part)),
    ...onlyOnEachOther(holding, hanging.filter(isSingle)),
  ];
}

/** Whether a flap that is to open hangs at the far edge of a part: that opens with it. */
function bearsOpening({ net }: Holding, part: MovingPart): boolean {
  const [hinge, ...others] = hingesOf(net, part).filter(({ panels }) => !opensOne(net, panels));
  const flaps = hingesOf(net, part).filter(({ panels }) => opensOne(net, panels));
  return hinge !== undefined && others.length === 0 && flaps.some((fold) => areFacing(fold, hinge));
}

function opensOne({ opens = [] }: Net, panels: readonly string[]): boolean {
  return panels.some((panel) => opens.includes(panel));
}

function onlyOnEachOther(holding: Holding, flaps: readonly MovingPart[]): readonly MovingPart[] {
  const panels = flaps.flat();
  const kept = flaps.filter((flap) =>
    flap.every((panel) => holding.liesOn(panel).every((other) => panels.includes(other))),
  );
  return kept.length === flaps.length ? kept : onlyOnEachOther(holding, kept);
}

/**
 * Whether a part, with whatever hangs on it and is to open, hangs on one wall; what a box is held at is one where it is in a
 * tube, or where the part is a tray of its own.
 */
function hangsOnWall(holding: Holding, part: MovingPart): boolean {
  const { net, shape } = holding;
  const [wall, ...others] = hingesOf(net, [...holding.branches(part)]).flatMap(({ panels }) =>
    panels.filter((panel) => !holding.branches(part).has(panel)),
  );
  if (wall === undefined || others.length > 0) return false;
  const isTray = net.glue.some(({ from, to }) => part.includes(from) && part.includes(to));
  return wall !== shape.base || isTray || tubesOf(net).some(({ walls }) => walls.includes(wall));
}

/** The folds that a part hangs by. */
function hingesOf({ folds }: Net, part: MovingPart): readonly Fold[] {
  return folds.filter(({ panels: [a, b] }) => part.includes(a) !== part.includes(b));
}

/** What is folded flat on another and nearly half as wide, or wider, is a card's leaf or gate, and no flap to be stuck. */
function isLeaf(net: Net, part: MovingPart): boolean {
  const [fold, ...others] = hingesOf(net, part);
  if (!fold || others.length > 0 || !isFlatOn(fold)) return false;
  const [one = 0, other = 0] = fold.panels.map((panel) => reachFrom(lineOf(fold), net, panel).mm);
  const [own, on] = part.includes(fold.panels[0]) ? [one, other] : [other, one];
  return own > LEAST_LEAF * on;
}

function isFlat({ folds }: Net): boolean {
  return folds.every((fold) => isFlatOn(fold) || signedAngle(fold) === 0);
}

/** What is folded flat and stuck may open on one side, as an envelope does: where its largest part moves. */
function largestOf(parts: readonly MovingPart[], net: Net): MovingPart | undefined {
  const areaOf = (part: MovingPart): number =>
    net.panels.reduce((sum, { id, box }) => sum + (part.includes(id) ? boxArea(box) : 0), 0);
  return parts.toSorted((a, b) => areaOf(b) - areaOf(a))[0];
}
