import { type Face, faceOf } from '../project/ref.ts';
import { caliperOf, stockOf } from '../shape/caliper.ts';
import { tubeEnds } from '../shape/closure/ends.ts';
import { folded } from '../shape/closure/sound.ts';
import { upright } from '../shape/fold.ts';
import { groundOf, panelUnder, partOver } from '../shape/ground.ts';
import type { Net } from '../shape/net.ts';
import { isStuck } from '../shape/panel-tree.ts';
import type { Layer } from '../shape/shapes.ts';
import { faceStateOf } from '../shape/stacking/face-states.ts';
import { openedNet } from '../shape/stacking/opened.ts';
import { signedAngle } from '../shape/tube.ts';
import type { ProofContext } from './rule.ts';

/** A face with a layer on it that is not seen. */
export type Covered = {
  /** The panel it lies on, as in `box.tab`, and the side of it. */
  readonly panel: string;
  readonly face: Face;
  /** The one that is stuck to it there; absent where nothing is, but the face is closed in. */
  readonly gluedTo?: string;
};

/** What becomes of the face that a layer lies on, unless it is seen; nothing is known of a net that does not close. */
export function coveredBy(layer: Layer, { project, shapes }: ProofContext): Covered | undefined {
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
  // Behind an opening it shows through that.
  return isSeen || layer.under.opening ? undefined : { panel: name, face };
}

/** Whether the outside of a panel needs no looking at: nothing is stuck to it or folded over it, and outsides stay out. */
function facesOut(panel: string, net: Net): boolean {
  const isFlap = tubeEnds(net).some(({ flaps }) => flaps.some(({ parts }) => parts.includes(panel)));
  return !isFlap && !isStuck(net, panel) && net.folds.every((fold) => signedAngle(fold) >= 0);
}
