import type { Unit } from '../../measure/length.ts';
import { quarterTurned, type Size } from '../../measure/size.ts';
import type { Piece, Project } from '../../project/model.ts';
import type { Place } from '../../project/source.ts';
import { stockOf } from '../../shape/caliper.ts';
import type { Rule } from '../rule.ts';
import { saySize } from '../words.ts';

type Facts = {
  readonly piece: string;
  readonly stock: string;
  /** Degrees clockwise that it lies turned in the end, together with what it lies on. */
  readonly turn: number;
  /** What it lies on that is turned, where it isn't itself. */
  readonly base?: string;
  /** The size that is seen when it lies so. */
  readonly seen: Size;
  readonly unit: Unit;
  /** Where the print is said to have a right way up. */
  readonly print: Place;
};

export const turnedPrint: Rule<Facts> = {
  severity: 'warning',
  summary: 'A print with a right way up is not stuck on sideways or upside down.',
  why: 'A piece of an upright print is cut as it is drawn. Stuck on with a quarter turn, its ferns grow sideways; with a half turn, they hang from the ceiling. Any other turn, such as a square on its point, is assumed to be intended.',
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
      const turns = turnsOf(piece.id.value, project);
      const turn = turns.reduce((sum, { by }) => sum + by, 0) % 360;
      if (print?.value !== 'upright' || turn % 90 !== 0 || turn === 0) continue;
      const [turned] = turns;
      if (!turned) continue;
      const isOwn = turned.piece === piece;
      // A base with a right way up of its own is told of itself.
      if (!isOwn && turns.some((each) => stockOf(each.piece, project)?.print?.value === 'upright')) continue;
      const seen = turn === 180 ? size : quarterTurned(size);
      const facts = {
        piece: piece.id.value,
        stock: piece.stock?.value ?? '',
        turn,
        seen,
        unit: project.unit,
        ...(!isOwn && { base: turned.piece.id.value }),
      };
      yield { at: (isOwn && own?.at) || piece.id.at, facts: { ...facts, print: print.at } };
    }
  },
  say: ({ piece, stock, turn, seen, base, unit, print }) => {
    const by = turn === 180 ? 'halfway round' : `by ${turn}°`;
    const lies = turn === 180 ? 'hangs upside down' : 'lies on its side';
    const upright = turn === 180 ? '' : `cut it ${saySize(seen, unit)} and `;
    const any = `give ${stock} "print: any way"`;
    return {
      message: base
        ? `${piece} lies on ${base}, which is turned, and so is itself turned ${by}: its print ${lies}`
        : `${piece} is turned ${by}, so that its print ${lies}`,
      remedy: base
        ? `${upright}give it "turn: ${turn === 90 ? -90 : 360 - turn}", or ${any}`
        : `${upright}leave "turn:" out${turn === 180 ? '' : `, or ${any}`}`,
      notes: [{ message: `${stock} has a right way up`, at: print }],
    };
  },
};

/** A piece that is turned, and by how much. */
type TurnedPiece = { readonly piece: Piece; readonly by: number };

/** What turns a piece in the end: it, and what it lies on, as far as that is turned. */
function turnsOf(id: string, { pieces }: Project): readonly TurnedPiece[] {
  const passed = new Set<Piece>();
  for (
    let next = pieces.get(id);
    next && !passed.has(next);
    next = next.on && pieces.get(next.on.value.piece)
  ) {
    passed.add(next);
  }
  return [...passed].flatMap((piece) => {
    const by = piece.placement.turn?.value ?? 0;
    return by === 0 ? [] : [{ piece, by }];
  });
}
