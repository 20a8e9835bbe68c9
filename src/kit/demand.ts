import { fitsWithin, quarterTurned, type Size, sameSize } from '../measure/size.ts';
import type { Finding } from '../project/finding.ts';
import type { Piece, Project, Stock } from '../project/model.ts';
import { keptUpright } from '../shape/keep-upright.ts';
import { type Shapes, sheetsOf } from '../shape/shapes.ts';
import { type Bench, usableSize } from './bench.ts';
import type { PieceKind } from './plan.ts';

/** What one kit takes of one stock. */
export type StockDemand = {
  readonly stock: Stock;
  /** Whether pieces may be cut a quarter turned. */
  readonly turnable: boolean;
  readonly kinds: readonly PieceKind[];
};

/** What one kit takes of every stock, in the order the pieces name them, or everything that stands in the way. */
export type Demand = { readonly stocks: readonly StockDemand[]; readonly findings: readonly Finding[] };

/** A piece, or one sheet of a form made of several, cut as a rectangle. */
type Rectangle = { readonly name: string; readonly size: Size; readonly perKit: number };

export function demandOf(project: Project, shapes: Shapes, bench: Bench): Demand {
  const rectangles = new Map<Stock, Rectangle[]>();
  const findings: Finding[] = [];
  for (const piece of project.pieces.values()) {
    const stock = piece.stock && project.stock.get(piece.stock.value);
    if (!stock) {
      findings.push(findNoStock(piece));
      continue;
    }
    const cut = rectanglesOf(piece, shapes);
    if (cut.length === 0) {
      const facts = { lack: 'size', piece: piece.id.value } as const;
      findings.push({ rule: 'cannot-be-kitted', at: piece.id.at, facts });
    }
    rectangles.set(stock, [...(rectangles.get(stock) ?? []), ...cut]);
  }
  for (const [stock, cut] of rectangles) findings.push(...findTooLarge(stock, cut, bench));
  const stocks = [...rectangles].map(([stock, cut]) => {
    const turnable = keptUpright(stock) === undefined;
    return { stock, turnable, kinds: kindsOf(cut, turnable) };
  });
  return { stocks, findings };
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

function findTooLarge(stock: Stock, rectangles: readonly Rectangle[], bench: Bench): readonly Finding[] {
  const { id, sheets } = stock;
  const rule = 'cannot-be-kitted';
  if (sheets.length === 0) return [{ rule, at: id.at, facts: { lack: 'sheet', stock: id.value } }];
  const turnable = keptUpright(stock) === undefined;
  return rectangles.flatMap(({ name, size }): Finding[] => {
    if (sheets.some((sheet) => fits(size, usableSize(sheet, bench), turnable))) return [];
    const whole = sheets.some(({ size: { width, height } }) =>
      fits(size, { width: width.value, height: height.value }, turnable),
    );
    const lack = whole ? 'room once trimmed' : 'room';
    return [{ rule, at: id.at, facts: { lack, name, stock: id.value } }];
  });
}

function fits(size: Size, sheet: Size, turnable: boolean): boolean {
  return fitsWithin(size, sheet) || (turnable && fitsWithin(quarterTurned(size), sheet));
}

function findNoStock({ id, stock }: Piece): Finding {
  const rule = 'cannot-be-kitted';
  return stock
    ? { rule, at: stock.at, facts: { lack: 'known stock', stock: stock.value } }
    : { rule, at: id.at, facts: { lack: 'stock', piece: id.value } };
}
