import { Length } from '../../measure/length.ts';
import type { FlatBox, FlatPoint, Fold, Net, Panel } from '../net.ts';
import { type ArcPoint, arcPoints } from './arc.ts';

/** A pillow laid flat: its body between the ends of the curves, and how far the curves reach into it. */
type PillowMeasures = {
  readonly width: Length;
  readonly length: Length;
  readonly rise: Length;
  readonly tab: Length;
};

/** Straight stretches a curve is drawn with, and strips a bent wall is shown with; odd, so that one lies in the middle. */
const STRETCHES = 13;

export type Wall = 'front' | 'back';
type PillowEnd = 'top' | 'bottom';

/** A pillow's walls, flaps and curves, where they lie on the sheet. */
export class PillowSheet {
  readonly measures: PillowMeasures;
  readonly arc: readonly ArcPoint[];
  /** Where the body begins and ends, at the ends of the curves. */
  readonly top: Length;
  readonly bottom: Length;

  constructor(measures: PillowMeasures) {
    this.measures = measures;
    this.arc = arcPoints(measures.width, measures.rise, STRETCHES);
    this.top = measures.rise;
    this.bottom = measures.rise.plus(measures.length);
  }

  leftOf(wall: Wall): Length {
    return wall === 'front' ? Length.zero : this.measures.width;
  }

  /** The curve at one end, left to right: `score` bends into the body, `edge` away from it. */
  curve(wall: Wall, end: PillowEnd, kind: 'score' | 'edge'): FlatPoint[] {
    const down = (end === 'top') === (kind === 'score');
    const from = this[end];
    return this.arc.map(({ along, rise }) => ({
      x: this.leftOf(wall).plus(along),
      y: down ? from.plus(rise) : from.minus(rise),
    }));
  }

  tabBox(): FlatBox {
    const left = this.measures.width.times(2);
    return { left, top: this.top, right: left.plus(this.measures.tab), bottom: this.bottom };
  }

  /**
   * The edges of the tab above and below, from its fold outward: it lies on the front, and ends where the front's curves
   * do, so that no corner of it shows past them.
   */
  tabEdge(end: PillowEnd): FlatPoint[] {
    const { tab } = this.measures;
    const { left, top, bottom } = this.tabBox();
    const outer = { along: tab, rise: this.#riseAt(tab) };
    return [...this.arc.filter(({ along }) => along.lessThan(tab)), outer].map(({ along, rise }) => ({
      x: left.plus(along),
      y: end === 'top' ? top.plus(rise) : bottom.minus(rise),
    }));
  }

  /** How far the curve's stretches reach in at some way along it. */
  #riseAt(along: Length): Length {
    const index = this.arc.findIndex((point) => !point.along.lessThan(along));
    const [from, to] = [this.arc[index - 1], this.arc[index]];
    if (!from || !to) return Length.zero;
    const share = along.minus(from.along).over(to.along.minus(from.along));
    return from.rise.plus(to.rise.minus(from.rise).times(share.numerator, share.denominator));
  }

  /** What of a wall stays clear of both curves: what a layer is measured against. */
  clearBox(wall: Wall): FlatBox {
    const { width, rise } = this.measures;
    const left = this.leftOf(wall);
    return { left, top: this.top.plus(rise), right: left.plus(width), bottom: this.bottom.minus(rise) };
  }

  /** The side of a wall, between the ends of its curves. */
  side(x: Length): { readonly from: FlatPoint; readonly to: FlatPoint } {
    return { from: { x, y: this.top }, to: { x, y: this.bottom } };
  }
}

/** The ends of a pillow, and its walls from left to right. */
export const ENDS: readonly PillowEnd[] = ['top', 'bottom'];
export const WALLS: readonly Wall[] = ['front', 'back'];

/** What lies between two lines that both run from left to right. */
export function band(upper: readonly FlatPoint[], lower: readonly FlatPoint[]): FlatPoint[] {
  return [...upper, ...lower.toReversed()];
}

/** From each point of a curve to the next. */
export function stretchesOf<P>(points: readonly P[]): (readonly [P, P])[] {
  return points.slice(1).map((to, index) => [points[index] ?? to, to]);
}

/** The net of a pillow, its curves as many short folds whose every point lies exactly on the arc. */
export function pillowNet(measures: PillowMeasures): Net {
  const sheet = new PillowSheet(measures);
  const { width, tab, rise } = measures;
  const height = sheet.bottom.plus(rise);
  const flat = { direction: 'mountain', angle: 180, stage: 1 } as const;
  const tabOutline = band(sheet.tabEdge('top'), sheet.tabEdge('bottom'));
  const beyond = (end: PillowEnd, edge: readonly FlatPoint[]): FlatPoint[] => {
    const y = end === 'top' ? Length.zero : height;
    return band(
      [...edge.slice(0, 1), ...edge.slice(-1)].map(({ x }) => ({ x, y })),
      edge,
    );
  };
  return {
    size: { width: width.times(2).plus(tab), height },
    panels: [
      ...WALLS.flatMap((wall) => wallPanels(sheet, wall)),
      { id: 'tab', name: 'tab', outline: tabOutline, box: sheet.tabBox() },
    ],
    folds: [
      { panels: ['front', 'back'], ...sheet.side(width), ...flat },
      { panels: ['back', 'tab'], ...sheet.side(width.times(2)), ...flat },
      ...WALLS.flatMap((wall) => curvedFolds(sheet, wall)),
    ],
    scores: [{ from: 'left', at: [width, width.times(2)] }],
    slits: [],
    waste: [
      ...WALLS.flatMap((wall) => ENDS.map((end) => beyond(end, sheet.curve(wall, end, 'edge')))),
      ...ENDS.map((end) => beyond(end, sheet.tabEdge(end))),
    ],
    glue: [{ from: 'tab', to: 'front' }],
  };
}

function wallPanels(sheet: PillowSheet, wall: Wall): Panel[] {
  const outline = band(sheet.curve(wall, 'top', 'score'), sheet.curve(wall, 'bottom', 'score'));
  const flaps = ENDS.map((end) => flapPanel(sheet, wall, end));
  return [{ id: wall, name: wall, role: wall, outline, box: sheet.clearBox(wall) }, ...flaps];
}

function flapPanel(sheet: PillowSheet, wall: Wall, end: PillowEnd): Panel {
  const [upper, lower] = end === 'top' ? (['edge', 'score'] as const) : (['score', 'edge'] as const);
  const outline = band(sheet.curve(wall, end, upper), sheet.curve(wall, end, lower).slice(1, -1));
  const left = sheet.leftOf(wall);
  const { width, rise } = sheet.measures;
  const box = { left, top: sheet[end].minus(rise), right: left.plus(width), bottom: sheet[end].plus(rise) };
  const id = `${wall}-${end}`;
  return { id, name: id, outline, box };
}

/** Bent, not folded flat: the angle is none, and the strips show how it stands. */
function curvedFolds(sheet: PillowSheet, wall: Wall): Fold[] {
  const bent = { direction: 'mountain', angle: 0, stage: 2 } as const;
  return ENDS.flatMap((end) => {
    const stretches = stretchesOf(sheet.curve(wall, end, 'score'));
    return stretches.map(([from, to]) => ({ panels: [wall, `${wall}-${end}`] as const, from, to, ...bent }));
  });
}
