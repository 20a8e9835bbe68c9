import { convexParts } from '../common-parts.ts';
import { depthInside, edgesOf } from '../flat-polygon.ts';
import {
  apart,
  type FoldedPanel,
  type FoldedShape,
  foldedPanelOf,
  onPanel,
  outlineOn,
  runAlike,
} from '../folded-shape.ts';
import { pairsOf } from '../pairs.ts';
import { foldBetween, foldsOf, otherSide } from '../panel-tree.ts';
import { between, cross, dot, height, type Line3, length, minus, type Point3, scaled } from '../space.ts';
import { overlapOf } from './overlap.ts';

/** Two panels that cannot both be where the folds take them, and by how much, in millimeters. */
export type Collision = { readonly panels: readonly [string, string]; readonly by: number };

/** Every pair of panels that pass through each other by more than `allowed` millimeters. */
export function collisions(shape: FoldedShape, allowed: number): readonly Collision[] {
  return pairsOf([...shape.panels.values()]).flatMap(([first, second]): Collision[] => {
    const panels = [first.panel.id, second.panel.id] as const;
    const by = foldBetween(shape.net, ...panels) ? 0 : collides(shape, first, second, allowed);
    return by > allowed ? [{ panels, by }] : [];
  });
}

function collides(shape: FoldedShape, first: FoldedPanel, second: FoldedPanel, allowed: number): number {
  if (runAlike(first, second)) {
    return apart(first, second) <= allowed ? pinned(shape, first, second, allowed) : 0;
  }
  return crossing(first, second);
}

/** How deep two panels at an angle cut through each other: the least of what sticks out on any side. */
function crossing(first: FoldedPanel, second: FoldedPanel): number {
  const deepest = Math.min(straddle(first, second), straddle(second, first));
  if (deepest <= 0) return 0;
  const line = cross(first.plane.normal, second.plane.normal);
  const direction = scaled(line, 1 / length(line));
  const along = Math.max(
    ...cuts(first, second, direction).flatMap((a) => cuts(second, first, direction).map((b) => common(a, b))),
    0,
  );
  return Math.min(deepest, along);
}

/** How far a panel reaches to the less reached side of another's plane. */
function straddle(panel: FoldedPanel, other: FoldedPanel): number {
  const heights = panel.corners.map((corner) => height(other.plane, corner));
  return Math.min(Math.max(...heights), -Math.min(...heights));
}

type CutSpan = readonly [number, number];

/** Where a panel is cut by another's plane, as stretches along the line both planes share. */
function cuts(panel: FoldedPanel, other: FoldedPanel, direction: Point3): CutSpan[] {
  return partsOf(panel).flatMap((part): CutSpan[] => {
    const ends: number[] = [];
    for (const [a, b] of edgesOf(part)) {
      const [here, there] = [height(other.plane, a), height(other.plane, b)];
      if (here * there < 0) ends.push(dot(direction, between(a, b, here / (here - there))));
    }
    return ends.length < 2 ? [] : [[Math.min(...ends), Math.max(...ends)]];
  });
}

function partsOf(panel: FoldedPanel): readonly (readonly Point3[])[] {
  if (panel.corners.length < 5) return [panel.corners];
  const marked = panel.corners.map((corner) => ({ ...onPanel(panel, corner), corner }));
  return convexParts(marked).map((part) => part.map(({ corner }) => corner));
}

function common([a, b]: CutSpan, [c, d]: CutSpan): number {
  return Math.min(b, d) - Math.max(a, c);
}

/**
 * Panels that lie on each other collide when neither can be the upper one: each has a neighbor that rises from
 * within the other's area, on both sides. (Two flanges that stand up from flaps which overlap are such a case.)
 */
function pinned(shape: FoldedShape, first: FoldedPanel, second: FoldedPanel, allowed: number): number {
  const { area, width, height: reach } = overlapOf(first, second);
  if (area <= allowed * allowed) return 0;
  const { normal } = first.plane;
  const blocksFirst = blockedSides(shape, second, first, normal, allowed);
  const blocksSecond = blockedSides(shape, first, second, normal, allowed);
  const above = blocksFirst.above || blocksSecond.below;
  const below = blocksFirst.below || blocksSecond.above;
  return above && below ? Math.min(width, reach) : 0;
}

/** The sides of `under` on which `cover` cannot lie, because something folded from `under` rises there inside it. */
function blockedSides(
  shape: FoldedShape,
  under: FoldedPanel,
  cover: FoldedPanel,
  normal: Point3,
  allowed: number,
): { readonly above: boolean; readonly below: boolean } {
  let [above, below] = [false, false];
  for (const fold of foldsOf(shape.net, under.panel.id)) {
    const id = otherSide(fold, under.panel.id);
    const line = [under.place(fold.from), under.place(fold.to)] as const;
    if (id === undefined || id === cover.panel.id || !entersWithin(cover, line, allowed)) continue;
    const { corners } = foldedPanelOf(shape, id);
    const heights = corners.map((corner) => dot(normal, minus(corner, line[0])));
    above ||= Math.max(...heights) > allowed;
    below ||= Math.min(...heights) < -allowed;
  }
  return { above, below };
}

/** Whether a line on a panel's plane runs through its inside, further from every edge than allowed. */
export function entersWithin(panel: FoldedPanel, line: Line3, allowed: number): boolean {
  const [from, to] = [onPanel(panel, line[0]), onPanel(panel, line[1])];
  const outline = outlineOn(panel, panel);
  const samples = [0.1, 0.3, 0.5, 0.7, 0.9];
  return samples.some((share) => {
    const point = { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
    return depthInside(point, outline) > allowed;
  });
}
