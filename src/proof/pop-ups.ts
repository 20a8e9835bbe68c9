import type { Length, Unit } from '../measure/length.ts';
import type { Piece } from '../project/model.ts';
import type { Edge } from '../project/net-as-written.ts';
import type { OpeningAsWritten, PopUpCut } from '../project/opening.ts';
import { caliperOf, stockOf } from '../shape/caliper.ts';
import type { Point2 } from '../shape/flat-polygon.ts';
import { foldNet } from '../shape/fold.ts';
import { foldedPanelOf, onPanel } from '../shape/folded-shape.ts';
import type { FlatPoint, Net, PopUp } from '../shape/net.ts';
import { boxCorners } from '../shape/outline.ts';
import { panelOf } from '../shape/panel-tree.ts';
import type { Shapes } from '../shape/shapes.ts';
import { sheetsOf } from '../shape/sheets.ts';
import { layersOnPanels } from '../shape/view/panel-layers.ts';
import type { ProofContext } from './rule.ts';

/** A pop-up in its sheet, and as it was written. */
export type CutPopUp = {
  readonly of: { readonly piece: string; readonly opening: string; readonly unit: Unit };
  readonly written: OpeningAsWritten & { readonly cut: PopUpCut };
  readonly popUp: PopUp;
  readonly net: Net;
  readonly caliper: Length;
};

/** Every pop-up of a project that could be cut. */
export function popUpsOf({ project, shapes }: ProofContext): readonly CutPopUp[] {
  return [...project.pieces.values()].flatMap((piece) => {
    const caliper = caliperOf(stockOf(piece, project)).thickness;
    return sheetsOf(shapes.nets, piece.id.value).flatMap(({ net }) =>
      (net.popUps ?? []).flatMap((popUp): CutPopUp[] => {
        const written = piece.openings.find(({ name }) => name.value === popUp.name);
        const of = { piece: piece.id.value, opening: popUp.name, unit: project.unit };
        if (written?.cut.kind !== 'pop-up') return [];
        return [{ of, written: { ...written, cut: written.cut }, popUp, net, caliper }];
      }),
    );
  });
}

/** A part of a strip, or a layer on one, where it lies on the flat sheet. */
export type OnStrip = {
  readonly part: string;
  readonly layer?: Piece;
  readonly outline: readonly FlatPoint[];
  /** How far it passes the fold by which the part hangs on the card, in millimeters. */
  readonly past: number;
  /** The edge of the part at which it hangs on the card, as its outside is seen. */
  readonly hinge: Edge;
};

/** The parts of a strip, then what is stuck on them. */
export function onStrip({ of, popUp, net }: CutPopUp, shapes: Shapes): readonly OnStrip[] {
  const parts = popUp.parts.map((part) => ({ part, outline: panelOf(net, part).outline }));
  const layers = layersOnPanels(shapes, of.piece).flatMap(({ panel, piece, outline }) =>
    popUp.parts.includes(panel) ? [{ part: panel, layer: piece, outline }] : [],
  );
  return [...parts, ...layers].map((each) => ({ ...each, ...pastHinge(each, popUp, net) }));
}

function pastHinge(
  { part, outline }: Pick<OnStrip, 'part' | 'outline'>,
  { panels, parts, isUpright }: PopUp,
  net: Net,
): Pick<OnStrip, 'past' | 'hinge'> {
  const panel = panels[parts.indexOf(part)];
  const hinge = net.folds.find(({ panels: [one, other] }) => one === panel && other === part);
  if (!hinge) throw new Error(`"${part}" hangs on nothing`);
  const away = ({ x, y }: FlatPoint): number => (isUpright ? x : y).mm;
  const line = away(hinge.from);
  const [corner] = panelOf(net, part)
    .outline.map(away)
    .filter((place) => place !== line);
  const toCard = Math.sign(line - (corner ?? line));
  const [near, far] = isUpright ? (['left', 'right'] as const) : (['top', 'bottom'] as const);
  return {
    past: Math.max(...outline.map((point) => toCard * (away(point) - line))),
    hinge: toCard < 0 ? near : far,
  };
}

/** How far something sticks out of a closed card, in millimeters; less than nothing where it ends within. */
type Stray = {
  /** Away from the fold, or past an end of it. */
  readonly way: 'away' | 'along';
  readonly by: number;
  /** How far it reaches from the fold, or how long it is along that; and the same of the card. */
  readonly reach: number;
  readonly room: number;
};

/** How far something on a strip sticks out of its card, folded flat: away from the fold, and past its ends. */
export function strayFromCard(
  { net, popUp: { panels, isUpright } }: CutPopUp,
  { part, outline }: OnStrip,
): readonly Stray[] {
  const shape = foldNet(net);
  const [first] = panels;
  const seen = (id: string, points: readonly FlatPoint[]): readonly Point2[] => {
    const { place } = foldedPanelOf(shape, id);
    return points.map((point) => onPanel(foldedPanelOf(shape, first), place(point)));
  };
  const card = panels.flatMap((id) => seen(id, boxCorners(panelOf(net, id).box)));
  const own = seen(part, outline);
  const fold = net.folds.find(({ panels: [one, other] }) => panels.includes(one) && panels.includes(other));
  const line = fold ? seen(first, [fold.from]) : [];
  const away = ({ x, y }: Point2): number => (isUpright ? x : y);
  const along = ({ x, y }: Point2): number => (isUpright ? y : x);
  const distances = (points: readonly Point2[]): number[] =>
    points.map((point) => Math.abs(away(point) - away(line[0] ?? point)));
  const [reach, room] = [Math.max(...distances(own)), Math.max(...distances(card))];
  const [least, most] = [Math.min(...own.map(along)), Math.max(...own.map(along))];
  const [top, bottom] = [Math.min(...card.map(along)), Math.max(...card.map(along))];
  return [
    { way: 'away', by: reach - room, reach, room },
    { way: 'along', by: Math.max(top - least, most - bottom), reach: most - least, room: bottom - top },
  ];
}
