import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gridOf } from '../../src/kit/solver/grid.ts';
import { PatternTable } from '../../src/kit/solver/pattern-table.ts';
import { Length } from '../../src/measure/length.ts';
import { mergeFindings } from '../../src/proof/tell.ts';
import { loadWorkspace } from '../../src/shape/workspace.ts';
import { runs } from '../runs.ts';
import { type JsonStock, wrongWith } from './check-plan.ts';
import { askedOf, BENCH, jsonStocks, order, plan, planned, projectOf } from './kits.ts';

const demo = await loadWorkspace(fileURLToPath(new URL('../../projects', import.meta.url)));

describe('the plan of a demo project', () => {
  it.each(demo.projects.map((project) => [project.slug, project] as const))(
    '%s can be cut as it says, for 1, 3 and 24 people, and is proven',
    (_, project) => {
      for (const attendees of [1, 3, 24]) {
        const stocks = jsonStocks(planned(project, order(attendees, { spares: attendees === 3 ? 1 : 0 })));
        const kits = attendees === 3 ? 4 : attendees;
        expect(stocks.length).toBeGreaterThan(0);
        for (const stock of stocks) {
          expect(wrongWith(stock, askedOf(project, stock.stock, kits))).toEqual([]);
          expect(stock).toMatchObject({ proven: true, bound: stock.total });
        }
      }
    },
  );
});

