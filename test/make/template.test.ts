import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { examine } from '../../src/examine/examine.ts';
import type { Study } from '../../src/examine/study.ts';
import type { Net } from '../../src/shape/net.ts';
import { ownNet } from '../../src/shape/sheets.ts';
import { loadWorkspace } from '../../src/shape/workspace.ts';
import { folderWith, sheetwright } from '../cli/terminal.ts';
import { madeDemo } from '../made-demo.ts';
import { type Pdf, type PdfPage, readPdf } from '../print/read-pdf.ts';

/** Millimeters. */
type Point = { readonly x: number; readonly y: number };
type Segment = { readonly from: Point; readonly to: Point };

/** How far a printed line may lie from where the net has it. */
const WITHIN = 0.1;

const LARGE = `---
title: Large tray
measurements:
  unit: in
  stock: { card: { name: Card, sheet: 24 x 20 } }
  pieces:
    tray:
      stock: card
      cut: 14 1/2 x 12 1/4
      score:
        - { from: left, at: [2 1/4, 12 1/4] }
        - { from: top, at: [2 1/4, 10] }
      panels: { floor: B2 }
      slit: [A|B 1, B|C 1, A|B 3, B|C 3]
      glue: { A1: B1, C1: B1, A3: B3, C3: B3 }
---
A tray.

## Fold it
Fold :piece[tray].
`;

/** Every edge where paper is cut: edges of panels that are no fold. */
function cutEdges({ panels, folds }: Net): Segment[] {
  const folded = folds.map(({ from, to }) => ({ from: inMm(from), to: inMm(to) }));
  return panels
    .flatMap(({ outline }) =>
      outline.map((point, index) => ({
        from: inMm(point),
        to: inMm(outline[(index + 1) % outline.length] ?? point),
      })),
    )
    .filter((edge) => !folded.some((fold) => covers(fold, edge.from) && covers(fold, edge.to)));
}

function foldLines({ folds }: Net): Segment[] {
  return folds.map(({ from, to }) => ({ from: inMm(from), to: inMm(to) }));
}

function inMm({ x, y }: Net['folds'][number]['from']): Point {
  return { x: x.mm, y: y.mm };
}

function length({ from, to }: Segment): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  // Asked for millions of times, which Math.hypot takes several times as long for.
  return Math.sqrt(dx * dx + dy * dy);
}

/** Whether a point lies on a segment, within a tolerance beside it and past its ends. */
function covers(segment: Segment, point: Point, beside = 0.001, past = 0.001): boolean {
  const run = length(segment);
  const [dx, dy] = [(segment.to.x - segment.from.x) / run, (segment.to.y - segment.from.y) / run];
  const [px, py] = [point.x - segment.from.x, point.y - segment.from.y];
  const along = px * dx + py * dy;
  return Math.abs(px * dy - py * dx) <= beside && along >= -past && along <= run + past;
}

function samples(segment: Segment): Point[] {
  const count = Math.max(2, Math.round(length(segment)));
  return Array.from({ length: count - 1 }, (_, index) => {
    const share = (index + 1) / count;
    return {
      x: segment.from.x + (segment.to.x - segment.from.x) * share,
      y: segment.from.y + (segment.to.y - segment.from.y) * share,
    };
  });
}

/** Where the sheet's corner lies on a page: the offset most of the page's lines agree on. */
function origin(page: PdfPage, expected: readonly Segment[]): Point {
  const vote = (along: 'x' | 'y'): number => {
    const across = along === 'x' ? 'y' : 'x';
    const straight = (line: Segment): boolean => Math.abs(line.from[along] - line.to[along]) < 0.01;
    const votes = new Map<number, number>();
    for (const line of page.lines.filter((each) => straight(each) && length(each) > 8)) {
      for (const segment of expected.filter(straight)) {
        const offset = Math.round((line.from[along] - segment.from[along]) * 20) / 20;
        const reach = Math.min(length(line), Math.abs(segment.to[across] - segment.from[across]));
        for (const near of [offset - 0.05, offset, offset + 0.05]) {
          const key = Math.round(near * 20) / 20;
          votes.set(key, (votes.get(key) ?? 0) + reach);
        }
      }
    }
    const [best = 0] = [...votes].toSorted((a, b) => b[1] - a[1])[0] ?? [];
    return best;
  };
  return { x: vote('x'), y: vote('y') };
}

/** Finer than the vote: the mean of what the matched lines say. */
function refined(page: PdfPage, expected: readonly Segment[]): Point {
  const rough = origin(page, expected);
  const refine = (along: 'x' | 'y'): number => {
    const offsets = page.lines.flatMap((line) =>
      Math.abs(line.from[along] - line.to[along]) > 0.01 || length(line) < 8
        ? []
        : expected
            .filter((segment) => Math.abs(segment.from[along] - segment.to[along]) < 0.01)
            .map((segment) => line.from[along] - segment.from[along])
            .filter((offset) => Math.abs(offset - rough[along]) < 0.12),
    );
    const sorted = offsets.toSorted((a, b) => a - b);
    return sorted[Math.floor(sorted.length / 2)] ?? rough[along];
  };
  return { x: refine('x'), y: refine('y') };
}

