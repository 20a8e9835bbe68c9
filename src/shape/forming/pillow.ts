import { Length } from '../../measure/length.ts';
import type { FlatBox, FlatPoint, Fold, Net, Panel } from '../net.ts';
import { type ArcPoint, arcPoints } from './arc.ts';

/** A pillow laid flat: its body between the ends of the curves, and how far the curves reach into it. */
export type PillowMeasures = {
  readonly width: Length;
  readonly length: Length;
  readonly rise: Length;
  readonly tab: Length;
};

/** Straight stretches a curve is drawn with, and strips a bent wall is shown with; odd, so that one lies in the middle. */
const STRETCHES = 13;

export type Wall = 'front' | 'back';

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
  curve(wall: Wall, end: 'top' | 'bottom', kind: 'score' | 'edge'): FlatPoint[] {
    const down = (end === 'top') === (kind === 'score');
    const from = end === 'top' ? this.top : this.bottom;
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
  tabEdge(end: 'top' | 'bottom'): FlatPoint[] {
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

/** The net of a pillow, its curves as many short folds whose every point lies exactly on the arc. */
export function pillowNet(measures: PillowMeasures): Net {
  const sheet = new PillowSheet(measures);
  const { width, tab } = measures;
  const walls: readonly Wall[] = ['front', 'back'];
  const tabOutline = [...sheet.tabEdge('top'), ...sheet.tabEdge('bottom').toReversed()];
  const height = sheet.bottom.plus(measures.rise);
  const flat = { direction: 'mountain', angle: 180, stage: 1 } as const;
  return {
    size: { width: width.times(2).plus(tab), height },
    panels: [
      ...walls.flatMap((wall) => wallPanels(sheet, wall)),
      { id: 'tab', name: 'tab', role: 'tab', outline: tabOutline, box: sheet.tabBox() },
    ],
    folds: [
      { panels: ['front', 'back'], ...sheet.side(width), ...flat },
      { panels: ['back', 'tab'], ...sheet.side(width.times(2)), ...flat },
      ...walls.flatMap((wall) => curvedFolds(sheet, wall)),
    ],
    scores: [{ from: 'left', at: [width, width.times(2)] }],
    slits: [],
    waste: [...walls.flatMap((wall) => beyondFlaps(sheet, wall, height)), ...besideTab(sheet, height)],
    glue: [{ from: 'tab', to: 'front' }],
  };
}

function wallPanels(sheet: PillowSheet, wall: Wall): Panel[] {
  const body = [...sheet.curve(wall, 'top', 'score'), ...sheet.curve(wall, 'bottom', 'score').toReversed()];
  return [
    { id: wall, name: wall, role: wall, outline: body, box: sheet.clearBox(wall) },
    flapPanel(sheet, wall, 'top'),
    flapPanel(sheet, wall, 'bottom'),
  ];
}

function flapPanel(sheet: PillowSheet, wall: Wall, end: 'top' | 'bottom'): Panel {
  const [upper, lower] = end === 'top' ? (['edge', 'score'] as const) : (['score', 'edge'] as const);
  const outline = [
    ...sheet.curve(wall, end, upper),
    ...sheet.curve(wall, end, lower).slice(1, -1).toReversed(),
  ];
  const left = sheet.leftOf(wall);
  const { width, rise } = sheet.measures;
  const middle = end === 'top' ? sheet.top : sheet.bottom;
  const box = { left, top: middle.minus(rise), right: left.plus(width), bottom: middle.plus(rise) };
  const id = `${wall}-${end}`;
  return { id, name: id, outline, box };
}

/** Bent, not folded flat: the angle is none, and the strips show how it stands. */
function curvedFolds(sheet: PillowSheet, wall: Wall): Fold[] {
  return (['top', 'bottom'] as const).flatMap((end) => {
    const points = sheet.curve(wall, end, 'score');
    return points.slice(1).flatMap((to, index): Fold[] => {
      const from = points[index];
      return from
        ? [{ panels: [wall, `${wall}-${end}`], from, to, direction: 'mountain', angle: 0, stage: 2 }]
        : [];
    });
  });
}

/** What is cut away beyond both flaps of a wall. */
function beyondFlaps(sheet: PillowSheet, wall: Wall, height: Length): (readonly FlatPoint[])[] {
  return (['top', 'bottom'] as const).map((end) => {
    const left = sheet.leftOf(wall);
    const right = left.plus(sheet.measures.width);
    const y = end === 'top' ? Length.zero : height;
    return [{ x: left, y }, { x: right, y }, ...sheet.curve(wall, end, 'edge').toReversed()];
  });
}

/** What is cut away above and below the tab. */
function besideTab(sheet: PillowSheet, height: Length): (readonly FlatPoint[])[] {
  const { left, right } = sheet.tabBox();
  return (['top', 'bottom'] as const).map((end) => {
    const y = end === 'top' ? Length.zero : height;
    return [{ x: left, y }, { x: right, y }, ...sheet.tabEdge(end).toReversed()];
  });
}
