import type { Length } from '../../measure/length.ts';
import type { Net } from '../net.ts';
import { cornersOf, positionOf, type Tube } from '../tube.ts';
import { isSquare, sideWidth } from './seam.ts';
import { nearlyEqual } from './tolerance.ts';

/** A score line that, moved from `position` to `better`, would make facing walls equal: measured from left or top. */
type Suspect = {
  readonly lines: 'upright' | 'across';
  readonly position: Length;
  readonly better: Length;
};

/** Every single score line of a square tube whose moving would make its walls equal. */
export function suspectLines(net: Net, tube: Tube, caliper: Length): readonly Suspect[] {
  if (!isSquare(tube)) return [];
  const widths = tube.sides.map((_, side) => sideWidth(net, tube, side));
  const shifts = [0, 1].flatMap((index) => {
    const [a, b] = [widths[index], widths[index + 2]];
    return a && b && !nearlyEqual(a, b, caliper) ? [a.minus(b), b.minus(a)] : [];
  });
  const found: Suspect[] = [];
  for (const [index, { fold }] of cornersOf(tube).entries()) {
    const shift = shifts.find((each) => closesWith(widths, index, each, caliper));
    if (!shift) continue;
    const position = positionOf(fold);
    const better = position.plus(shift.times(direction(tube)));
    found.push({ lines: tube.lines, position, better });
  }
  return found;
}

/** Whether facing sides are equal once the line behind side `index` is moved on by `shift`. */
function closesWith(widths: readonly Length[], index: number, shift: Length, caliper: Length): boolean {
  const moved = widths.map((width, side) => {
    if (side === index) return width.plus(shift);
    return side === index + 1 ? width.minus(shift) : width;
  });
  return [0, 1].every((side) => {
    const [a, b] = [moved[side], moved[side + 2]];
    return a !== undefined && b !== undefined && nearlyEqual(a, b, caliper);
  });
}

/** 1 when the walls follow one another towards right or bottom, else -1. */
function direction({ joints: [first, second] }: Tube): -1 | 0 | 1 {
  return first && second ? positionOf(second.fold).compare(positionOf(first.fold)) : 1;
}
