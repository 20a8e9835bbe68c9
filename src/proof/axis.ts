import type { Length, Unit } from '../measure/length.ts';
import type { PieceBody, Project } from '../project/model.ts';
import type { Edge } from '../project/net-as-written.ts';
import type { At, Place } from '../project/source.ts';
import type { Layer } from '../shape/shapes.ts';
import type { Evidence, ProofContext } from './rule.ts';
import type { Words } from './told.ts';
import { sayLength, sayRef } from './words.ts';

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
  readonly centered: boolean;
  /** The written number that decides the layer's size, if there is one. */
  readonly written?: At<Length>;
};

/** What every finding on a layer tells: its name, that of its base, and the unit of its lengths. */
export type OfLayer = { readonly layer: string; readonly baseName: string; readonly unit: Unit };

export function ofLayer({ unit }: Project, { piece, on }: Layer): OfLayer {
  return { layer: piece.id.value, baseName: sayRef(on), unit };
}

/** What a finding tells of one direction of a layer and its base. */
export type AxisFacts = OfLayer &
  Pick<Axis, 'size' | 'layerIs' | 'base' | 'baseIs'> & {
    /** Where the base's own measurement is written: its number, its panel's name or its form. */
    readonly baseAt?: Place;
  };

/** What is wrong with layers where they lie, each told where its base is named. */
export function* eachOnBase<F extends object>(
  { project, shapes }: ProofContext,
  find: (layer: Layer) => F | undefined,
): Generator<Evidence<OfLayer & F>> {
  for (const layer of shapes.layers) {
    const found = find(layer);
    if (found) yield { at: basePlace(layer), facts: { ...ofLayer(project, layer), ...found } };
  }
}

/** Where to point for what a layer lies on: at its name, else at the whole piece. */
function basePlace({ piece }: Layer): Place {
  return piece.on?.at ?? piece.at;
}

const WAYS = [
  { side: 'width', way: 'across', sides: ['left', 'right'] },
  { side: 'height', way: 'upright', sides: ['top', 'bottom'] },
] as const;

const IS = { width: 'wide', height: 'high' } as const;

/** Both directions of a layer, or none of one turned by anything but quarter turns. */
export function axesOf(layer: Layer): readonly Axis[] {
  if (layer.turn % 90 !== 0) return [];
  const isTurned = layer.turn % 180 !== 0;
  return WAYS.map(({ side, way, sides }) => {
    const own = isTurned === (side === 'width') ? 'height' : 'width';
    const base = { base: layer.base[side], baseIs: IS[side] };
    const size = { size: layer.size[own], layerIs: IS[own], ...writtenSize(layer.piece.body, own) };
    const reveals = [layer.reveals[sides[0]], layer.reveals[sides[1]]] as const;
    return { layer, ...size, ...base, sides, reveals, centered: layer.centered[way] };
  });
}

/** Where to point for a layer's size: its number, else what it lies on, else the whole piece. */
export function sizePlace({ written, layer }: Axis): Place {
  return written?.at ?? basePlace(layer);
}

/** The facts of an axis, for a finding in the project's unit. */
export function axisFacts(project: Project, axis: Axis): AxisFacts {
  const { layer, size, layerIs, base, baseIs } = axis;
  const { part } = layer.on;
  const piece = project.pieces.get(layer.on.piece);
  const facts = { ...ofLayer(project, layer), size, layerIs, base, baseIs };
  if (!piece) return facts;
  const number = writtenSize(piece.body, baseIs === 'wide' ? 'width' : 'height').written;
  const at = part === undefined ? number?.at : panelPlace(piece.body, part);
  return { ...facts, baseAt: at ?? piece.id.at };
}

/** The base's own measurement as a further place. */
export function noteBase({ baseName, base, baseIs, baseAt, unit }: AxisFacts): Required<Words>['notes'] {
  return baseAt ? [{ message: `${baseName} is ${sayLength(base, unit)} ${baseIs}`, at: baseAt }] : [];
}

function panelPlace(body: PieceBody, panel: string): Place | undefined {
  if (body.kind === 'form') return body.form.at;
  return body.kind === 'net' ? body.panels.find(({ name }) => name.value === panel)?.name.at : undefined;
}

function writtenSize(body: PieceBody, side: 'width' | 'height'): { written?: At<Length> } {
  return body.kind === 'form' ? {} : { written: body.cut[side] };
}
