import type { Length } from '../../measure/length.ts';
import { roundFolded } from '../../measure/round.ts';
import { rulerUnit } from '../../measure/ruler-unit.ts';
import type { Size } from '../../measure/size.ts';
import { EDGES, type Edge, isUpright } from '../../project/net-as-written.ts';
import type { Place } from '../../project/source.ts';
import { distanceBetween, distanceOutside } from '../../shape/flat-polygon.ts';
import { upright } from '../../shape/fold.ts';
import { boxSize, type Margins, type Net, type Panel } from '../../shape/net.ts';
import { foldsOf, otherSide } from '../../shape/panel-tree.ts';
import { type CutOpening, everyOpening, leastPaper, OFF_ARC, type OfOpening } from '../openings.ts';
import type { Rule } from '../rule.ts';
import type { Words } from '../told.ts';
import { sayLength } from '../words.ts';

type Facts = OfOpening & {
  readonly panel: string;
  readonly found: Passing | Through | Thin | { readonly out: Length };
};

/** How little is left beside it; and how large it may be at most, where no move would leave more on both sides. */
type Thin = { readonly left: Length; readonly most?: { readonly side: keyof Size; readonly size: Length } };

/** It takes all of the panel in one direction, from an edge to the one across from it. */
type Through = { readonly through: keyof Size; readonly room: Length };

/** An edge of the panel that it passes, and by how much; the panel behind that, where it is a fold. */
type Passing = {
  readonly edge: Edge;
  readonly by: Length;
  /** What the two measure in that direction. */
  readonly size: Length;
  readonly room: Length;
  readonly behind?: string;
};

export const openingAtEdge: Rule<Facts> = {
  severity: 'error',
  summary: 'Paper is left on every side of an opening, and it cuts no fold.',
  why: 'A window that runs past its panel cuts the fold or the edge, and the piece falls apart. A strip of paper thinner than 1/8 in (3 mm) tears when the opening is cut.',
  fails: {
    pieces:
      'card: { stock: cream, form: single-fold card, size: 4 1/4 x 5 1/2, openings: { window: { size: 3 x 4, in: front, at: { left: 1 1/2 } } } }',
    blames: '1 1/2',
  },
  passes: { with: 'left: 1', insteadOf: 'left: 1 1/2' },
  *check(context) {
    for (const cut of everyOpening(context)) {
      const found = foundAt(cut);
      if (found) yield { at: placeOf(cut, found), facts: { ...cut.of, panel: cut.panel.id, found } };
    }
  },
  say: ({ piece, opening, unit, panel, found }) => {
    const name = `${piece}.${opening}`;
    const say = (length: Length): string => sayLength(length, unit);
    if ('edge' in found) return sayPassing(name, panel, found, say);
    if ('out' in found) {
      return {
        message: `${name} reaches ${say(found.out)} past the paper of ${panel}`,
        remedy: 'move it inward, or make it smaller',
      };
    }
    const least = leastPaper(unit);
    return 'through' in found
      ? sayThrough(name, panel, found, say(least), say)
      : sayThin(name, panel, found, least, say);
  },
};

function sayPassing(
  name: string,
  panel: string,
  { edge, by, size, room, behind }: Passing,
  say: (length: Length) => string,
): Words {
  const what =
    behind === undefined ? `runs past the ${edge} edge of` : `is cut across the fold to ${behind} from`;
  const is = isUpright(edge) ? 'wide' : 'high';
  const fits = size.lessThan(room);
  return {
    message: `${name} ${what} ${panel} by ${say(by)}: it is ${say(size)} ${is} on ${say(room)}`,
    remedy: fits ? `move it at least ${say(by)} from that edge` : `make it less than ${say(room)} ${is}`,
  };
}

function sayThrough(
  name: string,
  panel: string,
  { through, room }: Through,
  least: string,
  say: (length: Length) => string,
): Words {
  const is = through === 'width' ? 'wide' : 'high';
  return {
    message: `${name} goes right across ${panel}, ${say(room)} ${is}: ${panel} falls apart`,
    remedy: `make it smaller, so that ${least} is left on either side`,
  };
}

