import { describe, expect, it } from 'vitest';
import { blankLines, cutLines } from '../../src/drawing/outline.ts';
import type { FlatPoint, Net } from '../../src/shape/net.ts';
import { ownNet } from '../../src/shape/sheets.ts';
import { BOX, editionsOf, lengthOf } from './drawn.ts';

const FULL = { scale: 1, left: 0, top: 0 };

function netOf(measurements: string, piece: string): Net {
  const net = ownNet(editionsOf(measurements).inch.shapes.nets, piece);
  if (!net) throw new Error(`no net of ${piece}`);
  return net;
}

function closed(outline: readonly FlatPoint[]): { x: number; y: number }[] {
  return [...outline, ...outline.slice(0, 1)].map(({ x, y }) => ({ x: x.mm, y: y.mm }));
}

const straight = ({ from, to }: { from: FlatPoint; to: FlatPoint }): { x: number; y: number }[] =>
  [from, to].map(({ x, y }) => ({ x: x.mm, y: y.mm }));

describe('what is cut', () => {
  const net = netOf(BOX, 'box');

  it('is every panel edge once, but for the folds: perimeters less two sides of each fold and one of each slit', () => {
    const perimeters = lengthOf(net.panels.map(({ outline }) => closed(outline)));
    const folds = lengthOf(net.folds.map(straight));
    const slits = lengthOf(net.slits.map(straight));
    expect(slits).toBeGreaterThan(0);
    // In this box tapered flaps open every slit at once, so a slit's two sides meet only where neither is tapered.
    const cut = lengthOf(cutLines(net, FULL));
    expect(cut).toBeLessThanOrEqual(perimeters - 2 * folds + 1e-6);
    expect(cut).toBeGreaterThan(perimeters - 2 * folds - slits - 1e-6);
  });

  it('counts a slit between two square panels once', () => {
    const slit = netOf(
      `unit: mm
pieces:
  strip:
    cut: 100 x 60
    score: [{ from: left, at: [40] }, { from: top, at: [20] }]
    slit: [A|B 1]`,
      'strip',
    );
    expect(lengthOf(cutLines(slit, FULL))).toBeCloseTo(2 * (100 + 60) + 20, 6);
  });

  it('goes round a trimmed corner', () => {
    const trimmed = netOf(
      `unit: mm
pieces:
  strip:
    cut: 100 x 60
    score: [{ from: left, at: [40] }, { from: top, at: [20] }]
    trim: [A1]`,
      'strip',
    );
    expect(lengthOf(cutLines(trimmed, FULL))).toBeCloseTo(2 * (100 + 60), 6);
    expect(lengthOf(blankLines(trimmed, FULL))).toBeCloseTo(40 + 20, 6);
  });

  it('together with the blank edges holds the whole edge of the sheet', () => {
    const { width, height } = net.size;
    const onEdge = [...cutLines(net, FULL), ...blankLines(net, FULL)]
      .flatMap((line) => line.slice(1).map((to, index) => [line[index] ?? to, to] as const))
      .filter(
        ([from, to]) =>
          (from.x === to.x && [0, width.mm].includes(from.x)) ||
          (from.y === to.y && [0, height.mm].includes(from.y)),
      );
    expect(lengthOf(onEdge)).toBeCloseTo(2 * (width.mm + height.mm), 6);
  });
});
