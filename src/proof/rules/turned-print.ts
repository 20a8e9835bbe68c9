import type { Unit } from '../../measure/length.ts';
import { quarterTurned, type Size } from '../../measure/size.ts';
import type { Project } from '../../project/model.ts';
import type { Place } from '../../project/source.ts';
import { stockOf } from '../../shape/caliper.ts';
import type { Rule } from '../rule.ts';
import { saySize } from '../words.ts';

type Facts = {
  readonly piece: string;
  readonly stock: string;
  /** Degrees clockwise that it lies turned in the end, together with what it lies on. */
  readonly turn: number;
  /** The size that is seen when it lies so. */
  readonly seen: Size;
  readonly unit: Unit;
  /** Where the print is said to have a right way up. */
  readonly print: Place;
};

export const turnedPrint: Rule<Facts> = {
  severity: 'warning',
  summary: 'A print with a right way up is not stuck on sideways or upside down.',
  why: 'A piece of an upright print is cut as it is drawn. Stuck on with a quarter turn, its ferns grow sideways; with a half turn, they hang from the ceiling. Any other turn, such as a square on its point, is taken as meant.',
  fails: {
    stock: 'cream: { sheet: 8 1/2 x 11 }\nfern: { sheet: 12 x 12, print: upright }',
    pieces:
      'card: { stock: cream, cut: 4 1/4 x 5 1/2 }\nfront: { stock: fern, cut: 5 1/4 x 4, on: card, turn: 90 }',
    blames: '90',
  },
  passes: { with: 'cut: 4 x 5 1/4, on: card }', insteadOf: 'cut: 5 1/4 x 4, on: card, turn: 90 }' },
  ownEditionOnly: true,
  *check({ project, shapes }) {
    for (const { piece, size } of shapes.layers) {
      const print = stockOf(piece, project)?.print;
      const own = piece.placement.turn;
      const turn = turnOf(piece.id.value, project);
      if (print?.value !== 'upright' || !own || own.value === 0 || turn % 90 !== 0 || turn === 0) continue;
      const seen = turn === 180 ? size : quarterTurned(size);
      const facts = {
        piece: piece.id.value,
        stock: piece.stock?.value ?? '',
        turn,
        seen,
        unit: project.unit,
      };
      yield { at: own.at, facts: { ...facts, print: print.at } };
    }
  },
  say: ({ piece, stock, turn, seen, unit, print }) => ({
    message:
      turn === 180
        ? `${piece} is turned halfway round, so that its print hangs upside down`
        : `${piece} is turned by ${turn}°, so that its print lies on its side`,
    remedy:
      turn === 180
        ? 'leave "turn:" out'
        : `cut it ${saySize(seen, unit)} and leave "turn:" out, or give ${stock} "print: any way"`,
    notes: [{ message: `${stock} has a right way up`, at: print }],
  }),
};

/** How far a piece lies turned in the end: by itself, and with what it lies on. */
function turnOf(id: string, { pieces }: Project): number {
  const passed = new Set<string>();
  let turn = 0;
  for (let next = pieces.get(id); next && !passed.has(next.id.value); ) {
    passed.add(next.id.value);
    turn += next.placement.turn?.value ?? 0;
    next = next.on && pieces.get(next.on.value.piece);
  }
  return turn % 360;
}
