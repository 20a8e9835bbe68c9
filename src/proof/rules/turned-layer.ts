import type { Edge, Project } from '../../project/model.ts';
import type { Layer } from '../../shape/shapes.ts';
import { sheetWith } from '../example.ts';
import type { ProofContext, Rule } from '../rule.ts';
import { sayLength, sayList, saySize } from '../words.ts';

export const turnedLayer: Rule<'turned-layer'> = {
  id: 'turned-layer',
  severity: 'error',
  summary: 'The corners of a layer stuck on at an angle stay on their base.',
  why: 'Turning a layer swings its corners outward: a layer that fits when straight can pass the edge at an angle. The proof measures the true corners. A layer that is meant to stick out says `overhang: yes`.',
  fails: {
    sheet: sheetWith({
      pieces:
        'card: { stock: cream, cut: 4 x 5 }\nlabel: { stock: cream, cut: 3 3/4 x 2, on: card, at: { turn: 20 } }',
    }),
    blames: '20',
  },
  passes: {
    sheet: sheetWith({
      pieces:
        'card: { stock: cream, cut: 4 x 5 }\nlabel: { stock: cream, cut: 3 x 2, on: card, at: { turn: 20 } }',
    }),
  },
  check: ({ project, shapes, report }: ProofContext) => {
    for (const layer of shapes.layers) {
      const passed = SIDES.filter((side) => layer.reveals[side].sign < 0);
      if (layer.piece.overhang || layer.turn % 90 === 0 || passed.length === 0) continue;
      const by = passed.map((side) => `${sayLength(layer.reveals[side].abs(), project.unit)} at the ${side}`);
      const name = layer.piece.id.value;
      report({
        message: `${name}, turned ${layer.turn}°, passes the edge of ${layer.baseName} by ${sayList(by)}`,
        remedy: remedyFor(layer),
        at: layer.piece.placement.turn?.at ?? layer.piece.at,
        notes: baseNotes(project, layer),
      });
    }
  },
};

const SIDES: readonly Edge[] = ['left', 'right', 'top', 'bottom'];

function baseNotes(project: Project, layer: Layer): { message: string; at: Layer['piece']['at'] }[] {
  const base = layer.piece.on && project.pieces.get(layer.piece.on.value.piece);
  if (!base) return [];
  return [{ message: `${layer.baseName} is ${saySize(layer.base, project.unit)}`, at: base.id.at }];
}

/** The turn nearest to the one written, in whole degrees, at which the layer stays on its base. */
function remedyFor(layer: Layer): string {
  const straight = Math.round(layer.turn / 90) * 90;
  const step = layer.turn > straight ? -1 : 1;
  const first = step < 0 ? Math.floor(layer.turn) : Math.ceil(layer.turn);
  for (let turn = first; turn !== straight; turn += step) {
    if (fitsAt(layer, turn)) return `turn it ${turn}° instead, or write "overhang: yes" if it is meant so`;
  }
  return 'cut it smaller, or write "overhang: yes" if it is meant so';
}

/** Whether the layer stays on its base at another turn; in floating point, a thousandth of a millimetre safe. */
function fitsAt({ size, base, piece }: Layer, turn: number): boolean {
  const radians = (turn * Math.PI) / 180;
  const [cos, sin] = [Math.abs(Math.cos(radians)), Math.abs(Math.sin(radians))];
  const { left, right, top, bottom } = piece.placement;
  const across = size.width.mm * cos + size.height.mm * sin + ((left ?? right)?.value.mm ?? 0);
  const upright = size.width.mm * sin + size.height.mm * cos + ((top ?? bottom)?.value.mm ?? 0);
  return across + 0.001 <= base.width.mm && upright + 0.001 <= base.height.mm;
}
