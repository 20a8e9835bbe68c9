import { fitsWithin, quarterTurned, type Size } from '../../measure/size.ts';
import type { Project } from '../../project/model.ts';
import { writeName } from '../../project/ref.ts';
import type { Stock } from '../../project/stock.ts';
import { keptUpright } from '../../shape/keep-upright.ts';
import { type Nets, sheetsOf } from '../../shape/sheets.ts';
import { papersSoldOut } from '../late.ts';
import type { Rule } from '../rule.ts';
import { sayList } from '../words.ts';

type Facts = {
  readonly pieces: readonly string[];
  /** The paper that is no longer sold, the last day it is, and what takes its place. */
  readonly old: string;
  readonly until: string;
  readonly substitute: string;
};

export const substituteTooSmall: Rule<Facts> = {
  severity: 'warning',
  summary: 'What takes the place of a paper comes in sheets that its pieces can be cut from.',
  why: 'After the last day of the old paper everybody buys the other one. Each edition has its own sheets: what is large enough in inches may be too small in millimeters.',
  fails: {
    head: 'session: 2027-06-10',
    stock:
      'cream: { sheet: 12 x 12, until: 2027-03-31, instead: ivory }\nivory: { name: Ivory cardstock, sheet: 8 1/2 x 11 }',
    pieces: 'front: { stock: cream, cut: 9 x 10 }',
    blames: 'ivory',
  },
  passes: { with: '8 x 10', insteadOf: '9 x 10' },
  *check({ project, shapes: { nets } }) {
    for (const { stock, until, instead, substitute } of papersSoldOut(project)) {
      if (!instead || !substitute) continue;
      const pieces = tooLarge(stock, substitute, project, nets);
      if (pieces.length === 0) continue;
      const facts = { pieces, old: stock.name, until: until.value, substitute: substitute.name };
      yield { at: instead.at, facts };
    }
  },
  say: ({ pieces, old, until, substitute }) => ({
    message: `${sayList(pieces)} cannot be cut from the sheets of ${substitute}, which takes the place of ${old} after ${until}`,
    remedy: `name a paper with larger sheets, or get enough of ${old} by then`,
  }),
};

/** The pieces of a paper that no sheet of another is large enough for. */
function tooLarge(old: Stock, substitute: Stock, { pieces }: Project, nets: Nets): readonly string[] {
  const sheets = substitute.sheets.map(({ size: { width, height } }) => ({
    width: width.value,
    height: height.value,
  }));
  if (sheets.length === 0) return [];
  const turns = keptUpright(substitute) === undefined;
  const fits = (size: Size): boolean =>
    sheets.some((sheet) => fitsWithin(size, sheet) || (turns && fitsWithin(quarterTurned(size), sheet)));
  return [...pieces].flatMap(([piece, { stock }]) =>
    stock?.value === old.id.value
      ? sheetsOf(nets, piece).flatMap(({ name: part, net }) =>
          fits(net.size) ? [] : [writeName({ piece, part })],
        )
      : [],
  );
}
