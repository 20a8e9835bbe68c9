import { eachOnBase, type OfLayer } from '../axis.ts';
import { type Covered, coveredBy } from '../covered.ts';
import type { Rule } from '../rule.ts';

type Facts = OfLayer & Covered;

export const layerCovered: Rule<Facts> = {
  severity: 'error',
  summary:
    'A layer is where it can be seen: not on a glue tab, nor on a face that is glued over or ends up inside.',
  why: 'A layer on a glue tab sits in the joint: nobody sees it, and the joint holds no better than the layer does. A layer on a face that is closed in for good is wasted paper. What a lid or a flap covers is fine: it shows when that is opened.',
  fails: {
    pieces:
      'box: { stock: cream, form: tuck-end box, inside: 2 x 1 x 3 }\nstrip: { stock: cream, cut: 1/4 x 2 1/2, on: box.tab }',
    blames: 'box.tab',
  },
  passes: { with: 'box.front', insteadOf: 'box.tab' },
  check: (context) => eachOnBase(context, (layer) => coveredBy(layer, context)),
  say: ({ layer, panel, face, gluedTo }) => {
    const remedy = 'stick it on a panel that shows';
    return gluedTo === undefined
      ? {
          message: `${layer} lies on the ${face} of ${panel}, which is closed in once all is glued: nobody ever sees it`,
          remedy,
          severity: 'warning',
        }
      : {
          message: `${layer} lies where ${panel} is stuck to ${gluedTo}: in the joint, and out of sight`,
          remedy,
        };
  },
};
