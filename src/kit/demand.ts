import { quarterTurned, type Size, sameSize } from '../measure/size.ts';
import type { Piece } from '../project/model.ts';
import { writeName } from '../project/ref.ts';
import type { Stock } from '../project/stock.ts';
import { stockOf } from '../shape/caliper.ts';
import { areaOf } from '../shape/flat-polygon.ts';
import { keptUpright } from '../shape/keep-upright.ts';
import type { Net } from '../shape/net.ts';
import { sheetsOf } from '../shape/sheets.ts';
import type { CutPiece, Making, PieceKind } from './plan.ts';

/** What all kits take of one stock. */
export type StockDemand = {
  readonly stock: Stock;
  /** Whether pieces may be cut a quarter turned. */
  readonly turnable: boolean;
  readonly kinds: readonly PieceKind[];
};

/** What is made of a project or of one of its variants, and how many kits of it. */
type KitsOf = Omit<Making, 'attendees'> & { readonly kits: number };

/** What all kits take of every stock, in the order the pieces name them. */
export function demandOf(makings: readonly KitsOf[]): readonly StockDemand[] {
  const cut = new Map<string, { readonly stock: Stock; readonly pieces: CutPiece[] }>();
  for (const making of makings) {
    const { project } = making;
    for (const piece of project.pieces.values()) {
      const stock = stockOf(piece, project);
      if (!stock) continue;
      const before = cut.get(paperKey(stock));
      const pieces = [...(before?.pieces ?? []), ...cutPiecesOf(piece, making)];
      cut.set(paperKey(stock), { stock: before?.stock ?? stock, pieces });
    }
  }
  return [...cut.values()].map(({ stock, pieces }) => {
    const turnable = keptUpright(stock) === undefined;
    return { stock, turnable, kinds: kindsOf(joinVariants(pieces, makings), turnable) };
  });
}

/** The same for paper that is bought as one: a variant may have a stock of its own under a common name. */
function paperKey({ id, name, sheets }: Stock): string {
  const sold = sheets.map(({ size: { width, height }, price, pack, onHand }) =>
    [width.value, height.value, price?.value.minor, pack?.value, onHand?.value].join(),
  );
  return [id.value, name, ...sold].join('\n');
}

/** None where the size is not known. */
export function cutPiecesOf(
  { id: { value: piece }, count }: Piece,
  { shapes: { nets }, kits, variant, session }: Omit<KitsOf, 'project'>,
): readonly CutPiece[] {
  return sheetsOf(nets, piece).map(({ name: sheet, net }) => {
    const { size } = net;
    const own = writeName({ piece, part: sheet });
    const name = session ? `${session.project.slug}/${own}` : own;
    return { name, piece, sheet, size, area: areaLeft(net), perKit: count.value, kits, variant, session };
  });
}

/** Of the sheet as it is cut; of an outline what is left once that is cut out. */
function areaLeft({ size, shape, panels }: Net): number {
  const outlined = shape ? panels : [];
  const areas = outlined.map(({ outline }) => areaOf(outline.map(({ x, y }) => ({ x: x.mm, y: y.mm }))));
  return areas[0] ?? size.width.mm * size.height.mm;
}

/** A piece that every variant has alike is one for all; any other is named after its variant. Sessions stay apart. */
function joinVariants(pieces: readonly CutPiece[], makings: readonly KitsOf[]): readonly CutPiece[] {
  return pieces.flatMap((piece, index): readonly CutPiece[] => {
    const alike = pieces.filter((other) => isAlike(other, piece));
    const variants = makings.filter(({ session }) => session === piece.session);
    if (alike.length < variants.length) return [{ ...piece, name: `${piece.name} (${piece.variant})` }];
    const kits = alike.reduce((sum, other) => sum + other.kits, 0);
    return pieces.indexOf(alike[0] ?? piece) === index ? [{ ...piece, kits, variant: undefined }] : [];
  });
}

function isAlike(a: CutPiece, b: CutPiece): boolean {
  return a.name === b.name && a.perKit === b.perKit && a.area === b.area && sameSize(a.size, b.size);
}

/** Pieces of the same size together; turned ones too where turning is allowed. */
function kindsOf(cut: readonly CutPiece[], turnable: boolean): readonly PieceKind[] {
  const kinds: { size: Size; pieces: PieceKind['pieces'][number][] }[] = [];
  for (const piece of cut) {
    const { size } = piece;
    const same = kinds.find((kind) => sameSize(kind.size, size));
    const turned = turnable ? kinds.find((kind) => sameSize(kind.size, quarterTurned(size))) : undefined;
    const home = same ?? turned;
    if (home) home.pieces.push({ ...piece, flipped: !same });
    else kinds.push({ size, pieces: [{ ...piece, flipped: false }] });
  }
  return kinds;
}
