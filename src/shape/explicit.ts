import type { Unit } from '../measure/length.ts';
import type { AtSize, Cell, CellName, FoldSetting, NetAsWritten, Piece, Slit } from '../project/model.ts';
import { cellName, columnName, parseCell } from './cells.ts';
import type { FormPart } from './form.ts';
import { type Grid, type GridMate, gridNet } from './grid.ts';
import { nameRemedy } from './nearest.ts';
import type { Net } from './net.ts';
import { gatherScoreLines } from './score-lines.ts';
import type { ShapeProblem } from './shapes.ts';

/** What was made of a piece, as far as it could be, and what stood in the way. */
export type NetReading = {
  readonly net?: Net;
  /** Further sheets, of a form made of several. */
  readonly parts?: readonly FormPart[];
  readonly problems: readonly ShapeProblem[];
};

type Written = NetAsWritten & { readonly cut: AtSize };

/** Problems that leave no doubt what is meant, so that the net can be made all the same. */
const HARMLESS: ReadonlySet<string> = new Set(['score-order']);

/** The net of a piece given by its score lines, or what is wrong with them. */
export function explicitNet(piece: Piece, written: Written, unit: Unit): NetReading {
  const { grid, problems } = readGrid(piece, written, unit);
  const sound = problems.every(({ rule }) => HARMLESS.has(rule));
  return sound ? { net: gridNet(grid), problems } : { problems };
}

/** The grid a piece's score lines make; only a grid without grave problems may be made a net. */
export function readGrid(
  piece: Piece,
  written: Written,
  unit: Unit,
): { readonly grid: Grid; readonly problems: readonly ShapeProblem[] } {
  const size = { width: written.cut.width.value, height: written.cut.height.value };
  const direction = { piece: piece.id.value, unit };
  const { cut, score } = written;
  const across = gatherScoreLines(score, { ...direction, extent: cut.width, between: 'columns' });
  const down = gatherScoreLines(score, { ...direction, extent: cut.height, between: 'rows' });
  const reader = new CellReader(piece.id.value, across.lines.length + 1, down.lines.length + 1, written);
  const lineProblems = [...across.problems, ...down.problems];
  const trim = reader.cells(written.trim, 'trim');
  const grid: Grid = {
    size,
    across: across.lines,
    down: down.lines,
    names: reader.names,
    trim,
    slits: written.slit.filter((slit) => reader.hasLine(slit, 'slit')),
    taper: reader.panels(written.taper, 'taper', trim),
    folds: written.folds.filter((fold) => reader.hasLine(fold, 'folds')),
    glue: reader.mates(written.glue, trim),
    scores: written.score.map(({ from, at }) => ({ from: from.value, at: at.map(({ value }) => value) })),
    ...(piece.corners && { corners: piece.corners.value }),
  };
  // With a score line missing or doubled every cell behind it has another name: those findings would mislead.
  const grave = lineProblems.some(({ rule }) => !HARMLESS.has(rule));
  return { grid, problems: grave ? lineProblems : [...lineProblems, ...reader.problems] };
}

/** Reads references to cells and lines of a grid whose number of columns and rows is known. */
class CellReader {
  readonly names: Map<string, Cell> = new Map<string, Cell>();
  readonly problems: ShapeProblem[] = [];
  readonly #piece: string;
  readonly #columns: number;
  readonly #rows: number;

  constructor(piece: string, columns: number, rows: number, written: Written) {
    this.#piece = piece;
    this.#columns = columns;
    this.#rows = rows;
    for (const { name, cell } of written.panels) this.#readName(name, cell);
  }