describe('a plan', () => {
  const side = fc.integer({ min: 4, max: 80 }).map((eighths) => `${eighths}/8`);
  const piece = fc.record({ width: side, height: side, count: fc.integer({ min: 1, max: 3 }) });
  const stock = fc.constantFrom(
    'sheet: 11 x 11',
    'sheet: 11 x 12, print: upright',
    'sheets: [11 x 11, 12 x 12]',
  );

  it('of any pieces can be cut as it says, with and without kerf and trimmed edges', () => {
    fc.assert(
      fc.property(
        fc.array(piece, { minLength: 1, maxLength: 6 }),
        stock,
        fc.integer({ min: 1, max: 9 }),
        fc.constantFrom(0, 1, 2),
        fc.constantFrom(0, 1, 3),
        (pieces, sheets, attendees, kerf32, margin16) => {
          const lines = pieces.map(
            ({ width, height, count }, index) =>
              `    p${index}: { stock: card, cut: ${width} x ${height}, count: ${count} }`,
          );
          const project = projectOf(`  stock: { card: { ${sheets} } }\n  pieces:\n${lines.join('\n')}`);
          const kerf = Length.of(kerf32, 32, 'in');
          const bench = { ...BENCH, kerf, trimMargin: Length.of(margin16, 16, 'in') };
          const [made] = jsonStocks(planned(project, order(attendees, { bench, work: 0.3 })));
          expect(made && wrongWith(made, askedOf(project, 'card', attendees, kerf.mm))).toEqual([]);
        },
      ),
      runs(5, 20),
    );
  });

  it('of metric pieces on a sheet in inches is exact to the last fraction', () => {
    const project = projectOf(
      '  stock: { card: { sheet: 8 1/2 x 11 } }\n  pieces:\n    one: { stock: card, cut: 107.95 mm x 55.88 mm }\n    two: { stock: card, cut: 53 mm x 41 mm }',
    );
    const [made] = jsonStocks(planned(project, order(10)));
    // 2 × 107.95 mm are 8 1/2 in, and 5 × 55.88 mm are 11 in, to the last digit.
    expect(made).toMatchObject({ total: 2, proven: true });
    expect(made && wrongWith(made, askedOf(project, 'card', 10))).toEqual([]);
  });

  it('is the same where time flies and where it stands still', () => {
    const sizes = ['1.37 x 2.11', '1.73 x 1.31', '2.17 x 0.97', '3.13 x 1.19', '2.71 x 1.83'];
    const pieces = sizes.map((size, index) => `    p${index}: { stock: card, cut: ${size} }`).join('\n');
    const project = projectOf(`  stock: { card: { sheet: 8 1/2 x 11 } }\n  pieces:\n${pieces}`);
    let hours = 0;
    const [still, flying] = [() => 0, () => (hours += 3600)].map((clock) => {
      const result = plan(project, order(37, { work: 0.5 }), clock);
      return 'kit' in result ? jsonStocks(result.kit).map((each) => ({ ...each, seconds: 0 })) : [];
    });
    expect(still).toHaveLength(1);
    expect(flying).toEqual(still);
  });

  it('of sizes without any common measure of use can be cut, and claims no bound it has not', () => {
    const sizes = ['1.000007 x 2.000003', '1.7000011 x 1.300009', '2.1000013 x 0.900017'];
    const pieces = sizes.map((size, index) => `    p${index}: { stock: card, cut: ${size} }`).join('\n');
    const project = projectOf(`  stock: { card: { sheet: 8 1/2 x 11 } }\n  pieces:\n${pieces}`);
    const [made] = jsonStocks(planned(project, order(40, { work: 2 })));
    // 40 × 6.1 square inches on sheets of 93.5: at least 3.
    expect(made?.bound).toBe(3);
    expect(made?.total).toBeLessThanOrEqual(4);
    expect(made && wrongWith(made, askedOf(project, 'card', 40))).toEqual([]);
  });

  it('keeps grain and upright prints, and uses the turn where there is none', () => {
    const total = (more: string): number | undefined =>
      jsonStocks(
        planned(
          projectOf(
            `  stock: { card: { sheet: 8 x 11${more} } }\n  pieces: { a: { stock: card, cut: 5 x 3 } }`,
          ),
          order(5),
        ),
      )[0]?.total;
    expect([total(''), total(', print: upright'), total(', grain: width')]).toEqual([1, 2, 2]);
  });

  it('takes the cheapest of several sizes, not the fewest sheets', () => {
    const project = projectOf(
      '  stock: { card: { sheets: [{ size: 6 x 4, price: 0.30 }, { size: 12 x 12, price: 2.00 }] } }\n  pieces: { a: { stock: card, cut: 6 x 4 } }',
    );
    const cheapest = planned(project, order(6)).stocks[0];
    expect(cheapest).toMatchObject({
      total: 6,
      proven: true,
      price: { total: { minor: 180n }, bound: { minor: 180n } },
    });
    const fewest = planned(
      projectOf(
        '  stock: { card: { sheets: [6 x 4, 12 x 12] } }\n  pieces: { a: { stock: card, cut: 6 x 4 } }',
      ),
      order(6),
    );
    expect(fewest.stocks[0]).toMatchObject({ total: 1, proven: true });
  });

  it('takes what is cheapest at the shop: whole packs, and what lies there of each size', () => {
    const kit = planned(
      projectOf(
        '  stock: { card: { sheets: [{ size: 6 x 4, price: 0.17, pack: 200 }, { size: 12 x 12, price: 0.91, pack: 25 }] } }\n  pieces: { a: { stock: card, cut: 6 x 4 } }',
      ),
      order(16),
    );
    // 16 small sheets are worth 2.72, but a pack of 200 costs 34.00; 3 large ones come from a pack of 25 at 22.75.
    expect(kit.cost.toBuy.total).toEqual({ minor: 2275n });
    expect(kit.stocks[0]).toMatchObject({
      total: 3,
      proven: true,
      price: { total: { minor: 2275n }, bound: { minor: 2275n } },
    });
  });

  it('counts what is on hand for the size that it lies there in', () => {
    const buy = (sheets: string): unknown => {
      const project = projectOf(
        `  stock: { card: { ${sheets} } }\n  pieces: { a: { stock: card, cut: 12 x 12 } }`,
      );
      return planned(project, order(10)).cost.toBuy.total?.minor;
    };
    const [small, large] = ['{ size: 6 x 6, price: 0.30', '{ size: 12 x 12, price: 0.90'];
    expect(buy(`sheets: [${small} }, ${large} }], on hand: 100`)).toBe(900n);
    expect(buy(`sheets: [${small}, on hand: 100 }, ${large} }]`)).toBe(900n);
    expect(buy(`sheets: [${large} }, ${small} }], on hand: 4`)).toBe(540n);
    expect(buy(`sheets: [${small} }, ${large}, on hand: 7, pack: 2 }]`)).toBe(360n);
  });

  it.each([
    // Turned, 4 × 2.333333 in go down a Letter sheet in two columns of 3 in, and 3 upright beside them: 11.
    ['2.333333 x 3', 'Letter', 297, 27],
    // Two columns of three upright and one of four turned: 2 × 2 1/3 + 3 2/3 = 8 1/3, 3 × 3 2/3 = 11.
    ['2 1/3 x 3 2/3', 'Letter', 100, 10],
    ['2.1250001 x 2.75', '8.5000004 x 11', 160, 10],
    ['2.12345678901234567 x 3', '2.12345678901234567 x 6', 20, 10],
  ])('of %s on %s is exact however many decimals there are', (cut, sheet, kits, sheets) => {
    const project = projectOf(
      `  stock: { card: { sheet: ${sheet} } }\n  pieces: { a: { stock: card, cut: ${cut} } }`,
    );
    expect(jsonStocks(planned(project, order(kits)))[0]).toMatchObject({ total: sheets, proven: true });
  });

  it('makes no cut longer than the trimmer where it can, and says so where it cannot', () => {
    const bench = { ...BENCH, trimmer: Length.of(9, 1, 'in') };
    const cuts = (cut: string): readonly boolean[] =>
      planned(
        projectOf(`  stock: { card: { sheet: 8 1/2 x 11 } }\n  pieces: { a: { stock: card, cut: ${cut} } }`),
        order(4, { bench }),
      ).stocks.flatMap(({ layouts }) => layouts.flatMap(({ steps }) => steps.map(({ tooLong }) => tooLong)));
    expect(new Set(cuts('4 x 5'))).toEqual(new Set([false]));
    expect(cuts('2 x 11')).toContain(true);
  });

  it('makes cuts too long for the trimmer only where the table of best patterns finds no way within it', () => {
    const inches = fc.integer({ min: 2, max: 12 });
    fc.assert(
      fc.property(
        inches,
        inches,
        inches,
        inches,
        inches,
        fc.boolean(),
        (...[w, h, width, height, longest, upright]) => {
          const [cut, sheet] = [
            { width: Math.min(w, width), height: Math.min(h, height) },
            { width, height },
          ];
          const grid = gridOf([{ ...cut, turnable: !upright }], sheet, { longest });
          const bench = { ...BENCH, trimmer: Length.of(longest, 1, 'in') };
          const measurements = `  stock: { card: { sheet: ${width} x ${height}${upright ? ', print: upright' : ''} } }
  pieces: { a: { stock: card, cut: ${cut.width} x ${cut.height} } }`;
          const [stock] = planned(projectOf(measurements), order(1, { bench })).stocks;
          const isTooLong = stock?.layouts.some(({ steps }) => steps.some(({ tooLong }) => tooLong));
          expect(isTooLong).toBe(new PatternTable(grid, [1]).value === 0);
        },
      ),
      runs(5, 60),
    );
  });

  it('names which piece is which, exactly, among pieces of one size', () => {
    const project = projectOf(
      '  stock: { card: { sheet: 8 x 8 } }\n  pieces:\n    front: { stock: card, cut: 4 x 2 }\n    back: { stock: card, cut: 4 x 2 }\n    side: { stock: card, cut: 2 x 4, count: 3 }',
    );
    const [made] = jsonStocks(planned(project, order(7)));
    expect(made && wrongWith(made, askedOf(project, 'card', 7))).toEqual([]);
    expect(made?.total).toBe(5);
  });
});

