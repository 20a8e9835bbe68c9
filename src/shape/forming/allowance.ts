import { Length } from '../../measure/length.ts';
import { roundNearest, roundUp } from '../../measure/round.ts';
import type { Ruler } from './ruler.ts';

/**
 * What the paper's thickness adds between the inside of a box and its score lines, all of it along one dimension
 * with `walls` folded walls: half a thickness a wall, since paper folds about its middle. Rounded to the nearest
 * mark of the ruler: nothing for cardstock, 1/16 in (1 mm) for board.
 */
export function wallAllowance(ruler: Ruler, caliper: Length, walls: 1 | 2): Length {
  return roundNearest(caliper.times(walls, 2), ruler.step);
}

/**
 * How many tabs are glued inside a part where another goes in, counted across: 1 for a sleeve, whose tab is inside its
 * bottom; 2 for a lid, which has tabs inside two walls that face each other.
 */
export type TabsInside = 1 | 2;

/**
 * How much wider, score line to score line, a part must be than the part that goes into it: the thicknesses between, and
 * a little play, up to the next groove of the board. 1/8 in (3 mm) for cardstock. The thicknesses are geometry; the play
 * is common practice, no source.
 */
export function nestingAllowance(ruler: Ruler, caliper: Length, tabs: TabsInside): Length {
  return roundUp(leastNesting(caliper, tabs).plus(ease(ruler)), ruler.groove);
}

/** Under this a part does not go over the other at all: half a thickness on either side of either part, and the tabs. */
export function leastNesting(caliper: Length, tabs: TabsInside): Length {
  return caliper.times(2 + tabs);
}

/**
 * What a band or pocket has to spare around something of its size so that it slides: 1/16 in, 2 mm on any metric ruler,
 * since less would bind. Common practice, no source.
 */
export function ease(ruler: Ruler): Length {
  return roundUp(Length.of(1, 16, 'in'), ruler.step);
}
