import { describe, expect, it } from 'vitest';
import { boardDrawings } from '../../src/drawing/board.ts';
import {
  BOX,
  BOX_METRIC,
  editionsOf,
  inchStyle,
  linesOf,
  metricStyle,
  stretchesOf,
  textsOf,
} from './drawn.ts';

const editions = editionsOf(BOX, BOX_METRIC);
/** The longest side, 9 1/2 in, drawn 95 mm long: an inch is 10 mm. */
const [first, second] = boardDrawings(editions, 'box', 95, inchStyle);

const upright = (svg: string, kind: string): number[] =>
  stretchesOf(linesOf(svg, kind))
    .filter(([from, to]) => from.x === to.x)
    .map(([{ x }]) => x);
const level = (svg: string, kind: string): number[] =>
  stretchesOf(linesOf(svg, kind))
    .filter(([from, to]) => from.y === to.y)
    .map(([{ y }]) => y);

/** For each edge the positions are said from, how the sheet then lies: a quarter turn clockwise brings the bottom edge to the left. */
const TURNS = [
  { from: 'left', says: undefined, top: 'top edge' },
  { from: 'bottom', says: 'quarter turn clockwise', top: 'left edge' },
  { from: 'top', says: 'quarter turn counterclockwise', top: 'right edge' },
  { from: 'right', says: 'half turn', top: 'bottom edge' },
] as const;

describe('the score board', () => {
  it('has the positions along the fence, from zero on the left', () => {
    expect(upright(first?.svg ?? '', 'mark')).toEqual([10, 45, 55, 90]);
    expect(textsOf(first?.svg ?? '')).toEqual(expect.arrayContaining(['4 1/2', '114', '9', '228']));
  });

  it('turns the sheet, and with it the lines scored before', () => {
    const svg = second?.svg ?? '';
    const [sheet = []] = linesOf(svg, 'cut');
    expect(Math.max(...sheet.map(({ x }) => x))).toBe(67.5);
    expect(Math.max(...sheet.map(({ y }) => y))).toBe(95);
    expect(upright(svg, 'mark')).toEqual([10, 57.5, 62.5]);
    // The left edge is on top now, so what was scored from the left lies as far below the fence.
    expect(level(svg, 'flat')).toEqual([10, 45, 55, 90]);
  });

  it.each(TURNS)('says how to turn it for positions from the $from', ({ from, says, top }) => {
    const net = editionsOf(`unit: mm
pieces:
  card: { cut: 100 x 60, score: [{ from: ${from}, at: [20] }] }`);
    const [drawing] = boardDrawings(net, 'card', 100, inchStyle);
    const texts = textsOf(drawing?.svg ?? '');
    expect(texts).toContain(`${from} edge`);
    expect(texts).toContain(top);
    expect(texts.filter((text) => text.includes('turn'))).toEqual(says ? [says] : []);
    expect(upright(drawing?.svg ?? '', 'mark').filter((x) => x > 0)).toContain(20);
    expect(drawing?.alternative).toContain(`${top} along the fence, ${from} edge at zero`);
  });

  it('brings the lines of an earlier row round by half a turn', () => {
    const net = editionsOf(`unit: mm
pieces:
  card: { cut: 100 x 60, score: [{ from: left, at: [20] }, { from: right, at: [30] }] }`);
    const [, turned] = boardDrawings(net, 'card', 100, inchStyle);
    expect(upright(turned?.svg ?? '', 'flat')).toEqual([80]);
  });

  it('is the metric edition where that leads', () => {
    const [metric] = boardDrawings(editions, 'box', 241, metricStyle);
    expect(upright(metric?.svg ?? '', 'mark')).toEqual([25, 114, 139, 228]);
    expect(metric?.alternative).toContain('25, 114, 139 and 228 millimeters (1, 4½, 5½ and 9 inches)');
  });

  it('has nothing to show for a piece without scores', () => {
    expect(boardDrawings(editions, 'front', 50, inchStyle)).toEqual([]);
    expect(boardDrawings(editions, 'nothing', 50, inchStyle)).toEqual([]);
  });
});