describe('what cannot be planned', () => {
  it.each([
    ['a piece that names no stock', 'pieces: { a: { cut: 2 x 2 } }', /a names no stock/u],
    [
      'a stock without a sheet size',
      'stock: { card: { name: Card } }\n  pieces: { a: { stock: card, cut: 2 x 2 } }',
      /card has no sheet size/u,
    ],
    [
      'a piece larger than every sheet',
      'stock: { card: { sheets: [8 x 10, 9 x 9] } }\n  pieces: { a: { stock: card, cut: 9 1/2 x 9 1/2 } }',
      /a is larger than every sheet of card/u,
    ],
    [
      'a piece that would have to be turned against the grain',
      'stock: { card: { sheet: 8 x 10, grain: width } }\n  pieces: { a: { stock: card, cut: 9 x 7 } }',
      /a is larger than every sheet of card/u,
    ],
  ])('is told: %s', (_, measurements, message) => {
    const result = plan(projectOf(`  ${measurements}`), order(4));
    expect('findings' in result && mergeFindings(result.findings).map(({ message }) => message)).toEqual([
      expect.stringMatching(message),
    ]);
  });

  it('is told where only the trimmed edges stand in the way', () => {
    const bench = { ...BENCH, trimMargin: Length.of(1, 8, 'in') };
    const project = projectOf(
      '  stock: { card: { sheet: 8 x 10 } }\n  pieces: { a: { stock: card, cut: 8 x 8 } }',
    );
    expect(plan(project, order(4))).toHaveProperty('kit');
    expect(plan(project, order(4, { bench }))).toMatchObject({
      findings: [
        { rule: 'cannot-be-kitted', facts: { lack: 'room once trimmed', name: 'a', stock: 'card' } },
      ],
    });
  });
});

