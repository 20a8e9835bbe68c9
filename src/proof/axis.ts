import type { Length } from '../measure/length.ts';
import type { Edge, PieceBody, Project } from '../project/model.ts';
import type { At, Place } from '../project/source.ts';
import type { Layer } from '../shape/shapes.ts';
import type { Note } from './finding.ts';
import { sayLength } from './words.ts';

/** One direction of a layer on its base, as it lies there: across or upright. */
export type Axis = {
  readonly layer: Layer;
  /** What the base measures in this direction, and how that is said. */
  readonly base: Length;
  readonly baseIs: 'wide' | 'high';
  /** What the layer measures in this direction; its own word differs after a quarter turn. */
  readonly size: Length;
  readonly layerIs: 'wide' | 'high';
  readonly sides: readonly [Edge, Edge];
  readonly reveals: readonly [Length, Length];
  readonly centred: boolean;
  /** The written number that decides the layer's size, if there is one. */
  readonly written?: At<Length>;
};

/** Both directions of a layer, or none of one turned by anything but quarter turns. */
export function axesOf(layer: Layer): readonly Axis[] {
  if (layer.turn % 90 !== 0) return [];
  const turned = layer.turn % 180 !== 0;
  const { reveals, base, size, centred } = layer;
  const width = { size: size.width, layerIs: 'wide', ...writtenSize(layer.piece.body, 'width') } as const;
  const height = { size: size.height, layerIs: 'high', ...writtenSize(layer.piece.body, 'height') } as const;
  return [
    {
      layer,
      ...(turned ? height : width),
      base: base.width,
      baseIs: 'wide',
      sides: ['left', 'right'],
      reveals: [reveals.left, reveals.right],
      centred: centred.across,
    },
    {
      layer,
      ...(turned ? width : height),
      base: base.height,
      baseIs: 'high',
      sides: ['top', 'bottom'],
      reveals: [reveals.top, reveals.bottom],
      centred: centred.upright,
    },
  ];
}

/** Where to point for a layer's size: its number, else what it lies on, else the whole piece. */
export function sizePlace({ written, layer }: Axis): Place {
  return written?.at ?? layer.piece.on?.at ?? layer.piece.at;
}

/** The base's own measurement as a second place: at its number, at its panel's name or at its form. */
export function baseNote(project: Project, { layer, base, baseIs }: Axis): Note[] {
  const reference = layer.piece.on?.value;
  const piece = reference && project.pieces.get(reference.piece);
  if (!piece) return [];
  const message = `${layer.baseName} is ${sayLength(base, project.unit)} ${baseIs}`;
  const number = writtenSize(piece.body, baseIs === 'wide' ? 'width' : 'height').written;
  const at = reference.panel === undefined ? number?.at : panelPlace(piece.body, reference.panel);
  return [{ message, at: at ?? piece.id.at }];
}

function panelPlace(body: PieceBody, panel: string): Place | undefined {
  if (body.kind === 'form') return body.form.at;
  return body.kind === 'net' ? body.panels.find(({ name }) => name.value === panel)?.name.at : undefined;
}

function writtenSize(body: PieceBody, side: 'width' | 'height'): { written?: At<Length> } {
  return body.kind === 'form' ? {} : { written: body.cut[side] };
}
