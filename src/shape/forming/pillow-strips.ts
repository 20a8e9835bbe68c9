import type { FlatBox, FlatPoint, Fold, Net, Panel } from '../net.ts';
import { withoutDoubles } from '../outline.ts';
import type { PillowSheet, Wall } from './pillow.ts';

/**
 * How a pillow stands once its ends are pressed in. Each wall bends about lines along the body so that its curves
 * come to lie in planes at 45°: the walls rise as far as the curves reach in, and every flap, the mirror image of the
 * wall in that plane, hangs upright from its curve and just reaches the opposite one.
 *
 * The angles are those of the strips between neighbouring points of the curve, in degrees.
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
  const walls: readonly Wall[] = ['front', 'back'];
  const tab = tabStrips(sheet, stand);
  const edge = { direction: 'mountain', angle: 180 - 2 * Math.abs(stand.slopes[0] ?? 0), stage: 1 } as const;
  const last = sheet.arc.length - 2;
  return {
    ...net,
    panels: [...walls.flatMap((wall) => wallStrips(sheet, wall)), ...tab.panels],
    folds: [
      {
        panels: [stripId('front', last, last), stripId('back', 0, last)],
        ...sheet.side(sheet.leftOf('back')),
        ...edge,
      },
      { panels: [stripId('back', last, last), 'tab'], ...sheet.side(sheet.tabBox().left), ...edge },
      ...walls.flatMap((wall) => wallFolds(sheet, wall, stand)),
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
  const slopes: number[] = [];
  const creases: number[] = [];
  for (const [index, to] of arc.slice(1).entries()) {
    const from = arc[index] ?? to;
    const run = to.along.minus(from.along).mm;
    const climb = to.rise.minus(from.rise).mm;
    slopes.push(degrees(Math.asin(climb / run)));
    creases.push(creaseAngle(run, climb));
  }
  return { slopes, creases };
}

/**
 * The turn between a strip and its piece of flap. On the sheet a stretch of the curve runs `run` across and `climb`
 * into the body; in space it keeps that length, and climbs as much as it reaches in. Both the strip's way out of the
 * body and the flap's way down are taken square to it: their angle is the turn.
 */
function creaseAngle(run: number, climb: number): number {
  const stretch = [Math.sqrt(run ** 2 - climb ** 2), -climb, climb];
  return degrees(angleBetween(squareTo(stretch, [0, 1, 0]), squareTo(stretch, [0, 0, -1])));
}

/** What of `way` is square to `line`. */
function squareTo(line: readonly number[], way: readonly number[]): number[] {
  const share = dot(way, line) / dot(line, line);
  return way.map((each, axis) => each - share * (line[axis] ?? 0));
}

function angleBetween(a: readonly number[], b: readonly number[]): number {
  return Math.acos(dot(a, b) / Math.sqrt(dot(a, a) * dot(b, b)));
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, each, axis) => sum + each * (b[axis] ?? 0), 0);
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
    const body = strip(id, curves.top, curves.bottom, index);
    return [
      id === wall ? { ...body, name: wall, role: wall, box: sheet.clearBox(wall) } : body,
      strip(`${id}-top`, curves.topEdge, curves.top, index),
      strip(`${id}-bottom`, curves.bottom, curves.bottomEdge, index),
    ];
  });
}

/** The stretch of the sheet between two curves, from one point of them to the next. */
function strip(id: string, upper: readonly FlatPoint[], lower: readonly FlatPoint[], index: number): Panel {
  const corners = [upper[index], upper[index + 1], lower[index + 1], lower[index]].filter(
    (each) => each !== undefined,
  );
  const outline = withoutDoubles(corners);
  return { id, outline, box: boundsOf(outline) };
}

function boundsOf(outline: readonly FlatPoint[]): FlatBox {
  const xs = outline.map(({ x }) => x).sort((a, b) => a.compare(b));
  const ys = outline.map(({ y }) => y).sort((a, b) => a.compare(b));
  const [left, top, right, bottom] = [xs[0], ys[0], xs.at(-1), ys.at(-1)];
  if (!left || !top || !right || !bottom) throw new Error('a strip without corners');
  return { left, top, right, bottom };
}

function wallFolds(sheet: PillowSheet, wall: Wall, { slopes, creases }: Stand): Fold[] {
  const last = sheet.arc.length - 2;
  const top = sheet.curve(wall, 'top', 'score');
  const bottom = sheet.curve(wall, 'bottom', 'score');
  return slopes.flatMap((slope, index): Fold[] => {
    const id = stripId(wall, index, last);
    const crease = { direction: 'mountain', angle: creases[index] ?? 0, stage: 3 } as const;
    const [topFrom, topTo, bottomFrom, bottomTo] = [
      top[index],
      top[index + 1],
      bottom[index],
      bottom[index + 1],
    ];
    if (!topFrom || !topTo || !bottomFrom || !bottomTo) return [];
    const next = slopes[index + 1];
    const bend = { direction: 'mountain', stage: 2 } as const;
    return [
      { panels: [id, `${id}-top`], from: topFrom, to: topTo, ...crease },
      { panels: [id, `${id}-bottom`], from: bottomFrom, to: bottomTo, ...crease },
      ...(next === undefined
        ? []
        : [
            {
              panels: [id, stripId(wall, index + 1, last)] as const,
              from: topTo,
              to: bottomTo,
              angle: slope - next,
              ...bend,
            },
          ]),
    ];
  });
}

/** The tab lies inside the front and bends with it. */
function tabStrips(
  sheet: PillowSheet,
  { slopes }: Stand,
): { readonly panels: Panel[]; readonly folds: Fold[] } {
  const [upper, lower] = [sheet.tabEdge('top'), sheet.tabEdge('bottom')];
  const id = (index: number): string => (index === 0 ? 'tab' : `tab-strip-${index + 1}`);
  const panels = upper
    .slice(1)
    .map((_, index): Panel => ({ ...strip(id(index), upper, lower, index), role: 'tab' }));
  const folds = upper.slice(1, -1).flatMap((from, index): Fold[] => {
    const to = lower[index + 1];
    const angle = (slopes[index] ?? 0) - (slopes[index + 1] ?? 0);
    const bend = { direction: 'mountain', angle, stage: 2 } as const;
    return to ? [{ panels: [id(index), id(index + 1)], from, to, ...bend }] : [];
  });
  return { panels, folds };
}
