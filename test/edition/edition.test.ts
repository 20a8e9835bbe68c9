import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type WorkedOut, workOutEditions } from '../../src/edition/edition.ts';
import { Length } from '../../src/measure/length.ts';
import { printInches, roundHalfAway } from '../../src/measure/print.ts';
import type { Project } from '../../src/project/model.ts';
import { buildShapes } from '../../src/shape/build.ts';
import { boxSize } from '../../src/shape/net.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';

function projectOf(measurements: string): Project {
  const text = `---\ntitle: Trial\nmeasurements:\n${measurements}---\nText.\n`;
  const [project] = readWorkspaceFromTexts({ 'trial/sheet.md': text }).projects;
  if (!project) throw new Error('no project');
  expect(project.findings).toEqual([]);
  return project;
}

function editionOf(measurements: string): WorkedOut {
  const project = projectOf(measurements);
  const shapes = buildShapes(project);
  expect(shapes.findings).toEqual([]);
  return workOutEditions(project, shapes);
}

const sixteenths = (count: number): Length => Length.of(count, 16, 'in');
const inches = (count: number): string => printInches(sixteenths(count), 'plain');

/**
 * Common practice, no source: a sheet 8 × 6 3/4 in, scored from the left at 1 1/4, 3 3/4, 5 and 7 1/2 and after a
 * quarter turn at 1 1/4, 5 1/2 and 6 1/8, with a layer of 2 1/4 × 4 in on the front.
 */
const BOX = `  unit: in
  stock: { card: { name: Card, sheet: 8 1/2 x 11 } }
  pieces:
    box:
      stock: card
      cut: 8 x 6 3/4
      score:
        - { from: left, at: [1 1/4, 3 3/4, 5, 7 1/2] }
        - { from: bottom, at: [1 1/4, 5 1/2, 6 1/8] }
      panels: { front: B3, back: D3, left: A3, right: C3 }
    layer: { stock: card, cut: 2 1/4 x 4, on: box.front }
`;

describe('the metric edition of a box', () => {
  it('keeps front and back equal where rounding each position does not', () => {
    const plain = [20, 60, 80, 120].map((count) => Number(roundHalfAway(sixteenths(count).in('mm'))));
    const [a = 0, b = 0, c = 0, d = 0] = plain;
    expect([b - a, d - c]).toEqual([63, 64]);

    const { editions, deviation, within } = editionOf(BOX);
    const net = editions.metric.shapes.nets.get('box');
    const width = (id: string): Length | undefined => {
      const panel = net?.panels.find((each) => each.id === id);
      return panel && boxSize(panel.box).width;
    };
    expect(`${width('front')}`).toBe(`${width('back')}`);
    expect(`${width('left')}`).toBe(`${width('right')}`);
    expect(within).toBe(true);
    expect(deviation.greaterThan(Length.of(1, 1, 'mm'))).toBe(false);
    const [layer] = editions.metric.shapes.layers;
    const { left, right, top, bottom } = layer?.reveals ?? {};
    expect(new Set([left, right, top, bottom].map(String)).size).toBe(1);
  });

  it('is in half millimetres when the project asks for them, and then nearer', () => {
    const whole = editionOf(BOX);
    const half = editionOf(`  metric: half\n${BOX}`);
    expect(half.deviation.lessThan(whole.deviation)).toBe(true);
    for (const { edition } of half.table) expect(edition.isMultipleOf(Length.of(1, 4, 'mm'))).toBe(true);
  });

  it('has forms that work in half millimetres too', () => {
    const derived = (metric: string): (number | undefined)[] => {
      const { editions } = editionOf(`  unit: in
  metric: ${metric}
  stock: { card: { name: Card, sheet: 8 1/2 x 11 } }
  pieces:
    card: { stock: card, form: gate-fold card, size: 5 1/2 x 4 1/4 }
    envelope: { stock: card, form: envelope, card: 5 x 3 1/2 }
    box: { stock: card, form: clip-top box, inside: 2 x 1 x 3 }
`);
      const { nets } = editions.metric.shapes;
      const sizeOf = (piece: string, panel: string) => {
        const found = nets.get(piece)?.panels.find(({ id }) => id === panel);
        return found && boxSize(found.box);
      };
      return [
        sizeOf('card', 'left')?.width.mm,
        sizeOf('envelope', 'front')?.width.mm,
        sizeOf('box', 'front-flange')?.height.mm,
      ];
    };
    // 5 1/2 in are 139.7 mm, of which a half is 69.85; but four halves of 70 are longer than the sheet, 279.4 mm. An
    // envelope has 1/4 in (6.35 mm) more than 5 in (127 mm), a flange is 1/2 in (12.7 mm).
    expect(derived('half')).toEqual([69.5, 133.5, 12.5]);
    expect(derived('whole')).toEqual([69, 133, 13]);
  });
});

