import type { Unit } from '../measure/length.ts';
import type { Finding, RuleFacts, RuleId } from '../project/finding.ts';
import type { AtSize, Piece } from '../project/model.ts';
import type { Cell, CellName, FoldSetting, NetAsWritten, Slit } from '../project/net-as-written.ts';
import type { Place } from '../project/source.ts';
import { cellName, parseCell } from './cells.ts';
import type { FormPart } from './form.ts';
import { type FoldedBy, type Grid, gridNet } from './grid.ts';
import type { Mate, Net, PanelRole, Shape } from './net.ts';
import { gatherScoreLines } from './score-lines.ts';

/** What was made of a piece, as far as it could be, and what stood in the way. */
export type NetReading = {
  readonly net?: Net;
  /** Further sheets, of a form made of several. */
  readonly parts?: readonly FormPart[];
  readonly findings: readonly Finding[];
};

/** What is wrong with a name of a cell or a line. */
type Misnamed = Extract<RuleFacts['unknown-reference'], { readonly last: Cell }>['wrong'];

type WrittenNet = NetAsWritten & { readonly cut: AtSize };

/** Findings that leave no doubt what is meant, so that the net can be made all the same. */
const HARMLESS: ReadonlySet<RuleId> = new Set(['score-order']);

/** The net of a piece given by its score lines, or what is wrong with them. */
export function explicitNet(piece: Piece, written: WrittenNet, unit: Unit): NetReading {
  const { grid, findings } = readGrid(piece, written, unit);
  const sound = findings.every(({ rule }) => HARMLESS.has(rule));
  return sound ? { net: gridNet(grid), findings } : { findings };
}

/** The grid a piece's score lines make; only a grid without grave findings may be made a net. */
function readGrid(
  piece: Piece,
  written: WrittenNet,
  unit: Unit,
): { readonly grid: Grid; readonly findings: readonly Finding[] } {
  const { cut, score } = written;
  const direction = { piece: piece.id.value, unit };
  const across = gatherScoreLines(score, { ...direction, extent: cut.width, between: 'columns' });
  const down = gatherScoreLines(score, { ...direction, extent: cut.height, between: 'rows' });
  const reader = new CellReader(piece.id.value, across.lines.length + 1, down.lines.length + 1, written);
  const ofLines = [...across.findings, ...down.findings];
  const slits = written.slit.filter((slit) => reader.hasLine(slit, 'slit'));
  const taper = reader.panels(written.taper, 'taper');
  const folds = written.folds.filter((fold) => reader.hasLine(fold, 'folds'));
  const grid: Grid = {
    size: { width: cut.width.value, height: cut.height.value },
    across: across.lines,
    down: down.lines,
    cells: reader.layout(),
    names: new Set(reader.names.keys()),
    roles: ROLES,
    taper,
    foldAt: ({ between, line, along }) => {
      const isOn = (each: Slit | FoldSetting): boolean => each.between === between && each.line === line;
      if (slits.some((slit) => isOn(slit) && slit.from <= along && along <= slit.to)) return undefined;
      return folds.findLast(isOn) ?? MOUNTAIN;
    },
    glue: reader.mates(written.glue),
    opens: reader.panels(written.opens, 'opens'),
    scores: score.map(({ from, at }) => ({ from: from.value, at: at.map(({ value }) => value) })),
    corners: piece.corners?.value,
  };
  // With a score line missing or doubled every cell behind it has another name: those findings would mislead.
  const grave = ofLines.some(({ rule }) => !HARMLESS.has(rule));
  return { grid, findings: grave ? ofLines : [...ofLines, ...reader.findings] };
}

/** A score line nothing is said of. */
const MOUNTAIN: FoldedBy = { direction: 'mountain', angle: 90 };

/**
 * Names that say which side a picture shows: a net by its score lines has no other word for it, and with other names it
 * is shown from its largest side. No rule asks for it.
 */
const ROLES: ReadonlyMap<string, PanelRole> = new Map([
  ['front', 'front'],
  ['back', 'back'],
  ['bottom', 'under'],
  ['floor', 'under'],
  ['base', 'under'],
  ['top', 'over'],
]);

/** Reads references to cells and lines of a grid whose number of columns and rows is known. */
class CellReader {
  readonly names: Map<string, Cell> = new Map<string, Cell>();
  readonly findings: Finding[] = [];
  readonly #piece: string;
  readonly #columns: number;
  readonly #rows: number;
  readonly #trimmed: ReadonlySet<string>;

