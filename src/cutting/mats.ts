/** Something to be laid on a mat, in millimeters. */
type Footprint = { readonly width: number; readonly height: number };

/** How much of a mat can be used, in millimeters. */
export type MatRoom = { readonly width: number; readonly height: number };

/** Where something lies on which mat, from its top left corner. */
export type OnMat<T> = { readonly item: T; readonly mat: number; readonly x: number; readonly y: number };

/** Paper left between two pieces and at the edges. */
const GAP = 5;

type MatRow = { readonly mat: number; readonly top: number; readonly height: number; right: number };

/**
 * Lays things on mats in rows, the highest first. What is larger than a mat has one for itself. No turning: grain and
 * print run as the project has them.
 */
export function layOnMats<T extends Footprint>(items: readonly T[], room: MatRoom): readonly OnMat<T>[] {
  const rows: MatRow[] = [];
  return items
    .toSorted((a, b) => b.height - a.height || b.width - a.width)
    .map((item) => {
      const row = rows.find((each) => fitsBeside(each, item, room)) ?? openRow(rows, item, room);
      const x = row.right === 0 ? margin(item, room) : row.right + GAP;
      row.right = x + item.width;
      return { item, mat: row.mat, x, y: row.top };
    });
}

/** A piece as wide as the paper lies on its edge. */
function margin({ width }: Footprint, room: MatRoom): number {
  return width + GAP > room.width ? 0 : GAP;
}

function fitsBeside({ right, height }: MatRow, item: Footprint, room: MatRoom): boolean {
  return item.height <= height && right + GAP + item.width <= room.width;
}

/** A new row under the last one where there is room for it, else on the next mat. */
function openRow(rows: MatRow[], item: Footprint, room: MatRoom): MatRow {
  const last = rows.at(-1);
  const top = last ? last.top + last.height + GAP : Number.POSITIVE_INFINITY;
  const isUnder = last !== undefined && top + item.height <= room.height;
  const row = isUnder
    ? { mat: last.mat, top, height: item.height, right: 0 }
    : {
        mat: last ? last.mat + 1 : 0,
        top: item.height + GAP > room.height ? 0 : GAP,
        height: item.height,
        right: 0,
      };
  rows.push(row);
  return row;
}
