import { Length } from '../measure/length.ts';
import type { Piece } from '../project/model.ts';
import { type Editions, ownEdition, type Twin } from '../shape/editions.ts';
import { foldNet } from '../shape/fold.ts';
import type { Fold, Net } from '../shape/net.ts';
import { bounds } from '../shape/space.ts';
import { tubesOf } from '../shape/tube.ts';

/** The piece that everything else goes on or into: the first that folds and lies on nothing, else the first that lies on nothing. */
export function mainPiece(editions: Editions): Piece | undefined {
  const { project, shapes } = ownEdition(editions);
  const roots = [...project.pieces.values()].filter(({ on, id }) => !on && shapes.nets.has(id.value));
  return roots.find(({ id }) => (shapes.nets.get(id.value)?.folds.length ?? 0) > 0) ?? roots[0];
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
  return foldedBounds(isSolid(net) ? net : closed(net));
}

/** A tube, or a floor with walls round it. Everything else (a card, a folder, an envelope) ends up flat. */
export function isSolid(net: Net): boolean {
  if (tubesOf(net).length > 0) return true;
  return net.panels.some(({ id }) => wallsOn(net, id) >= LEAST_WALLS);
}

const LEAST_WALLS = 3;

function wallsOn({ folds }: Net, panel: string): number {
  return folds.filter(({ panels, angle }) => panels.includes(panel) && angle > 0 && angle < 180).length;
}

/** The same net folded shut, however far open its sheet shows it. */
function closed(net: Net): Net {
  const shut = ({ angle }: Fold): number => (angle > 0 ? 180 : 0);
  return { ...net, folds: net.folds.map((fold) => ({ ...fold, angle: shut(fold) })) };
}

/** Thinner than this, it lies flat and has no depth to speak of. */
const FLAT = 1;

function foldedBounds(net: Net): readonly Length[] {
  const corners = [...foldNet(net).panels.values()].flatMap((panel) => panel.corners);
  const { least, most } = bounds(corners);
  const sides = [most.x - least.x, most.y - least.y, most.z - least.z];
  return sides.filter((side) => side > FLAT).map(hundredths);
}

/** Folding reckons in floating point; a hundredth of a millimetre is finer than any ruler. */
function hundredths(millimetres: number): Length {
  return Length.of(Math.round(millimetres * 100), 100, 'mm');
}
