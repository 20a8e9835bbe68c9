import { Length } from '../../measure/length.ts';
import type { Cell, Edge, FoldDirection } from '../../project/net-as-written.ts';
import { type FoldedBy, type Grid, gridNet, slitsOf } from '../grid.ts';
import type { BoardScores, FlatBox, FlatPoint, Fold, Net, Panel, PanelRole } from '../net.ts';
import { boxCorners, cutCell, type Hinges } from '../outline.ts';

/** How panels fold against each other; `pairs` are `front|front-top`, in either order. */
export type Bend = {
  readonly pairs: readonly string[];
  readonly direction: FoldDirection;
  readonly angle: number;
  /** Where it comes in the folding, from 1. */
  readonly stage: number;
};

/**
 * A form as a picture of its sheet: `cells` names every panel where it lies, row by row from the top, and leaves
 * empty what is trimmed off. Neighbours that no bend names are slit apart.
 */
export type Layout = {
  /** Widths from the left. */
  readonly columns: readonly Length[];
  /** Heights from the top. */
  readonly rows: readonly Length[];
  readonly cells: readonly (readonly string[])[];
  readonly bends: readonly Bend[];
  /** What panels are for, by their names. */
  readonly roles?: Readonly<Record<string, PanelRole>>;
  readonly taper?: readonly string[];
  /** Flaps cut shorter than their cells, and how long they are from their folds. */
  readonly shorten?: { readonly panels: readonly string[]; readonly to: Length };
  /** What sticks to what, in the order it is stuck. */
  readonly glue?: readonly (readonly [string, string])[];
  readonly corners?: Length | undefined;
};

export function mountain(stage: number, pairs: readonly string[], angle = 90): Bend {
  return { pairs, direction: 'mountain', angle, stage };
}

export function valley(stage: number, pairs: readonly string[], angle = 90): Bend {
  return { pairs, direction: 'valley', angle, stage };
}

/**
 * The net of a layout, scored from the left and from the bottom edge.
 * @throws Error on a layout that is no picture: a bend between panels that are no neighbours, rows of unequal length.
 */
export function layoutNet(layout: Layout): Net {
  const { columns, rows, cells, taper = [], glue = [], roles = {}, shorten, corners } = layout;
  const bends = bendsByPair(layout.bends);
  const grid: Grid = {
    size: { width: Length.sum(columns), height: Length.sum(rows) },
    across: linesBetween(columns),
    down: linesBetween(rows),
    cells,
    names: namesOf(layout),
    roles: new Map(Object.entries(roles)),
    foldAt: (_, panels) => bends.get(pairOf(...panels)),
    taper,
    glue: glue.map(([from, to]) => ({ from, to })),
    scores: boardScores(layout),
    corners,
  };
  const net = gridNet(grid);
  const bent = new Set(net.folds.map(({ panels }) => pairOf(...panels)));
  const stray = [...bends.keys()].find((pair) => !bent.has(pair));
  if (stray !== undefined) throw new Error(`the layout bends ${stray}, which are no neighbours`);
  const slit = slitsOf(grid).map((each) => each.slit);
  const inOrder = slit.toSorted((a, b) => a.line - b.line || a.from - b.from);
  const cuts = { trim: trimmedCells(layout), slit: inOrder, taper, shorten: [] };
  const whole = { ...net, cuts };
  return shorten ? cutBack(whole, shorten.panels, shorten.to) : whole;
}

function bendsByPair(bends: readonly Bend[]): Map<string, FoldedBy> {
  return new Map(
    bends.flatMap(({ pairs, ...bend }) =>
      pairs.map((pair) => {
        const [first = '', second = ''] = pair.split('|');
        return [pairOf(first, second), bend] as const;
      }),
    ),
  );
}

/** The same for both orders of two names. */
function pairOf(first: string, second: string): string {
  return first < second ? `${first}|${second}` : `${second}|${first}`;
}

function namesOf({ cells, columns, rows }: Layout): ReadonlySet<string> {
  if (cells.length !== rows.length || cells.some((row) => row.length !== columns.length)) {
    throw new Error('the layout has cells outside its columns and rows');
  }
  const named = cells.flat().filter((name) => name !== '');
  const names = new Set(named);
  if (names.size < named.length) throw new Error('the layout names two panels alike');
  return names;
}

function trimmedCells({ cells }: Layout): Cell[] {
  return cells.flatMap((names, row) => names.flatMap((name, column) => (name ? [] : [{ column, row }])));
}

/** As said at the board: from the left edge, then a quarter turn, from the bottom edge. */
function boardScores({ columns, rows }: Layout): BoardScores[] {
  const scores: BoardScores[] = [
    { from: 'left', at: linesBetween(columns) },
    { from: 'bottom', at: linesBetween(rows.toReversed()) },
  ];
  return scores.filter(({ at }) => at.length > 0);
}

/** The lines between stretches laid end to end. */
function linesBetween(stretches: readonly Length[]): Length[] {
  return stretches.slice(0, -1).map((_, index) => Length.sum(stretches.slice(0, index + 1)));
}

const OPPOSITE: Readonly<Record<Edge, Edge>> = { left: 'right', right: 'left', top: 'bottom', bottom: 'top' };

/**
 * Flaps cut shorter than the sheet leaves them: each panel named, hanging by one fold, keeps `length` from its fold
 * outward, tapered anew. A flap that is no longer than that stays as it is.
 * @throws Error for a panel that is none, or hangs by more than one fold.
 */
export function cutBack(net: Net, panels: readonly string[], length: Length): Net {
  return panels.reduce((shorter, id) => cutBackOne(shorter, id, length), net);
}

function cutBackOne(net: Net, id: string, length: Length): Net {
  const panel = net.panels.find((each) => each.id === id);
  const [fold, ...others] = net.folds.filter((each) => each.panels.includes(id));
  if (!panel || !fold || others.length > 0) throw new Error(`${id} is no flap that could be cut back`);
  const hinge = sideOf(panel.box, fold);
  const far = OPPOSITE[hinge];
  const kept = keep(panel.box, hinge, length);
  const isShorter = boxCorners(kept).every((corner) => isOn(corner, panel.box));
  if (!isShorter || kept[far].equals(panel.box[far])) return net;
  const hinges: Hinges = { left: false, top: false, right: false, bottom: false, [hinge]: true };
  const { outline, waste } = cutCell(kept, hinges, { kind: 'taper' });
  const gone = boxCorners({ ...panel.box, [hinge]: kept[far] });
  const { cuts } = net;
  return {
    ...net,
    ...(cuts && { cuts: { ...cuts, shorten: [...cuts.shorten, id] } }),
    panels: net.panels.map((each): Panel => (each === panel ? { ...panel, outline, box: kept } : each)),
    waste: [...net.waste.filter((part) => !part.every((point) => isOn(point, panel.box))), gone, ...waste],
  };
}

function keep(box: FlatBox, hinge: Edge, length: Length): FlatBox {
  const from = box[hinge];
  const inward = hinge === 'left' || hinge === 'top' ? from.plus(length) : from.minus(length);
  return { ...box, [OPPOSITE[hinge]]: inward };
}

function isOn({ x, y }: FlatPoint, { left, top, right, bottom }: FlatBox): boolean {
  return !x.lessThan(left) && !x.greaterThan(right) && !y.lessThan(top) && !y.greaterThan(bottom);
}

function sideOf(box: FlatBox, { from, to }: Fold): Edge {
  const upright = from.x.equals(to.x);
  if (upright) return from.x.equals(box.left) ? 'left' : 'right';
  return from.y.equals(box.top) ? 'top' : 'bottom';
}
