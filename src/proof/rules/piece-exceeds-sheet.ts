import { Length, type Unit } from '../../measure/length.ts';
import { roundDown } from '../../measure/round.ts';
import { fitsWithin, quarterTurned, type Size } from '../../measure/size.ts';
import type { Piece } from '../../project/model.ts';
import { sheetsSold } from '../../project/paper-sizes.ts';
import { writeName } from '../../project/ref.ts';
import type { Place } from '../../project/source.ts';
import type { PaperUnit, Stock, StockSheet } from '../../project/stock.ts';
import { keptUpright } from '../../shape/keep-upright.ts';
import { isMailedAs } from '../../shape/links.ts';
import { sheetsOf } from '../../shape/sheets.ts';
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
  /** Whether it fits the paper as written, but not what is sold in its place where people measure as the project does. */
  readonly elsewhere?: keyof typeof UNITS;
  /** Its size follows from the measurements of its form. */
  readonly isForm: boolean;
  /** What an envelope that stands upright is given, laid across: `card: 5 1/4 x 4 in`. Its sheet is then shorter. */
  readonly across?: { readonly key: string; readonly size: Size };
  readonly unit: Unit;
};

export const pieceExceedsSheet: Rule<Facts> = {
  severity: 'error',
  summary: 'Every piece can be cut from one sheet of its stock.',
  why: 'If a piece is larger than its sheet, you find out at the trimmer, when everybody has bought the paper. A piece may be turned on the sheet, unless the print is upright or the grain is given.',
  fails: { pieces: 'wrap: { stock: cream, cut: 9 x 10 }', blames: '9 x 10' },
  passes: { with: '10 1/2 x 8', insteadOf: '9 x 10' },
  *check({ project, shapes }) {
    const { unit } = project;
    for (const [id, piece] of project.pieces) {
      const stock = piece.stock && project.stock.get(piece.stock.value);
      if (!stock) continue;
      const written = stock.sheets.map(sheetSize);
      const sold = sheetsSold(stock, project).map(sheetSize);
      for (const { name: part, net } of sheetsOf(shapes.nets, id)) {
        const own = misfitIn(written, net.size, stock);
        const misfit = own ?? misfitIn(sold, net.size, stock);
        if (!misfit) continue;
        const name = writeName({ piece: id, part });
        const facts = {
          name,
          size: net.size,
          stock: stock.id.value,
          ...misfit,
          isForm: piece.body.kind === 'form',
          ...laidAcross(piece),
          unit,
        };
        yield {
          at: sizePlace(piece),
          facts: own ? facts : { ...facts, elsewhere: unit === 'in' ? 'inch' : 'metric' },
        };
      }
    }
  },
  say: ({ name, size, stock, sheets, fixed, elsewhere, isForm, across, unit }, _, edition) => {
    const own = saySize(size, unit);
    const papers = sheets.map(saySheet);
    const there = edition ?? elsewhere;
    if (there) {
      const whose = edition ? 'its paper there' : `the paper of readers who measure in ${UNITS[there]}`;
      return {
        message: `${name} is ${own}, more than ${whose} (${sayList(papers, 'or')})`,
        remedy: `tell readers with that paper to cut ${name} from a larger sheet, and name one with "${there} sheet:" in ${stock}`,
        severity: 'note',
      };
    }
    const most = saySize(within(size, sheets, unit), unit);
    const shorter = across
      ? `lay it across, with "${across.key}: ${saySize(across.size, unit).replace('×', 'x')}"`
      : `give its form smaller measurements, so that it takes ${most} at most`;
    const smaller = isForm ? `${shorter}, or cut it` : `cut it at most ${most}, or`;
    return {
      message: `${name} is ${own}, but ${stock} comes in sheets of ${sayList(papers)}`,
      remedy: fixed
        ? `it would fit turned, but ${REASON[fixed]}: ${smaller} from another stock`
        : `${smaller} from a larger stock`,
      notes: sheets.map((sheet) => ({ message: `a sheet is ${saySheet(sheet)}`, at: sheet.at })),
    };
  },
};

function laidAcross(piece: Piece): Pick<Facts, 'across'> {
  const { body } = piece;
  if (body.kind !== 'form' || !isMailedAs('envelope', piece)) return {};
  for (const [key, setting] of body.settings) {
    const [width, height] = setting.kind === 'lengths' ? setting.lengths : [];
    if (width && height?.value.greaterThan(width.value)) {
      return { across: { key, size: { width: height.value, height: width.value } } };
    }
  }
  return {};
}

const UNITS = { inch: 'inches', metric: 'millimeters' } as const;

type NoRoom = Pick<Facts, 'sheets' | 'fixed'>;

/** Why a size cannot be cut from any of some sheets; undefined where it can. */
function misfitIn(sheets: readonly SheetPlaced[], size: Size, stock: Stock): NoRoom | undefined {
  if (sheets.length === 0 || sheets.some((sheet) => fitsWithin(size, sheet.size))) return undefined;
  const fitsTurned = sheets.some((sheet) => fitsWithin(quarterTurned(size), sheet.size));
  const fixed = fitsTurned ? keptUpright(stock) : undefined;
  if (fitsTurned && !fixed) return undefined;
  return { sheets, ...(fixed && { fixed }) };
}

/** A size a stock comes in, and where it is written. */
type SheetPlaced = { readonly size: Size; readonly unit: PaperUnit; readonly at: Place };

function sheetSize({ size: { width, height, at }, unit }: StockSheet): SheetPlaced {
  return { size: { width: width.value, height: height.value }, unit, at };
}

/** A sheet in the unit it is sold by. */
function saySheet({ size, unit }: SheetPlaced): string {
  return saySize(size, unit);
}

const REASON = {
  print: 'the print must stay upright',
  grain: 'the grain must run as on the sheet',
} as const;

/** The size cut down to the largest sheet, each way by itself; by another ruler than the sheet's, to a mark of it. */
function within(size: Size, sheets: readonly SheetPlaced[], unit: Unit): Size {
  const [largest] = sheets.toSorted((a, b) => area(b.size) - area(a.size));
  if (!largest) return size;
  const own = unit === 'in' ? 'in' : 'mm';
  const least = (side: Length, most: Length): Length =>
    Length.min(side, largest.unit === own ? most : roundDown(most, STEPS[own]));
  return { width: least(size.width, largest.size.width), height: least(size.height, largest.size.height) };
}

const STEPS = { in: Length.of(1, 16, 'in'), mm: Length.of(1, 1, 'mm') } as const;

function area({ width, height }: Size): number {
  return width.mm * height.mm;
}

function sizePlace({ body }: Piece): Place {
  return body.kind === 'form' ? body.form.at : body.cut.at;
}
