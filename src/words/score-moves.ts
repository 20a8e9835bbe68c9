import { type Editions, pairs, type Twin, twin } from '../edition/editions.ts';
import type { Length } from '../measure/length.ts';
import type { Edge, FoldDirection } from '../project/net-as-written.ts';
import { readRef } from '../project/ref.ts';
import type { FlatPoint } from '../shape/net.ts';
import { foldsAtScores, foldsAtSlants } from '../shape/score-folds.ts';
import { netNamed } from '../shape/sheets.ts';
import type { Measures } from './measures.ts';
import { html, SafeHtml } from './safe-html.ts';
import { semicolon } from './typographic.ts';
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
  /** How the paper folds at each position; in no way where what was scored is cut away. */
  readonly folds: readonly (readonly FoldDirection[])[];
  /** Where they begin and end below the edge at the top; from edge to edge when absent. */
  readonly run?: { readonly from: Twin; readonly to: Twin };
  /** Cut there, and not scored. */
  readonly isCut: boolean;
};

/** A line at an angle, from end to end. */
type SlantMove = Readonly<Record<'from' | 'to', SlantEnd>> & { readonly folds: readonly FoldDirection[] };

/** Where it begins or ends, across and down the sheet: on which edge, or how far from the left or the top one. */
type SlantEnd = Readonly<Record<'across' | 'down', Edge | Twin>>;

/** Quarter turns clockwise that bring each edge of a piece to the left, where the board counts from. */
const QUARTERS: Readonly<Record<Edge, number>> = { left: 0, bottom: 1, right: 2, top: 3 };
const TURNS: readonly Turn[] = ['none', 'clockwise', 'half', 'anticlockwise'];
/** The edge that then lies along the top. */
const TOP_EDGE: Readonly<Record<Edge, Edge>> = { left: 'top', bottom: 'left', right: 'bottom', top: 'right' };

/** The moves of a piece at the board; none for a piece without scores. */
export function scoreMoves(editions: Editions, pieceId: string): readonly ScoreMove[] {
  const nets = twin(editions, ({ shapes }) => netNamed(shapes.nets, readRef(pieceId)));
  if (!nets) return [];
  const { inch, metric } = nets;
  let turned = 0;
  return inch.scores.flatMap((scores, index) => {
    const { from, at, run, isCut = false } = scores;
    const other = metric.scores[index];
    if (!other) return [];
    const turn = TURNS[(QUARTERS[from] - turned + 4) % 4] ?? 'none';
    turned = QUARTERS[from];
    const topEdge = TOP_EDGE[from];
    const side = topEdge === 'top' || topEdge === 'bottom' ? 'width' : 'height';
    const along = { inch: inch.size[side], metric: metric.size[side] };
    const folds = isCut ? [] : foldsAtScores(inch, scores);
    const move = { turn, topEdge, along, from, at: pairs({ inch: at, metric: other.at }), folds, isCut };
    if (!run || !other.run) return [move];
    const [first, last] = pairs({ inch: [run.from, run.to], metric: [other.run.from, other.run.to] });
    return [first && last ? { ...move, run: { from: first, to: last } } : move];
  });
}

/** The lines of a piece that are scored at an angle, with a ruler. */
export function slantMoves(editions: Editions, pieceId: string): readonly SlantMove[] {
  const nets = twin(editions, ({ shapes }) => netNamed(shapes.nets, readRef(pieceId)));
  if (!nets) return [];
  const { inch, metric } = nets;
  const folds = foldsAtSlants(inch);
  return (inch.slants ?? []).flatMap(({ from, to }, index): SlantMove[] => {
    const other = metric.slants?.[index];
    const { width, height } = inch.size;
    const end = (one: FlatPoint, second: FlatPoint): SlantEnd => ({
      across: edgeAt(one.x, width, ['left', 'right']) ?? { inch: one.x, metric: second.x },
      down: edgeAt(one.y, height, ['top', 'bottom']) ?? { inch: one.y, metric: second.y },
    });
    return other ? [{ from: end(from, other.from), to: end(to, other.to), folds: folds[index] ?? [] }] : [];
  });
}

/** Which of two edges, as far apart as a side of the sheet is long, something lies on; undefined when on neither. */
function edgeAt(position: Length, side: Length, [near, far]: readonly [Edge, Edge]): Edge | undefined {
  return position.sign === 0 ? near : position.equals(side) ? far : undefined;
}

/** Positions in their order, those side by side that fold alike together: `1, 4½ in mountain; 7¼ in valley`. */
export function positionsByFold(
  move: ScoreMove,
  voice: Voice,
  print: (at: readonly Twin[]) => SafeHtml,
  between: ' ' | ', ' = ' ',
): SafeHtml {
  return SafeHtml.join(
    runsByFold(move).map((run) => withFold(print(run.at), run.folds, voice, between)),
    semicolon(voice.say),
  );
}

/** Positions side by side that fold alike. */
type FoldRun = { readonly at: readonly Twin[]; readonly folds: readonly FoldDirection[] };

/** The positions of a move in their order, those side by side that fold alike together. */
export function runsByFold({ at, folds }: Pick<ScoreMove, 'at' | 'folds'>): readonly FoldRun[] {
  const runs: { readonly at: Twin[]; readonly folds: readonly FoldDirection[] }[] = [];
  for (const [index, position] of at.entries()) {
    const own = folds[index] ?? [];
    const last = runs.at(-1);
    if (last && last.folds.join() === own.join()) last.at.push(position);
    else runs.push({ at: [position], folds: own });
  }
  return runs;
}

function withFold(
  what: SafeHtml,
  folds: readonly FoldDirection[],
  voice: Voice,
  between: ' ' | ', ',
): SafeHtml {
  if (folds.length === 0) return what;
  return html`${what}${between}<span class="fold">${foldWords(folds, voice)}</span>`;
}

/** `mountain`; `valley and mountain` where a line folds both ways. */
export function foldWords(folds: readonly FoldDirection[], voice: Voice): SafeHtml {
  return voice.list(folds.map((direction) => voice.say(`fold-${direction}`)));
}

/** The same in sentences, for a step: `From the left edge, score at 1 and 4½ in (…). Turn it …`. */
export function scoresInline(
  editions: Editions,
  pieceId: string,
  measures: Measures,
  voice: Voice,
): SafeHtml | undefined {
  const moves = scoreMoves(editions, pieceId);
  const slants = slantMoves(editions, pieceId).length > 0 ? [voice.phrase('score-inline-slant', {})] : [];
  if (moves.length + slants.length === 0) return undefined;
  const parts = moves.flatMap((scored, index) => {
    const { turn, topEdge, run, isCut } = scored;
    const positions = positionsByFold(scored, voice, (at) => measures.both(at, 'sentence'), ', ');
    const words = { edge: voice.say(`edge-${topEdge}`), positions };
    const ends = run && { from: measures.both([run.from]), to: measures.both([run.to]) };
    if (isCut && ends) return [voice.phrase('score-inline-cut', { ...words, ...ends })];
    const move = voice.phrase(`score-inline-${turn === 'none' && index > 0 ? 'again' : turn}`, words);
    return ends ? [move, voice.phrase('score-inline-run', ends)] : [move];
  });
  return SafeHtml.join([...parts, ...slants], ' ');
}