  /** The addresses of cells named; those that aren't there are reported and left out. */
  cells(written: readonly CellName[], key: string): string[] {
    return written.flatMap((name) => this.#address(name, key) ?? []);
  }

  /** As `cells`, for a key that only makes sense for what is left of the paper. */
  panels(written: readonly CellName[], key: string, trimmed: readonly string[]): string[] {
    return written.flatMap((name) => this.#panel(name, key, trimmed) ?? []);
  }

  mates(written: NetAsWritten['glue'], trimmed: readonly string[]): GridMate[] {
    return written.flatMap(({ from, to }) => {
      const first = this.#panel(from, 'glue', trimmed);
      const second = this.#panel(to, 'glue', trimmed);
      if (first === undefined || second === undefined) return [];
      const at = { file: from.at.file, start: from.at.start, end: Math.max(from.at.end, to.at.end) };
      return [{ from: first, to: second, at }];
    });
  }

  hasLine(stretch: Slit | FoldSetting, key: 'slit' | 'folds'): boolean {
    const { between, line, at } = stretch;
    const [across, along] = between === 'columns' ? [this.#columns, this.#rows] : [this.#rows, this.#columns];
    const label = (index: number): string => (between === 'columns' ? columnName(index) : `${index + 1}`);
    const end = 'to' in stretch ? stretch.to : 0;
    if (line + 1 < across && end < along) return true;
    const message =
      line + 1 < across
        ? `${key}: the line ${label(line)}|${label(line + 1)} of ${this.#piece} runs through ${along} ${between === 'columns' ? 'rows' : 'columns'} only`
        : `${key}: ${this.#piece} has no score line between ${label(line)} and ${label(line + 1)}`;
    this.problems.push({ rule: 'unknown-reference', message, remedy: this.#extent(), at });
    return false;
  }

  #readName(name: CellName, { value: cell, at }: NetAsWritten['panels'][number]['cell']): void {
    const taken = [...this.names].find(([, other]) => cellName(other) === cellName(cell));
    if (!this.#has(cell)) {
      this.#report(
        `${name.value} is ${cellName(cell)}, which ${this.#piece} doesn't have`,
        this.#extent(),
        at,
      );
    } else if (taken) {
      const message = `${cellName(cell)} of ${this.#piece} is named ${taken[0]} already`;
      this.#report(message, 'give each panel one name', name.at);
    } else this.names.set(name.value, cell);
  }

  #panel(name: CellName, key: string, trimmed: readonly string[]): string | undefined {
    const address = this.#address(name, key);
    if (address === undefined || !trimmed.includes(address)) return address;
    const message = `${key} names ${name.value} of ${this.#piece}, which is trimmed off`;
    this.#report(message, `take ${name.value} out of trim, or out of ${key}`, name.at);
    return undefined;
  }

  #address(name: CellName, key: string): string | undefined {
    const cell = this.names.get(name.value) ?? parseCell(name.value);
    if (cell && this.#has(cell)) return cellName(cell);
    const remedy = cell ? this.#extent() : nameRemedy(name.value, [...this.names.keys()]);
    const noun = cell ? 'cell' : 'panel';
    this.#report(`${key} names ${name.value}, but ${this.#piece} has no such ${noun}`, remedy, name.at);
    return undefined;
  }

  #has({ column, row }: Cell): boolean {
    return column < this.#columns && row < this.#rows;
  }

  #extent(): string {
    const last = columnName(this.#columns - 1);
    return `name one of the columns A to ${last} and the rows 1 to ${this.#rows}, which its score lines make`;
  }

  #report(message: string, remedy: string, at: ShapeProblem['at']): void {
    this.problems.push({ rule: 'unknown-reference', message, remedy, at });
  }
}

/** The net of a flat cut: one panel with the piece's own name. */
export function flatNet(piece: Piece, cut: AtSize): Net {
  return gridNet({
    size: { width: cut.width.value, height: cut.height.value },
    across: [],
    down: [],
    names: new Map([[piece.id.value, { column: 0, row: 0 }]]),
    trim: [],
    slits: [],
    taper: [],
    folds: [],
    glue: [],
    scores: [],
    ...(piece.corners && { corners: piece.corners.value }),
  });
}
