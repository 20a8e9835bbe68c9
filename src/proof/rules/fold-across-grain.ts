import { Length, type Unit } from '../../measure/length.ts';
import { writeName } from '../../project/ref.ts';
import type { Place } from '../../project/source.ts';
import { caliperOf, stockOf } from '../../shape/caliper.ts';
import type { Net } from '../../shape/net.ts';
import { sheetsOf } from '../../shape/sheets.ts';
import { lineOf } from '../../shape/tube.ts';
import type { Rule } from '../rule.ts';
import { sayCaliper } from '../words.ts';

type Facts = {
  readonly name: string;
  readonly stock: string;
  readonly thickness: Length;
  readonly unit: Unit;
  /** Where the grain is given. */
  readonly grain: Place;
};

/** A thicker paper cracks on a fold across its fibers. Common practice, no source. */
const HEAVY: Length = Length.of(1, 4, 'mm');

export const foldAcrossGrain: Rule<Facts> = {
  severity: 'note',
  summary: 'Heavy paper is folded along the grain where all its folds run one way.',
  why: 'Heavy cardstock folded across its fibers cracks and springs open again. This is checked if the grain of a stock is given and its paper is thicker than 1/4 mm (about 100 lb cover); a box, whose folds run both ways, always has some across the grain.',
  fails: {
    stock: 'cream: { sheet: 8 1/2 x 11, weight: 100 lb cover, grain: width }',
    pieces:
      'card: { stock: cream, cut: 8 1/2 x 5 1/2, score: [{ from: left, at: [4 1/4] }], panels: { back: A1, front: B1 } }',
    blames: 'card',
  },
  passes: { with: 'grain: height', insteadOf: 'grain: width' },
  ownEditionOnly: true,
  *check({ project, shapes }) {
    for (const [id, piece] of project.pieces) {
      const stock = stockOf(piece, project);
      const { thickness, source } = caliperOf(stock);
      if (!stock?.grain || source === 'assumed' || !thickness.greaterThan(HEAVY)) continue;
      for (const { name: part, net } of sheetsOf(shapes.nets, id)) {
        if (!isAcross(net, stock.grain.value)) continue;
        const name = writeName({ piece: id, part });
        const facts = { name, stock: stock.id.value, thickness, unit: project.unit, grain: stock.grain.at };
        yield { at: piece.id.at, facts };
      }
    }
  },
  say: ({ name, stock, thickness, unit, grain }) => ({
    message: `every fold of ${name} runs across the fibers of ${stock}, which is ${sayCaliper(thickness, unit)} thick`,
    remedy:
      'turn it a quarter turn on the sheet before you cut it, or score each line twice and fold it slowly',
    notes: [{ message: 'the grain is given here', at: grain }],
  }),
};

/** Whether every line that is folded runs across the fibers. */
function isAcross({ folds }: Net, grain: 'width' | 'height'): boolean {
  const along = grain === 'width' ? 'across' : 'upright';
  const lines = folds.filter(({ angle }) => angle > 0).map(lineOf);
  return lines.length > 0 && lines.every((line) => line !== along && line !== 'slanted');
}
