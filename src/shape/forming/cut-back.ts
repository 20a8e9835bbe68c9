import type { Length } from '../../measure/length.ts';
import type { Edge } from '../../project/net-as-written.ts';
import type { FlatBox, FlatPoint, Fold, Net, Panel } from '../net.ts';
import { boxCorners, cutCell, type Hinges } from '../outline.ts';

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
