import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Length } from '../../src/measure/length.ts';
import { CORNERS } from '../../src/project/corners.ts';
import { cellName, parseCell } from '../../src/shape/cells.ts';
import { type FoldedBy, type Grid, gridNet } from '../../src/shape/grid.ts';
import type { FlatPoint } from '../../src/shape/net.ts';
import { KEEPER, netOf } from './boxes.ts';
import { areaOf, exact, inches, roundedBy } from './forms/building.ts';

const MOUNTAIN: FoldedBy = { direction: 'mountain', angle: 90 };

const square: Grid = {
  size: { width: inches(4), height: inches(3) },
  across: [],
  down: [],
  cells: [['card']],
  names: new Set(['card']),
  roles: new Map(),
  taper: [],
  foldAt: () => MOUNTAIN,
  glue: [],
  scores: [],
};

/** A flap 2 in wide and 1 in deep that hangs on a panel below it. */
const flap: Grid = {
  ...square,
  size: { width: inches(2), height: inches(3) },
  down: [inches(1)],
  cells: [['flap'], ['A2']],
  names: new Set(['flap']),
  taper: ['flap'],
};

const FOUR = [
  ['A1', 'B1'],
  ['A2', 'B2'],
];

const said = (points: readonly FlatPoint[] = []): string[] =>
  points.map(({ x, y }) => `${x.over(inches(1)).numerator}/${x.over(inches(1)).denominator} ${y}`);

describe('a grid', () => {
  it('is one panel without score lines', () => {
    const { panels, folds, waste } = gridNet(square);
    expect(panels.map(({ id, name }) => [id, name])).toEqual([['card', 'card']]);
    expect([folds, waste]).toEqual([[], []]);
  });

  it('folds along every stretch of a score line between two panels, and nowhere else', () => {
    const net = netOf(KEEPER);
    const folds = net.folds.map(({ panels }) => panels.join('|'));
    expect(folds).toHaveLength(14);
    expect(folds).toContain('front|B4');
    expect(folds).not.toContain('A4|B4');
    expect(net.folds.filter(({ direction }) => direction === 'valley').map(({ panels }) => panels)).toEqual([
      ['B1', 'B2'],
      ['D1', 'D2'],
    ]);
  });

  it('joins slits that go on, and leaves out those along trimmed cells', () => {
    const { slits } = netOf(KEEPER);
    expect(slits.map(({ from, to }) => `${from.x}: ${from.y} to ${to.y}`)).toEqual([
      '1 in: 1/2 in to 1 in',
      '9/2 in: 1/2 in to 1 in',
      '11/2 in: 1/2 in to 1 in',
      '1 in: 23/4 in to 27/4 in',
      '9/2 in: 23/4 in to 27/4 in',
      '11/2 in: 23/4 in to 27/4 in',
    ]);
  });

  it('folds each stretch of a line by itself', () => {
    const net = gridNet({
      ...square,
      across: [inches(2)],
      down: [inches(1)],
      cells: FOUR,
      foldAt: ({ stretch }) => {
        if (stretch?.between === 'rows') return MOUNTAIN;
        return stretch?.along === 1
          ? { direction: 'flat', angle: 0, stage: 2 }
          : { direction: 'valley', angle: 45 };
      },
    });
    const across = net.folds.filter(({ from, to }) => from.x.equals(to.x));
    expect(across.map(({ direction, angle, stage }) => [direction, angle, stage])).toEqual([
      ['valley', 45, undefined],
      ['flat', 0, 2],
    ]);
  });

  it('lets the later of two settings of a written fold win', () => {
    const net = netOf(KEEPER.replace('1|2: valley 90', '1|2: valley 90, 1 | 2: valley 45'));
    expect(net.folds.filter(({ direction }) => direction === 'valley').map(({ angle }) => angle)).toEqual([
      45, 45,
    ]);
  });

  it('refuses what no reader lets through', () => {
    expect(() => gridNet({ ...square, across: [inches(5)] })).toThrow('out of order');
    const glue = [{ from: 'A1', to: 'A2' }];
    expect(() => gridNet({ ...flap, cells: [[''], ['A2']], glue })).toThrow('no panel "A1"');
  });
});

