import { overlapParts } from '../closure/overlap.ts';
import { areaOf, type Point2 } from '../flat-polygon.ts';
import { type FoldedPanel, type FoldedShape, foldedPanelOf, foldIn, offPanel } from '../folded-shape.ts';
import type { Fold, Mate, Net } from '../net.ts';
import { height, type Plane } from '../space.ts';
import { type Move, wholeOf } from './moves.ts';
import { type Side, seenBack } from './sides.ts';

/** A shape shortly before a move ends (worked out when it is asked for), and then. */
type Moment = {
  readonly move: Move;
  readonly before: () => FoldedShape;
  readonly after: FoldedShape;
  /** Millimeters: what lies closer lies on one another. */
  readonly near: number;
  readonly mates: readonly Mate[];
};

/** Two panels that a move has laid on one another, and those of its folds that lie on the way between them. */
type Landing = { readonly panels: readonly [string, string]; readonly hinges: readonly Fold[] };

/**
 * On which side of the first of two panels a move lays the second. One that turns about a line in the other's plane
 * lands on the side it comes from. What is carried round an edge slides in along the other: it goes in behind, and
 * behind is where that edge is. Of two that are glued, the one that is named first goes in, else the one carried.
 */
export function sideWhereMet(moment: Moment, { panels, hinges }: Landing): Side {
  const { before, after, near } = moment;
  const [under, coming] = panels;
  const [first, second] = [foldedPanelOf(after, under), foldedPanelOf(after, coming)];
  if (heightsOf(hinges, after, first.plane).every((each) => Math.abs(each) <= near)) {
    const parts = overlapParts(second, first);
    return approach(foldedPanelOf(before(), under), foldedPanelOf(before(), coming), parts);
  }
  const goesIn = isTuckedIn(under, coming, moment, after.net);
  const [inner, outer] = goesIn ? [first, second] : [second, first];
  const behind = sum(heightsOf(hinges, after, outer.plane)) > near ? 1 : -1;
  return inner === second ? behind : seenBack(outer, inner, behind);
}

/** How high both ends of some folds lie over a plane. */
function heightsOf(folds: readonly Fold[], shape: FoldedShape, plane: Plane): readonly number[] {
  return folds.flatMap((fold) => foldIn(shape, fold).map((end) => height(plane, end)));
}

/** The side of a panel on which another is, judged by those parts of it that are about to land there. */
function approach(under: FoldedPanel, coming: FoldedPanel, parts: readonly (readonly Point2[])[]): Side {
  const weighed = parts.map((part) => {
    const heights = part.map((point): number => height(under.plane, offPanel(coming, point)));
    return (sum(heights) / heights.length) * areaOf(part);
  });
  return sum(weighed) >= 0 ? 1 : -1;
}

/** Whether it is the first of two panels that goes in behind the second. */
function isTuckedIn(first: string, second: string, { mates, move }: Moment, sheet: Net): boolean {
  const [a, b] = [wholeOf(sheet, first), wholeOf(sheet, second)];
  const mate = mates.find(({ from, to }) => (from === a && to === b) || (from === b && to === a));
  return mate ? mate.from === a : move.carried.has(first);
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
