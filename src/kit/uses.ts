import type { Size } from '../measure/size.ts';
import type { Piece, Project } from '../project/model.ts';
import type { Supply } from '../project/supply.ts';
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
  const pieces = [...project.pieces.values()].filter((piece) => isAmong(namesOfPiece(piece, project), name));
  const supplies = project.supplies.filter((supply) => isAmong(namesOfSupply(supply), name));
  const tags = project.tags.map(({ value }) => value);
  const isTagged = isAmong(tags, name);
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

/** All the names by which a project's papers, shared pieces, supplies and tags are found. */
export function namesUsed(project: Project): readonly string[] {
  return [
    ...[...project.pieces.values()].flatMap((piece) => namesOfPiece(piece, project)),
    ...project.supplies.flatMap(namesOfSupply),
    ...project.tags.map(({ value }) => value),
  ];
}

function namesOfPiece(piece: Piece, project: Project): readonly string[] {
  const stock = stockOf(piece, project);
  const shared = [stock?.use, piece.use].flatMap((name) => name?.value ?? []);
  return [...(stock ? [stock.id.value, stock.name] : []), ...shared];
}

function namesOfSupply({ item, from, use }: Supply): readonly string[] {
  return [item, from, use].flatMap((name) => name?.value ?? []);
}

function isAmong(names: readonly string[], name: string): boolean {
  return names.some((each) => each.toLowerCase() === name.trim().toLowerCase());
}
