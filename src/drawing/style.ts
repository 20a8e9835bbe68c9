import { type Edition, type Editions, pairs, type Shown, type Twin, twin } from '../edition/editions.ts';
import type { EditionName } from '../measure/ruler-unit.ts';
import { readRef } from '../project/ref.ts';
import { stockOf } from '../shape/caliper.ts';
import type { BoardScores, Net } from '../shape/net.ts';
import { netNamed } from '../shape/sheets.ts';
import type { GluedFace } from '../shape/stacking/glued-face.ts';
import type { Say } from '../words/labels.ts';

/** How a project's drawings are made: what is shown, the edition that gives the geometry first, and the words. */
export type DrawingStyle = {
  readonly shown: Shown;
  readonly say: Say;
  /** The height of the lettering in millimeters of paper; 3 (8½ pt) when absent. */
  readonly lettering?: number;
};

/** The same thing in both editions; `drawn` is the one whose geometry is drawn. */
export type InBoth<T> = Twin<T> & { readonly drawn: T };

/** A net to be drawn. */
export type DrawnNet = InBoth<Net> & {
  /** The areas of the drawn one that take glue, by the face they are on. */
  readonly glued: readonly GluedFace[];
  /** Whether its parts are spoken of by columns and rows. */
  readonly hasCells: boolean;
};

/** Room for a drawing, in millimeters of paper. */
export type DrawingRoom = {
  readonly width: number;
  readonly height: number;
  /** The most that the drawing takes with the labels beside it, where these are not counted in the width. */
  readonly widest?: number;
  /** Whether what is told of the drawing may stand at its side, where there is room, instead of under it. */
  readonly hasSide?: boolean;
};

/** The net of a piece in both editions; undefined when it could not be made in one of them. */
export function netOf(editions: Editions, leading: EditionName, id: string): InBoth<Net> | undefined {
  const nets = twin(editions, ({ shapes }) => netNamed(shapes.nets, readRef(id)));
  return nets && { ...nets, drawn: nets[leading] };
}

/** A row of scores, each position in both editions. */
type ScoreRow = Pick<BoardScores, 'from'> & { readonly isCut: boolean; readonly at: readonly Twin[] };

/** The rows of scores of a net, in the order they are said at the board. */
export function scoreRows({ inch, metric, drawn }: InBoth<Net>): readonly ScoreRow[] {
  return drawn.scores.map(({ from, isCut = false }, row) => ({
    from,
    isCut,
    at: pairs({ inch: inch.scores[row]?.at ?? [], metric: metric.scores[row]?.at ?? [] }),
  }));
}

/** The stock's color of a piece or of a further sheet of it (`box.lid`), `#rrggbb`. */
export function colorOf({ project }: Edition, id: string): string | undefined {
  return stockOf(project.pieces.get(readRef(id).piece), project)?.color?.value;
}
