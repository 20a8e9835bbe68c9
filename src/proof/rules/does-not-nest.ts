import { Length } from '../../measure/length.ts';
import { nextMark } from '../../measure/round.ts';
import { rulerUnit } from '../../measure/ruler-unit.ts';
import type { Edge } from '../../project/net-as-written.ts';
import { restOf } from '../../shape/base-panel.ts';
import { caliperOf, stockOf } from '../../shape/caliper.ts';
import { tubeEnds } from '../../shape/closure/ends.ts';
import type { Net } from '../../shape/net.ts';
import { foldBetween, panelOf } from '../../shape/panel-tree.ts';
import type { Layer } from '../../shape/shapes.ts';
import { sheetsOf } from '../../shape/sheets.ts';
import { lineOf, positionOf } from '../../shape/tube.ts';
import type { OfPiece } from '../folded-sheets.ts';
import { thickestPile } from '../piles.ts';
import type { Rule } from '../rule.ts';
import { sayLength, sayList, sayPanels, sayThickness } from '../words.ts';

type Facts = OfPiece & {
  /** The sheet of the piece that goes over its own: `lid`. */
  readonly over: string;
  readonly walls: readonly string[];
  readonly layers: readonly string[];
  /** How much wider it is there, and what the paper and the layers take of that. */
  readonly by: Length;
  readonly takes: Length;
};

/** What a lid needs to slide. Common practice, no source. */
const PLAY: Length = Length.of(1, 16, 'in');

export const doesNotNest: Rule<Facts> = {
  severity: 'error',
  summary: 'A lid still fits over its tray, and a drawer into its sleeve, with layers stuck on the outside.',
  why: 'A layer on the wall of a tray under its lid, or on the side of a drawer, takes up the room they need to slide over each other.',
  fails: {
    stock:
      'board: { name: Gray board, sheet: 12 x 18, caliper: 1/16 in }\ncream: { name: Cream cardstock, sheet: 8 1/2 x 11 }',
    pieces:
      'box: { stock: cream, form: lidded tray, inside: 4 x 4 x 2 }\nplate: { stock: board, cut: 3 3/4 x 1 3/4, on: box.front }\nother: { stock: board, cut: 3 3/4 x 1 3/4, on: box.back }',
    blames: 'box.front',
  },
  passes: { with: 'caliper: 1/100 in', insteadOf: 'caliper: 1/16 in' },
  *check(context) {
    const { project, shapes } = context;
    for (const piece of project.pieces.values()) {
      const { id } = piece;
      const [own, ...others] = sheetsOf(shapes.nets, id.value);
      const caliper = caliperOf(stockOf(piece, project)).thickness;
      for (const { name = '', net } of own ? others : []) {
        for (const { walls, by, tabs, reach } of net.takes ?? []) {
          const piles = walls.map((panel) =>
            thickestPile(context, { piece: id.value, part: panel, face: 'outside' }, (layer) =>
              comesUnder(own?.net, panel, layer, reach),
            ),
          );
          const layers = piles.flatMap((pile) => pile.layers.map((layer) => layer.piece));
          const takes = Length.sum([caliper.times(2 + tabs), ...piles.map(({ thick }) => thick)]);
          const [first] = layers;
          if (!first || !takes.greaterThan(by)) continue;
          const facts = { piece: id.value, unit: project.unit, over: name, walls, by, takes };
          yield {
            at: first.on?.at ?? id.at,
            facts: { ...facts, layers: layers.map((each) => each.id.value) },
          };
        }
      }
    }
  },
  say: ({ piece, over, walls, layers, by, takes, unit }) => {
    const room = sayLength(nextMark(takes.plus(PLAY), rulerUnit(unit)), unit);
    const on = sayPanels(piece, walls);
    return {
      message: `${piece}.${over} has ${sayLength(by, unit)} to spare around ${on}; the paper there, with ${sayList(layers)} stuck on it, takes ${sayThickness(takes, unit)}`,
      remedy: `give ${piece} a "clearance" of ${room}, or leave ${sayList(layers)} off`,
    };
  },
};

const FACING: Readonly<Record<Edge, Edge>> = { left: 'right', right: 'left', top: 'bottom', bottom: 'top' };

/** Whether a layer on a wall reaches so near the rim that what comes down over the wall meets it. */
function comesUnder(net: Net | undefined, wall: string, layer: Layer, reach: Length | undefined): boolean {
  const foot = net && footOf(net, wall);
  return !foot || !reach || layer.reveals[FACING[foot]].lessThan(reach);
}

/** The edge of a wall that the floor is at, as the sheet lies flat: the closed end of a tube, the fold of a tray. */
function footOf(net: Net, wall: string): Edge | undefined {
  const ends = tubeEnds(net);
  if (ends.length > 0) return ends.find(({ flaps }) => flaps.length > 0)?.end;
  const fold = foldBetween(net, wall, restOf(net).base);
  if (!fold) return undefined;
  const { box } = panelOf(net, wall);
  const edges = lineOf(fold) === 'upright' ? (['left', 'right'] as const) : (['top', 'bottom'] as const);
  return edges.find((edge) => box[edge].equals(positionOf(fold)));
}
