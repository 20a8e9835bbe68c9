import type { Size } from '../measure/size.ts';
import type { Piece, Project, Supply } from '../project/model.ts';
import { stockOf } from '../shape/caliper.ts';
import type { Shapes } from '../shape/shapes.ts';
import { cutPiecesOf } from './demand.ts';

/** What one project takes of something for one kit. */
export type Use = {
  readonly project: Project;
  /** Each sheet that is cut: its name, its size, how many. */
  readonly pieces: readonly { readonly name: string; readonly size: Size; readonly count: number }[];
  /** Supplies, each with how much of it a kit takes, as it is written. */
  readonly supplies: readonly { readonly item: string; readonly each: string | undefined }[];
  /** It goes by this tag. */
  readonly isTagged: boolean;
};

/**
 * What a project uses that goes by a name: a stock or a supply by its id or what it is called, something of `shared/`, the
 * set a supply comes from, a tag. Undefined where it uses nothing of that name.
 */
export function useOf(name: string, project: Project, shapes: Shapes): Use | undefined {
  const pieces = [...project.pieces.values()].filter((piece) => isOfPiece(name, piece, project));
  const supplies = project.supplies.filter((supply) => isOfSupply(name, supply));
  const isTagged = project.tags.some(({ value }) => isAlike(value, name));
  if (pieces.length + supplies.length === 0 && !isTagged) return undefined;
  return {
    project,
    pieces: pieces.flatMap((piece) =>
      cutPiecesOf(piece, { shapes, kits: 1 }).map(({ name: own, size, perKit }) => ({
        name: own,
        size,
        count: perKit,
      })),
    ),
    supplies: supplies.map(({ item, each }) => ({ item: item.value, each: each?.value })),
    isTagged,
  };
}

function isOfPiece(name: string, piece: Piece, project: Project): boolean {
  const stock = stockOf(piece, project);
  const isCut = stock !== undefined && [stock.id.value, stock.name].some((each) => isAlike(each, name));
  return isCut || piece.use?.value === name.trim();
}

function isOfSupply(name: string, { item, from, use }: Supply): boolean {
  return isAlike(item.value, name) || (from && isAlike(from.value, name)) || use?.value === name.trim();
}

function isAlike(one: string, other: string): boolean {
  return one.toLowerCase() === other.trim().toLowerCase();
}
