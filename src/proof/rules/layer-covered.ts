import { type Face, faceOf } from '../../project/ref.ts';
import { caliperOf, stockOf } from '../../shape/caliper.ts';
import { tubeEnds } from '../../shape/closure/ends.ts';
import { folded } from '../../shape/closure/sound.ts';
import { upright } from '../../shape/fold.ts';
import { groundOf, panelUnder, partOver } from '../../shape/ground.ts';
import type { Net } from '../../shape/net.ts';
import { isStuck } from '../../shape/panel-tree.ts';
import type { Layer } from '../../shape/shapes.ts';
import { faceStateOf } from '../../shape/stacking/face-states.ts';
import { openedNet } from '../../shape/stacking/opened.ts';
import { signedAngle } from '../../shape/tube.ts';
import { eachOnBase, type OfLayer } from '../axis.ts';
import type { ProofContext, Rule } from '../rule.ts';

type Facts = OfLayer & {
  /** The panel it lies on, as in `box.tab`, and the side of it. */
  readonly panel: string;
  readonly face: Face;
  /** The one that is stuck to it there; absent where nothing is, but the face is closed in. */
  readonly gluedTo?: string;
};

export const layerCovered: Rule<Facts> = {
  severity: 'error',
  summary:
    'A layer lies where it can be seen: not on a glue tab, nor on a face that is glued over or ends up inside.',
  why: 'A layer on a glue tab sits in the joint: nobody sees it, and the joint holds no better than the layer does. One on a face that is closed in for good is wasted paper. What a lid or a flap covers is fine: it shows when that is opened.',
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

/** What becomes of the face that a layer lies on, unless it is seen; nothing is known of a net that does not close. */
function coveredBy(layer: Layer, { project, shapes }: ProofContext): Omit<Facts, keyof OfLayer> | undefined {
  const { net } = layer.under;
  const { piece: id } = layer.on;
  const face = faceOf(layer.on);
  const ground = groundOf(layer, shapes);
  const panel = (layer.under.panel ?? panelUnder(ground))?.id;
  const opened = openedNet(net);
  if (panel === undefined || (face === 'outside' && facesOut(panel, opened))) return undefined;
  const { thickness } = caliperOf(stockOf(project.pieces.get(id), project));
  if (folded(net, thickness).soundness !== 'closes') return undefined;
  const { isSeen, covers } = faceStateOf(opened, thickness.mm, panel, face);
  const glued = covers.find(
    ({ isGlued, areas }) => isGlued && areas.some((area) => partOver(ground.outline, area.map(upright))),
  );
  const name = `${id}.${panel}`;
  if (glued) return { panel: name, face, gluedTo: `${id}.${glued.panel}` };
  return isSeen ? undefined : { panel: name, face };
}

/** Whether the outside of a panel needs no looking at: nothing is stuck to it or folded over it, and outsides stay out. */
function facesOut(panel: string, net: Net): boolean {
  const isFlap = tubeEnds(net).some(({ flaps }) => flaps.some(({ parts }) => parts.includes(panel)));
  return !isFlap && !isStuck(net, panel) && net.folds.every((fold) => signedAngle(fold) >= 0);
}
