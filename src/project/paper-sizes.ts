import { Length } from '../measure/length.ts';
import { roundToStep } from '../measure/round.ts';
import { quarterTurned, type Size, sameSize } from '../measure/size.ts';
import type { Project } from './model.ts';
import type { Place } from './source.ts';
import type { PaperUnit, Stock, StockSheet } from './stock.ts';

/** A size that paper is sold in, and the unit it is called by. */
type PaperSize = { readonly size: Size; readonly unit: PaperUnit };

function paper(width: number, height: number, unit: PaperUnit, parts = 1): PaperSize {
  return { size: { width: Length.of(width, parts, unit), height: Length.of(height, parts, unit) }, unit };
}

const LETTER = paper(17, 22, 'in', 2);
const A4 = paper(210, 297, 'mm');

/** Paper by its name: A3 to A6 of ISO 216; Letter of ANSI Y14.1 (its size A), Legal, and half of Letter. */
const PAPERS: ReadonlyMap<string, PaperSize> = new Map([
  ['a3', paper(297, 420, 'mm')],
  ['a4', A4],
  ['a5', paper(148, 210, 'mm')],
  ['a6', paper(105, 148, 'mm')],
  ['letter', LETTER],
  ['legal', paper(17, 28, 'in', 2)],
  ['half letter', paper(11, 17, 'in', 2)],
]);

/** Paper that goes by the inch here and by the millimeter there. */
const PAIRS: readonly (readonly [PaperSize, PaperSize])[] = [
  [LETTER, A4],
  [paper(12, 12, 'in'), paper(305, 305, 'mm')],
  [paper(6, 6, 'in'), paper(152, 152, 'mm')],
];

const STEPS: Readonly<Record<PaperUnit, Length>> = { in: Length.of(1, 16, 'in'), mm: Length.of(1, 1, 'mm') };

export const PAPER_NAMES: readonly string[] = [...PAPERS.keys()];

/** What a size of paper is called, whichever way round it lies; undefined where it has no name. */
export function paperNameOf(size: Size): string | undefined {
  const ways = [size, quarterTurned(size)];
  const found = [...PAPERS].find(([, paper]) => ways.some((way) => sameSize(paper.size, way)));
  return found?.[0];
}

/** A sheet by its name; undefined where none is called so. `at` is where the name stands. */
export function sheetNamed(name: string, at: Place): StockSheet | undefined {
  const named = PAPERS.get(name.trim().toLowerCase().replace(/\s+/gu, ' '));
  return named && { size: sizeAt(named.size, at), unit: named.unit };
}

/** What was written of a stock's sheets: for one unit alone, or for whatever unit. */
type WrittenSheets = Readonly<Record<PaperUnit | 'any', readonly StockSheet[]>>;

/** The sheets of both editions of a project written in `own`; each edition has its own paper. */
export function sheetsOfEditions(
  written: WrittenSheets,
  own: PaperUnit,
): { readonly sheets: readonly StockSheet[]; readonly otherSheets: readonly StockSheet[] } {
  const other = own === 'in' ? 'mm' : 'in';
  const paired = (sheets: readonly StockSheet[], unit: PaperUnit): readonly StockSheet[] =>
    sheets.map((sheet) => pairedSheet(sheet, unit));
  return {
    sheets: firstGiven(written[own], written.any, paired(written[other], own)),
    otherSheets: firstGiven(written[other], paired(firstGiven(written.any, written[own]), other)),
  };
}

/**
 * The sheets of a stock as they are sold where people measure as an edition does, whatever it names them in. Where there
 * is no other edition, a paper with a name is that very one.
 */
export function sheetsSold(
  { sheets }: Pick<Stock, 'sheets'>,
  { unit, units }: Pick<Project, 'unit' | 'units'>,
): readonly StockSheet[] {
  const ruler = unit === 'in' ? 'in' : 'mm';
  const isKept = (sheet: StockSheet): boolean => units !== 'both' && nameOfSheet(sheet) !== undefined;
  return sheets.map((sheet) => (isKept(sheet) ? sheet : pairedSheet(sheet, ruler)));
}

function nameOfSheet({ size: { width, height } }: StockSheet): string | undefined {
  return paperNameOf({ width: width.value, height: height.value });
}

function firstGiven(...lists: readonly (readonly StockSheet[])[]): readonly StockSheet[] {
  return lists.find((sheets) => sheets.length > 0) ?? [];
}

/** A sheet as it is sold where people measure in `unit`: its pair, or the nearest size in whole steps. */
function pairedSheet(sheet: StockSheet, unit: PaperUnit): StockSheet {
  if (sheet.unit === unit) return sheet;
  const { width, height, at } = sheet.size;
  const size = { width: width.value, height: height.value };
  const turned = pairOf(quarterTurned(size), unit);
  const found = pairOf(size, unit) ?? (turned && quarterTurned(turned)) ?? inSteps(size, STEPS[unit]);
  return { ...sheet, unit, size: sizeAt(found, at) };
}

function pairOf(size: Size, unit: PaperUnit): Size | undefined {
  for (const [inch, metric] of PAIRS) {
    const [from, to] = unit === 'mm' ? [inch, metric] : [metric, inch];
    if (sameSize(from.size, size)) return to.size;
  }
  return undefined;
}

function inSteps({ width, height }: Size, step: Length): Size {
  return { width: roundToStep(width, step), height: roundToStep(height, step) };
}

function sizeAt({ width, height }: Size, at: Place): StockSheet['size'] {
  return { width: { value: width, at }, height: { value: height, at }, at };
}
