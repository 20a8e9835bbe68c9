import { Length } from '../measure/length.ts';
import { roundMillimeters } from '../measure/round.ts';
import { boundsOf, type FlatPoint } from './net.ts';

/** Coordinates that follow from an angle are kept to the millionth of a millimeter, far finer than any paper. */
const FINE = 1_000_000;

/**
 * The corners of a regular polygon that hangs below its first side, clockwise from the left end of that. Each side turns
 * by 360°/n from the one before: Euclid, Elements I.32.
 */
export function regularPolygon(at: FlatPoint, side: Length, sides: number): FlatPoint[] {
  const corners: FlatPoint[] = [];
  let [x, y] = [0, 0];
  for (let index = 0; index < sides; index++) {
    corners.push({ x: at.x.plus(roundMillimeters(x, FINE)), y: at.y.plus(roundMillimeters(y, FINE)) });
    const angle = (2 * Math.PI * index) / sides;
    x += side.mm * Math.cos(angle);
    y += side.mm * Math.sin(angle);
  }
  return corners;
}

/** How far the middle of a regular polygon is from its sides. */
export function apothem(side: Length, sides: number): Length {
  return roundMillimeters(side.mm / (2 * Math.tan(Math.PI / sides)), FINE);
}

/** How far a regular polygon reaches from one side of it. */
export function depthOfPolygon(side: Length, sides: number): Length {
  const { top, bottom } = boundsOf(regularPolygon({ x: Length.zero, y: Length.zero }, side, sides));
  return bottom.minus(top);
}
