import { type FoldedShape, foldedPanelOf, foldIn } from '../folded-shape.ts';
import type { Fold } from '../net.ts';
import { pairsOf } from '../pairs.ts';
import { otherSide } from '../panel-tree.ts';
import { cross, dot, height, type Line3, minus, type Point3, plus, scaled, unit } from '../space.ts';
import { isFlatOn, signedAngle } from '../tube.ts';
import { type Collision, entersWithin } from './collisions.ts';
import { sharedLength } from './touch.ts';

/**
 * Panels that a fold would have to go through, by more than `allowed` millimeters: what is folded flat on a panel has to
 * leave room for what rises from that one on the same side.
 */
export function pierced(shape: FoldedShape, allowed: number): readonly Collision[] {
  const bent = shape.net.folds.filter((fold) => signedAngle(fold) !== 0 && !isFlatOn(fold));
  const throughCovers = shape.net.folds
    .filter(isFlatOn)
    .flatMap((flat) => bent.flatMap((fold) => throughCover(shape, flat, fold, allowed)));
  const throughFolds = pairsOf(bent).flatMap(([one, other]) => throughFold(shape, one, other, allowed));
  return [...throughCovers, ...throughFolds];
}

/** A panel folded up from another, within what is folded flat on that one. */
function throughCover(shape: FoldedShape, flat: Fold, fold: Fold, allowed: number): readonly Collision[] {
  const under = flat.panels.find((panel) => fold.panels.includes(panel));
  const [cover, rising] = [flat, fold].map((each) => otherSide(each, under ?? ''));
  if (under === undefined || cover === undefined || rising === undefined) return [];
  const { plane } = foldedPanelOf(shape, under);
  const side = flat.direction === 'valley' ? 1 : -1;
  const by = Math.max(...foldedPanelOf(shape, rising).corners.map((each) => height(plane, each) * side));
  const isThrough = by > allowed && entersWithin(foldedPanelOf(shape, cover), foldIn(shape, fold), allowed);
  return isThrough ? [{ panels: [rising, cover], by }] : [];
}

/** Degrees; panels at a line that lie closer may be on either side of one another. */
const APART = 5;

/** Two folds along one line: whether the panels of one are on different sides of the other's. */
function throughFold(shape: FoldedShape, one: Fold, other: Fold, allowed: number): readonly Collision[] {
  if (one.panels.some((panel) => other.panels.includes(panel))) return [];
  const line = foldIn(shape, one);
  const by = sharedLength(line, foldIn(shape, other), allowed);
  if (by <= allowed) return [];
  const [a, b, c, d] = [...one.panels, ...other.panels].map((panel) => wayFrom(shape, line, panel));
  if (!a || !b || !c || !d) return [];
  const to = (way: Point3): number => turnBetween(a, way, line);
  const [first, second, third] = [to(b), to(c), to(d)];
  const gaps = [second, third].flatMap((each) => [each, 360 - each, Math.abs(each - first)]);
  if (Math.min(...gaps) < APART || second < first === third < first) return [];
  return [{ panels: [one.panels[1], other.panels[1]], by }];
}

/** Which way a panel goes from a line that is its edge: square to the line, towards its corners. */
function wayFrom(shape: FoldedShape, [from, to]: Line3, panel: string): Point3 {
  const along = unit(minus(to, from));
  const ways = foldedPanelOf(shape, panel).corners.map((corner) => {
    const way = minus(corner, from);
    return minus(way, scaled(along, dot(way, along)));
  });
  return ways.reduce(plus);
}

/** Degrees from one way to another about a line, from 0 to 360. */
function turnBetween(one: Point3, other: Point3, [from, to]: Line3): number {
  const sine = dot(cross(one, other), unit(minus(to, from)));
  const degrees = (Math.atan2(sine, dot(one, other)) * 180) / Math.PI;
  return degrees < 0 ? degrees + 360 : degrees;
}
