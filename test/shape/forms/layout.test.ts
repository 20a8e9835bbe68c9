import { describe, expect, it } from 'vitest';
import { cutBack } from '../../../src/shape/forming/cut-back.ts';
import { type Layout, layoutNet, mountain, valley } from '../../../src/shape/forming/layout.ts';
import { areaOf, exact, inches, netsOf } from './building.ts';

const CORNER: Layout = {
  columns: [inches(1), inches(3)],
  rows: [inches(1), inches(2)],
  cells: [
    ['', 'flap'],
    ['side', 'wall'],
  ],
  bends: [mountain(1, ['side|wall']), valley(2, ['wall|flap'], 45)],
};

describe('a layout', () => {
  it('is a net: panels where they are named, folds where they bend, waste where nothing is', () => {
    const net = layoutNet(CORNER);
    expect(net.panels.map(({ id }) => id)).toEqual(['flap', 'side', 'wall']);
    expect(
      net.folds.map(({ panels, direction, angle, stage }) => [panels.join('|'), direction, angle, stage]),
    ).toEqual([
      ['flap|wall', 'valley', 45, 2],
      ['side|wall', 'mountain', 90, 1],
    ]);
    expect(net.waste).toHaveLength(1);
    expect(net.scores.map(({ from, at }) => [from, at.map(String)])).toEqual([
      ['left', ['1 in']],
      ['bottom', ['2 in']],
    ]);
  });

  it('slits neighbors apart that no bend names, and says so', () => {
    const net = layoutNet({ ...CORNER, bends: [mountain(1, ['side|wall'])] });
    expect(net.slits).toHaveLength(1);
    expect(net.cuts?.slit).toEqual([{ between: 'rows', line: 0, from: 1, to: 1 }]);
    expect(net.cuts?.trim).toEqual([{ column: 0, row: 0 }]);
  });

  it('says a cut through several rows once', () => {
    const net = layoutNet({
      columns: [inches(1), inches(1)],
      rows: [inches(1), inches(1), inches(1)],
      cells: [
        ['a', 'd'],
        ['b', 'e'],
        ['c', 'f'],
      ],
      bends: [mountain(1, ['a|b', 'b|c', 'c|f', 'd|e', 'e|f'])],
    });
    expect(net.cuts?.slit).toEqual([{ between: 'columns', line: 0, from: 0, to: 1 }]);
    expect(net.slits.map(({ from, to }) => [String(from.y), String(to.y)])).toEqual([['0 in', '2 in']]);
  });

  it('is refused as our own mistake when it is no picture', () => {
    expect(() => layoutNet({ ...CORNER, bends: [mountain(1, ['side|flap'])] })).toThrow(
      'flap|side, which are no neighbors',
    );
    expect(() => layoutNet({ ...CORNER, cells: [['', 'flap']] })).toThrow('cells outside');
    expect(() =>
      layoutNet({
        ...CORNER,
        cells: [
          ['', 'wall'],
          ['side', 'wall'],
        ],
      }),
    ).toThrow('two panels alike');
  });

  it('says what a form on a grid has to be cut', () => {
    const [net] = netsOf('clip-top box', { settings: { inside: '3 1/2 x 1 x 4 3/4' } });
    expect(net.cuts?.trim.map(({ column, row }) => `${'ABCDE'[column]}${row + 1}`)).toEqual([
      'A1',
      'C1',
      'E1',
      'E2',
      'E4',
    ]);
    expect(net.cuts?.slit.map(({ line, from, to }) => [line, from + 1, to + 1])).toEqual([
      [0, 2, 2],
      [0, 4, 4],
      [1, 2, 2],
      [1, 4, 4],
      [2, 2, 2],
      [2, 4, 4],
    ]);
  });
});

describe('a flap cut back', () => {
  it('is as long as asked, and what it loses is waste', () => {
    const net = layoutNet({ ...CORNER, taper: ['flap'] });
    const shorter = cutBack(net, ['flap'], inches(1, 2));
    const flap = shorter.panels.find(({ id }) => id === 'flap');
    expect([flap?.box.top, flap?.box.bottom].map(String)).toEqual(['1/2 in', '1 in']);
    expect(shorter.cuts?.shorten).toEqual(['flap']);
    const parts = [...shorter.panels.map(({ outline }) => outline), ...shorter.waste];
    const total = parts.map(areaOf).reduce((sum, area) => sum.add(area));
    expect(total.equals(exact(inches(4)).mul(exact(inches(3))))).toBe(true);
  });

  it('stays as it is where it is no longer than that', () => {
    const net = layoutNet(CORNER);
    expect(cutBack(net, ['flap'], inches(1))).toBe(net);
    expect(cutBack(net, ['flap'], inches(2))).toBe(net);
  });

  it('hangs by one fold', () => {
    expect(() => cutBack(layoutNet(CORNER), ['wall'], inches(1))).toThrow('no flap');
    expect(() => cutBack(layoutNet(CORNER), ['lid'], inches(1))).toThrow('no flap');
  });
});
