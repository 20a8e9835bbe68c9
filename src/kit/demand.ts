import { fitsWithin, quarterTurned, type Size, sameSize } from '../measure/size.ts';
import type { Piece, Project, Stock } from '../project/model.ts';
import type { Place } from '../project/source.ts';
import { keptUpright } from '../shape/keep-upright.ts';
import { type Shapes, sheetsOf } from '../shape/shapes.ts';
import { type Bench, usableSize } from './bench.ts';
import type { PieceKind } from './plan.ts';

/** Why a kit cannot be planned. */
export type KitProblem = { readonly message: string; readonly remedy: string; readonly at: Place };

/** What one kit takes of one stock. */
export type StockDemand = {
  readonly stock: Stock;
  /** Whether pieces may be cut a quarter turned. */
  readonly turnable: boolean;
  readonly kinds: readonly PieceKind[];
};

/** What one kit takes of every stock, in the order the pieces name them, or everything that stands in the way. */
export type Demand = { readonly stocks: readonly StockDemand[]; readonly problems: readonly KitProblem[] };

/** A piece, or one sheet of a form made of several, cut as a rectangle. */
type Rectangle = { readonly name: string; readonly size: Size; readonly perKit: number };

export function demandOf(project: Project, shapes: Shapes, bench: Bench): Demand {
  const rectangles = new Map<Stock, Rectangle[]>();
  const problems: KitProblem[] = [];
  for (const piece of project.pieces.values()) {
    const stock = piece.stock && project.stock.get(piece.stock.value);
    if (!stock) {
      problems.push(withoutStock(piece));
      continue;
    }
    const cut = rectanglesOf(piece, shapes);
    if (cut.length === 0) problems.push(withoutSize(piece));
    rectangles.set(stock, [...(rectangles.get(stock) ?? []), ...cut]);
  }
  for (const [stock, cut] of rectangles) problems.push(...sheetProblems(stock, cut, bench));
  const stocks = [...rectangles].map(([stock, cut]) => {
    const turnable = keptUpright(stock) === undefined;
    return { stock, turnable, kinds: kindsOf(cut, turnable) };
  });
  return { stocks, problems };
}

function rectanglesOf({ id, count }: Piece, { nets }: Shapes): readonly Rectangle[] {
  return sheetsOf(nets, id.value).map(({ name, net }) => ({
    name: name === undefined ? id.value : `${id.value}.${name}`,
    size: net.size,
    perKit: count.value,
  }));
}

/** Rectangles of the same size together; turned ones too where turning is allowed. */
function kindsOf(rectangles: readonly Rectangle[], turnable: boolean): readonly PieceKind[] {
  const kinds: { size: Size; pieces: PieceKind['pieces'][number][] }[] = [];
  for (const { name, size, perKit } of rectangles) {
    const same = kinds.find((kind) => sameSize(kind.size, size));
    const flipped = same
      ? undefined
      : turnable && kinds.find((kind) => sameSize(kind.size, quarterTurned(size)));
    const home = same ?? (flipped || undefined);
    const piece = { name, perKit, flipped: !same && home !== undefined };
    if (home) home.pieces.push(piece);
    else kinds.push({ size, pieces: [piece] });
  }
  return kinds;
}

function sheetProblems(stock: Stock, rectangles: readonly Rectangle[], bench: Bench): readonly KitProblem[] {
  const { id, sheets } = stock;
  if (sheets.length === 0)
    return [
      {
        message: `${id.value} has no sheet size, so nothing can be planned on it`,
        remedy: 'give it one, such as sheet: 8 1/2 x 11',
        at: id.at,
      },
    ];
  const turnable = keptUpright(stock) === undefined;
  return rectangles.flatMap(({ name, size }): KitProblem[] => {
    if (sheets.some((sheet) => fits(size, usableSize(sheet, bench), turnable))) return [];
    const whole = sheets.some(({ size: { width, height } }) =>
      fits(size, { width: width.value, height: height.value }, turnable),
    );
    return [
      {
        message: whole
          ? `${name} is larger than what is left of a sheet of ${id.value} when its edges are trimmed`
          : `${name} is larger than every sheet of ${id.value}`,
        remedy: whole ? 'trim less' : 'cut it smaller, or from a larger stock',
        at: id.at,
      },
    ];
  });
}

function fits(size: Size, sheet: Size, turnable: boolean): boolean {
  return fitsWithin(size, sheet) || (turnable && fitsWithin(quarterTurned(size), sheet));
}

function withoutStock({ id, stock }: Piece): KitProblem {
  if (stock)
    return { message: `there is no stock "${stock.value}"`, remedy: 'name one that is there', at: stock.at };
  return {
    message: `${id.value} names no stock, so it cannot be planned`,
    remedy: 'say what it is cut from, such as stock: cream',
    at: id.at,
  };
}

function withoutSize({ id }: Piece): KitProblem {
  return { message: `the size of ${id.value} is not known`, remedy: 'run proof to see why', at: id.at };
}
