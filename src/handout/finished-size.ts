import { type Editions, ownEdition, type Twin, twins } from '../edition/editions.ts';
import type { Length } from '../measure/length.ts';
import { rulerUnit } from '../measure/ruler-unit.ts';
import type { Piece } from '../project/model.ts';
import { forms } from '../shape/forms/index.ts';
import type { Net } from '../shape/net.ts';
import { isSolid, outerLengths } from '../shape/outer-size.ts';
import { ownNet } from '../shape/sheets.ts';

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

/**
 * Whether a project makes more than one thing, so that its size has to say of which it is: several that fold or, where
 * none does, several flat ones. A loose sheet beside what folds goes with it.
 */
export function makesSeveral(editions: Editions): boolean {
  const roots = rootsOf(editions);
  const folding = roots.filter(folds);
  return (folding.length > 0 ? folding : roots).length > 1;
}

type Root = { readonly piece: Piece; readonly net: Net };

function rootsOf(editions: Editions): readonly Root[] {
  const { project, shapes } = ownEdition(editions);
  return [...project.pieces.values()].flatMap((piece) => {
    const net = ownNet(shapes.nets, piece.id.value);
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
  return (
    main &&
    twins(editions, ({ project, shapes }) =>
      depthSecond(outerLengths(shapes.nets, main.id.value, rulerUnit(project.unit))),
    )
  );
}

function depthSecond(lengths: readonly Length[] | undefined): readonly Length[] | undefined {
  const [width, height, depth] = lengths ?? [];
  return width && height && depth ? [width, depth, height] : lengths;
}
