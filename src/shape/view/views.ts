import { faceOf, isSameRef, type Ref } from '../../project/ref.ts';
import { moveFlat } from '../fold-moves.ts';
import { stageCount } from '../fold-order.ts';
import type { Shapes } from '../shapes.ts';
import { sheetsNamed, sheetsOf } from '../sheets.ts';

/** The view of a tube that is stuck while it lies flat. */
export const FLAT_TUBE_VIEW = 'glued-flat';

/** The view of a drawing that names none. */
export const USUAL_VIEW = 'flat';

/**
 * The views there are of a piece (`box`), of a further sheet of it (`box.lid`) or of a panel (`box.front`): `flat` of
 * what is cut, `folded` and `fold-1` to its last stage of what folds, `layers` of what something lies on. None for
 * what has no net.
 */
export function viewsOf(shapes: Shapes, of: Ref): readonly string[] {
  const sheets = sheetsNamed(shapes.nets, of);
  const stages = Math.max(0, ...sheets.map(({ net }) => stageCount(net)));
  return [
    ...(sheets.length > 0 ? [USUAL_VIEW] : []),
    ...(stages > 0 ? ['folded'] : []),
    ...Array.from({ length: stages }, (_, index) => `fold-${index + 1}`),
    ...(sheets.some(({ net }) => moveFlat(net)) ? [FLAT_TUBE_VIEW] : []),
    ...(drawnBase(shapes, of) ? ['layers'] : []),
  ];
}

/**
 * What the layers lie on that are drawn of a name: what it names, or the first opening of that panel which something is
 * stuck behind, for that is on the inside of the panel. Undefined where nothing lies on it.
 */
export function drawnBase({ layers, nets }: Shapes, named: Ref): Ref | undefined {
  const bases = layers.map(({ on }) => on);
  const isBehind = (on: Ref): boolean =>
    on.piece === named.piece &&
    faceOf(on) === faceOf(named) &&
    sheetsOf(nets, on.piece).some(({ net }) =>
      net.openings?.some(({ name, panel }) => name === on.part && panel === (named.part ?? named.piece)),
    );
  return bases.find((on) => isSameRef(on, named)) ?? bases.find(isBehind);
}
