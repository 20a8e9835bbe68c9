import { fittedInto } from '../tracing/curves.ts';
import type { Outline } from '../tracing/outline.ts';

const [FEWEST, MOST] = [3, 24];

export const polygon: Outline = {
  name: 'polygon',
  summary: 'A regular polygon that stands on one of its sides, the largest that its size holds.',
  said: 'polygon with {sides} equal sides',
  parameters: [
    {
      key: 'sides',
      kind: 'count',
      required: false,
      says: 'Of a `polygon`: how many sides it has, from 3 to 24; 6 by default.',
    },
  ],
  trace: (size, settings) => {
    const { value: sides, at } = settings.count('sides', 6);
    if (sides < FEWEST || sides > MOST) {
      const reason = `${settings.piece} has ${sides} sides, and a polygon has from ${FEWEST} to ${MOST}`;
      settings.refuse(at, reason, sides < FEWEST ? 'write 3 or more' : 'write "shape: circle"');
    }
    // Clockwise from the left end of the side it stands on.
    const angles = Array.from({ length: Math.max(sides, FEWEST) }, (_, index) => {
      return Math.PI / 2 + ((2 * index + 1) * Math.PI) / Math.max(sides, FEWEST);
    });
    return fittedInto(
      size,
      angles.map((angle) => ({ x: Math.cos(angle), y: Math.sin(angle) })),
    );
  },
};
