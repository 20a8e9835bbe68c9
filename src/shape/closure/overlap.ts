import { commonPart, commonParts, convexParts, type Overlap } from '../common-parts.ts';
import type { Point2 } from '../flat-polygon.ts';
import { type FoldedPanel, outlineOn } from '../folded-shape.ts';

/** What two folded panels share when looked at straight onto the first, along whose own width and height it reaches. */
export function overlapOf(first: FoldedPanel, second: FoldedPanel): Overlap {
  return commonPart(outlineOn(first, first), outlineOn(first, second));
}

/** The same as convex parts on the first panel's axes. */
export function overlapParts(first: FoldedPanel, second: FoldedPanel): readonly (readonly Point2[])[] {
  return commonParts(outlineOn(first, first), outlineOn(first, second));
}

/** A panel as convex parts on the axes of another. */
export function partsOn(panel: FoldedPanel, other: FoldedPanel): readonly (readonly Point2[])[] {
  return convexParts(outlineOn(panel, other));
}
