import { quarterTurned, type Size, sameSize } from '../measure/size.ts';
import type { Piece, Project, Stock } from '../project/model.ts';
import { keptUpright } from '../shape/keep-upright.ts';
import { type Shapes, sheetsOf } from '../shape/shapes.ts';

/** Pieces of one size, cut alike: the front and the back of a box, say. */
export type PieceKind = {
  /** As the project names them: `front`, `box.lid`. */
  readonly pieces: readonly { readonly name: string; readonly perKit: number; readonly flipped: boolean }[];
  /** The first one's; the `flipped` ones have it the other way round. */
  readonly size: Size;
};

/** What one kit takes of one stock. */
export type StockDemand = {
  readonly stock: Stock;
  /** Whether pieces may be cut a quarter turned. */
  readonly turnable: boolean;
  readonly kinds: readonly PieceKind[];
};

/** A piece, or one sheet of a form made of several, cut as a rectangle. */
type PieceRectangle = { readonly name: string; readonly size: Size; readonly perKit: number };

/** What one kit takes of every stock, in the order the pieces name them. */
export function demandOf(project: Project, shapes: Shapes): readonly StockDemand[] {
  const rectangles = new Map<Stock, PieceRectangle[]>();
  for (const piece of project.pieces.values()) {
    const stock = stockOf(piece, project);
    if (stock) rectangles.set(stock, [...(rectangles.get(stock) ?? []), ...rectanglesOf(piece, shapes)]);
  }
  return [...rectangles].map(([stock, cut]) => {
    const turnable = isTurnable(stock);
    return { stock, turnable, kinds: kindsOf(cut, turnable) };
  });
}

/** What a piece is cut from; undefined where it names none that is there. */
export function stockOf({ stock }: Piece, project: Project): Stock | undefined {
  return stock && project.stock.get(stock.value);
}

export function isTurnable(stock: Stock): boolean {
  return keptUpright(stock) === undefined;
}

/** None where the size is not known. */
export function rectanglesOf({ id, count }: Piece, { nets }: Shapes): readonly PieceRectangle[] {
  return sheetsOf(nets, id.value).map(({ name, net }) => ({
    name: name === undefined ? id.value : `${id.value}.${name}`,
    size: net.size,
    perKit: count.value,
  }));
}

/** Rectangles of the same size together; turned ones too where turning is allowed. */
function kindsOf(rectangles: readonly PieceRectangle[], turnable: boolean): readonly PieceKind[] {
  const kinds: { size: Size; pieces: PieceKind['pieces'][number][] }[] = [];
  for (const { name, size, perKit } of rectangles) {
    const same = kinds.find((kind) => sameSize(kind.size, size));
    const turned = turnable ? kinds.find((kind) => sameSize(kind.size, quarterTurned(size))) : undefined;
    const home = same ?? turned;
    const piece = { name, perKit, flipped: !same && home !== undefined };
    if (home) home.pieces.push(piece);
    else kinds.push({ size, pieces: [piece] });
  }
  return kinds;
}
