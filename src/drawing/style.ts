import { type Edition, type EditionName, type Editions, type Shown, twin } from '../edition/editions.ts';
import type { Net } from '../shape/net.ts';
import type { Layer } from '../shape/shapes.ts';
import type { Say } from '../words/labels.ts';

/** How a project's drawings are made: what is shown, the edition that gives the geometry first, and the words. */
export type DrawingStyle = {
  readonly shown: Shown;
  readonly say: Say;
  /** The height of the lettering in millimetres of paper; 3 (8½ pt) when absent. */
  readonly lettering?: number;
};

/** The same thing in both editions; `drawn` is the one whose geometry is drawn. */
export type InBoth<T> = { readonly inch: T; readonly metric: T; readonly drawn: T };

/** Room for a drawing, in millimetres of paper. */
export type DrawingRoom = { readonly width: number; readonly height: number };

/** One layer in both editions. */
export type LayerTwin = { readonly inch: Layer; readonly metric: Layer };

export function letteringOf(style: DrawingStyle): number {
  return style.lettering ?? 3;
}

/** Picks the same thing out of both editions; undefined unless it is in both. */
function both<T>(
  editions: Editions,
  leading: EditionName,
  pick: (edition: Editions['inch']) => T | undefined,
): InBoth<T> | undefined {
  const picked = twin(editions, pick);
  return picked && { ...picked, drawn: picked[leading] };
}

/** The net of a piece in both editions; undefined when it could not be made in one of them. */
export function netOf(editions: Editions, leading: EditionName, piece: string): InBoth<Net> | undefined {
  return both(editions, leading, ({ shapes }) => shapes.nets.get(piece));
}

/** Follows both editions one step further. */
export function further<T, U>(from: InBoth<T>, pick: (value: T) => U | undefined): InBoth<U> | undefined {
  const [inch, metric, drawn] = [pick(from.inch), pick(from.metric), pick(from.drawn)];
  return inch === undefined || metric === undefined || drawn === undefined
    ? undefined
    : { inch, metric, drawn };
}

/** The stock's colour of a piece or of a further sheet of it (`box.lid`), `#rrggbb`. */
export function colorOf({ project }: Edition, id: string): string | undefined {
  const [piece = id] = id.split('.');
  const stock = project.pieces.get(piece)?.stock?.value;
  return stock === undefined ? undefined : project.stock.get(stock)?.color?.value;
}
