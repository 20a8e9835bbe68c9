import { type Editions, pairs, type Twin, twin } from '../edition/editions.ts';
import type { Edge } from '../project/net-as-written.ts';
import type { Measures } from './measures.ts';
import { SafeHtml } from './safe-html.ts';
import type { Voice } from './voice.ts';

/** How the sheet is turned on the board before a row of scores, seen from where the last row left it. */
type Turn = 'none' | 'clockwise' | 'anticlockwise' | 'half';

/** One row of scores as said at the board. */
type ScoreMove = {
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
  const nets = twin(editions, ({ shapes }) => shapes.nets.get(pieceId));
  if (!nets) return [];
  const { inch, metric } = nets;
  let turned = 0;
  return inch.scores.flatMap(({ from, at }, index) => {
    const other = metric.scores[index];
    if (!other) return [];
    const turn = TURNS[(QUARTERS[from] - turned + 4) % 4] ?? 'none';
    turned = QUARTERS[from];
    const topEdge = TOP_EDGE[from];
    const side = topEdge === 'top' || topEdge === 'bottom' ? 'width' : 'height';
    const along = { inch: inch.size[side], metric: metric.size[side] };
    return [{ turn, topEdge, along, from, at: pairs({ inch: at, metric: other.at }) }];
  });
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