  constructor(piece: string, columns: number, rows: number, written: WrittenNet) {
    this.#piece = piece;
    this.#columns = columns;
    this.#rows = rows;
    for (const { name, cell } of written.panels) this.#readName(name, cell);
    this.#trimmed = new Set(written.trim.flatMap((name) => this.#address(name, 'trim') ?? []));
  }

  /** The panel in each cell, row by row: its name, else its address; empty where it is trimmed off. */
  layout(): string[][] {
    return Array.from({ length: this.#rows }, (_, row) =>
      Array.from({ length: this.#columns }, (_each, column) => {
        const address = cellName({ column, row });
        return this.#trimmed.has(address) ? '' : this.#idOf(address);
      }),
    );
  }

  /** The panels named; those that aren't there or left of the paper are reported and left out. */
  panels(written: readonly CellName[], key: string): string[] {
    return written.flatMap((name) => this.#panel(name, key) ?? []);
  }

  mates(written: NetAsWritten['glue']): Mate[] {
    return written.flatMap(({ from, to }) => {
      const [first, second] = [this.#panel(from, 'glue'), this.#panel(to, 'glue')];
      if (first === undefined || second === undefined) return [];
      const at = { file: from.at.file, start: from.at.start, end: Math.max(from.at.end, to.at.end) };
      return [{ from: first, to: second, at }];
    });
  }

  hasLine({ between, line, at, ...stretch }: Slit | FoldSetting, key: 'slit' | 'folds'): boolean {
    const [across, along] = between === 'columns' ? [this.#columns, this.#rows] : [this.#rows, this.#columns];
    const end = 'to' in stretch ? stretch.to : 0;
    const isThere = line + 1 < across;
    if (isThere && end < along) return true;
    this.#report(at, { kind: 'no line', key, between, line, isShort: isThere });
    return false;
  }

  #readName(
    { value: name, at }: CellName,
    { value: cell, at: cellAt }: NetAsWritten['panels'][number]['cell'],
  ): void {
    const taken = [...this.names].find(([, other]) => cellName(other) === cellName(cell));
    if (!this.#has(cell)) this.#report(cellAt, { kind: 'cell outside', cell, name });
    else if (taken) this.#report(at, { kind: 'named already', cell, name: taken[0] });
    else this.names.set(name, cell);
  }

  #panel(written: CellName, key: string): string | undefined {
    const address = this.#address(written, key);
    if (address === undefined || !this.#trimmed.has(address)) return address && this.#idOf(address);
    this.#report(written.at, { kind: 'trimmed off', key, name: written.value });
    return undefined;
  }

  #idOf(address: string): string {
    return [...this.names].find(([, cell]) => cellName(cell) === address)?.[0] ?? address;
  }

  #address({ value: name, at }: CellName, key: string): string | undefined {
    const cell = this.names.get(name) ?? parseCell(name);
    if (cell && this.#has(cell)) return cellName(cell);
    if (cell) this.#report(at, { kind: 'no cell', key, name });
    else this.#report(at, { kind: 'no panel', key, name, among: [...this.names.keys()] });
    return undefined;
  }

  #has({ column, row }: Cell): boolean {
    return column < this.#columns && row < this.#rows;
  }

  #report(at: Place, wrong: Misnamed): void {
    const last = { column: this.#columns - 1, row: this.#rows - 1 };
    this.findings.push({ rule: 'unknown-reference', at, facts: { piece: this.#piece, last, wrong } });
  }
}

/** The net of a flat cut: one panel with the piece's own name. */
export function flatNet({ id, corners }: Piece, cut: AtSize): Net {
  const net = gridNet({
    size: { width: cut.width.value, height: cut.height.value },
    across: [],
    down: [],
    cells: [[id.value]],
    names: new Set([id.value]),
    roles: new Map(),
    taper: [],
    foldAt: () => undefined,
    glue: [],
    scores: [],
    corners: corners?.value,
  });
  const isSquare = cut.width.value.equals(cut.height.value);
  const isRound = isSquare && corners && !corners.value.times(2).lessThan(cut.width.value);
  return isRound ? { ...net, shape: CIRCLE } : net;
}

/** What a square is whose corners meet. */
const CIRCLE: Shape = { name: 'circle', lengths: {}, counts: {} };
