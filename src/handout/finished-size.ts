import { type Edition, type Editions, ownEdition, type Twin, twins } from '../edition/editions.ts';
import { Length } from '../measure/length.ts';
import { roundFolded } from '../measure/round.ts';
import { rulerUnit } from '../measure/ruler-unit.ts';
import type { Piece } from '../project/model.ts';
import { foldedExtent } from '../shape/fold.ts';
import { forms } from '../shape/forms/index.ts';
import type { Fold, Net } from '../shape/net.ts';
import { sheetsOf } from '../shape/shapes.ts';
import { tubesOf } from '../shape/tube.ts';

/**
 * The piece that a project is about, among those that lie on nothing: what stands up, if the project says what it
 * holds; else the first that folds, be it written behind its loose sheets; else the first. An envelope, a band or a
 * tag comes last, since it goes with something.
 */
export function mainPiece(editions: Editions): Piece | undefined {
  const { project } = ownEdition(editions);
  const roots = rootsOf(editions);
  const own = roots.filter(({ piece }) => !isAccessory(piece));
  const holder = project.holds && own.find(({ net }) => isSolid(net));
  return (holder ?? own.find(folds) ?? own[0] ?? roots[0])?.piece;
}

/** Whether a project makes more than one thing that folds, so that its size has to say of which it is. */
export function makesSeveral(editions: Editions): boolean {
  const main = mainPiece(editions);
  return rootsOf(editions).some((root) => root.piece !== main && folds(root));
}

type Root = { readonly piece: Piece; readonly net: Net };

function rootsOf(editions: Editions): readonly Root[] {
  const { project, shapes } = ownEdition(editions);
  return [...project.pieces.values()].flatMap((piece) => {
    const net = shapes.nets.get(piece.id.value);
    return net && !piece.on ? [{ piece, net }] : [];
  });
}

function folds({ net }: Root): boolean {
  return net.folds.length > 0;
}

function isAccessory({ body }: Piece): boolean {
  return body.kind === 'form' && forms.some(({ name, accessory }) => name === body.form.value && accessory);
}

/**
 * Width and height of the finished thing or, where it stands up, width, depth and height, as the sizes of boxes are
 * typed: of its main piece, whose sheets are one in another. Undefined when that cannot be made.
 */
export function finishedSize(editions: Editions): readonly Twin[] | undefined {
  const main = mainPiece(editions);
  return main && twins(editions, (edition) => depthSecond(outerLengths(edition, main.id.value)));
}

function depthSecond(lengths: readonly Length[] | undefined): readonly Length[] | undefined {
  const [width, height, depth] = lengths ?? [];
  return width && height && depth ? [width, depth, height] : lengths;
}

/**
 * Over all, of sheets that go one into another, in the order of the first one's own width, height and depth. A lid lies
 * on its box as both are shown; a drawer may lie any way in its sleeve, but is smaller in each of its sides, once both
 * are put in order.
 */
function outerLengths({ project, shapes }: Edition, piece: string): readonly Length[] | undefined {
  const unit = rulerUnit(project.unit);
  const [first, ...further] = sheetsOf(shapes.nets, piece).map(({ net }) => net);
  if (!first) return undefined;
  const own = finishedLengths(first, unit);
  const ranks = own.map((length) => own.toSorted(byLength).indexOf(length));
  const outer = further.map((net) => {
    const lengths = finishedLengths(net, unit);
    return isLid(net) ? lengths : ranks.map((rank) => lengths.toSorted(byLength)[rank]);
  });
  return own.map((length, axis) =>
    outer.reduce((most, lengths) => Length.max(most, lengths[axis] ?? most), length),
  );
}

/** Whether a sheet comes down over another as far as it reaches. */
function isLid({ takes = [] }: Net): boolean {
  return takes.some(({ reach }) => reach !== undefined);
}

function byLength(one: Length, other: Length): number {
  return one.compare(other);
}

/** Thinner than this, it lies flat and has no depth to speak of. */
const FLAT = 1;

function finishedLengths(net: Net, unit: 'in' | 'mm'): readonly Length[] {
  if (net.folds.length === 0) return [net.size.width, net.size.height];
  const sides = foldedExtent(isSolid(net) ? net : closed(net)).filter((side) => side > FLAT);
  return sides.map((side) => roundFolded(side, unit));
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