describe('the check program', () => {
  const asked = {
    pieces: new Map([['a', { width: 50, height: 20, count: 2, turnable: false }]]),
    sheets: [{ width: 50, height: 40 }],
    kerf: 0,
  };
  const mm = (value: number): { in: string; mm: number } => ({ in: '', mm: value });
  const box = (x: number, y: number, width: number, height: number) => ({
    x: mm(x),
    y: mm(y),
    width: mm(width),
    height: mm(height),
  });
  const placed = (y: number) => ({ piece: 'a', turned: false, ...box(0, y, 50, 20) });
  const good: JsonStock = {
    stock: 'card',
    total: 1,
    bound: 1,
    proven: true,
    seconds: 0,
    layouts: [
      {
        sheet: { width: mm(50), height: mm(40) },
        count: 1,
        placements: [placed(0), placed(20)],
        cuts: [{ step: 1, part: box(0, 0, 50, 40), from: 'top', setting: mm(20), length: mm(50) }],
      },
    ],
  };
  const [layout] = good.layouts;
  const changed = (change: Partial<JsonStock['layouts'][number]>): JsonStock => ({
    ...good,
    layouts: layout ? [{ ...layout, ...change }] : [],
  });

  it('finds a good plan good', () => {
    expect(wrongWith(good, asked)).toEqual([]);
  });

  it.each([
    ['an overlap', changed({ placements: [placed(0), placed(10)] }), /overlaps/u],
    ['a piece past the edge', changed({ placements: [placed(0), placed(30)] }), /edge/u],
    ['a missing cut', changed({ cuts: [] }), /not cut out/u],
    [
      'a cut that stops short',
      changed({ cuts: [{ step: 1, part: box(0, 0, 50, 40), from: 'top', setting: mm(20), length: mm(25) }] }),
      /edge to edge/u,
    ],
    [
      'a cut of a part that is not there',
      changed({ cuts: [{ step: 1, part: box(0, 0, 25, 40), from: 'top', setting: mm(20), length: mm(25) }] }),
      /not there/u,
    ],
    ['too many pieces', changed({ count: 2 }), /4 of a, not 2/u],
    ['a turned piece', changed({ placements: [placed(0), { ...placed(20), turned: true }] }), /turned/u],
    ['another sheet', changed({ sheet: { width: mm(60), height: mm(40) } }), /no sheet/u],
    ['a bound over the plan', { ...good, bound: 2 }, /bound/u],
  ])('finds %s', (_, plan, problem) => {
    expect(wrongWith(plan, asked).join('\n')).toMatch(problem);
  });
});
