import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { briefJson, turnModel } from '../../../src/drawing/turn-model.ts';
import { type FoldedShape, foldedPanelOf } from '../../../src/shape/folded-shape.ts';
import { foldPaper, sharesAfter } from '../../../src/shape/paint/paper-sheet.ts';
import { paint, USUAL_LOOK } from '../../../src/shape/paint/picture.ts';
import type { Hinge } from '../../../src/shape/paint/pose.ts';
import { ownNet } from '../../../src/shape/sheets.ts';
import { KEEPER } from '../../shape/boxes.ts';
import { replayedByThree } from './by-three.ts';
import { editionOf, exampleOf, modelOf, pagePaper, SHAPES, type Triple, twofolds } from './paper.ts';

const page = pagePaper();

/** How far the corners of a model are from where the proof's folding has them; NaN when one is missing. */
function greatestDistance(
  ours: readonly (readonly Triple[])[],
  shape: FoldedShape,
  ids: readonly string[],
): number {
  const distances = ids.flatMap((id, panel) =>
    foldedPanelOf(shape, id).corners.map(({ x, y, z }, corner) => {
      const [ox = Number.NaN, oy = 0, oz = 0] = ours[panel]?.[corner] ?? [];
      return Math.hypot(x - ox, y - oy, z - oz);
    }),
  );
  return Math.max(...distances);
}

describe.each(SHAPES)('the model of the %s', (_, edition) => {
  const sheets = twofolds(edition);

  it('has every corner where the proof folds it when three.js replays its hinges', () => {
    for (const { sheet, ids, steps, folded } of sheets) {
      const [first, last] = steps;
      for (const share of [0, 0.13, 0.5, 0.77, 1]) {
        const done = first + share * (last - first);
        const replayed = replayedByThree(sheet, done);
        expect(replayed).toHaveLength(ids.length);
        expect(greatestDistance(replayed, folded(done), ids)).toBeLessThan(1e-3);
      }
    }
  });

  it('is folded and painted by the page’s script as it is in drawings, however far', () => {
    for (const { sheet, steps } of sheets) {
      fc.assert(
        fc.property(fc.double({ min: steps[0], max: steps[1], noNaN: true }), (done) => {
          const [onPage, drawn] = [page, { foldPaper, paint, sharesAfter }].map((paper) => {
            const folded = paper.foldPaper(sheet, paper.sharesAfter(done, sheet));
            return JSON.stringify([folded, paper.paint(folded.tree, USUAL_LOOK)]);
          });
          expect(onPage === drawn, `after ${done} steps`).toBe(true);
        }),
        { seed: 311, numRuns: 12 },
      );
    }
  });

  it('is small enough for an old phone', () => {
    const bytes = briefJson(modelOf(edition)).length;
    expect(bytes).toBeLessThan(ownNet(edition.shapes.nets, 'box')?.strips ? 20_000 : 5_000);
  });
});

function shifted([fromX, fromY, toX, toY]: Hinge['line']): Hinge['line'] {
  return [fromX + 0.1, fromY + 0.1, toX + 0.1, toY + 0.1];
}

describe('a model', () => {
  it('would not pass with a hinge a tenth of a millimeter off', () => {
    const [keeper] = twofolds(editionOf(KEEPER));
    if (!keeper) throw new Error('no keeper');
    const panels = keeper.sheet.panels.map((panel) => ({
      ...panel,
      ...(panel.hinge && { hinge: { ...panel.hinge, line: shifted(panel.hinge.line) } }),
    }));
    const replayed = replayedByThree({ ...keeper.sheet, panels }, 6);
    expect(greatestDistance(replayed, keeper.folded(6), keeper.ids)).toBeGreaterThan(0.05);
  });

  // The front is column B (1 to 4 1/2 in from the left) and row 3 (1 to 5 3/4 in from the top); the layer, 3 1/4 ×
  // 4 1/2 in, lies centered on it: 1/8 in in from each side. In millimeters, y up.
  it('has a layer where it lies on its panel, worked by hand', () => {
    const { sheets } = modelOf(
      editionOf(KEEPER, 'front: { stock: moss, cut: 3 1/4 x 4 1/2, on: box.front }'),
    );
    const near = [28.575, -28.575, 111.125, -28.575, 111.125, -142.875, 28.575, -142.875].map((value) =>
      expect.closeTo(value, 9),
    );
    expect(sheets[0]?.layers.map(({ panel, outline }) => [panel, outline])).toEqual([[0, near]]);
  });

  it('has its paper lightly tinted, white inside where a print is on one side', () => {
    const paperOf = (stock: string): (string | undefined)[] => {
      const [sheet] = modelOf(editionOf(KEEPER, '', stock)).sheets;
      return [sheet?.outside, sheet?.inside];
    };
    expect(paperOf('')).toEqual(['#ffffff', '#ffffff']);
    // A tint is 28 % of the color, the rest white: 255 − 0.28 × (255 − 107) = 213.56, and so on.
    expect(paperOf('color: "#6b7f5b"')).toEqual(['#d6dbd1', '#d6dbd1']);
    expect(paperOf('color: "#6b7f5b", print: upright')).toEqual(['#d6dbd1', '#ffffff']);
  });

  it('folds the sheets of a piece one after another', () => {
    const { sheets, steps } = modelOf(exampleOf('lidded tray'));
    const stepsOf = sheets.map(({ panels }) =>
      [...new Set(panels.flatMap(({ hinge }) => hinge?.step ?? []))].sort(),
    );
    expect(stepsOf).toEqual([
      [0, 1, 2],
      [3, 4, 5],
    ]);
    expect(steps).toBe(6);
  });

  it('is none for a piece of which nothing is folded', () => {
    expect(turnModel(exampleOf('tag'), 'box')).toBeUndefined();
    expect(turnModel(exampleOf('tag'), 'no such piece')).toBeUndefined();
  });
});
