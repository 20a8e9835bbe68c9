import { fitsWithin } from '../measure/size.ts';
import { commonPart, type Overlap } from './common-parts.ts';
import { depthInside, distanceOutside, notchesOf, type Point2 } from './flat-polygon.ts';
import { upright } from './fold.ts';
import { onSheet, openingsOf, outlineOf } from './layer-outline.ts';
import { boxSize, type Fold, type Net, type Panel } from './net.ts';
import { pairsOf } from './pairs.ts';
import { foldBetween, otherSide } from './panel-tree.ts';
import type { Layer, Shapes, Under } from './shapes.ts';
import { ownNet } from './sheets.ts';
import { signedAngle, tubesOf } from './tube.ts';

/** The paper right under a layer, and the layer's outline on its sheet, in millimeters with y up. */
export type Ground = Under & { readonly outline: readonly Point2[] };

export function groundOf(layer: Layer, shapes: Shapes): Ground {
  const outline = outlineOf(layer, shapes).map((point) => upright(onSheet(layer, point)));
  return { ...layer.under, outline };
}

/** The openings of a layer, on the sheet that it lies on, in millimeters with y up. */
export function openingsIn(layer: Layer, shapes: Shapes): readonly (readonly Point2[])[] {
  return openingsOf(layer, shapes).map((hole) => hole.map((point) => upright(onSheet(layer, point))));
}

/** Whether a layer is said to lie on a folded sheet as a whole, and not to join its panels or to go round it. */
export function liesOnWhole({ piece, under: { net, panel } }: Layer, { nets }: Shapes): boolean {
  const own = ownNet(nets, piece.id.value);
  const goesRound = own !== undefined && tubesOf(own).length > 0;
  const isFolded = net.folds.some((fold) => signedAngle(fold) !== 0);
  return !panel && isFolded && !piece.overhang && !goesRound;
}

/** A panel that a layer would fit on as it lies: the front before others, one with a name before a cell. */
export function fittingPanel({ base, reveals, under: { net } }: Layer): string | undefined {
  const width = base.width.minus(reveals.left).minus(reveals.right);
  const height = base.height.minus(reveals.top).minus(reveals.bottom);
  const fits = net.panels.filter(
    ({ id, box }) => !net.glue.some(({ from }) => from === id) && fitsWithin({ width, height }, boxSize(box)),
  );
  const best = fits.find(({ role }) => role === 'front') ?? fits.find(({ name }) => name) ?? fits[0];
  return best?.id;
}

/** A panel a layer lies on, and what of it the layer covers. */
export type PanelPart = { readonly panel: Panel; readonly part: Overlap };

/** Millimeters; what lies over something by no more only touches it. */
const TOUCHING = 0.5;

/** The panels a layer lies on. */
export function panelsUnder({ net, outline }: Ground): readonly PanelPart[] {
  return net.panels.flatMap((panel) => {
    const part = partOver(outline, panel.outline.map(upright));
    return part ? [{ panel, part }] : [];
  });
}

/** What of a part of the sheet a layer's outline covers; undefined where the two only touch. */
export function partOver(outline: readonly Point2[], part: readonly Point2[]): Overlap | undefined {
  const common = commonPart(outline, part);
  return Math.min(common.width, common.height) > TOUCHING ? common : undefined;
}

/** Two panels that a layer lies on and that the folding takes apart: best two with a fold between them. */
type Parting = { readonly parts: readonly [PanelPart, PanelPart]; readonly fold?: Fold };

/** Where a layer lies across a fold or a cut of its base; nowhere on a single panel. */
export function partingOf(ground: Ground): Parting | undefined {
  if (ground.panel) return undefined;
  const { net } = ground;
  const parted = pairsOf(panelsUnder(ground)).flatMap((parts): Parting[] => {
    const [first, second] = [parts[0].panel.id, parts[1].panel.id];
    if (stayTogether(net, first, second)) return [];
    const fold = foldBetween(net, first, second);
    return [{ parts, ...(fold && { fold }) }];
  });
  return parted.find(({ fold }) => fold) ?? parted[0];
}

/** The one panel that a layer on a folded sheet as a whole lies on; undefined where the folding takes several apart. */
export function panelUnder(ground: Ground): Panel | undefined {
  return partingOf(ground) ? undefined : panelsUnder(ground)[0]?.panel;
}

/** Whether none but flat score lines lie between two panels. */
function stayTogether(net: Net, first: string, second: string): boolean {
  const reached = new Set([first]);
  for (const id of reached) {
    for (const fold of net.folds) {
      const other = signedAngle(fold) === 0 ? otherSide(fold, id) : undefined;
      if (other !== undefined) reached.add(other);
    }
  }
  return reached.has(second);
}

/** How far a layer reaches past the outline of the panel it lies on, or over a notch of that, in millimeters. */
export function reachPast(ground: Ground): number {
  const { panel, outline } = ground;
  const under = panel?.outline.map(upright);
  if (!under) return 0;
  return Math.max(...outline.map((point) => distanceOutside(point, under)), reachOverNotch(ground));
}

/** How far a layer reaches over a notch of the panel it lies on, such as the gap that a pop-up leaves, in millimeters. */
export function reachOverNotch({ panel, outline }: Ground): number {
  const notches = panel ? notchesOf(panel.outline.map(upright)) : [];
  return Math.max(0, ...notches.map((point) => depthInside(point, outline)));
}

/** Whether nothing is cut off a panel, so that a layer within its box is on it. */
export function fillsItsBox({ outline, box }: Panel): boolean {
  return outline.every(
    ({ x, y }) => (x.equals(box.left) || x.equals(box.right)) && (y.equals(box.top) || y.equals(box.bottom)),
  );
}