describe('what is finer than the ruler', () => {
  const BAND = (around: string): string => `  unit: in
  stock: { card: { name: Card, sheet: 8 1/2 x 11 } }
  pieces:
    band: { stock: card, form: belly band, around: ${around}, height: 1 1/2 }
`;

  // 1/32 in is 0.79375 mm and 1/64 in 0.396875 mm (exactly, by the international inch), which is nearer to 0 than to 1.
  it.each(['4 1/4 x 1/32', '4 1/4 x 1/64', '5 x 1/64', '5 1/8 x 1/50'])(
    'stays there: a band around %s',
    (around) => {
      const { editions, table } = editionOf(BAND(around));
      expect(editions.metric.shapes.findings).toEqual([]);
      expect([...editions.metric.shapes.nets.keys()]).toEqual(['band']);
      for (const { own, edition } of table) expect(edition.sign).toBe(own.sign);
    },
  );

  it('stays there in inches: a margin of half a millimetre', () => {
    const { table } = editionOf(`  unit: mm
  stock: { card: { name: Card, sheet: 210 x 297 } }
  pieces:
    base: { stock: card, cut: 100 x 80 }
    mat: { stock: card, cut: 99 x 79, on: base }
`);
    for (const { own, edition } of table) expect(edition.sign).toBe(own.sign);
  });
});

/** Sixteenths of an inch. */
type Random = { wide: number; narrow: number; tab: number; rows: number[]; reveal: number; second: number };

/** A net of random columns and rows, some of them equal, with layers on a panel and on each other. */
const randomProject: fc.Arbitrary<Random> = fc
  .record({
    wide: fc.integer({ min: 20, max: 48 }),
    narrow: fc.integer({ min: 12, max: 19 }),
    tab: fc.integer({ min: 6, max: 10 }),
    rows: fc.array(fc.integer({ min: 8, max: 60 }), { minLength: 2, maxLength: 3 }),
    reveal: fc.integer({ min: 1, max: 4 }),
    second: fc.integer({ min: 1, max: 2 }),
  })
  .filter(({ rows, reveal, second }) => Math.max(...rows) > 2 * (reveal + second) + 2);

function textOf({ wide, narrow, tab, rows, reveal, second }: Random): string {
  const columns = [narrow, wide, narrow, wide, tab];
  const tallest = Math.max(...rows);
  const row = rows.indexOf(tallest) + 1;
  const positions = (gaps: readonly number[]): string =>
    gaps
      .slice(0, -1)
      .map((_, index) => inches(gaps.slice(0, index + 1).reduce((sum, each) => sum + each, 0)))
      .join(', ');
  const total = (gaps: readonly number[]): number => gaps.reduce((sum, each) => sum + each, 0);
  return `  unit: in
  stock: { card: { name: Card, sheet: 20 x 20 } }
  pieces:
    box:
      stock: card
      cut: ${inches(total(columns))} x ${inches(total(rows))}
      score:
        - { from: left, at: [${positions(columns)}] }
        - { from: top, at: [${positions(rows)}] }
      panels: { front: B${row}, back: D${row} }
      trim: [${rows.flatMap((_, index) => (index + 1 === row ? [] : [`E${index + 1}`])).join(', ')}]
    mat: { stock: card, cut: ${inches(wide - 2 * reveal)} x ${inches(tallest - 2 * reveal)}, on: box.front }
    top: { stock: card, cut: ${inches(wide - 2 * reveal - 2 * second)} x ${inches(tallest - 2 * reveal - 2 * second)}, on: mat }
`;
}

