import { type Edition, type Editions, shownEditions } from '../edition/editions.ts';
import type { Size } from '../measure/size.ts';
import type { Piece } from '../project/model.ts';
import type { Stock } from '../project/stock.ts';
import type { Point2 } from '../shape/flat-polygon.ts';
import { sheetsOf } from '../shape/sheets.ts';
import type { Say } from '../words/labels.ts';
import { pieceSheetNamed } from '../words/names.ts';
import { variantsOf } from '../words/variants.ts';
import { layOnMats, type MatRoom, type OnMat } from './mats.ts';
import { perforated } from './perforated.ts';
import { type CutPath, pathsOf } from './sheet-paths.ts';

/** A word beside what it names; its lower left corner. */
export type Caption = { readonly text: string; readonly at: Point2 };

/** All that a cutting machine is sent for one project, in millimeters from the top left corner, mats side by side. */
export type CuttingPlan = {
  readonly width: number;
  readonly height: number;
  readonly cuts: readonly CutPath[];
  readonly scores: readonly CutPath[];
  readonly names: readonly Caption[];
};

/** What the plan is for: the mat's size, and how fold lines are made. */
type MatSettings = { readonly mat: Size; readonly scores: 'solid' | 'perforated' };

type MatPiece = { readonly name: string; readonly width: number; readonly height: number } & ReturnType<
  typeof pathsOf
>;

type Mat = { readonly title: string; readonly room: MatRoom; readonly laid: readonly OnMat<MatPiece>[] };

const BETWEEN_MATS = 20;
const CAPTION_AWAY = 1.5;

/**
 * Every sheet of every piece, as often as one project takes it, at full size with the outside up, on mats by their
 * paper, those of a further variant after the first's; in the edition the demonstrator wrote, if that is printed. Undefined when nothing is cut.
 */
export function planCutting(editions: Editions, bench: MatSettings, say: Say): CuttingPlan | undefined {
  const lead = shownEditions(editions)[0];
  const mats = variantsOf(editions)
    .map((variant) => variant[lead])
    .flatMap((edition) => papersOf(edition).flatMap((paper) => matsOf(paper, edition, bench, say)));
  if (mats.length === 0) return undefined;
  let left = 0;
  const placed = mats.map((mat) => {
    const at = left;
    left += mat.room.width + BETWEEN_MATS;
    return placeMat(mat, at, bench);
  });
  return {
    width: left - BETWEEN_MATS,
    height: Math.max(...mats.map(({ room }) => room.height)),
    cuts: placed.flatMap(({ cuts }) => cuts),
    scores: placed.flatMap(({ scores }) => scores),
    names: placed.flatMap(({ names }) => names),
  };
}

/** The pieces of one paper; those without one are together. */
type PiecesOfPaper = { readonly stock: Stock | undefined; readonly pieces: readonly Piece[] };

function papersOf({ project }: Edition): readonly PiecesOfPaper[] {
  const pieces = [...project.pieces.values()];
  const papers = new Set(pieces.map(({ stock }) => stock?.value));
  return [...papers].map((id) => ({
    stock: id === undefined ? undefined : project.stock.get(id),
    pieces: pieces.filter(({ stock }) => stock?.value === id),
  }));
}

function matsOf(
  { stock, pieces }: PiecesOfPaper,
  { project, shapes }: Edition,
  { mat }: MatSettings,
  say: Say,
): readonly Mat[] {
  const blanks = pieces.flatMap(({ id, count }) =>
    sheetsOf(shapes.nets, id.value).flatMap(({ name, net }) => {
      const { width, height } = net.size;
      const blank = {
        name: pieceSheetNamed(id.value, name, say),
        width: width.mm,
        height: height.mm,
        ...pathsOf(net),
      };
      return Array.from({ length: count.value }, () => blank);
    }),
  );
  const room = roomOn(mat, stock);
  const laid = layOnMats(blanks, room);
  const numbers = [...new Set(laid.map((each) => each.mat))];
  return numbers.map((number) => {
    const own = laid.filter((each) => each.mat === number);
    const paper = [
      stock?.name ?? say('cutting-any-paper'),
      ...(project.variant ? [project.variant.name] : []),
    ].join(', ');
    return {
      title:
        numbers.length === 1 ? paper : say('cutting-mat', { paper, mat: number + 1, mats: numbers.length }),
      room: {
        width: Math.max(room.width, ...own.map(({ x, item }) => x + item.width)),
        height: Math.max(room.height, ...own.map(({ y, item }) => y + item.height)),
      },
      laid: own,
    };
  });
}

/** What of a sheet of the paper lies on the mat. */
function roomOn(mat: Size, stock: Stock | undefined): MatRoom {
  const sheet = stock?.sheets[0]?.size ?? stock?.otherSheets[0]?.size;
  return {
    width: Math.min(mat.width.mm, sheet?.width.value.mm ?? Number.POSITIVE_INFINITY),
    height: Math.min(mat.height.mm, sheet?.height.value.mm ?? Number.POSITIVE_INFINITY),
  };
}

type PlacedMat = Pick<CuttingPlan, 'cuts' | 'scores' | 'names'>;

function placeMat({ title, laid }: Mat, left: number, { scores: how }: MatSettings): PlacedMat {
  const moved = laid.map(({ item, x, y }) => {
    const move = (path: CutPath): CutPath => movedBy(path, left + x, y);
    const scores = item.scores.map(move);
    return {
      cuts: item.cuts.map(move),
      scores: how === 'perforated' ? scores.flatMap(perforated) : scores,
      name: { text: item.name, at: { x: left + x, y: y - CAPTION_AWAY } },
    };
  });
  return {
    cuts: moved.flatMap(({ cuts }) => cuts),
    scores: moved.flatMap(({ scores }) => scores),
    names: [{ text: title, at: { x: left, y: -3 * CAPTION_AWAY } }, ...moved.map(({ name }) => name)],
  };
}

function movedBy({ points, closed }: CutPath, right: number, down: number): CutPath {
  return { points: points.map(({ x, y }) => ({ x: x + right, y: y + down })), closed };
}
