import { sheetWith } from '../example.ts';
import type { Rule } from '../rule.ts';

const stacked = (base: string): string =>
  sheetWith({
    pieces: `mat: { stock: cream, cut: 4 x 5${base} }\nfront: { stock: cream, cut: 3 x 4, on: mat }`,
  });

export const circularBase: Rule<'circular-base'> = {
  id: 'circular-base',
  severity: 'error',
  summary: 'No piece lies on itself, neither directly nor by way of others.',
  why: 'Where a layer lies on a base that lies on the layer, nobody can say what is stuck on first, and no border can be worked out.',
  fails: { sheet: stacked(', on: front'), blames: 'front' },
  passes: { sheet: stacked('') },
};
