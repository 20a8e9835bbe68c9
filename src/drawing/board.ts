import type { Editions, Twin } from '../edition/editions.ts';
import type { Edge } from '../project/model.ts';
import type { Net } from '../shape/net.ts';
import { type ScoreMove, scoreMoves } from '../words/score-moves.ts';
import { Canvas } from './canvas.ts';
import { runningDimension } from './dimension.ts';
import type { Drawing } from './drawing.ts';
import { plain } from './lettering.ts';
import { colorOf } from './piece.ts';
import { type Box, boxCorners } from './region.ts';
import { type DrawingStyle, letteringOf, netOf } from './style.ts';
import type { Point } from './svg.ts';
import { caption, lengthLabel, pick, spokenLengths } from './words.ts';

/** The edges of a sheet, clockwise from the top. */
const CLOCKWISE: readonly Edge[] = ['top', 'right', 'bottom', 'left'];
/** Quarter turns clockwise that bring an edge to the left, where the board counts from. */
const QUARTERS: Readonly<Record<Edge, number>> = { left: 0, bottom: 1, right: 2, top: 3 };
const FENCE = 2.4;

/**
 * The piece on the score board for each row of its scores: one edge along the fence on top, one at zero on the left,
 * lines scored before faint, those to score now with their positions. `length` is the paper its longest side takes.
 */
export function boardDrawings(
  editions: Editions,
  id: string,
  length: number,
  style: DrawingStyle,
): readonly Drawing[] {
  const net = netOf(editions, style.leading, id)?.drawn;
  if (!net) return [];
  const moves = scoreMoves(editions, id);
  const scale = length / Math.max(net.size.width.mm, net.size.height.mm);
  const color = colorOf(editions[style.leading], id);
  return moves.map((move, index) => {
    const canvas = new Canvas();
    const sheet = sheetOnBoard(net, move, scale);
    drawBoard(canvas, sheet);
    canvas.paper(boxCorners(sheet), color);
    for (const before of moves.slice(0, index)) drawScored(canvas, sheet, before, move, scale, style);
    canvas.line('cut', boxCorners(sheet), true);
    drawEdgeNames(canvas, sheet, move, style);
    drawPositions(canvas, sheet, move, scale, style);
    drawTurn(canvas, sheet, move, style);
    return canvas.drawing('board', describe(id, move, style));
  });
}

function sheetOnBoard({ size }: Net, { from }: ScoreMove, scale: number): Box {
  const asDrawn = QUARTERS[from] % 2 === 0;
  const [along, down] = asDrawn ? [size.width, size.height] : [size.height, size.width];
  return { left: 0, top: 0, right: along.mm * scale, bottom: down.mm * scale };
}

/** The fence along the top and the stop on the left, meeting at zero. */
function drawBoard(canvas: Canvas, { right, bottom }: Box): void {
  const corner = [
    { x: -FENCE, y: -FENCE },
    { x: right + 4, y: -FENCE },
    { x: right + 4, y: 0 },
    { x: 0, y: 0 },
    { x: 0, y: Math.min(bottom, 18) },
    { x: -FENCE, y: Math.min(bottom, 18) },
  ];
  canvas.paper(corner);
  canvas.line('layer', corner, true);
}

/** Lines of an earlier row, where they lie now that the sheet is turned. */
function drawScored(
  canvas: Canvas,
  sheet: Box,
  before: ScoreMove,
  now: ScoreMove,
  scale: number,
  style: DrawingStyle,
): void {
  const edge = edgeAfter(before.from, QUARTERS[now.from]);
  for (const twin of before.at) {
    const distance = pick(twin, style.leading).mm * scale;
    canvas.line('flat', lineFrom(sheet, edge, distance));
  }
}

function drawPositions(
  canvas: Canvas,
  sheet: Box,
  { at }: ScoreMove,
  scale: number,
  style: DrawingStyle,
): void {
  const positions = at.map((twin: Twin) => ({
    at: pick(twin, style.leading).mm * scale,
    label: lengthLabel(twin, style, true),
  }));
  for (const { at: x } of positions) canvas.line('mark', lineFrom(sheet, 'left', x));
  const row = { axis: 'across', edge: -FENCE, row: -FENCE - 3.2 } as const;
  runningDimension(canvas, row, 0, positions, letteringOf(style));
}

/** Which edge of the piece lies along the fence, and which at zero. */
function drawEdgeNames(canvas: Canvas, sheet: Box, move: ScoreMove, style: DrawingStyle): void {
  const size = letteringOf(style) * 0.85;
  const top = [plain(style.say(`drawing-edge-${move.topEdge}`))];
  const zero = [plain(style.say(`drawing-edge-${move.from}`))];
  canvas.label(top, { x: sheet.right + 5.5, y: 0 }, { size, anchor: 'start' });
  canvas.label(zero, { x: -FENCE, y: sheet.bottom + 1.6 }, { size, anchor: 'start', sits: 'under' });
}

/** A bent arrow and the words, where the sheet has to be turned before. */
function drawTurn(canvas: Canvas, sheet: Box, { turn }: ScoreMove, style: DrawingStyle): void {
  if (turn === 'none') return;
  const size = letteringOf(style);
  const radius = size * 0.8;
  const centre = { x: sheet.left + radius, y: canvas.ink.bottom + size * 0.8 + radius };
  const sweep = turn === 'half' ? 180 : 110;
  const way = turn === 'anticlockwise' ? -1 : 1;
  const start = turn === 'anticlockwise' ? -35 : -145;
  const at = (degrees: number): Point => ({
    x: centre.x + radius * Math.cos((degrees * Math.PI) / 180),
    y: centre.y + radius * Math.sin((degrees * Math.PI) / 180),
  });
  const arc = Array.from({ length: 13 }, (_, step) => at(start + (way * sweep * step) / 12));
  canvas.line('mark', arc);
  canvas.arrow(at(start + way * (sweep + 14)), start + way * (sweep + 90), size * 0.6);
  const words = [plain(style.say(`drawing-turn-${turn}`))];
  canvas.label(
    words,
    { x: centre.x + radius + size * 0.8, y: centre.y - radius * 0.3 },
    { size, anchor: 'start' },
  );
}

/** The side of the board at which an edge of the piece lies after that many quarter turns clockwise. */
function edgeAfter(edge: Edge, quarters: number): Edge {
  return CLOCKWISE[(CLOCKWISE.indexOf(edge) + quarters) % 4] ?? edge;
}

/** A line across the sheet, parallel to one of its edges. */
function lineFrom({ left, top, right, bottom }: Box, edge: Edge, distance: number): readonly Point[] {
  if (edge === 'left' || edge === 'right') {
    const x = edge === 'left' ? left + distance : right - distance;
    return [
      { x, y: top },
      { x, y: bottom },
    ];
  }
  const y = edge === 'top' ? top + distance : bottom - distance;
  return [
    { x: left, y },
    { x: right, y },
  ];
}

function describe(id: string, { turn, topEdge, from, at }: ScoreMove, style: DrawingStyle): string {
  const { say } = style;
  const sentences = [
    turn === 'none' ? '' : say('drawing-board-turn', { turn: say(`drawing-turn-${turn}`) }),
    say('drawing-board', {
      name: caption(id, say),
      top: say(`drawing-edge-${topEdge}`),
      zero: say(`drawing-edge-${from}`),
      positions: spokenLengths(at, style),
    }),
  ];
  return sentences.filter(Boolean).join(' ');
}