describe('a taper', () => {
  it('runs from the ends of the hinge to a quarter inch in at the free edge, of a flap an inch deep', () => {
    expect(said(gridNet(flap).panels[0]?.outline)).toEqual(['1/4 0 in', '7/4 0 in', '2/1 1 in', '0/1 1 in']);
  });

  it('takes a quarter of the depth off a shallow flap', () => {
    const shallow = gridNet({ ...flap, down: [inches(1, 2)] });
    expect(said(shallow.panels[0]?.outline)).toEqual(['1/8 0 in', '15/8 0 in', '2/1 1/2 in', '0/1 1/2 in']);
  });

  it('cuts both sides of a free corner alike where both hang', () => {
    const corner = gridNet({ ...square, across: [inches(1)], down: [inches(1)], cells: FOUR, taper: ['A1'] });
    expect(said(corner.panels[0]?.outline)).toEqual([
      '0/1 1/4 in',
      '1/4 0 in',
      '1/1 0 in',
      '1/1 1 in',
      '0/1 1 in',
    ]);
  });

  it('leaves the box that layers are measured against', () => {
    const box = gridNet(flap).panels[0]?.box;
    expect([box?.left, box?.right, box?.top, box?.bottom].map(String)).toEqual([
      '0 in',
      '2 in',
      '0 in',
      '1 in',
    ]);
  });
});

/** In inches. */
function pointsOf(outline: readonly FlatPoint[]): string[] {
  return outline.map(({ x, y }) => [x, y].map(({ mm }) => Number((mm / 25.4).toFixed(6))).join());
}

describe('rounded corners', () => {
  it('have every point exactly on the arc', () => {
    const radius = inches(1, 2);
    const outline = gridNet({ ...square, corners: roundedBy(radius) }).panels[0]?.outline ?? [];
    const near = outline.filter(({ x, y }) => !x.greaterThan(radius) && !y.greaterThan(radius));
    expect(near).toHaveLength(17);
    for (const { x, y } of near) {
      const [dx, dy] = [exact(radius.minus(x)), exact(radius.minus(y))];
      expect(
        dx
          .mul(dx)
          .add(dy.mul(dy))
          .equals(exact(radius).mul(exact(radius))),
      ).toBe(true);
    }
  });

  it('come as near the true area as drawn lines can: (4 − π) r² less than the square', () => {
    const outline = gridNet({ ...square, corners: roundedBy(inches(1, 2)) }).panels[0]?.outline ?? [];
    const missing = 4 * 3 - areaOf(outline).valueOf() / 25.4 ** 2;
    expect(missing).toBeCloseTo((4 - Math.PI) * 0.25, 2);
  });

  it('are those that are chosen, and may be as large as the shorter side: a quarter of π r² is left of r²', () => {
    const corners = roundedBy(inches(3), ['top left']);
    const outline = gridNet({ ...square, corners }).panels[0]?.outline ?? [];
    expect(4 * 3 - areaOf(outline).valueOf() / 25.4 ** 2).toBeCloseTo((1 - Math.PI / 4) * 9, 1);
    expect(pointsOf(outline)).toEqual(expect.arrayContaining(['0,3', '3,0', '4,0', '4,3']));
    expect(pointsOf(outline)).not.toContain('0,0');
  });

  it('share a side by halves if both want more, else one has what the other leaves', () => {
    const small = roundedBy(inches(1), ['top right']);
    const large = roundedBy(inches(3), ['top left', 'bottom left']);
    const outline = gridNet({ ...square, corners: [...small, ...large] }).panels[0]?.outline ?? [];
    expect(pointsOf(outline)).toEqual(
      expect.arrayContaining(['0,1.5', '1.5,0', '1.5,3', '3,0', '4,1', '4,3']),
    );
  });

  it('are no larger than the panel allows', () => {
    const outline = gridNet({ ...square, corners: roundedBy(inches(3)) }).panels[0]?.outline ?? [];
    expect(outline.every(({ x, y }) => x.sign >= 0 && y.sign >= 0)).toBe(true);
  });
});

