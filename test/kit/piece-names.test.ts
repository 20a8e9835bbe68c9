import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { namePieces } from '../../src/kit/piece-names.ts';
import type { PieceKind } from '../../src/kit/plan.ts';
import type { PlacedPiece } from '../../src/kit/sheet-tree.ts';
import { Length } from '../../src/measure/length.ts';

const INCH = Length.of(1, 1, 'in');

function placed(blank: number): PlacedPiece {
  return { kind: 'blank', blank, turned: false, left: INCH, top: INCH, width: INCH, height: INCH };
}

function kindOf(...pieces: readonly (readonly [name: string, perKit: number])[]): PieceKind {
  const size = { width: INCH, height: INCH };
  const pieceOf = ([name, perKit]: (typeof pieces)[number]): PieceKind['pieces'][number] => {
    return {
      name,
      piece: name,
      sheet: undefined,
      size,
      area: 0,
      perKit,
      kits: 1,
      variant: undefined,
      flipped: false,
    };
  };
  return { size, pieces: pieces.map(pieceOf) };
}

/** For each layout the names of its pieces, for so many of its sheets each. */
function namesOf(
  layouts: Parameters<typeof namePieces>[0],
  kinds: readonly PieceKind[],
  kits: number,
): { count: number; names: string[] }[][] {
  const ofAll = kinds.map((kind) => ({ ...kind, pieces: kind.pieces.map((piece) => ({ ...piece, kits })) }));
  return namePieces(layouts, ofAll).map((ways) =>
    ways.map(({ count, pieces }) => ({ count, names: pieces.map(({ name }) => name) })),
  );
}

describe('the names of pieces of one size', () => {
  it('are the same on every sheet of a layout where that comes out', () => {
    const layouts = [{ count: 6, pieces: [placed(0), placed(0), placed(0)] }];
    expect(namesOf(layouts, [kindOf(['front', 2], ['back', 1])], 6)).toEqual([
      [{ count: 6, names: ['front', 'front', 'back'] }],
    ]);
  });

  it('are apart on one sheet where it does not', () => {
    const layouts = [{ count: 3, pieces: [placed(0), placed(0)] }];
    expect(namesOf(layouts, [kindOf(['a', 1], ['b', 5])], 1)).toEqual([
      [
        { count: 1, names: ['a', 'b'] },
        { count: 2, names: ['b', 'b'] },
      ],
    ]);
  });

  it('come out even over several layouts where they can', () => {
    const layouts = [
      { count: 2, pieces: [placed(0)] },
      { count: 3, pieces: [placed(0)] },
    ];
    expect(namesOf(layouts, [kindOf(['a', 3], ['b', 2])], 1)).toEqual([
      [{ count: 2, names: ['b'] }],
      [{ count: 3, names: ['a'] }],
    ]);
  });

  it('are never more than there are pieces', () => {
    expect(() => namesOf([{ count: 4, pieces: [placed(0)] }], [kindOf(['a', 3])], 1)).toThrow('more places');
  });

  it('come to exactly so many of each, whatever the layouts', () => {
    const small = fc.integer({ min: 1, max: 4 });
    const perKits = fc.array(fc.array(small, { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 3 });
    fc.assert(
      fc.property(perKits, fc.integer({ min: 1, max: 12 }), small, (wanted, kits, onSheet) => {
        const kinds = wanted.map((each, kind) =>
          kindOf(...each.map((perKit, piece) => [`${kind}.${piece}`, perKit] as const)),
        );
        // As many sheets of so many pieces as are full, and one with what is left, kind by kind.
        const layouts = kinds.flatMap(({ pieces }, kind) => {
          const total = pieces.reduce((sum, { perKit }) => sum + perKit * kits, 0);
          const full = Math.floor(total / onSheet);
          const sheet = (count: number, each: number) => ({ count, pieces: Array(each).fill(placed(kind)) });
          return [sheet(full, onSheet), sheet(1, total - full * onSheet)].filter(
            ({ count, pieces: each }) => count > 0 && each.length > 0,
          );
        });
        const ways = namesOf(layouts, kinds, kits);
        const counts = new Map<string, number>();
        for (const [index, layout] of layouts.entries()) {
          const own = ways[index] ?? [];
          expect(own.reduce((sum, { count }) => sum + count, 0)).toBe(layout.count);
          for (const { count, names } of own) {
            expect(names).toHaveLength(layout.pieces.length);
            for (const name of names) counts.set(name, (counts.get(name) ?? 0) + count);
          }
        }
        const asked = kinds.flatMap(({ pieces }) => pieces.map(({ name, perKit }) => [name, perKit * kits]));
        expect([...counts].sort()).toEqual(asked.sort());
      }),
      { seed: 5, numRuns: 200 },
    );
  });
});
