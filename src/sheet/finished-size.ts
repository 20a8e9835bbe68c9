import { Length } from '../measure/length.ts';
import type { Piece } from '../project/model.ts';
import { type Editions, ownEdition, type Twin } from '../shape/editions.ts';
import { foldNet } from '../shape/fold.ts';
import { boxSize, type Fold, type Net } from '../shape/net.ts';
import { bounds } from '../shape/space.ts';

/** The piece that everything else goes on or into: the first root that is glued into a shape, else the first root. */
export function mainPiece(editions: Editions): Piece | undefined {
  const { project, shapes } = ownEdition(editions);
  const roots = [...project.pieces.values()].filter(({ on, id }) => !on && shapes.nets.has(id.value));
  return roots.find(({ id }) => (shapes.nets.get(id.value)?.glue.length ?? 0) > 0) ?? roots[0];
}

/**
 * Width, height and, where it stands up, depth of the finished thing: of its main piece. Undefined when that cannot be
 * made.
 */
export function finishedSize(editions: Editions): readonly Twin[] | undefined {
  const main = mainPiece(editions);
  return main && twinsOf(editions, main);
}

function twinsOf({ inch, metric }: Editions, piece: Piece): readonly Twin[] | undefined {
  const [one, other] = [inch, metric].map(({ shapes }) => shapes.nets.get(piece.id.value));
  if (!one || !other) return undefined;
  const lengths = finishedLengths(other);
  return finishedLengths(one).flatMap((length, index) => {
    const twin = lengths[index];
    return twin ? [{ inch: length, metric: twin }] : [];
  });
}

function finishedLengths(net: Net): readonly Length[] {
  if (net.folds.length === 0) return [net.size.width, net.size.height];
  return foldsFlat(net) ? largestPanel(net) : foldedBounds(net);
}

/** A card: nothing is glued, and all its folds run one way, so that its panels close on one another. */
function foldsFlat({ folds, glue }: Net): boolean {
  const upright = ({ from, to }: Fold): boolean => from.x.equals(to.x);
  return glue.length === 0 && (folds.every(upright) || !folds.some(upright));
}

function largestPanel(net: Net): readonly Length[] {
  const sizes = net.panels.map(({ box }) => boxSize(box));
  return [
    Length.max(Length.zero, ...sizes.map(({ width }) => width)),
    Length.max(Length.zero, ...sizes.map(({ height }) => height)),
  ];
}

/** Thinner than this, it lies flat and has no depth to speak of. */
const FLAT = 1;

function foldedBounds(net: Net): readonly Length[] {
  const corners = [...foldNet(net).panels.values()].flatMap((panel) => panel.corners);
  const { least, most } = bounds(corners);
  const sides = [most.x - least.x, most.y - least.y, most.z - least.z];
  return sides.filter((side, index) => index < 2 || side > FLAT).map(hundredths);
}

/** Folding reckons in floating point; a hundredth of a millimetre is finer than any ruler. */
function hundredths(millimetres: number): Length {
  return Length.of(Math.round(millimetres * 100), 100, 'mm');
}
