import { Length } from '../../measure/length.ts';
import type { Edge, FoldDirection } from '../../project/net-as-written.ts';
import { isOnSegment, middleOf } from '../exact.ts';
import { boundsOf, type FlatPoint, type Fold, type Net, type Panel, type PopUp } from '../net.ts';
import { boxCorners } from '../outline.ts';
import { scoresWithStrip } from './strip-scores.ts';

/** Where a strip lies: `x` along its fold and `y` away from that on a sheet whose fold runs across, the other way on one whose fold is upright. */
export type StripPlace = {
  /** The stretch of the fold that it crosses. */
  readonly fold: Fold;
  readonly isUpright: boolean;
  /** Along the fold, from the left or the top edge of the sheet. */
  readonly from: Length;
  readonly to: Length;
};

/** The same fold the other way. */
const OTHER_WAY: Readonly<Record<FoldDirection, FoldDirection>> = {
  mountain: 'valley',
  valley: 'mountain',
  flat: 'flat',
};

/**
 * A sheet with a strip cut across a fold: the two panels beside the fold end at the slits and where the strip hangs on
 * them, and the strip is two panels more. Of these each is as long as the slits are deep in the panel that it does not
 * hang on, so that strip and card stay a parallelogram however far the card is opened.
 */
export function withPopUp(net: Net, popUp: PopUp, place: StripPlace): Net {
  const { fold, isUpright, from, to } = place;
  const line = isUpright ? fold.from.x : fold.from.y;
  const at = (along: Length, away: Length): FlatPoint =>
    isUpright ? { x: away, y: along } : { x: along, y: away };
  const across = (away: Length): Pick<Fold, 'from' | 'to'> => ({ from: at(from, away), to: at(to, away) });
  const ends = popUp.panels.map((id, side) => {
    const depth = popUp.depths[side] ?? Length.zero;
    return line.plus(depth.times(signOf(net, id, line, isUpright)));
  });
  const [first = line, second = line] = ends;
  // As long as the slit in the other panel is deep.
  const middle = first.plus(second).minus(line);
  const parts = popUp.parts.map((id, side): Panel => {
    const [near, far] = [ends[side] ?? line, middle].sort((a, b) => a.compare(b));
    const box = boundsOf([at(from, near ?? line), at(to, far ?? line)]);
    return { id, name: id, outline: boxCorners(box), box };
  });
  const { angle, stage } = fold;
  const how = { direction: fold.direction, angle, ...(stage !== undefined && { stage }) };
  const hung = popUp.panels.map((panel, side): Fold => {
    const part = popUp.parts[side] ?? panel;
    return { panels: [panel, part], ...across(ends[side] ?? line), ...how };
  });
  return {
    ...net,
    panels: [...net.panels.map((panel) => bitten(panel, popUp, ends, place, at)), ...parts],
    folds: [
      ...net.folds.flatMap((each) =>
        each === fold ? without(fold, place, at(from, line), at(to, line)) : [each],
      ),
      ...hung,
      { panels: popUp.parts, ...across(middle), ...how, direction: OTHER_WAY[fold.direction] },
    ],
    slits: [...net.slits, ...[from, to].map((along) => ({ from: at(along, first), to: at(along, second) }))],
    scores: scoresWithStrip(net, { isUpright, from, to, line, middle, ends: [first, second] }),
    popUps: [...(net.popUps ?? []), popUp],
  };
}

/** 1 for a panel that lies to the right of a line or below it, -1 for one on its other side. */
function signOf({ panels }: Net, id: string, line: Length, isUpright: boolean): 1 | -1 {
  const box = panels.find((panel) => panel.id === id)?.box;
  const near = isUpright ? box?.left : box?.top;
  return near?.lessThan(line) ? -1 : 1;
}

/** What is left of a panel where the strip is cut out of its edge. */
function bitten(
  panel: Panel,
  { panels }: PopUp,
  ends: readonly Length[],
  { fold, isUpright, from, to }: StripPlace,
  at: (along: Length, away: Length) => FlatPoint,
): Panel {
  const end = ends[panels.indexOf(panel.id)];
  if (!end) return panel;
  const line = isUpright ? fold.from.x : fold.from.y;
  const outline = panel.outline.flatMap((corner, index) => {
    const next = panel.outline[(index + 1) % panel.outline.length] ?? corner;
    if (!isOnSegment({ from: corner, to: next }, middleOf(fold))) return [corner];
    const bite = [at(from, line), at(from, end), at(to, end), at(to, line)];
    const runsOn = isUpright ? corner.y.lessThan(next.y) : corner.x.lessThan(next.x);
    return [corner, ...(runsOn ? bite : bite.toReversed())];
  });
  return { ...panel, outline };
}

/** The two stretches of a fold on either side of the strip. */
function without(fold: Fold, { isUpright }: StripPlace, near: FlatPoint, far: FlatPoint): readonly Fold[] {
  const along = ({ x, y }: FlatPoint): Length => (isUpright ? y : x);
  const [first, last] = along(fold.from).lessThan(along(fold.to))
    ? [fold.from, fold.to]
    : [fold.to, fold.from];
  return [
    { ...fold, from: first, to: near },
    { ...fold, from: far, to: last },
  ];
}

/** The edges that a strip's place along its fold is measured from. */
export function endsAlong(isUpright: boolean): readonly [Edge, Edge] {
  return isUpright ? ['top', 'bottom'] : ['left', 'right'];
}
