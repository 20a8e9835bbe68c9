import type { Length, Unit } from '../../measure/length.ts';
import { printDecimal } from '../../measure/print.ts';
import { editionIn } from '../../measure/ruler-unit.ts';
import type { Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

type Facts = {
  readonly piece: string;
  /** The length that had to give way, as written and in the other edition, each with its unit. */
  readonly own: readonly [Length, Unit];
  readonly other: readonly [Length, Unit];
  /** Nothing near enough was found that folds and fits. */
  readonly faulty: boolean;
};

const STRIPS = ['right: 4', 'left: 1', 'left: 2', 'left: 3', 'left: 4'].map(
  (at, index) => `s${index}: { stock: cream, cut: 1 x 3, on: card, at: { ${at} } }`,
);

export const editionStrained: Rule<Facts> = {
  severity: 'note',
  ownEditionOnly: true,
  summary: 'The other edition folds and fits with every number within 1.5 mm of the number as written.',
  why: 'The other edition is made again in round numbers, each length rounded by itself and the sums following. If the nearest numbers would not fold or fit, or would make even borders uneven, the next nearest are used. Sometimes one of them has to be farther off, or between two marks on the ruler; then you should know which.',
  fails: { pieces: ['card: { stock: cream, cut: 5 x 3 }', ...STRIPS].join('\n'), blames: 's2' },
  passes: { with: '15/16 x 3', insteadOf: '1 x 3' },
  say: ({ piece, own: [own, ownUnit], other: [other, unit], faulty }) => {
    const name = editionIn(unit);
    const moved = `${sayLength(own, ownUnit)} of ${piece} becomes ${sayLength(other, unit)}`;
    return faulty
      ? {
          message: `the ${name} edition has no numbers close enough for ${piece} to fold and fit: ${moved}`,
          remedy: `try it before you hand it out, or leave that edition out with "units: ${editionIn(ownUnit)}"`,
        }
      : {
          message: `in the ${name} edition, ${moved}, ${printDecimal(other.minus(own).abs(), 'mm', 1)} mm off: with closer whole numbers ${piece} would no longer fold and fit`,
          remedy: 'leave it if the size does not matter, or choose another length',
        };
  },
};
