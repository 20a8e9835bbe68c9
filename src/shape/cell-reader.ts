import type { Finding, RuleFacts } from '../project/finding.ts';
import type { Cell, CellName, NetAsWritten, Slit, WrittenLine } from '../project/net-as-written.ts';
import type { At, Place } from '../project/source.ts';
import { parsePatch } from './cells.ts';
import { type Patch, patchName, type Seam } from './patches.ts';

/** What is wrong with a name of a cell or a line. */
type Misnamed = Extract<RuleFacts['unknown-reference'], { readonly last: Cell }>['wrong'];

/** Reads references to the cells, parts of cells and lines of a grid, each patch known by its address: `C2`, `C2 left`. */
export class CellReader {
  /** The address under each name. */
  readonly names: Map<string, string> = new Map<string, string>();
  readonly findings: Finding[] = [];
  readonly #piece: string;
  readonly #last: Cell;
  readonly #addresses: readonly string[];
  readonly #trimmed: ReadonlySet<string>;
  readonly #placeOf: ReadonlyMap<string, Place>;

  constructor(piece: string, patches: readonly Patch[], written: NetAsWritten) {
    this.#piece = piece;
    this.#last = patches.at(-1)?.cell ?? { column: 0, row: 0 };
    this.#addresses = patches.map(patchName);
    this.#placeOf = new Map(written.panels.map(({ name }) => [name.value, name.at]));
    for (const { name, cell } of written.panels)
      this.#readName(name, { ...cell, value: patchName(cell.value) });
    this.#trimmed = new Set(written.trim.flatMap((name) => this.#resolve(name, 'trim')));
  }

  isTrimmed(address: string): boolean {
    return this.#trimmed.has(address);
  }

  /** The patches that a name stands for: all the parts of a cell that an angled line cuts up. */
  addressesOf(name: string): readonly string[] {
    const address = this.names.get(name) ?? parsePatch(name);
    return this.#addresses.filter((each) => each === address || each.startsWith(`${address} `));
  }

  /** The patch named; one that isn't there, is left of the paper or is in parts is reported. */
  address(written: CellName, key: string): string | undefined {
    const [address, ...others] = this.#resolve(written, key);
    if (address === undefined) return undefined;
    if (others.length > 0) {
      this.#report(written.at, { kind: 'in parts', key, name: written.value, parts: [address, ...others] });
      return undefined;
    }
    if (!this.#trimmed.has(address)) return address;
    this.#report(written.at, { kind: 'trimmed off', key, name: written.value });
    return undefined;
  }

  /** Whether a line is there, as far as it is named. */
  hasLine(line: WrittenLine, at: Place, key: 'slit' | 'folds', seams: readonly Seam[]): boolean {
    if ('cells' in line) return this.#hasSeam(line.cells, at, key, seams);
    const { column, row } = this.#last;
    const [across, along] = line.between === 'columns' ? [column, row] : [row, column];
    const isThere = line.line < across;
    if (isThere && (line.to ?? 0) <= along) return true;
    this.#report(at, { kind: 'no line', key, between: line.between, line: line.line, isShort: isThere });
    return false;
  }

  /** Says which named panels are trimmed off by their cells, unless something else that names them says so already. */
  reportTrimmedNames({ panels, trim }: NetAsWritten): void {
    const told = new Set(this.findings.map(({ at: { start, end, file } }) => file.text.slice(start, end)));
    for (const { name, cell } of panels) {
      const address = this.names.get(name.value);
      const isTrimmed = address !== undefined && this.#trimmed.has(address);
      if (!isTrimmed || told.has(name.value) || trim.some(({ value }) => value === name.value)) continue;
      this.#report(name.at, { kind: 'named and trimmed', cell: patchName(cell.value), name: name.value });
    }
  }

  /** Says that a panel would be stuck to itself. */
  reportSelf({ value: name, at }: CellName): void {
    this.#report(at, { kind: 'glued to itself', name });
  }

  /** Says that a line left out would join what is trimmed off. */
  reportTrimmed(line: string, trimmed: string, at: Place): void {
    this.#report(at, { kind: 'joins trimmed', line, name: trimmed });
  }

  /** Says that a panel has two names. */
  reportNamed(name: string, first: string): void {
    const [at, cell] = [this.#placeOf.get(name), this.names.get(name)];
    if (at && cell) this.#report(at, { kind: 'named already', cell, name: first });
  }

  #hasSeam(cells: readonly [string, string], at: Place, key: string, seams: readonly Seam[]): boolean {
    for (const name of cells) if (this.#resolve({ value: name, at }, key).length === 0) return false;
    const [ones, others] = cells.map((name) => this.addressesOf(name));
    const isThere = seams.some(({ patches }) => {
      const [a = '', b = ''] = patches.map(patchName);
      return (ones?.includes(a) && others?.includes(b)) || (ones?.includes(b) && others?.includes(a));
    });
    if (!isThere) this.#report(at, { kind: 'not beside', key, cells });
    return isThere;
  }

  #readName({ value: name, at }: CellName, { value: address, at: cellAt }: At<string>): void {
    const taken = [...this.names].find(([, other]) => other === address);
    const there = this.addressesOf(address);
    if (there.length === 0) this.#report(cellAt, { kind: 'cell outside', cell: address, name });
    else if (there.length > 1)
      this.#report(cellAt, { kind: 'in parts', key: 'panels', name: address, parts: there });
    else if (taken) this.#report(at, { kind: 'named already', cell: address, name: taken[0] });
    else this.names.set(name, address);
  }

  #resolve({ value: name, at }: CellName, key: string): readonly string[] {
    const found = this.addressesOf(name);
    if (found.length > 0) return found;
    if (parsePatch(name)) this.#report(at, { kind: 'no cell', key, name });
    else this.#report(at, { kind: 'no panel', key, name, among: [...this.names.keys()] });
    return found;
  }

  #report(at: Place, wrong: Misnamed): void {
    this.findings.push({
      rule: 'unknown-reference',
      at,
      facts: { piece: this.#piece, last: this.#last, wrong },
    });
  }
}

/** Whether a line, as it is named, is the one that a seam is a stretch of. */
export function liesOn(line: WrittenLine, { patches, stretch }: Seam, reader: CellReader): boolean {
  if (!('cells' in line)) {
    const { from, to } = line;
    if (stretch?.between !== line.between || stretch.line !== line.line) return false;
    return from === undefined || to === undefined || (from <= stretch.along && stretch.along <= to);
  }
  const [first = '', second = ''] = patches.map(patchName);
  const [ones = [], others = []] = line.cells.map((name) => reader.addressesOf(name));
  return (
    (ones.includes(first) && others.includes(second)) || (ones.includes(second) && others.includes(first))
  );
}

/** A slit that is where the grid has a line. */
export function isSlit(slits: readonly Slit[], { stretch }: Seam): boolean {
  return (
    stretch !== undefined &&
    slits.some(
      ({ between, line, from, to }) =>
        between === stretch.between && line === stretch.line && from <= stretch.along && stretch.along <= to,
    )
  );
}

/** What a seam is called under `folds:`. */
export function seamName({ patches }: Seam): string {
  return patches.map(patchName).join('|');
}
