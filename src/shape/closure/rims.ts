import type { Length } from '../../measure/length.ts';
import { restOf } from '../base-panel.ts';
import type { Mate, Net } from '../net.ts';
import { foldsOf, otherSide } from '../panel-tree.ts';
import { lineOf, reachFrom, tubesOf } from '../tube.ts';
import { nearlyEqual } from './tolerance.ts';

/** Two walls that rise from one base and are stuck together at a corner, but not equally high. */
type UnequalRim = {
  readonly mate: Mate;
  readonly walls: readonly [string, string];
  readonly heights: readonly [Length, Length];
};

/** The corners of a tray whose two walls differ in height; a tube has flaps there, which may. */
export function unequalRims(net: Net, caliper: Length): readonly UnequalRim[] {
  if (tubesOf(net).length > 0) return [];
  return net.glue.flatMap((mate) => rimOf(net, tabFirst(net, mate), caliper) ?? []);
}

/** People name glue either way round; the tab is the one that does not hang on the base itself. */
function tabFirst(net: Net, mate: Mate): Mate {
  const { base } = restOf(net);
  const isWall = foldsOf(net, mate.from).some(({ panels }) => panels.includes(base));
  return isWall ? { ...mate, from: mate.to, to: mate.from } : mate;
}

function rimOf(net: Net, mate: Mate, caliper: Length): UnequalRim | undefined {
  for (const hinge of foldsOf(net, mate.from)) {
    const wall = otherSide(hinge, mate.from);
    if (wall === undefined || wall === mate.to) continue;
    const own = risesFrom(net, wall).find(({ base }) => risesFrom(net, mate.to).some((o) => o.base === base));
    const other = risesFrom(net, mate.to).find(({ base }) => base === own?.base);
    if (!own || !other || own.height === undefined || other.height === undefined) continue;
    if (nearlyEqual(own.height, other.height, caliper)) return undefined;
    return { mate, walls: [wall, mate.to], heights: [own.height, other.height] };
  }
  return undefined;
}

type Rise = { readonly base: string; readonly height: Length };

/** The panels a wall is folded up from, at a right angle, and how high it rises from each. */
function risesFrom(net: Net, wall: string): Rise[] {
  return foldsOf(net, wall)
    .filter(({ angle }) => angle === 90)
    .flatMap((fold) => {
      const base = otherSide(fold, wall);
      return base === undefined ? [] : [{ base, height: reachFrom(lineOf(fold), net, wall) }];
    });
}
