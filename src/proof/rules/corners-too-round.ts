import { Length, type Unit } from '../../measure/length.ts';
import type { Size } from '../../measure/size.ts';
import { boxSize, largestPanel } from '../../shape/net.ts';
import type { Rule } from '../rule.ts';
import { sayLength, saySize } from '../words.ts';

type Facts = {
  readonly piece: string;
  readonly radius: Length;
  /** What is rounded: the piece, or the largest panel of it. */
  readonly size: Size;
  /** The largest radius there is room for: half the shorter side. */
  readonly most: Length;
  readonly unit: Unit;
};

export const cornersTooRound: Rule<Facts> = {
  severity: 'error',
  summary: 'The radius of rounded corners is at most half the shorter side.',
  why: 'At half the shorter side two corners meet, and a square becomes a circle. No corner can be rounder than that, and whoever reads the number goes looking for a punch that the piece has no room for.',
  fails: { pieces: 'label: { stock: cream, cut: 2 1/2 x 3, corners: 2 }', blames: '2' },
  passes: { with: 'corners: 1 1/4', insteadOf: 'corners: 2' },
  *check({ project: { pieces, unit }, shapes }) {
    for (const { id, corners } of pieces.values()) {
      const net = shapes.nets.get(id.value);
      const largest = net && largestPanel(net);
      if (!largest || !corners) continue;
      const size = boxSize(largest.box);
      const most = Length.min(size.width, size.height).half();
      const facts = { piece: id.value, radius: corners.value, size, most, unit };
      if (corners.value.minus(most).greaterThan(GIVE)) yield { at: corners.at, facts };
    }
  },
  say: ({ piece, radius, size, most, unit }) => ({
    message: `the corners of ${piece} are rounded by ${sayLength(radius, unit)}, but it is ${saySize(size, unit)}: two corners meet at ${sayLength(most, unit)}`,
    remedy: `write at most ${sayLength(most, unit)}`,
  }),
};

/** A circle of 19 mm has corners of 10 mm in whole millimeters, and is cut round all the same. */
const GIVE: Length = Length.of(1, 32, 'in');
