import { Length, type Unit } from '../../measure/length.ts';
import { fitsWithin, quarterTurned, type Size } from '../../measure/size.ts';
import type { Piece, Stock } from '../../project/model.ts';
import type { Place } from '../../project/source.ts';
import { keptUpright } from '../../shape/keep-upright.ts';
import { sheetsOf } from '../../shape/shapes.ts';
import type { Rule } from '../rule.ts';
import { sayList, saySize } from '../words.ts';

type Facts = {
  /** The piece, or one sheet of it. */
  readonly name: string;
  readonly size: Size;
  readonly stock: string;
  readonly sheets: readonly SheetPlaced[];
  /** What keeps it from being turned, where it would fit so. */
  readonly fixed?: 'print' | 'grain';
  readonly unit: Unit;
};

export const pieceExceedsSheet: Rule<Facts> = {
  severity: 'error',
  summary: 'Every piece can be cut from one sheet of its stock.',
  why: 'A piece larger than the sheet it is to be cut from is found out at the trimmer, when everybody has bought the paper. A piece may be turned on the sheet, unless the print is upright or the grain is given.',
  fails: { pieces: 'wrap: { stock: cream, cut: 9 x 10 }', blames: '9 x 10' },
  passes: { with: '10 1/2 x 8', insteadOf: '9 x 10' },
  *check({ project, shapes }) {
    const { unit } = project;
    for (const [id, piece] of project.pieces) {
      const stock = piece.stock && project.stock.get(piece.stock.value);
      if (!stock || stock.sheets.length === 0) continue;
      const sheets = stock.sheets.map(sheetSize);
      for (const { name: part, net } of sheetsOf(shapes.nets, id)) {
        const { size } = net;
        if (sheets.some((sheet) => fitsWithin(size, sheet.size))) continue;
        const fitsTurned = sheets.some((sheet) => fitsWithin(quarterTurned(size), sheet.size));
        const fixed = fitsTurned ? keptUpright(stock) : undefined;
        if (fitsTurned && !fixed) continue;
        const name = part === undefined ? id : `${id}.${part}`;
        const facts = { name, size, stock: stock.id.value, sheets, unit, ...(fixed && { fixed }) };
        yield { at: sizePlace(piece), facts };
      }
    }
  },
  say: ({ name, size, stock, sheets, fixed, unit }, _, edition) => {
    const say = (each: Size): string => saySize(each, unit);
    const sizes = sheets.map((sheet) => sheet.size);
    const most = say(within(size, sizes));
    if (edition) {
      return {
        message: `${name} is ${say(size)}, more than its paper there (${sayList(sizes.map(say), 'or')})`,
        remedy: `tell readers with that paper to cut ${name} from a larger sheet, and name one with "${edition} sheet:" in ${stock}`,
      };
    }
    return {
      message: `${name} is ${say(size)}, but ${stock} comes in sheets of ${sayList(sizes.map(say))}`,
      remedy: fixed
        ? `it would fit turned, but ${REASON[fixed]}: cut it at most ${most}, or from another stock`
        : `cut it at most ${most}, or from a larger stock`,
      notes: sheets.map((sheet) => ({ message: `a sheet is ${say(sheet.size)}`, at: sheet.at })),
    };
  },
};

/** A size a stock comes in, and where it is written. */
type SheetPlaced = { readonly size: Size; readonly at: Place };

function sheetSize({ size: { width, height, at } }: Stock['sheets'][number]): SheetPlaced {
  return { size: { width: width.value, height: height.value }, at };
}

const REASON = {
  print: 'the print must stay upright',
  grain: 'the grain must run as on the sheet',
} as const;

/** The size cut down to the largest sheet, each way by itself. */
function within(size: Size, sheets: readonly Size[]): Size {
  const [largest = size] = sheets.toSorted((a, b) => area(b) - area(a));
  return { width: Length.min(size.width, largest.width), height: Length.min(size.height, largest.height) };
}

function area({ width, height }: Size): number {
  return width.mm * height.mm;
}

function sizePlace({ body }: Piece): Place {
  return body.kind === 'form' ? body.form.at : body.cut.at;
}