/** The share of a net's lines that is printed within tolerance on some page. */
function printedShare(pdf: Pdf, net: Net, wanted: readonly Segment[], isDashed: boolean): number {
  const all = [...cutEdges(net), ...foldLines(net)];
  const pages = pdf.pages.map((page) => ({ lines: page.lines, at: refined(page, all) }));
  const points = wanted.flatMap(samples);
  const printed = points.filter((point) =>
    pages.some(({ lines, at }) =>
      lines.some(
        (line) =>
          line.dashes > 1 === isDashed &&
          covers(line, { x: point.x + at.x, y: point.y + at.y }, WITHIN, WITHIN),
      ),
    ),
  );
  return printed.length / points.length;
}

const SLUGS = ['short-pencil-box', 'seed-packet-keeper', 'large-tray'];

const studied = new Map<string, Promise<readonly Study[]>>();

/** The projects of a folder whose templates are looked at, studied once. */
function studiesIn(folder: string): Promise<readonly Study[]> {
  const studies =
    studied.get(folder) ??
    loadWorkspace(join(folder, 'projects')).then((workspace) =>
      examine(
        workspace,
        workspace.projects.filter(({ slug }) => SLUGS.includes(slug)),
      ),
    );
  studied.set(folder, studies);
  return studies;
}

describe('the actual-size template', () => {
  let demo = '';
  let large = '';
  const folderOf = (slug: string): string => (slug === 'large-tray' ? large : demo);
  beforeAll(async () => {
    demo = await madeDemo();
    large = folderWith({ 'projects/large-tray/sheet.md': LARGE });
    expect((await sheetwright(large, 'make')).code).toBe(0);
  }, 180_000);

  it.each([
    ['short-pencil-box', 'box', '', 'inch'],
    ['short-pencil-box', 'box', '-a4', 'metric'],
    ['seed-packet-keeper', 'box', '', 'inch'],
    ['seed-packet-keeper', 'box', '-a4', 'metric'],
    ['large-tray', 'tray', '', 'inch'],
    ['large-tray', 'tray', '-a4', 'metric'],
  ] as const)(
    'of %s, %s, on paper%s: every line of the %s edition within 0.1 mm',
    async (slug, id, paper, edition) => {
      const folder = folderOf(slug);
      const study = (await studiesIn(folder)).find(({ project }) => project.slug === slug);
      const net = study && ownNet(study.editions[edition].shapes.nets, id);
      if (!net) throw new Error('no net');
      const bytes = readFileSync(join(folder, 'dist/site', slug, `${slug}-template${paper}.pdf`));
      const pdf = await readPdf(new Uint8Array(bytes));
      const [page] = pdf.pages;
      const [width, height] = [page?.widthMm ?? 0, page?.heightMm ?? 0].toSorted((a, b) => a - b);
      // Letter by ANSI/ASME Y14.1, A4 by ISO 216; a PDF's points are 0.35 mm.
      expect(Math.abs((width ?? 0) - (paper === '-a4' ? 210 : 215.9))).toBeLessThan(0.4);
      expect(Math.abs((height ?? 0) - (paper === '-a4' ? 297 : 279.4))).toBeLessThan(0.4);
      if (slug === 'large-tray') expect(pdf.pages.length).toBeGreaterThan(3);
      expect(printedShare(pdf, net, cutEdges(net), false)).toBe(1);
      // The check can tell: the other edition, a fraction of a millimeter off, is not what is printed.
      const other = ownNet(study.editions[edition === 'inch' ? 'metric' : 'inch'].shapes.nets, id);
      expect(other && printedShare(pdf, other, cutEdges(other), false)).toBeLessThan(0.9);
      // A dashed line may begin and end with a gap.
      expect(printedShare(pdf, net, foldLines(net), true)).toBeGreaterThan(0.93);
    },
  );

  it('has a square of 1 in and one of 20 mm to measure', async () => {
    const bytes = readFileSync(join(demo, 'dist/site/short-pencil-box/short-pencil-box-template.pdf'));
    const { pages } = await readPdf(new Uint8Array(bytes));
    const text = pages.map((page) => page.text).join('\n');
    expect(text).toMatch(/100\s?%/u);
    for (const side of [25.4, 20]) {
      const squares = pages.flatMap(({ marks }) =>
        marks.filter(({ edges }) => {
          const xs = edges.flatMap(({ from, to }) => [from.x, to.x]);
          const ys = edges.flatMap(({ from, to }) => [from.y, to.y]);
          const spans = [xs, ys].map((values) => Math.max(...values) - Math.min(...values));
          return spans.every((span) => Math.abs(span - side) < WITHIN);
        }),
      );
      expect(squares.length, `a square of ${side} mm`).toBeGreaterThan(0);
    }
  });
});
