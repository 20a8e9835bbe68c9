import type { Length } from '../../measure/length.ts';
import type { Size } from '../../measure/size.ts';
import type { Edge } from '../../project/net-as-written.ts';
import type { Place } from '../../project/source.ts';
import type { Layer } from '../../shape/shapes.ts';
import { type OfLayer, ofLayer } from '../axis.ts';
import type { Rule } from '../rule.ts';
import { sayLength, sayList, saySize } from '../words.ts';

type Facts = OfLayer & {
  /** In degrees; and the nearest at which it stays on its base, if there is one. */
  readonly turn: number;
  readonly fitting?: number;
  readonly passes: readonly { readonly side: Edge; readonly by: Length }[];
  readonly base: Size;
  readonly baseAt?: Place;
};

export const turnedLayer: Rule<Facts> = {
  severity: 'error',
  summary: 'The corners of a layer stuck on at an angle stay on their base.',
  why: 'Turning a layer swings its corners outward: a layer that fits when straight can pass the edge at an angle. The proof measures the true corners. A layer that is meant to stick out says `overhang: yes`.',
  fails: {
    pieces:
      'card: { stock: cream, cut: 4 x 5 }\nlabel: { stock: cream, cut: 3 3/4 x 2, on: card, at: { turn: 20 } }',
    blames: '20',
  },
  passes: { with: '3 x 2', insteadOf: '3 3/4 x 2' },
  *check({ project, shapes }) {
    for (const layer of shapes.layers) {
      const { piece, turn, reveals, base } = layer;
      const passes = SIDES.filter((side) => reveals[side].sign < 0);
      if (piece.overhang || turn % 90 === 0 || passes.length === 0) continue;
      const fitting = fittingTurn(layer);
      const under = piece.on && project.pieces.get(piece.on.value.piece);
      const facts = {
        ...ofLayer(project, layer),
        turn,
        ...(fitting !== undefined && { fitting }),
        passes: passes.map((side) => ({ side, by: reveals[side].abs() })),
        base,
        ...(under && { baseAt: under.id.at }),
      };
      yield { at: piece.placement.turn?.at ?? piece.at, facts };
    }
  },
  say: ({ layer, turn, fitting, passes, baseName, base, baseAt, unit }) => {
    const by = passes.map((each) => `${sayLength(each.by, unit)} at the ${each.side}`);
    const instead = fitting === undefined ? 'cut it smaller' : `turn it ${fitting}° instead`;
    return {
      message: `${layer}, turned ${turn}°, passes the edge of ${baseName} by ${sayList(by)}`,
      remedy: `${instead}, or write "overhang: yes" if you meant it`,
      notes: baseAt ? [{ message: `${baseName} is ${saySize(base, unit)}`, at: baseAt }] : [],
    };
  },
};

const SIDES: readonly Edge[] = ['left', 'right', 'top', 'bottom'];

/** Who wants a layer at 45° does not want it at 87°; in degrees. Common practice, no source. */
const FARTHEST = 10;

/** The turn near the one written, in whole degrees, at which the layer stays on its base. */
function fittingTurn(layer: Layer): number | undefined {
  const straight = Math.round(layer.turn / 90) * 90;
  const step = layer.turn > straight ? -1 : 1;
  const first = step < 0 ? Math.floor(layer.turn) : Math.ceil(layer.turn);
  for (let turn = first; turn !== straight && Math.abs(turn - layer.turn) <= FARTHEST; turn += step) {
    if (fitsAt(layer, turn)) return turn;
  }
  return undefined;
}

/** Whether the layer stays on its base at another turn; in floating point, a thousandth of a millimeter safe. */
function fitsAt({ size, base, piece }: Layer, turn: number): boolean {
  const radians = (turn * Math.PI) / 180;
  const [cos, sin] = [Math.abs(Math.cos(radians)), Math.abs(Math.sin(radians))];
  const { left, right, top, bottom } = piece.placement;
  const across = size.width.mm * cos + size.height.mm * sin + ((left ?? right)?.value.mm ?? 0);
  const upright = size.width.mm * sin + size.height.mm * cos + ((top ?? bottom)?.value.mm ?? 0);
  return across + 0.001 <= base.width.mm && upright + 0.001 <= base.height.mm;
}
