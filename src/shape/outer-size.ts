import { Length } from '../measure/length.ts';
import { roundFolded } from '../measure/round.ts';
import { foldedExtent } from './fold.ts';
import type { Fold, Net } from './net.ts';
import type { Shapes } from './shapes.ts';
import { sheetsOf } from './sheets.ts';
import { tubesOf } from './tube.ts';

/**
 * Over all, of sheets that go one into another, in the order of the first one's own width, height and depth. A lid lies
 * on its box as both are shown; a drawer may lie any way in its sleeve, but is smaller in each of its sides, once both
 * are put in order.
 */
export function outerLengths(
  nets: Shapes['nets'],
  piece: string,
  unit: 'in' | 'mm',
): readonly Length[] | undefined {
  const [first, ...further] = sheetsOf(nets, piece).map(({ net }) => net);
  if (!first) return undefined;
  const own = finishedLengths(first, unit);
  const ranks = own.map((length) => own.toSorted(byLength).indexOf(length));
  const outer = further.map((net) => {
    const lengths = finishedLengths(net, unit);
    return isLid(net) ? lengths : ranks.map((rank) => lengths.toSorted(byLength)[rank]);
  });
  return own.map((length, axis) =>
    outer.reduce((most, lengths) => Length.max(most, lengths[axis] ?? most), length),
  );
}

/** Whether a sheet comes down over another as far as it reaches. */
function isLid({ takes = [] }: Net): boolean {
  return takes.some(({ reach }) => reach !== undefined);
}

function byLength(one: Length, other: Length): number {
  return one.compare(other);
}

/** Thinner than this, it lies flat and has no depth to speak of. */
const FLAT = 1;

function finishedLengths(net: Net, unit: 'in' | 'mm'): readonly Length[] {
  if (net.folds.length === 0) return [net.size.width, net.size.height];
  const sides = foldedExtent(isSolid(net) ? net : closed(net)).filter((side) => side > FLAT);
  return sides.map((side) => roundFolded(side, unit));
}

/** A tube, or a floor with walls round it. Everything else (a card, a folder, an envelope) ends up flat. */
export function isSolid(net: Net): boolean {
  if (tubesOf(net).length > 0) return true;
  return net.panels.some(({ id }) => wallsOn(net, id) >= LEAST_WALLS);
}

const LEAST_WALLS = 3;

function wallsOn({ folds }: Net, panel: string): number {
  return folds.filter(({ panels, angle }) => panels.includes(panel) && angle > 0 && angle < 180).length;
}

/** The same net folded shut, however far open its sheet shows it. */
function closed(net: Net): Net {
  const shut = ({ angle }: Fold): number => (angle > 0 ? 180 : 0);
  return { ...net, folds: net.folds.map((fold) => ({ ...fold, angle: shut(fold) })) };
}
