import type { Length } from '../../measure/length.ts';
import { roundFolded } from '../../measure/round.ts';
import { rulerUnit } from '../../measure/ruler-unit.ts';
import { commonParts, extentOf } from '../../shape/common-parts.ts';
import { upright } from '../../shape/fold.ts';
import { gapOf } from '../../shape/openings/gap.ts';
import { glueAreas } from '../../shape/stacking/glue-areas.ts';
import { type CutOpening, everyOpening, type OfOpening } from '../openings.ts';
import type { Rule } from '../rule.ts';
import { saySize } from '../words.ts';

type Facts = OfOpening & {
  /** The two panels that are stuck together there, and how much of the joint is cut away. */
  readonly joint: readonly [string, string];
  readonly width: Length;
  readonly height: Length;
};

export const openingInJoint: Rule<Facts> = {
  severity: 'error',
  summary: 'No opening is cut where two panels are stuck together.',
  why: 'Where paper is cut away there is nothing for the glue to hold to, and the tab behind shows through with its glue on it.',
  fails: {
    pieces:
      'box: { stock: cream, form: tuck-end box, inside: 2 x 1 x 3, openings: { window: { size: 1/2 x 2, in: left, at: { left: 1/8 } } } }',
    blames: 'window',
  },
  passes: { with: 'in: front', insteadOf: 'in: left' },
  *check(context) {
    for (const cut of everyOpening(context)) {
      const found = jointAt(cut);
      if (found) yield { at: cut.written.name.at, facts: { ...cut.of, ...found } };
    }
  },
  say: ({ piece, opening, joint: [one, other], unit, ...size }) => ({
    message: `${piece}.${opening} is cut where ${one} is stuck to ${other}: ${saySize(size, unit)} of the joint is gone`,
    remedy: 'move it off the joint, or make it smaller',
  }),
};

/** Square millimeters of a joint that nobody misses. */
const NEGLIGIBLE = 1;

function jointAt({
  opening,
  net,
  caliper,
  of: { unit },
}: CutOpening): Omit<Facts, keyof OfOpening> | undefined {
  const outline = gapOf(opening);
  for (const { from, to } of glueAreas(net, caliper.mm)) {
    const own = [from, to].find(({ panel }) => panel === opening.panel);
    const parts = (own?.areas ?? []).flatMap((area) => commonParts(outline, area.map(upright)));
    const { area, width, height } = extentOf(parts);
    if (area < NEGLIGIBLE) continue;
    const ruler = rulerUnit(unit);
    const size = { width: roundFolded(width, ruler), height: roundFolded(height, ruler) };
    return { joint: [from.panel, to.panel], ...size };
  }
  return undefined;
}
