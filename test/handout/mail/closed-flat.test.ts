import { describe, expect, it } from 'vitest';
import { mailedPiece } from '../../../src/handout/mail/mailed.ts';
import type { Piece, Project } from '../../../src/project/model.ts';
import { buildShapes } from '../../../src/shape/build.ts';
import { closedFlat } from '../../../src/shape/closed-flat.ts';
import type { Shapes } from '../../../src/shape/shapes.ts';
import { ownNet } from '../../../src/shape/sheets.ts';
import { loadWorkspace, readWorkspaceFromTexts } from '../../../src/shape/workspace.ts';

type ClosedFlat = NonNullable<ReturnType<typeof closedFlat>>;

type Made = { readonly project: Project; readonly shapes: Shapes };

function made(measurements: string): Made {
  const indented = measurements.trim().replace(/^/gmu, '  ');
  const sheet = `---\ntitle: A sample\nmeasurements:\n  unit: in\n${indented}\n---\n`;
  const [project] = readWorkspaceFromTexts({ 'sample/sheet.md': sheet }).projects;
  if (!project) throw new Error('no project');
  return { project, shapes: buildShapes(project) };
}

function closed(piece: string): ClosedFlat {
  const { shapes } = made(`pieces:\n  it: ${piece}`);
  const net = ownNet(shapes.nets, 'it');
  const found = net && closedFlat(net);
  if (!found) throw new Error('it does not close');
  return found;
}

const most = ({ piles }: ClosedFlat): number => Math.max(...piles.map((pile) => pile.length));
const text = ({ size }: ClosedFlat): string => `${size.width} × ${size.height}`;

/** Folded by hand: what is told of each is how many sheets lie on one another where most do. */
describe('a net closed flat', () => {
  it.each([
    ['{ cut: 3 x 6 }', '3 in × 6 in', 1],
    ['{ form: single-fold card, size: 4 1/4 x 5 1/2 }', '17/4 in × 11/2 in', 2],
    ['{ form: single-fold card, size: 4 1/4 x 5 1/2, fold: top }', '17/4 in × 11/2 in', 2],
    ['{ form: gate-fold card, size: 5 1/2 x 4 1/4 }', '11/2 in × 17/4 in', 2],
    ['{ form: accordion card, size: 2 3/4 x 4 1/4, pages: 7 }', '11/4 in × 17/4 in', 7],
    // Front, back, the side flap between them and, where the top flap reaches over it, that flap too.
    ['{ form: envelope, outside: 6 x 4 }', '6 in × 4 in', 4],
    // Scored and left flat: nothing closes there.
    ['{ cut: 6 x 4, score: [{ from: left, at: [3] }], folds: { A|B: flat } }', '6 in × 4 in', 1],
    // A third folded over two thirds, off the middle.
    ['{ cut: 9 x 4, score: [{ from: left, at: [3] }] }', '6 in × 4 in', 2],
    // A folder with two pockets turned up inside: two covers, two pockets.
    [
      '{ cut: 8 x 7, score: [{ from: left, at: [4] }, { from: bottom, at: [1] }], slit: [A|B 2] }',
      '4 in × 6 in',
      4,
    ],
  ])('%s', (piece, size, sheets) => {
    expect([text(closed(piece)), most(closed(piece))]).toEqual([size, sheets]);
  });
});

describe('what is mailed', () => {
  const CARD = `
stock:
  card:  { name: Card,  sheet: 12 x 12, weight: 200 gsm, caliper: 0.25 mm }
  paper: { name: Paper, sheet: 12 x 12, weight: 100 gsm, caliper: 0.1 mm }
pieces:
  card:  { stock: card, form: single-fold card, size: 100 mm x 150 mm }
  mat:   { stock: card, cut: 90 mm x 140 mm, on: card.front }
  print: { stock: paper, cut: 80 mm x 130 mm, on: mat }
  back:  { stock: paper, cut: 90 mm x 140 mm, on: card.back }
  note:  { stock: paper, cut: 80 mm x 100 mm, count: 2 }`;

  const it1 = made(CARD);
  const pieceOf = (id: string): Piece => {
    const piece = it1.project.pieces.get(id);
    if (!piece) throw new Error(`no ${id}`);
    return piece;
  };

  /** 2 × 0.25 + 0.25 + 0.1 + 0.1 mm of card, mat, print and back; 2 × 0.1 mm of notes. */
  it('is as thick as its papers one on another', () => {
    expect(mailedPiece(it1, pieceOf('card'), [])?.thickness.mm).toBeCloseTo(0.95, 9);
    expect(mailedPiece(it1, pieceOf('card'), [pieceOf('note')])?.thickness.mm).toBeCloseTo(1.15, 9);
  });

  /** 0.2 × 0.15 m² and 0.09 × 0.14 m² of 200 g/m²; 0.08 × 0.13 and 0.09 × 0.14 m² of 100 g/m²; 2 × 0.08 × 0.1 m². */
  it('weighs what its papers weigh together', () => {
    expect(mailedPiece(it1, pieceOf('card'), [])?.grams).toBeCloseTo(6 + 2.52 + 1.04 + 1.26, 6);
    expect(mailedPiece(it1, pieceOf('card'), [pieceOf('note')])?.grams).toBeCloseTo(12.42, 6);
  });

  it('has no weight where that of a paper is unknown', () => {
    const bare = made('pieces:\n  tag: { cut: 2 x 4 }');
    const [tag] = bare.project.pieces.values();
    expect(tag && mailedPiece(bare, tag, [])).toMatchObject({ grams: undefined, isFolded: false });
  });

  it('is never thinner than one sheet, in any project of the demo', async () => {
    const root = new URL('../../../projects', import.meta.url).pathname;
    const workspace = await loadWorkspace(root, { namedFrom: root });
    const thick = workspace.projects.flatMap((project) => {
      const edition = { project, shapes: buildShapes(project) };
      return [...project.pieces.values()].map((piece) => mailedPiece(edition, piece, [])?.thickness.mm ?? 1);
    });
    expect(thick.length).toBeGreaterThan(50);
    expect(Math.min(...thick)).toBeGreaterThan(0.05);
  });
});
