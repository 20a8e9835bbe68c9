import { Length } from '../../../src/measure/length.ts';
import type { Edge } from '../../../src/project/net-as-written.ts';
import type { FlatBox, FlatPoint, Fold, Net, Panel } from '../../../src/shape/net.ts';
import { lineOf, positionOf, reachFrom } from '../../../src/shape/tube.ts';

/** What slips: a line is scored a groove off, glue is put on another panel or forgotten, and so on. */
export const KINDS = [
  'moved line',
  'wrong mate',
  'missing glue',
  'reversed fold',
  'longer flap',
  'far too long flap',
] as const;
export type Kind = (typeof KINDS)[number];

/** A net with one slip in it, and what slipped: `A3|A4 +1/8`, `tab on D3`. */
export type Mutation = { readonly kind: Kind; readonly slip: string; readonly net: Net };

/** Every net that a single slip makes of one. */
export function mutationsOf(net: Net): readonly Mutation[] {
  return [
    ...movedLines(net),
    ...wrongMates(net),
    ...missingGlue(net),
    ...reversedFolds(net),
    ...longerFlaps(net),
  ];
}

/** One groove of a usual score board. */
const GROOVE: Length = Length.of(1, 8, 'in');

/** How much longer a flap is cut. */
const LONGER: Length = Length.of(1, 2, 'in');

function movedLines(net: Net): Mutation[] {
  return scoreLinesOf(net).flatMap((line) =>
    ([1, -1] as const).map((way) => ({
      kind: 'moved line' as const,
      slip: `${firstFoldOn(net, line)} ${way > 0 ? '+' : '-'}1/8`,
      net: withLineMoved(net, line, GROOVE.times(way)),
    })),
  );
}

function wrongMates(net: Net): Mutation[] {
  return net.glue.flatMap((mate, index) =>
    net.panels
      .filter(({ id }) => id !== mate.from && id !== mate.to)
      .map(({ id }) => ({
        kind: 'wrong mate' as const,
        slip: `${mate.from} on ${id} instead of ${mate.to}`,
        net: { ...net, glue: net.glue.with(index, { ...mate, to: id }) },
      })),
  );
}

function missingGlue(net: Net): Mutation[] {
  return net.glue.map(({ from, to }, index) => ({
    kind: 'missing glue',
    slip: `${from} on ${to}`,
    net: { ...net, glue: net.glue.toSpliced(index, 1) },
  }));
}

/** Each fold by itself, and all on one line together, as a line is written once for all its folds. */
function reversedFolds(net: Net): Mutation[] {
  const turned = net.folds.filter(({ angle }) => angle > 0);
  const lines = scoreLinesOf(net).map((line) => turned.filter((fold) => isOn(line, fold)));
  const several = lines.filter((folds) => folds.length > 1);
  return [...turned.map((fold) => [fold]), ...several].map((folds) => ({
    kind: 'reversed fold',
    slip: folds.map(({ panels }) => panels.join('|')).join(' '),
    net: { ...net, folds: net.folds.map((fold) => (folds.includes(fold) ? reversed(fold) : fold)) },
  }));
}

function reversed(fold: Fold): Fold {
  return { ...fold, direction: fold.direction === 'valley' ? 'mountain' : 'valley' };
}

/**
 * A leaf of the net whose free edge is moved outward, where there is paper for it: a little, and by as much as any panel
 * reaches that way.
 */
function longerFlaps(net: Net): Mutation[] {
  return net.panels.flatMap((panel) => {
    const [fold, ...others] = net.folds.filter(({ panels }) => panels.includes(panel.id));
    if (!fold || others.length > 0 || lineOf(fold) === 'slanted' || isCurved(panel)) return [];
    const reaches = net.panels.map(({ id }) => reachFrom(lineOf(fold), net, id));
    const ways = [
      ['longer flap', LONGER],
      ['far too long flap', Length.max(LONGER, ...reaches)],
    ] as const;
    return ways.flatMap(([kind, by]): Mutation[] => {
      const longer = withFlapLonger(net, panel, fold, by);
      return longer ? [{ kind, slip: panel.id, net: longer }] : [];
    });
  });
}

/** Drawn round a template, and so no longer by a slip of the ruler. */
function isCurved({ outline }: Panel): boolean {
  return outline.length > 6;
}

/** One score line of a net: its distance from the left or top edge of the sheet. */
type ScoreLine = { readonly lines: 'upright' | 'across'; readonly position: Length };

