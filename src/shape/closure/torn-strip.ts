import type { Length } from '../../measure/length.ts';
import type { FoldedShape } from '../folded-shape.ts';
import type { Fold } from '../net.ts';
import { boxArea } from '../panel-area.ts';
import { otherSide, panelForest } from '../panel-tree.ts';
import { lineOf, positionOf } from '../tube.ts';
import { brokenRings } from './sound.ts';

/** A panel of a ring, and how far it is from one of the ring's lines to the other. */
export type RingPanel = { readonly panel: string; readonly depth: Length };

/** Four panels round a cut, as a pop-up's step and the card it is cut from, that cannot fold together as they are. */
type TornStrip = {
  /** The four. */
  readonly panels: readonly string[];
  /** Panels that lie opposite each other, and are to be as deep as each other. */
  readonly opposite: readonly [RingPanel, RingPanel];
  /** The last line of the four, and how far it has to move towards right or bottom for them to be so. */
  readonly last: Fold;
  readonly by: Length;
};

/**
 * The first ring of four panels on parallel lines that is torn: it folds only as a parallelogram does. Undefined when
 * there is none.
 */
export function tornStrip(shape: FoldedShape): TornStrip | undefined {
  for (const ring of brokenRings(shape)) {
    const folds = ringOf(shape, ring);
    const panels = [...new Set(folds.flatMap((fold) => fold.panels))];
    const [line] = folds.map(lineOf);
    const isParallel = line !== 'slanted' && folds.every((fold) => lineOf(fold) === line);
    const [last] = folds.toSorted((a, b) => positionOf(b).compare(positionOf(a)));
    // Of the card and the strip, the card is what the last line is measured against.
    const [card] = shape.net.panels
      .filter(({ id }) => last?.panels.includes(id))
      .toSorted((a, b) => boxArea(b.box) - boxArea(a.box));
    const facing = panels.find((panel) => isOpposite(panel, card?.id, folds));
    if (folds.length !== 4 || !isParallel || !last || !card || facing === undefined) continue;
    const opposite = [facing, card.id].map((panel) => ({ panel, depth: depthOf(panel, folds) }));
    const [one, other] = opposite;
    if (one && other) return { panels, opposite: [one, other], last, by: one.depth.minus(other.depth) };
  }
  return undefined;
}

/** The folds of a ring, from one panel to the next. */
function ringOf({ net, base }: FoldedShape, ring: Fold): readonly Fold[] {
  const [one, other] = ring.panels.map((panel) => wayOut(panel, panelForest(net, base).trees));
  if (!one || !other) return [];
  return [
    ring,
    ...one.filter((fold) => !other.includes(fold)),
    ...other.filter((fold) => !one.includes(fold)),
  ];
}

/** The folds from a panel back to the root of its tree. */
function wayOut(panel: string, trees: ReturnType<typeof panelForest>['trees']): readonly Fold[] {
  const joint = trees.flatMap(({ joints }) => joints).find(({ child }) => child === panel);
  return joint ? [joint.fold, ...wayOut(joint.parent, trees)] : [];
}

/** From one of its lines in the ring to the other. */
function depthOf(panel: string, folds: readonly Fold[]): Length {
  const [from, to] = folds.filter(({ panels }) => panels.includes(panel)).map(positionOf);
  if (!from || !to) throw new Error(`${panel} has no two lines in its ring`);
  return from.minus(to).abs();
}

function isOpposite(panel: string, of: string | undefined, folds: readonly Fold[]): boolean {
  return of !== undefined && panel !== of && folds.every((fold) => otherSide(fold, panel) !== of);
}
