import { Length } from '../../measure/length.ts';
import type { RoundedCorners } from '../../project/corners.ts';
import { boundsOf, type FlatBox, type FlatPoint, type Net, type Panel, type PanelRole } from '../net.ts';
import { regularPolygon } from '../regular-polygon.ts';
import { type Layout, layoutNet, mountain } from './layout.ts';

/** A box of equal walls from score line to score line, its glue tabs and the sheet it is cut from. */
export type PolygonMeasures = {
  readonly sides: number;
  readonly side: Length;
  readonly height: Length;
  /** Width of the tab that closes the row of walls, and of those that hold the floor. */
  readonly tab: Length;
  /** The sheet's height: that of the walls and the floor, up to the next mark of the ruler. */
  readonly sheet: Length;
};

/** What the panels are called: `lead` stands before the name of every wall. */
export type PolygonNames = { readonly lead: string; readonly floor: string; readonly role: PanelRole };

/**
 * How far the ends of a floor's tab run in, as a share of its width: each leaves half a corner of the floor to its
 * neighbor, and clears the floor's edge beside it on the sheet. Common practice is 45° or flatter, no source.
 */
export function slopeOf(sides: number): readonly [number, number] {
  return sides === 3 ? [7, 4] : [5, 4];
}

/** The walls in a row as they lie, the front in their middle, so that the floor below it is not wider than the row. */
export function wallsInRow({ sides }: PolygonMeasures, { lead }: PolygonNames): string[] {
  const before = Math.floor((sides - 1) / 2);
  const nameOf = (place: number): string => (place === 0 ? `${lead}front` : `${lead}wall-${place + 1}`);
  return Array.from({ length: sides }, (_, index) => nameOf((index - before + sides) % sides));
}

/** The net of a polygon box, or of a lid to it: the same upside down. */
export function polygonNet(measures: PolygonMeasures, names: PolygonNames, corners?: RoundedCorners): Net {
  const net = boxNet(measures, names, corners);
  return names.role === 'over' ? upsideDown(net) : net;
}

/** The walls, the floor below the front and, below each other wall, the tab that is glued inside the floor. */
function boxNet(measures: PolygonMeasures, names: PolygonNames, corners: RoundedCorners | undefined): Net {
  const { sides, side, height } = measures;
  const walls = wallsInRow(measures, names);
  const grid = layoutNet({ corners, ...gridOf(measures, names, walls) });
  const hung = walls.map((wall, index) => {
    const at = { x: side.times(index), y: height };
    const isFront = wall === `${names.lead}front`;
    return isFront ? floorPanel(regularPolygon(at, side, sides), names) : tabPanel(at, measures, wall);
  });
  const above = grid.waste.filter((part) => part.every(({ y }) => !y.greaterThan(height)));
  const { size, folds, scores, glue } = grid;
  return {
    size,
    panels: grid.panels.map((panel) => hung.find(({ id }) => id === panel.id) ?? panel),
    folds,
    scores,
    slits: [],
    waste: [...above, below(measures, hung)],
    glue,
  };
}

/** The grid of its score lines: the walls, and below them as much paper as the floor needs. */
function gridOf(
  { sides, side, height, tab, sheet }: PolygonMeasures,
  { lead, floor, role }: PolygonNames,
  walls: readonly string[],
): Layout {
  const seam = `${lead}tab`;
  const front = `${lead}front`;
  const row = [...walls, seam];
  const tabs = walls.filter((wall) => wall !== front).map((wall) => [wall, `${wall}-tab`] as const);
  return {
    columns: [...walls.map(() => side), tab],
    rows: [height, sheet.minus(height)],
    cells: [row, [...walls.map((wall) => (wall === front ? floor : `${wall}-tab`)), '']],
    roles: { [front]: 'front', [floor]: role },
    bends: [
      mountain(
        1,
        row.slice(1).map((panel, index) => `${row[index]}|${panel}`),
        360 / sides,
      ),
      mountain(
        2,
        tabs.map((pair) => pair.join('|')),
      ),
      mountain(3, [`${front}|${floor}`]),
    ],
    taper: [seam],
    glue: [[seam, walls[0] ?? ''], ...tabs.map(([, tabOf]) => [tabOf, floor] as const)],
  };
}

function floorPanel(outline: readonly FlatPoint[], { floor, role }: PolygonNames): Panel {
  return { id: floor, name: floor, role, outline, box: boundsOf(outline), slanted: true };
}

function tabPanel({ x, y }: FlatPoint, { side, tab, sides }: PolygonMeasures, wall: string): Panel {
  const run = tab.times(...slopeOf(sides));
  const box: FlatBox = { left: x, right: x.plus(side), top: y, bottom: y.plus(tab) };
  const outline = [
    { x: box.left, y },
    { x: box.right, y },
    { x: box.right.minus(run), y: box.bottom },
    { x: box.left.plus(run), y: box.bottom },
  ];
  return { id: `${wall}-tab`, name: `${wall}-tab`, outline, box };
}

/** All that is cut away below the walls: round the tabs and the floor, in one part. */
function below({ side, sides, height, tab, sheet }: PolygonMeasures, hung: readonly Panel[]): FlatPoint[] {
  const right = side.times(sides).plus(tab);
  // From left to right each hangs by its first two corners; the way round it runs from the first to the second.
  const edge = hung.flatMap(({ outline: [first, ...others] }) =>
    first ? [first, ...others.toReversed()] : [],
  );
  const isSame = (a: FlatPoint, b: FlatPoint | undefined): boolean =>
    b !== undefined && a.x.equals(b.x) && a.y.equals(b.y);
  return [
    ...edge.filter((point, index) => !isSame(point, edge[index - 1])),
    { x: right, y: height },
    { x: right, y: sheet },
    { x: Length.zero, y: sheet },
  ];
}

/** The mirror image of a net that is scored from the left and from the bottom, its upper edge below. */
function upsideDown(net: Net): Net {
  const { height } = net.size;
  const point = ({ x, y }: FlatPoint): FlatPoint => ({ x, y: height.minus(y) });
  const outline = (points: readonly FlatPoint[]): FlatPoint[] => points.map(point).toReversed();
  const box = ({ top, bottom, ...sides }: FlatBox): FlatBox => ({
    ...sides,
    top: height.minus(bottom),
    bottom: height.minus(top),
  });
  return {
    ...net,
    panels: net.panels.map((panel) => ({ ...panel, outline: outline(panel.outline), box: box(panel.box) })),
    folds: net.folds.map((fold) => ({ ...fold, from: point(fold.from), to: point(fold.to) })),
    scores: net.scores.map(({ from, at }) =>
      from === 'bottom' ? { from, at: at.map((line) => height.minus(line)).toReversed() } : { from, at },
    ),
    waste: net.waste.map(outline),
  };
}