describe('any grid', () => {
  const step = fc.integer({ min: 1, max: 40 });
  const grids = fc
    .record({
      columns: fc.array(step, { minLength: 1, maxLength: 5 }),
      rows: fc.array(step, { minLength: 1, maxLength: 4 }),
      trims: fc.array(fc.nat(19), { maxLength: 6 }),
      tapers: fc.array(fc.nat(19), { maxLength: 6 }),
      slits: fc.array(fc.tuple(fc.nat(3), fc.nat(3)), { maxLength: 6 }),
      corners: fc.option(fc.integer({ min: 1, max: 8 }), { nil: undefined }),
      rounded: fc.subarray([...CORNERS], { minLength: 1 }),
    })
    .map(({ columns, rows, trims, tapers, slits, corners, rounded }): Grid => {
      const eighths = (count: number): Length => Length.of(count, 8, 'in');
      const ends = (parts: number[]): Length[] =>
        parts.map((_, index) => eighths(parts.slice(0, index + 1).reduce((a, b) => a + b)));
      const [across, down] = [ends(columns), ends(rows)];
      const cells = rows.map((_, row) =>
        columns.map((_each, column) =>
          trims.includes(row * columns.length + column) ? '' : cellName({ column, row }),
        ),
      );
      const isSlit = ({ stretch }: Parameters<Grid['foldAt']>[0]): boolean =>
        stretch?.between === 'columns' &&
        slits.some(([on, from]) => on === stretch.line && from <= stretch.along && stretch.along <= from + 1);
      return {
        ...square,
        size: { width: across.at(-1) ?? eighths(1), height: down.at(-1) ?? eighths(1) },
        across: across.slice(0, -1),
        down: down.slice(0, -1),
        cells,
        names: new Set(),
        taper: tapers.flatMap((index) => cells.flat()[index] || []),
        foldAt: (stretch) => (isSlit(stretch) ? undefined : MOUNTAIN),
        ...(corners && { corners: roundedBy(eighths(corners), rounded) }),
      };
    });

  it('loses no paper: panels and waste make up the sheet, exactly', () => {
    fc.assert(
      fc.property(grids, (grid) => {
        const net = gridNet(grid);
        const parts = [...net.panels.map(({ outline }) => outline), ...net.waste];
        const total = parts.map(areaOf).reduce((sum, area) => sum.add(area), exact(Length.zero));
        expect(total.equals(exact(net.size.width).mul(exact(net.size.height)))).toBe(true);
      }),
      { seed: 3_1415, numRuns: 200 },
    );
  });

  it('has folds that are whole sides of both their panels', () => {
    fc.assert(
      fc.property(grids, (grid) => {
        const net = gridNet(grid);
        const key = ({ x, y }: FlatPoint): string => `${x} ${y}`;
        for (const { panels, from, to } of net.folds) {
          for (const id of panels) {
            const outline = net.panels.find((panel) => panel.id === id)?.outline.map(key) ?? [];
            const [a, b] = [outline.indexOf(key(from)), outline.indexOf(key(to))];
            expect(Math.min(a, b)).toBeGreaterThanOrEqual(0);
            expect([1, outline.length - 1]).toContain(Math.abs(a - b));
          }
        }
      }),
      { seed: 3_1415, numRuns: 200 },
    );
  });
});

describe('the name of a cell', () => {
  it.each([
    ['A1', 0, 0],
    ['E4', 4, 3],
    ['Z99', 25, 98],
    ['AA1', 26, 0],
  ])('%s is column %i, row %i', (name, column, row) => {
    expect(cellName({ column, row })).toBe(name);
    expect(parseCell(name.toLowerCase())).toEqual({ column, row });
  });

  it.each(['', 'A0', '1A', 'A', 'front', 'ABC1'])('"%s" is none', (text) => {
    expect(parseCell(text)).toBeUndefined();
  });
});