describe('an edition of any net and stack', () => {
  it('keeps sums, equal panels and even reveals, and every layer on its base', () => {
    fc.assert(
      fc.property(randomProject, (random) => {
        const worked = editionOf(textOf(random));
        const { inch, metric } = worked.editions;
        const own = inch.shapes.nets.get('box');
        const other = metric.shapes.nets.get('box');
        if (!own || !other) throw new Error('no net');
        // Sums: the panels of the first row span the sheet; the positions are where the panels end.
        expect(other.scores.map(({ at }) => at.length)).toEqual(own.scores.map(({ at }) => at.length));
        const rightmost = other.panels.map(({ box }) => box.right);
        expect(`${Length.max(Length.zero, ...rightmost)}`).toBe(`${other.size.width}`);
        // Equalities, among panels and with each other.
        own.panels.forEach((panel, index) => {
          own.panels.forEach((twin, second) => {
            if (!boxSize(panel.box).width.equals(boxSize(twin.box).width)) return;
            const [a, b] = [other.panels[index], other.panels[second]];
            if (!a || !b) throw new Error('a panel is missing');
            expect(`${boxSize(a.box).width}`).toBe(`${boxSize(b.box).width}`);
          });
        });
        // Reveals: even ones stay even, none becomes negative.
        metric.shapes.layers.forEach((layer, index) => {
          const before = inch.shapes.layers[index]?.reveals;
          const { left, right, top, bottom } = layer.reveals;
          if (before?.left.equals(before.right)) expect(`${left}`).toBe(`${right}`);
          if (before?.left.equals(before.top)) expect(`${left}`).toBe(`${top}`);
          for (const side of [left, right, top, bottom]) expect(side.sign).toBe(1);
        });
        // Whole millimetres, but for reveals that had to be halves.
        for (const { edition } of worked.table)
          expect(edition.isMultipleOf(Length.of(1, 2, 'mm'))).toBe(true);
        for (const { value } of metric.project.pieces.get('box')?.body.kind === 'net'
          ? positionsOf(metric.project)
          : [])
          expect(value.isMultipleOf(Length.of(1, 1, 'mm'))).toBe(true);
        expect(metric.shapes.findings).toEqual([]);
      }),
      { seed: 20261125, numRuns: 150 },
    );
  });
});

function positionsOf(project: Project): readonly { readonly value: Length }[] {
  const body = project.pieces.get('box')?.body;
  return body?.kind === 'net' ? body.score.flatMap(({ at }) => at) : [];
}

describe('a project written in metric', () => {
  it('has an inch edition on sixteenths by the same rules', () => {
    const { editions } = editionOf(`  unit: mm
  stock: { card: { name: Card, sheet: 210 x 297 } }
  pieces:
    folder: { stock: card, cut: 210 x 148, score: [{ from: left, at: [105] }], panels: { front: B1, back: A1 } }
    cover: { stock: card, cut: 97 x 140, on: folder.front }
`);
    expect(editions.own).toBe('metric');
    const net = editions.inch.shapes.nets.get('folder');
    const [back, front] = net?.panels ?? [];
    if (!net || !front || !back) throw new Error('no panels');
    expect(`${boxSize(front.box).width}`).toBe(`${boxSize(back.box).width}`);
    expect(net.size.width.isMultipleOf(sixteenths(1))).toBe(true);
    const [layer] = editions.inch.shapes.layers;
    expect(`${layer?.reveals.left}`).toBe(`${layer?.reveals.top}`);
  });
});

describe('lengths that cannot all keep within a millimetre', () => {
  it('are named, and an edition is made all the same', () => {
    const worked = editionOf(`  unit: in
  stock: { card: { name: Card, sheet: 12 x 12 } }
  pieces:
    strip: { stock: card, cut: 12 x 2, score: [{ from: left, at: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11] }] }
`);
    expect(worked.within).toBe(false);
    expect(worked.strained.flatMap(({ names }) => names)).toContain('strip width');
    const net = worked.editions.metric.shapes.nets.get('strip');
    expect(new Set(net?.panels.map(({ box }) => `${boxSize(box).width}`)).size).toBe(1);
  });
});
