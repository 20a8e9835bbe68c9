import type { HungPanel } from '../shape/fold.ts';
import type { FoldMove } from '../shape/fold-moves.ts';
import type { Net } from '../shape/net.ts';
import { partNamed } from '../words/names.ts';
import { pointsOf, type SheetPicture } from './arranged.ts';
import type { Callout } from './callouts.ts';
import type { Canvas } from './canvas.ts';
import { type Label, plain, wrapped } from './lettering.ts';
import { boxOf } from './region.ts';
import { spotForLabel } from './seen.ts';
import type { DrawingStyle } from './style.ts';

/** A panel in the drawing of a move: its index among those hung, and how it is called. */
export type NamedPanel = {
  readonly panel: number;
  readonly name: (style: DrawingStyle) => string;
  /** Whether nothing is done with it, nor told of it: then it is named only where its name has room on it. */
  readonly isIdle: boolean;
};

/** The panels that turn and bear no other that turns. */
export function turningPanels(
  net: Net,
  hung: readonly HungPanel[],
  { folds }: FoldMove,
): readonly NamedPanel[] {
  const turns = hung.map(({ fold }) => fold !== undefined && folds.has(fold));
  const isUnder = (index: number, panel: number): boolean => {
    const on = hung[panel]?.hinge?.on;
    return on !== undefined && (on === index || isUnder(index, on));
  };
  return hung.flatMap((each, panel) => {
    const isEnd = turns[panel] && !turns.some((isTurning, other) => isTurning && isUnder(panel, other));
    return isEnd ? [{ panel, name: nameOf(net, each), isIdle: false }] : [];
  });
}

/** What takes or meets the glue of a move, then everything else that has a name; each panel but those given. */
export function otherPanels(
  net: Net,
  hung: readonly HungPanel[],
  { glued }: FoldMove,
  but: readonly NamedPanel[],
): readonly NamedPanel[] {
  const stuck = new Set(glued.flatMap(({ from, to }) => [from, to]));
  const others = hung.flatMap((each, panel): NamedPanel[] => {
    const whole = wholeOf(net, each);
    if (whole?.name === undefined || but.some((other) => other.panel === panel)) return [];
    return [{ panel, name: nameOf(net, each), isIdle: !stuck.has(whole.id) }];
  });
  return others.toSorted((a, b) => Number(a.isIdle) - Number(b.isIdle));
}

function nameOf(net: Net, hung: HungPanel): NamedPanel['name'] {
  const whole = wholeOf(net, hung);
  return ({ say }) => partNamed(whole?.name ?? whole?.id ?? '', say);
}

function wholeOf({ panels }: Net, { panel }: HungPanel): Net['panels'][number] | undefined {
  return panels.find(({ id }) => id === (panel.partOf ?? panel.id));
}

/** Where a name stands in a picture, on its panel or led out of it. */
type PlacedName = NonNullable<ReturnType<typeof spotForLabel>> & { readonly label: Label };

/** The longest line of a name led out of a picture, in sizes of the lettering. */
const LINE = 5.5;

/**
 * Where each name stands, by the order given; undefined where its panel is hidden, or where it has no room and is idle.
 * Of what is hidden nothing is said: its fellow on the near side does the same.
 */
export function placeNames(
  { style, lettering: size }: Canvas,
  picture: SheetPicture,
  named: readonly NamedPanel[],
): { readonly spots: readonly (PlacedName | undefined)[]; readonly callouts: readonly Callout[] } {
  const { left, right } = boxOf(pointsOf(picture));
  const beside = picture.lines.flatMap(({ points }) => points);
  const callouts: Callout[] = [];
  const told = new Set<string>();
  const spots = named.map(({ panel, name, isIdle }) => {
    const text = name(style);
    const label = [plain(text)];
    const isTold = isIdle && told.has(text);
    const spot = isTold ? undefined : spotForLabel(picture.faces, panel, { label, size, beside });
    if (!spot || (isIdle && !spot.hasRoom)) return undefined;
    told.add(text);
    if (spot.hasRoom) return { ...spot, label };
    const isLeft = spot.at.x < (left + right) / 2;
    const [from, to] = isLeft ? [left, spot.at.x] : [spot.at.x, right];
    for (let x = from; x < to; x += size / 4) beside.push({ x, y: spot.at.y });
    callouts.push({
      from: spot.at,
      side: isLeft ? 'left' : 'right',
      label: wrapped(text, LINE),
      isName: true,
    });
    return { ...spot, label };
  });
  return { spots, callouts };
}