function sayThin(
  name: string,
  panel: string,
  { left, most }: Thin,
  least: Length,
  say: (length: Length) => string,
): Words & { readonly severity: 'warning' } {
  const message =
    left.sign === 0
      ? `${name} is cut up to the edge of ${panel}: nothing is left beside it`
      : `${name} leaves ${say(left)} of ${panel} beside it; ${say(least)} is the least that does not tear`;
  const remedy = most
    ? `make it at most ${say(most.size)} ${most.side === 'width' ? 'wide' : 'high'}`
    : `move it ${say(least.minus(left))} inward, or make it smaller`;
  return { message, remedy, severity: 'warning' };
}

function foundAt({ opening, panel, net, of: { unit } }: CutOpening): Facts['found'] | undefined {
  const { margins, outline } = opening;
  const edge = EDGES.filter((each) => margins[each].sign < 0).toSorted((a, b) =>
    margins[a].compare(margins[b]),
  )[0];
  const room = boxSize(panel.box);
  if (edge) {
    const side = isUpright(edge) ? 'width' : 'height';
    const [near, far] = side === 'width' ? [margins.left, margins.right] : [margins.top, margins.bottom];
    const size = room[side].minus(near).minus(far);
    const behind = panelBehind(net, panel, edge);
    return { edge, by: margins[edge].abs(), size, room: room[side], ...(behind !== undefined && { behind }) };
  }
  const through = throughIn(opening);
  if (through) return { through, room: room[through] };
  const [own, paper] = [outline.map(upright), panel.outline.map(upright)];
  const out = Math.max(...own.map((point) => distanceOutside(point, paper)));
  if (out > OFF_ARC) return { out: roundFolded(out, rulerUnit(unit)) };
  const left = roundFolded(distanceBetween(own, paper), rulerUnit(unit));
  const least = leastPaper(unit);
  return left.lessThan(least) ? { left, ...mostIn(margins, room, least) } : undefined;
}

function mostIn({ left, right, top, bottom }: Margins, room: Size, least: Length): Pick<Thin, 'most'> {
  const both = least.times(2);
  const side = left.plus(right).lessThan(both) ? 'width' : 'height';
  const isTooLarge = side === 'width' || top.plus(bottom).lessThan(both);
  return isTooLarge ? { most: { side, size: room[side].minus(both) } } : {};
}

function throughIn({ margins: { left, right, top, bottom } }: CutOpening['opening']): keyof Size | undefined {
  if (left.sign === 0 && right.sign === 0) return 'width';
  return top.sign === 0 && bottom.sign === 0 ? 'height' : undefined;
}

/** The panel that hangs on an edge of another. */
function panelBehind(net: Net, { id, box }: Panel, edge: Edge): string | undefined {
  const upOrDown = edge === 'top' || edge === 'bottom';
  const fold = foldsOf(net, id).find(({ from, to }) =>
    upOrDown
      ? from.y.equals(box[edge]) && to.y.equals(box[edge])
      : from.x.equals(box[edge]) && to.x.equals(box[edge]),
  );
  return fold && otherSide(fold, id);
}

/** The number that decides: a distance from an edge, else the size. */
function placeOf({ written: { cut, placement, name } }: CutOpening, found: Facts['found']): Place {
  const edge = 'edge' in found ? found.edge : undefined;
  const through = 'through' in found ? found.through : undefined;
  const isAcross = edge === 'left' || edge === 'right' || through === 'width';
  const isUpright = edge === 'top' || edge === 'bottom' || through === 'height';
  const { left, right, top, bottom } = placement;
  const given = (isUpright ? undefined : (left ?? right)) ?? (isAcross ? undefined : (top ?? bottom));
  if (given) return given.at;
  if (cut.kind === 'slot') return cut.length.at;
  if (cut.kind === 'pop-up') return name.at;
  return isAcross ? cut.size.width.at : isUpright ? cut.size.height.at : name.at;
}
