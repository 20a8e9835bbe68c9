import { boundsOf, type FlatPoint, type Fold, type Net, type Panel } from '../net.ts';
import { withoutDoubles } from '../outline.ts';
import { dot, minus, type Point3, scaled, unit } from '../space.ts';
import { band, ENDS, type PillowSheet, stretchesOf, WALLS, type Wall } from './pillow.ts';

/**
 * How a pillow stands once its ends are pressed in. Each wall bends about lines along the body so that its curves
 * come to lie in planes at 45°: the walls rise as far as the curves reach in, and every flap, the mirror image of the
 * wall in that plane, hangs upright from its curve and just reaches the opposite one.
 *
 * The angles are those of the strips between neighboring points of the curve, in degrees.
 */
type Stand = {
  /** The slope of each strip across the body. */
  readonly slopes: readonly number[];
  /** Between each strip and its piece of a flap. */
  readonly creases: readonly number[];
};

/** The pillow's net as narrow flat strips, each turned a little against the next. */
export function pillowStrips(sheet: PillowSheet, net: Net): Net {
  const stand = standOf(sheet);
  const tab = tabStrips(sheet, stand);
  const edge = { direction: 'mountain', angle: 180 - 2 * Math.abs(stand.slopes[0] ?? 0), stage: 1 } as const;
  const last = sheet.arc.length - 2;
  return {
    ...net,
    panels: [...WALLS.flatMap((wall) => wallStrips(sheet, wall)), ...tab.panels],
    folds: [
      {
        panels: [stripId('front', last, last), stripId('back', 0, last)],
        ...sheet.side(sheet.leftOf('back')),
        ...edge,
      },
      { panels: [stripId('back', last, last), 'tab'], ...sheet.side(sheet.tabBox().left), ...edge },
      ...WALLS.flatMap((wall) => wallFolds(sheet, wall, stand)),
      ...tab.folds,
    ],
    // The tab is stuck while the tube lies flat: the net itself says to what.
    glue: [],
  };
}

/** The middle strip stands for the whole wall, so that a layer on it lies on its highest part. */
function stripId(wall: Wall, index: number, last: number): string {
  return index * 2 === last ? wall : `${wall}-strip-${index + 1}`;
}

function standOf({ arc }: PillowSheet): Stand {
  const stretches = stretchesOf(arc).map(([from, to]) => ({
    run: to.along.minus(from.along).mm,
    climb: to.rise.minus(from.rise).mm,
  }));
  return {
    slopes: stretches.map(({ run, climb }) => degrees(Math.asin(climb / run))),
    creases: stretches.map(({ run, climb }) => creaseAngle(run, climb)),
  };
}

/**
 * The turn between a strip and its piece of flap. On the sheet a stretch of the curve runs `run` across and `climb`
 * into the body; in space it keeps that length, and climbs as much as it reaches in. Both the strip's way out of the
 * body and the flap's way down are taken square to it: their angle is the turn.
 */
function creaseAngle(run: number, climb: number): number {
  const stretch = unit({ x: Math.sqrt(run ** 2 - climb ** 2), y: -climb, z: climb });
  const squareTo = (way: Point3): Point3 => unit(minus(way, scaled(stretch, dot(way, stretch))));
  return degrees(Math.acos(dot(squareTo({ x: 0, y: 1, z: 0 }), squareTo({ x: 0, y: 0, z: -1 }))));
}

function degrees(radians: number): number {
  return (radians * 180) / Math.PI;
}

function wallStrips(sheet: PillowSheet, wall: Wall): Panel[] {
  const last = sheet.arc.length - 2;
  const curves = {
    topEdge: sheet.curve(wall, 'top', 'edge'),
    top: sheet.curve(wall, 'top', 'score'),
    bottom: sheet.curve(wall, 'bottom', 'score'),
    bottomEdge: sheet.curve(wall, 'bottom', 'edge'),
  };
  return Array.from({ length: last + 1 }, (_, index) => index).flatMap((index) => {
    const id = stripId(wall, index, last);
    const body = { ...strip(id, curves.top, curves.bottom, index), partOf: wall };
    return [
      id === wall ? { ...body, name: wall, role: wall, box: sheet.clearBox(wall) } : body,
      { ...strip(`${id}-top`, curves.topEdge, curves.top, index), partOf: `${wall}-top` },
      { ...strip(`${id}-bottom`, curves.bottom, curves.bottomEdge, index), partOf: `${wall}-bottom` },
    ];
  });
}

/** The stretch of the sheet between two curves, from one point of them to the next. */
function strip(id: string, upper: readonly FlatPoint[], lower: readonly FlatPoint[], index: number): Panel {
  const [above, below] = [upper, lower].map((curve) => curve.slice(index, index + 2));
  const outline = withoutDoubles(band(above ?? [], below ?? []));
  return { id, outline, box: boundsOf(outline) };
}

function wallFolds(sheet: PillowSheet, wall: Wall, stand: Stand): Fold[] {
  const [top = [], bottom = []] = ENDS.map((end) => sheet.curve(wall, end, 'score'));
  const idOf = (index: number): string => stripId(wall, index, sheet.arc.length - 2);
  return stand.creases.flatMap((angle, index): Fold[] => {
    const crease = { direction: 'mountain', angle, stage: 3 } as const;
    const creased = ENDS.flatMap((end): Fold[] => {
      const [from, to] = (end === 'top' ? top : bottom).slice(index, index + 2);
      return from && to ? [{ panels: [idOf(index), `${idOf(index)}-${end}`], from, to, ...crease }] : [];
    });
    return [...creased, ...bendAfter(index, idOf, [top, bottom], stand)];
  });
}

/** The bend between a strip and the next one, from curve to curve; none after the last. */
function bendAfter(
  index: number,
  idOf: (index: number) => string,
  [upper, lower]: readonly [readonly FlatPoint[], readonly FlatPoint[]],
  { slopes }: Stand,
): Fold[] {
  const [from, to] = [upper[index + 1], lower[index + 1]];
  const [slope, next] = [slopes[index], slopes[index + 1]];
  if (!from || !to || slope === undefined || next === undefined) return [];
  const panels = [idOf(index), idOf(index + 1)] as const;
  return [{ panels, from, to, direction: 'mountain', angle: slope - next, stage: 2 }];
}

/** The tab lies inside the front and bends with it. */
function tabStrips(sheet: PillowSheet, stand: Stand): Pick<Net, 'panels' | 'folds'> {
  const [upper = [], lower = []] = ENDS.map((end) => sheet.tabEdge(end));
  const idOf = (index: number): string => (index === 0 ? 'tab' : `tab-strip-${index + 1}`);
  const ends = upper.slice(1);
  return {
    panels: ends.map((_, index) => ({
      ...strip(idOf(index), upper, lower, index),
      partOf: 'tab',
    })),
    folds: ends.slice(0, -1).flatMap((_, index) => bendAfter(index, idOf, [upper, lower], stand)),
  };
}
