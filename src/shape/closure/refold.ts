import type { FoldDirection } from '../../project/net-as-written.ts';
import type { Fold, Net } from '../net.ts';
import { pathBetween } from '../panel-tree.ts';
import { lineOf, positionOf, tubesOf } from '../tube.ts';

/** Those folds of one score line that are folded wrongly, and how they would have to be folded. */
export type Refold = {
  readonly folds: readonly Fold[];
  readonly direction: FoldDirection;
  readonly angle: number;
};

const WAYS = [
  { direction: 'mountain', angle: 90 },
  { direction: 'valley', angle: 90 },
  { direction: 'mountain', angle: 180 },
  { direction: 'valley', angle: 180 },
] as const;

/**
 * The one score line of those on the way to some panels that, folded square or flat, one way or the other, makes a net
 * come out right: by trying each. Lines between the walls of a tube are left as they are.
 */
export function refoldFor(
  net: Net,
  base: string,
  panels: readonly string[],
  isRight: (net: Net) => boolean,
): Refold | undefined {
  for (const folds of linesTo(net, base, panels)) {
    for (const way of WAYS) {
      const others = folds.filter(
        ({ direction, angle }) => direction !== way.direction || angle !== way.angle,
      );
      if (others.length > 0 && isRight(refolded(net, others, way))) return { folds: others, ...way };
    }
  }
  return undefined;
}

/** The score lines that panels are folded by, the nearest to them first, each as all folds on it. */
function linesTo(net: Net, base: string, panels: readonly string[]): readonly (readonly Fold[])[] {
  const ofTubes = tubesOf(net).flatMap(({ isGlued, joints }) => (isGlued ? joints : []));
  const ways = panels.flatMap((panel) => pathBetween(net, base, panel)?.toReversed() ?? []);
  const lines = new Map<string, readonly Fold[]>();
  for (const { fold } of ways) {
    if (lineOf(fold) === 'slanted') continue;
    const same = net.folds.filter((each) => keyOf(each) === keyOf(fold));
    if (!same.some((each) => ofTubes.some((joint) => joint.fold === each))) lines.set(keyOf(fold), same);
  }
  return [...lines.values()];
}

function keyOf(fold: Fold): string {
  return `${lineOf(fold)} ${positionOf(fold)}`;
}

function refolded(net: Net, folds: readonly Fold[], way: Pick<Refold, 'direction' | 'angle'>): Net {
  return { ...net, folds: net.folds.map((fold) => (folds.includes(fold) ? { ...fold, ...way } : fold)) };
}
