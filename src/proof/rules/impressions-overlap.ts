import { roundFolded } from '../../measure/round.ts';
import { rulerUnit } from '../../measure/ruler-unit.ts';
import type { Size } from '../../measure/size.ts';
import type { Place } from '../../project/source.ts';
import { partOver } from '../../shape/ground.ts';
import { nearPairs } from '../../shape/pairs.ts';
import { imageOutline, imagesIn, type OnPaper } from '../decoration.ts';
import type { Rule } from '../rule.ts';
import { saySize } from '../words.ts';

type Facts = OnPaper & {
  readonly stamps: readonly [string, string];
  readonly common: Size;
  readonly first: Place;
};

export const impressionsOverlap: Rule<Facts> = {
  severity: 'warning',
  summary: 'No stamped image is printed over another, unless it says so.',
  why: 'Where two images meet, both are spoiled, and the wet ink of the first comes off on the second stamp. If you want that, as for an image built up in layers, write `over: yes`.',
  fails: {
    pieces:
      'mat: { stock: cream, cut: 3 x 4, impressions: [{ stamp: leaf, size: 2 x 1 }, { stamp: star, size: 1 x 1, at: { top: 1 } }] }',
    head: 'supplies: [{ item: Leaf stamp, kind: stamp }, { item: Star stamp, kind: stamp }]',
    blames: 'star',
  },
  passes: { with: 'at: { top: 1/4 }', insteadOf: 'at: { top: 1 }' },
  ownEditionOnly: true,
  *check(context) {
    const images = imagesIn(context).filter(({ it }) => !it.written.over);
    const outlined = images.map((image) => ({ ...image, outline: imageOutline(image.it) }));
    for (const [one, other] of nearPairs(outlined, 0)) {
      const common = one.net === other.net && partOver(one.outline, other.outline);
      if (!common) continue;
      const ruler = rulerUnit(other.facts.unit);
      const size = { width: roundFolded(common.width, ruler), height: roundFolded(common.height, ruler) };
      const stamps = [one.it.stamp, other.it.stamp] as const;
      const first = one.it.written.stamp.at;
      yield { at: other.it.written.stamp.at, facts: { ...other.facts, stamps, common: size, first } };
    }
  },
  say: ({ on, unit, stamps: [one, other], common, first }) => ({
    message: `the ${other} is printed over ${saySize(common, unit)} of the ${one} on ${on}`,
    remedy: 'move one of them, or write "over: yes" for the one that is meant to lie over the other',
    notes: [{ message: `the ${one} is here`, at: first }],
  }),
};
