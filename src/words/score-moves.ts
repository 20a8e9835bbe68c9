import type { Editions, Twin } from '../edition/editions.ts';
import type { Edge } from '../project/model.ts';
import type { BoardScores, Net } from '../shape/net.ts';
import type { Measures } from './measures.ts';
import { SafeHtml } from './safe-html.ts';
import type { Voice } from './voice.ts';

/** How the sheet is turned on the board before a row of scores, seen from where the last row left it. */
export type Turn = 'none' | 'clockwise' | 'anticlockwise' | 'half';

/** One row of scores as said at the board. */
export type ScoreMove = {
  readonly turn: Turn;
  /** The edge of the piece, as drawn, that now lies along the top of the board, and its length. */
  readonly topEdge: Edge;
  readonly along: Twin;
  /** The edge of the piece that lies at the board's zero, and the positions from there. */
  readonly from: Edge;
  readonly at: readonly Twin[];
};

/** Quarter turns clockwise that bring each edge of a piece to the left, where the board counts from. */
const QUARTERS: Readonly<Record<Edge, number>> = { left: 0, bottom: 1, right: 2, top: 3 };
const TURNS: readonly Turn[] = ['none', 'clockwise', 'half', 'anticlockwise'];
/** The edge that then lies along the top. */
const TOP_EDGE: Readonly<Record<Edge, Edge>> = { left: 'top', bottom: 'left', right: 'bottom', top: 'right' };

/** The moves of a piece at the board; none for a piece without scores. */
export function scoreMoves(editions: Editions, pieceId: string): readonly ScoreMove[] {
  const inch = editions.inch.shapes.nets.get(pieceId);
  const metric = editions.metric.shapes.nets.get(pieceId);
  if (!inch || !metric) return [];
  let turned = 0;
  return inch.scores.flatMap((scores, index) => {
    const other = metric.scores[index];
    if (!other) return [];
    const quarters = QUARTERS[scores.from];
    const turn = TURNS[(quarters - turned + 4) % 4] ?? 'none';
    turned = quarters;
    return [moveOf(turn, scores, other, inch, metric)];
  });
}

function moveOf(turn: Turn, scores: BoardScores, other: BoardScores, inch: Net, metric: Net): ScoreMove {
  const topEdge = TOP_EDGE[scores.from];
  const side = topEdge === 'top' || topEdge === 'bottom' ? 'width' : 'height';
  const at = scores.at.flatMap((position, index) => {
    const twin = other.at[index];
    return twin ? [{ inch: position, metric: twin }] : [];
  });
  return {
    turn,
    topEdge,
    along: { inch: inch.size[side], metric: metric.size[side] },
    from: scores.from,
    at,
  };
}

/** The same in sentences, for a step: `From the left edge, score at 1 and 4½ in (…). Turn it …`. */
export function scoresInline(
  editions: Editions,
  pieceId: string,
  measures: Measures,
  voice: Voice,
): SafeHtml | undefined {
  const moves = scoreMoves(editions, pieceId);
  if (moves.length === 0) return undefined;
  const parts = moves.map(({ turn, topEdge, at }) =>
    voice.phrase(`score-inline-${turn}`, {
      edge: voice.say(`edge-${topEdge}`),
      positions: measures.both(at, 'sentence'),
    }),
  );
  return SafeHtml.join(parts, ' ');
}
