import { Length } from '../measure/length.ts';
import { rulerUnit } from '../measure/ruler-unit.ts';
import type { Piece, Project } from '../project/model.ts';
import { type Face, faceOf, type Ref } from '../project/ref.ts';
import { caliperOf, stockOf } from './caliper.ts';
import { type ClosedFlat, closedFlat } from './closed-flat.ts';
import type { Triple } from './closure/packing.ts';
import { foldNet } from './fold.ts';
import { ontoBase, ontoSheet, outlineOf, sheetFace } from './layer-outline.ts';
import { boundsOf, boxSize, type FlatPoint, type Net } from './net.ts';
import { isSolid, outerLengths } from './outer-size.ts';
import { boxCorners } from './outline.ts';
import type { Layer, Shapes } from './shapes.ts';
import { ownNet } from './sheets.ts';

/** The pieces of a project, and what was made of them. */
export type Made = { readonly project: Project; readonly shapes: Shapes };

/**
 * How large a piece is that is folded up, its layers on it: width, height and depth of what closes flat, else as it
 * stands. Undefined where that is not known: it cannot be made, or has score lines at an angle.
 */
export function closedSize(made: Made, piece: Piece): Triple | undefined {
  const net = ownNet(made.shapes.nets, piece.id.value);
  if (!net) return undefined;
  return isSolid(net) ? solidSize(made, piece, net) : flatSize(made, piece, net);
}

function flatSize(made: Made, piece: Piece, net: Net): Triple | undefined {
  const closed = closedFlat(net);
  if (!closed) return undefined;
  // One that isn't meant to pass its base adds no width; where it does, that is found by itself.
  const passing = made.shapes.layers.filter((layer) => layer.piece.overhang);
  const layers = passing.flatMap((layer) => pointsOn(layer, made.shapes, piece, closed));
  const { width, height } = boxSize(boundsOf([...boxCorners(closed.box), ...layers]));
  return [width, height, closedThickness(made, piece, closed)];
}

/** Where a layer comes to lie on a piece that is closed flat, however many others are between them. */
function pointsOn(layer: Layer, shapes: Shapes, { id }: Piece, closed: ClosedFlat): readonly FlatPoint[] {
  let lowest = layer;
  let points = onSheet(layer, outlineOf(layer, shapes));
  while (lowest.on.piece !== id.value) {
    const base: Layer | undefined = shapes.layers.find(({ piece }) => piece.id.value === lowest.on.piece);
    if (!base) return [];
    points = onSheet(base, points);
    lowest = base;
  }
  const { panel } = lowest.under;
  return panel ? points.flatMap((point) => closed.place(panel.id, point) ?? []) : [];
}

/** Points of a layer on the sheet that it lies on. */
function onSheet(layer: Layer, points: readonly FlatPoint[]): readonly FlatPoint[] {
  const face = sheetFace(layer.under, layer.on);
  return points.map((point) => ontoSheet(face, ontoBase(layer, point)));
}

/**
 * About how thick a closed piece is where most lies on most: its own paper, the layers on its panels, and one sheet
 * of each of `inside`. From the papers' thickness, which is itself an estimate where its maker is not asked; adhesive
 * and the air between are not reckoned.
 */
export function closedThickness(
  made: Made,
  piece: Piece,
  { piles }: ClosedFlat,
  inside: readonly Piece[] = [],
): Length {
  const paper = thicknessOf(made.project, piece);
  const onFace = (panel: string, face: Face): Length =>
    layersOn(made, (base) => faceOf(base) === face && isPanel(base, made, piece, panel));
  const heights = piles.map((panels) =>
    Length.sum(panels.map((panel) => paper.plus(onFace(panel, 'outside')).plus(onFace(panel, 'inside')))),
  );
  const loose = inside.map((sheet) => thicknessOf(made.project, sheet).times(sheet.count.value));
  return Length.max(Length.zero, ...heights).plus(Length.sum(loose));
}

/** A box as it stands: half a thickness of paper beyond its score lines on every side, and the layers on its walls. */
function solidSize(made: Made, piece: Piece, net: Net): Triple | undefined {
  const { project, shapes } = made;
  const paper = thicknessOf(project, piece);
  const [width, height, depth] = outerLengths(shapes.nets, piece.id.value, rulerUnit(project.unit)) ?? [];
  if (!width || !height) return undefined;
  const [x, y, z] = wallLayers(made, piece, net);
  // What is folded flat, as a band is, has two sheets over one another.
  const third = depth ? depth.plus(z) : paper;
  return [width.plus(paper).plus(x), height.plus(paper).plus(y), third.plus(paper)];
}

/** What the layers on the walls of a box add across, up and back: the thickest on either side. */
function wallLayers(made: Made, piece: Piece, { strips: _, ...net }: Net): Triple {
  const walls = [...foldNet(net).panels.values()].map(({ panel, plane: { normal } }) => ({
    normal,
    layers: layersOn(made, (base) => faceOf(base) === 'outside' && isPanel(base, made, piece, panel.id)),
  }));
  const most = (axis: 'x' | 'y' | 'z', side: 1 | -1): Length =>
    Length.max(
      Length.zero,
      ...walls.flatMap(({ normal, layers }) => (normal[axis] * side > LOOKS_THAT_WAY ? [layers] : [])),
    );
  return [
    most('x', 1).plus(most('x', -1)),
    most('y', 1).plus(most('y', -1)),
    most('z', 1).plus(most('z', -1)),
  ];
}

/** Cosine of 45 degrees, about. */
const LOOKS_THAT_WAY = 0.7;

function thicknessOf(project: Project, piece: Piece): Length {
  return caliperOf(stockOf(piece, project)).thickness;
}

/** Whether a base is a panel of a piece; on a flat piece that may be the piece itself. */
function isPanel(base: Ref, { shapes }: Made, { id }: Piece, panel: string): boolean {
  const panels = ownNet(shapes.nets, id.value)?.panels ?? [];
  const named = panels.find((each) => each.id === panel)?.name ?? panel;
  return base.piece === id.value && (base.part ?? (panels.length === 1 ? named : undefined)) === named;
}

/** The tallest pile of layers on a base. */
function layersOn(made: Made, isBase: (base: Ref) => boolean): Length {
  const layers = made.shapes.layers.filter(({ on }) => isBase(on));
  const piles = layers.map(({ piece }) => {
    const above = layersOn(made, (base) => base.piece === piece.id.value && base.part === undefined);
    return thicknessOf(made.project, piece).plus(above);
  });
  return Length.max(Length.zero, ...piles);
}
