import type { Length, Unit } from '../../measure/length.ts';
import { fitsWithin, quarterTurned, type Size } from '../../measure/size.ts';
import type { Piece, Stock } from '../../project/model.ts';
import type { Place } from '../../project/source.ts';
import { keptUpright } from '../../shape/keep-upright.ts';
import { sheetsOf } from '../../shape/shapes.ts';
import { sheetWith } from '../example.ts';
import type { ProofContext, Rule, Statement } from '../rule.ts';
import { sayList, saySize } from '../words.ts';

export const pieceExceedsSheet: Rule<'piece-exceeds-sheet'> = {
  id: 'piece-exceeds-sheet',
  severity: 'error',
  summary: 'Every piece can be cut from one sheet of its stock.',
  why: 'A piece larger than the sheet it is to be cut from is found out at the trimmer, when everybody has bought the paper. A piece may be turned on the sheet, unless the print is upright or the grain is given.',
  fails: { sheet: sheetWith({ pieces: 'wrap: { stock: cream, cut: 9 x 10 }' }), blames: '9 x 10' },
  passes: { sheet: sheetWith({ pieces: 'wrap: { stock: cream, cut: 10 1/2 x 8 }' }) },
  check: ({ project, shapes, report }: ProofContext) => {
    for (const [id, piece] of project.pieces) {
      const stock = piece.stock && project.stock.get(piece.stock.value);
      if (!stock || stock.sheets.length === 0) continue;
      for (const { name, net } of sheetsOf(shapes.nets, id)) {
        const statement = exceeding(name === undefined ? id : `${id}.${name}`, net.size, stock, project.unit);
        if (statement) report({ ...statement, at: sizePlace(piece) });
      }
    }
  },
};

function exceeding(name: string, size: Size, stock: Stock, unit: Unit): Statement | undefined {
  const sheets = stock.sheets.map(sizeOf);
  if (sheets.some((sheet) => fitsWithin(size, sheet))) return undefined;
  const fitsTurned = sheets.some((sheet) => fitsWithin(quarterTurned(size), sheet));
  const fixed = keptUpright(stock);
  if (fitsTurned && fixed === undefined) return undefined;
  const say = (each: Size): string => saySize(each, unit);
  const most = say(within(size, sheets));
  return {
    message: `${name} is ${say(size)}, but ${stock.id.value} comes in sheets of ${sayList(sheets.map(say))}`,
    remedy: fitsTurned
      ? `it would fit turned, but ${fixed && REASON[fixed]}: cut it at most ${most}, or from another stock`
      : `cut it at most ${most}, or from a larger stock`,
    notes: stock.sheets.map((sheet) => ({ message: `a sheet is ${say(sizeOf(sheet))}`, at: sheet.size.at })),
  };
}

function sizeOf({ size }: Stock['sheets'][number]): Size {
  return { width: size.width.value, height: size.height.value };
}

const REASON = {
  print: 'the print must stay upright',
  grain: 'the grain must run as on the sheet',
} as const;

/** The size cut down to the largest sheet, each way by itself. */
function within(size: Size, sheets: readonly Size[]): Size {
  const [first, ...rest] = sheets;
  if (!first) return size;
  const largest = rest.reduce((best, each) => (area(each) > area(best) ? each : best), first);
  return { width: least(size.width, largest.width), height: least(size.height, largest.height) };
}

function area({ width, height }: Size): number {
  return width.mm * height.mm;
}

function least(a: Length, b: Length): Length {
  return a.lessThan(b) ? a : b;
}

function sizePlace({ body }: Piece): Place {
  return body.kind === 'form' ? body.form.at : body.cut.at;
}
