import { Length } from '../../measure/length.ts';
import { roundUp } from '../../measure/round.ts';
import type { Form } from '../form.ts';
import { ease, leastNesting } from '../forming/allowance.ts';
import { usualTab } from '../forming/box.ts';
import { form, optional, optionalLength } from '../forming/form.ts';
import {
  type PolygonMeasures,
  type PolygonNames,
  polygonNet,
  slopeOf,
  wallsInRow,
} from '../forming/polygon-sheet.ts';
import { customary, roundToGroove } from '../forming/ruler.ts';
import type { Settings } from '../forming/settings.ts';
import type { Nesting } from '../net.ts';
import { apothem, depthOfPolygon } from '../regular-polygon.ts';

const FEWEST_SIDES = 3;
const MOST_SIDES = 8;
const USUAL_SIDES = 6;

const BOX: PolygonNames = { lead: '', floor: 'floor', role: 'under' };
const LID: PolygonNames = { lead: 'lid-', floor: 'top', role: 'over' };

/**
 * A box of three to eight equal walls. Its floor is a regular polygon: it hangs on the front and is glued to a tab of
 * every other wall. The lid is the same again, a little larger.
 */
export const polygonBox: Form = form({
  name: 'polygon box',
  summary:
    'A box with three to eight equal sides, with a lid if you like: a hexagonal box, an octagonal one.',
  size: {
    parameters: {
      side: { kind: 'length', required: true, says: 'width of each wall, from fold to fold' },
      height: { kind: 'length', required: true, says: 'height of the walls' },
    },
    read: (settings) => {
      const [side, height] = [settings.lengths('side')[0], settings.lengths('height')[0]];
      return side && height && { side, height };
    },
  },
  parameters: {
    sides: optional('count', 'how many walls, 3 to 8; 6 by default'),
    lid: optionalLength('height of a lid, cut from a second sheet; none by default'),
    clearance: optionalLength(
      'how much wider than the box the lid is, from side to side; three thicknesses and 1/16 in (2 mm) of play, or a little more so that its sides lie on the ruler, by default',
    ),
    tab: optionalLength(
      'width of the glue tabs; 1/2 in (13 mm), or as much less as a narrow wall needs, by default',
    ),
  },
  panels: ['front', 'wall-2', 'wall-3', 'floor'],
  example: {
    settings: ['sides: 6', 'side: 1 1/2', 'height: 3'],
    layer: { panel: 'front', cut: '1 1/4 x 2 3/4' },
  },
  closing: 'With one hand inside, press the floor onto its tabs until the glue grabs.',
  measure: (settings, { side, height }) => {
    const sides = readSides(settings);
    const least = leastSide(settings, sides);
    settings.limit(side.value, side.at, 'the side', {
      least,
      why: 'its tab would be too small to hold the floor',
    });
    settings.limit(height.value, height.at, 'the height', settings.foldable);
    const box = sheetFor(settings, sides, side.value, height.value);
    return { box, lid: settings.has('lid') ? readLid(settings, box) : undefined };
  },
  net: ({ box }, corners) => polygonNet(box, BOX, corners),
  parts: ({ box, lid }, corners) =>
    lid ? { lid: { ...polygonNet(lid, LID, corners), takes: takenBy(box, lid) } } : {},
});

function readSides(settings: Settings): number {
  const { value: sides, at } = settings.count('sides', USUAL_SIDES);
  if (sides >= FEWEST_SIDES && sides <= MOST_SIDES) return sides;
  const reason = `sides of ${settings.piece}: ${sides}; a polygon box has ${FEWEST_SIDES} to ${MOST_SIDES}`;
  settings.refuse(at, reason, `write a number from ${FEWEST_SIDES} to ${MOST_SIDES}`);
  return USUAL_SIDES;
}

function sheetFor(settings: Settings, sides: number, side: Length, height: Length): PolygonMeasures {
  const { ruler } = settings;
  const [run, rise] = slopeOf(sides);
  const widest = side.times(SLOPED * rise, 100 * run);
  const usual = Length.min(usualTab(settings, side), roundToGroove(ruler, widest));
  const tab = settings.length('tab', usual, [
    { most: widest, why: 'its ends run in, and too little of it would be left to glue' },
  ]);
  return { sides, side, height, tab, sheet: roundUp(height.plus(depthOfPolygon(side, sides)), ruler.step) };
}

/** So many hundredths of a wall either end of its tab may run in: a tenth of it is left between them. */
const SLOPED = 45;

/** A wall on which a tab that holds finds room; 1/4 in, common practice, no source. */
function leastSide({ ruler }: Settings, sides: number): Length {
  const [run, rise] = slopeOf(sides);
  return roundUp(customary(ruler, 1, 4).times(100 * run, SLOPED * rise), ruler.groove);
}

/** The lid: its side so much longer that the polygon is wider across by the clearance, at least. */
function readLid(settings: Settings, box: PolygonMeasures): PolygonMeasures {
  const { ruler, caliper } = settings;
  const { sides, side, height } = box;
  const lid = settings.length('lid', height, [
    settings.foldable,
    { most: height, why: 'a lid higher than its box does not come down to its rim' },
  ]);
  const least = leastNesting(caliper, 1);
  const clearance = settings.length('clearance', least.plus(ease(ruler)), [
    { least, why: 'three thicknesses of paper go into it, the tab counted' },
  ]);
  const growth = clearance.over(acrossOf(side, sides));
  const longer = roundUp(side.times(growth.numerator, growth.denominator), ruler.step);
  return sheetFor(settings, sides, side.plus(longer), lid);
}

/** From side to side through the middle, as if every side had one that faces it. */
function acrossOf(side: Length, sides: number): Length {
  return apothem(side, sides).times(2);
}

/** How the box goes into its lid: between two walls that face each other or, where none do, at each wall by itself. */
function takenBy(box: PolygonMeasures, lid: PolygonMeasures): Nesting[] {
  const { sides } = box;
  const walls = wallsInRow(box, BOX);
  const by = acrossOf(lid.side, sides).minus(acrossOf(box.side, sides));
  if (sides % 2 === 1)
    return walls.map((wall) => ({ walls: [wall], by: by.half(), tabs: 0, reach: lid.height }));
  const half = sides / 2;
  return walls.slice(0, half).map((wall, index) => ({
    walls: [wall, walls[index + half] ?? wall],
    by,
    tabs: 1,
    reach: lid.height,
  }));
}
