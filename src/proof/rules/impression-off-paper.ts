import { Length } from '../../measure/length.ts';
import { roundFolded } from '../../measure/round.ts';
import { rulerUnit } from '../../measure/ruler-unit.ts';
import type { Size } from '../../measure/size.ts';
import { EDGES, type Edge, isUpright } from '../../project/net-as-written.ts';
import type { Place } from '../../project/source.ts';
import { extentOf } from '../../shape/common-parts.ts';
import type { Impression } from '../../shape/net.ts';
import { imagesIn, missingOf, type OnPaper } from '../decoration.ts';
import type { Rule } from '../rule.ts';
import { sayLength, sayList, saySize } from '../words.ts';

type Facts = OnPaper & {
  readonly stamp: string;
  readonly size: Size;
  readonly off: readonly { readonly side: Edge; readonly by: Length }[];
  /** What of it is on no paper, though it is within all edges. */
  readonly missing?: Size;
};

export const impressionOffPaper: Rule<Facts> = {
  severity: 'error',
  summary: 'A stamped image is entirely on its paper, unless it says that it runs off.',
  why: 'An image that runs off the edge is cut off there and leaves ink on the table. If you want that, write `runs off: yes`, and the sheet says to put scrap paper underneath.',
  fails: {
    pieces:
      'mat: { stock: cream, cut: 3 x 4, impressions: [{ stamp: leaf, size: 2 x 1, at: { left: 1 1/4 } }] }',
    head: 'supplies: [{ item: Leaf stamp, kind: stamp }]',
    blames: '1 1/4',
  },
  passes: { with: 'left: 1 }', insteadOf: 'left: 1 1/4 }' },
  ownEditionOnly: true,
  *check(context) {
    for (const image of imagesIn(context)) {
      const { it, facts } = image;
      if (it.written.runsOff) continue;
      const off = offOf(it);
      const missing = off.length === 0 ? extentOf(missingOf(image, GIVE.mm)) : undefined;
      if (missing?.area === 0) continue;
      const about = { ...facts, stamp: it.stamp, size: it.size, off };
      const ruler = rulerUnit(facts.unit);
      const size = missing && {
        width: roundFolded(missing.width, ruler),
        height: roundFolded(missing.height, ruler),
      };
      yield { at: causeOf(it, off[0]?.side), facts: { ...about, ...(size && { missing: size }) } };
    }
  },
  say: ({ on, unit, stamp, size, off, missing }) => {
    if (missing) {
      return {
        message: `${saySize(missing, unit)} of the ${stamp}, ${saySize(size, unit)}, lies where ${on} is cut away`,
        remedy: 'move it onto the paper, or write "runs off: yes" if it is meant to be cut',
      };
    }
    const sides = off.map(({ side, by }) => `${sayLength(by, unit)} off the ${side} edge of ${on}`);
    return {
      message: `the ${stamp}, ${saySize(size, unit)}, runs ${sayList(sides)}`,
      remedy: 'move it onto the paper, or write "runs off: yes" if it is meant to',
    };
  },
};

/** What a ruler hardly shows is no running off. */
const GIVE = Length.of(1, 64, 'in');

function offOf({ reveals }: Impression): Facts['off'] {
  return EDGES.flatMap((side) => {
    const by = reveals[side].times(-1);
    return by.greaterThan(GIVE) ? [{ side, by }] : [];
  });
}

/** The distance that puts it there; in the middle it is too large. */
function causeOf({ written: { placement, size } }: Impression, side?: Edge): Place {
  const { left, right, top, bottom } = placement;
  if (!side) return (left ?? right ?? top ?? bottom ?? size.width).at;
  const isAcross = isUpright(side);
  return (isAcross ? (left ?? right ?? size.width) : (top ?? bottom ?? size.height)).at;
}
