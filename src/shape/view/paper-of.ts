import { shared } from '../common-parts.ts';
import { edgesOf, type Point2 } from '../flat-polygon.ts';
import { type HungPanel, layDown, upright } from '../fold.ts';
import { foldSteps } from '../fold-order.ts';
import type { FlatPoint, Net } from '../net.ts';
import { keyholed } from '../openings/keyhole.ts';
import type { PaperLayer, PaperPanel, PaperSheet } from '../paint/paper-sheet.ts';
import type { StackedPair } from '../paint/plane-tree.ts';
import { perNet } from '../per-net.ts';
import { bentStackOf } from '../stacking/folding.ts';
import { nearness } from '../stacking/stack.ts';
import type { PanelLayer } from './panel-layers.ts';

/** The paper a net is of, and what lies on it, colors as `#rrggbb` in full light. */
export type PaperLook = Pick<PaperSheet, 'outside' | 'inside'> & {
  /** Millimeters. */
  readonly caliper: number;
  readonly layers: readonly ColoredLayer[];
};

type ColoredLayer = Omit<PanelLayer, 'piece'> & { readonly color: string };

/** A net as paper to be folded and painted; `first` counts the steps of sheets that are folded before. */
export function paperOf(net: Net, { caliper, layers, outside, inside }: PaperLook, first = 0): PaperSheet {
  const { rest, hung } = layDown(net);
  return {
    rest,
    near: nearness(caliper),
    panels: paperPanels(net, hung, first),
    layers: layers.flatMap((layer) => hung.flatMap((each, index) => partOn(net, each, index, layer) ?? [])),
    stacked: stackedPairs(net, caliper, hung),
    outside,
    inside,
  };
}

function paperPanels(net: Net, hung: readonly HungPanel[], first: number): PaperPanel[] {
  const steps = foldSteps(net);
  const drawn = net.strips && drawnEdges(net.strips);
  return hung.map(({ panel, fold, hinge }) => {
    const step = steps.findIndex(({ folds }) => fold && folds.includes(fold));
    const { points, bridges } = keyholed(panel.outline.map(upright), holesIn(net, panel.id));
    const undrawn = [
      ...(drawn?.get(panel.id) ?? []).flatMap((isDrawn, side) => (isDrawn ? [] : [side])),
      ...bridges,
    ];
    return {
      outline: numbersOf(points),
      ...(undrawn.length > 0 && { undrawn }),
      ...(hinge && { hinge: { ...hinge, ...(step >= 0 && { step: first + step }) } }),
    };
  });
}

/** The openings in a panel; those in one that is bent are not shown. */
function holesIn({ openings = [], strips }: Net, panel: string): Point2[][] {
  const own = strips ? [] : openings.filter((opening) => opening.panel === panel);
  return own.map(({ outline }) => outline.map(upright));
}

/** Strips of a bent panel are turned by less than this against each other, in degrees. */
const BEND = 30;

/**
 * Of each panel's sides, from corner to corner: whether it is drawn, for a net of strips. All are, but those where two
 * strips of one bent panel meet.
 */
const drawnEdges: (strips: Net) => ReadonlyMap<string, readonly boolean[]> = perNet((strips) => {
  const meeting = new Map<string, number>();
  for (const key of strips.panels.flatMap(({ outline }) => sideKeys(outline))) {
    meeting.set(key, (meeting.get(key) ?? 0) + 1);
  }
  const sharp = new Set(
    strips.folds.filter(({ angle }) => angle >= BEND).map(({ from, to }) => keyOf(from, to)),
  );
  const edges = strips.panels.map(({ id, outline }) => {
    const drawn = sideKeys(outline).map((key) => sharp.has(key) || meeting.get(key) === 1);
    return [id, drawn] as const;
  });
  return new Map(edges);
});

function sideKeys(outline: readonly FlatPoint[]): string[] {
  return edgesOf(outline).map(([a, b]) => keyOf(a, b));
}

/** The same for both directions of a side. */
function keyOf(a: FlatPoint, b: FlatPoint): string {
  const [first, second] = [a, b].map(({ x, y }) => `${x} ${y}`).sort();
  return `${first} ${second}`;
}

/** What of a layer lies on a panel; on a strip of a bent one it is drawn without its sides. */
function partOn(
  { strips }: Net,
  { panel: { id, outline } }: HungPanel,
  panel: number,
  layer: ColoredLayer,
): PaperLayer | undefined {
  if (!strips && layer.panel !== id) return undefined;
  const whole = layer.outline.map(upright);
  const part = strips ? shared(whole, outline.map(upright)) : whole;
  if (part.length < 3) return undefined;
  const { color, face } = layer;
  const holes = strips ? [] : layer.openings.map((hole) => hole.map(upright));
  const { points, bridges } = keyholed(part, holes);
  const undrawn = strips ? [...part.keys()] : bridges;
  return {
    panel,
    outline: numbersOf(points),
    color,
    ...(face === 'inside' && { isInside: true as const }),
    ...(undrawn.length > 0 && { undrawn }),
  };
}

function numbersOf(points: readonly Point2[]): number[] {
  return points.flatMap(({ x, y }) => [x, y]);
}

/** Every two panels that lie on one another some time in the folding, and which of them is the outer one. */
const stackedPairs = perNet(
  (net: Net, caliper: number, hung: readonly HungPanel[]): readonly StackedPair[] => {
    const { met } = bentStackOf(net, caliper);
    return hung.flatMap(({ panel }, first) =>
      hung.flatMap((other, second): StackedPair[] => {
        const side = first < second ? met.of(panel.id, other.panel.id) : undefined;
        return side === undefined ? [] : [[first, second, side]];
      }),
    );
  },
);
