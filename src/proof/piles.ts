import { Length } from '../measure/length.ts';
import { isSameRef, type Ref } from '../project/ref.ts';
import { caliperOf, stockOf } from '../shape/caliper.ts';
import type { Layer } from '../shape/shapes.ts';
import type { ProofContext } from './rule.ts';

/** Layers one on the other, the lowest first, and how thick they are together. */
type LayerPile = { readonly layers: readonly Layer[]; readonly thick: Length };

const NO_PILE: LayerPile = { layers: [], thick: Length.zero };

/** The thickest pile of layers on a base, of those that count and whatever lies on them. */
export function thickestPile(
  context: ProofContext,
  base: Ref,
  counts: (layer: Layer) => boolean = () => true,
): LayerPile {
  const { project, shapes } = context;
  const piles = shapes.layers
    .filter((layer) => isSameRef(layer.on, base) && counts(layer))
    .map((layer): LayerPile => {
      const above = thickestPile(context, { piece: layer.piece.id.value, face: 'outside' });
      const own = caliperOf(stockOf(layer.piece, project)).thickness;
      return { layers: [layer, ...above.layers], thick: own.plus(above.thick) };
    });
  return piles.toSorted((a, b) => b.thick.compare(a.thick))[0] ?? NO_PILE;
}