/** Every line set at the board: a curve is drawn round a template instead. */
function scoreLinesOf({ scores, size }: Net): ScoreLine[] {
  return scores.flatMap(({ from, at }) => {
    const upright = from === 'left' || from === 'right';
    const extent = upright ? size.width : size.height;
    const isFar = from === 'right' || from === 'bottom';
    return at.map((each) => ({
      lines: upright ? ('upright' as const) : ('across' as const),
      position: isFar ? extent.minus(each) : each,
    }));
  });
}

/** The first fold on a line, enough to tell the line by. */
function firstFoldOn({ folds }: Net, line: ScoreLine): string {
  return folds.find((fold) => isOn(line, fold))?.panels.join('|') ?? '';
}

function isOn({ lines, position }: ScoreLine, fold: Fold): boolean {
  return lineOf(fold) === lines && positionOf(fold).equals(position);
}

/** The net with one score line made at another place, and cut there too wherever it is cut. */
function withLineMoved(net: Net, { lines, position }: ScoreLine, by: Length): Net {
  const moved = (here: Length): Length => (here.equals(position) ? here.plus(by) : here);
  return withPointsMoved(net, ({ x, y }) => (lines === 'upright' ? { x: moved(x), y } : { x, y: moved(y) }));
}

function withPointsMoved(net: Net, move: (point: FlatPoint) => FlatPoint): Net {
  const { strips, ...flat } = net;
  return {
    ...flat,
    panels: net.panels.map((panel) => panelMoved(panel, move)),
    folds: net.folds.map((fold) => ({ ...fold, from: move(fold.from), to: move(fold.to) })),
    slits: net.slits.map(({ from, to }) => ({ from: move(from), to: move(to) })),
    waste: net.waste.map((part) => part.map(move)),
  };
}

function panelMoved({ box, outline, ...panel }: Panel, move: (point: FlatPoint) => FlatPoint): Panel {
  const [from, to] = [move({ x: box.left, y: box.top }), move({ x: box.right, y: box.bottom })];
  const moved = { left: from.x, top: from.y, right: to.x, bottom: to.y };
  return { ...panel, outline: outline.map(move), box: moved };
}

const OPPOSITE: Readonly<Record<Edge, Edge>> = { left: 'right', right: 'left', top: 'bottom', bottom: 'top' };

/** Undefined where another panel lies beside the flap's free edge. */
function withFlapLonger(net: Net, flap: Panel, fold: Fold, length: Length): Net | undefined {
  const far = OPPOSITE[hingeOf(flap.box, fold)];
  const isUpright = far === 'left' || far === 'right';
  const by = length.times(far === 'left' || far === 'top' ? -1 : 1);
  const edge = flap.box[far];
  const box = { ...flap.box, [far]: edge.plus(by) };
  if (net.panels.some((other) => other !== flap && areOver(other.box, box))) return undefined;
  const outward = ({ x, y }: FlatPoint): FlatPoint => ({
    x: isUpright && x.equals(edge) ? x.plus(by) : x,
    y: !isUpright && y.equals(edge) ? y.plus(by) : y,
  });
  const longer = { ...flap, box, outline: flap.outline.map(outward) };
  return onItsSheet({ ...net, panels: net.panels.map((each) => (each === flap ? longer : each)) });
}

function hingeOf(box: FlatBox, fold: Fold): Edge {
  if (lineOf(fold) === 'upright') return positionOf(fold).equals(box.left) ? 'left' : 'right';
  return positionOf(fold).equals(box.top) ? 'top' : 'bottom';
}

function areOver(a: FlatBox, b: FlatBox): boolean {
  const alongX = a.left.lessThan(b.right) && b.left.lessThan(a.right);
  return alongX && a.top.lessThan(b.bottom) && b.top.lessThan(a.bottom);
}

/** The net on a sheet that is cut as large as its panels need. */
function onItsSheet(net: Net): Net {
  const boxes = net.panels.map(({ box }) => box);
  const left = Length.min(Length.zero, ...boxes.map((box) => box.left));
  const top = Length.min(Length.zero, ...boxes.map((box) => box.top));
  const shifted = withPointsMoved(net, ({ x, y }) => ({ x: x.minus(left), y: y.minus(top) }));
  const width = Length.max(net.size.width, ...shifted.panels.map(({ box }) => box.right));
  const height = Length.max(net.size.height, ...shifted.panels.map(({ box }) => box.bottom));
  const scores = net.scores.map(({ from, at }) => {
    const by = {
      left,
      top,
      right: width.minus(net.size.width).plus(left),
      bottom: height.minus(net.size.height).plus(top),
    };
    return {
      from,
      at: at.map((each) => (from === 'left' || from === 'top' ? each.minus(by[from]) : each.plus(by[from]))),
    };
  });
  return { ...shifted, size: { width, height }, scores };
}
