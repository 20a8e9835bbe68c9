import { Length } from '../../src/measure/length.ts';
import { printDecimal, printInches, roundedSign } from '../../src/measure/print.ts';
import type { Fold, Net } from '../../src/shape/net.ts';

/**
 * The lines under a piece that describe a form's net by its score lines, as a person would write them at the board;
 * undefined for a net that is no grid of whole cells (curves, holes, a line folded in two ways). Flaps
 * that the form cuts shorter than their row stay as long as it.
 */
export function asScored(net: Net): string | undefined {
  const { cuts, size, glue, panels, folds } = net;
  if (!cuts || net.strips || net.openings) return undefined;
  const grid = new Lines(net);
  const lines = foldLines(folds, grid);
  if (!lines) return undefined;
  const names = new Map(panels.map(({ id, box }) => [id, grid.cellOf(box.left, box.top)]));
  const cell = (id: string): string => names.get(id) ?? id;
  const list = (key: string, values: readonly string[]): string[] =>
    values.length > 0 ? [`${key}: [${values.join(', ')}]`] : [];
  const scores = net.scores.map(({ from, at }) => `  - { from: ${from}, at: [${at.map(say).join(', ')}] }`);
  return [
    `cut: ${say(size.width)} x ${say(size.height)}`,
    ...(scores.length > 0 ? ['score:', ...scores] : []),
    `panels: { ${panels.map(({ id }) => `${id}: ${cell(id)}`).join(', ')} }`,
    ...list(
      'trim',
      cuts.trim.map(({ column, row }) => address(column, row)),
    ),
    ...list(
      'slit',
      cuts.slit.map(({ between, line, from, to }) => {
        const name = (index: number): string => (between === 'columns' ? letter(index) : `${index + 1}`);
        const along = (index: number): string => (between === 'columns' ? `${index + 1}` : letter(index));
        const run = from === to ? along(from) : `${along(from)}-${along(to)}`;
        return `${name(line)}|${name(line + 1)} ${run}`;
      }),
    ),
    ...list('taper', cuts.taper.map(cell)),
    `folds: { ${[...lines].map(([line, how]) => `${line}: ${how}`).join(', ')} }`,
    ...(glue.length > 0 ? [`glue: { ${glueEntries(net, cell)} }`] : []),
  ].join('\n');
}

/** A map has each key once, and so a flap glued to two panels names the first only. */
function glueEntries({ glue }: Net, cell: (id: string) => string): string {
  const first = new Map<string, string>();
  for (const { from, to } of glue) if (!first.has(from)) first.set(from, to);
  return [...first].map(([from, to]) => `${cell(from)}: ${cell(to)}`).join(', ');
}

/** How every line folds, where it folds one way along its whole length. */
function foldLines(folds: readonly Fold[], grid: Lines): Map<string, string> | undefined {
  const lines = new Map<string, string>();
  for (const { from, to, direction, angle } of folds) {
    const line = grid.lineOf(from, to);
    const how = direction === 'flat' ? 'flat' : `${direction} ${angle}`;
    if (line === undefined || (lines.get(line) ?? how) !== how) return undefined;
    lines.set(line, how);
  }
  return lines;
}

class Lines {
  readonly #across: readonly Length[];
  readonly #down: readonly Length[];

  constructor({ scores, size }: Net) {
    const of = (near: string, far: string, extent: Length): Length[] =>
      [
        Length.zero,
        ...scores.flatMap(({ from, at }) => {
          if (from === near) return [...at];
          return from === far ? at.map((each) => extent.minus(each)) : [];
        }),
      ].sort((a, b) => a.compare(b));
    this.#across = of('left', 'right', size.width);
    this.#down = of('top', 'bottom', size.height);
  }

  cellOf(left: Length, top: Length): string {
    return address(
      this.#across.findLastIndex((line) => !line.greaterThan(left)),
      this.#down.findLastIndex((line) => !line.greaterThan(top)),
    );
  }

  lineOf(from: Fold['from'], to: Fold['to']): string | undefined {
    if (from.x.equals(to.x)) {
      const index = this.#across.findIndex((line) => line.equals(from.x));
      return index > 0 ? `${letter(index - 1)}|${letter(index)}` : undefined;
    }
    const index = this.#down.findIndex((line) => line.equals(from.y));
    return from.y.equals(to.y) && index > 0 ? `${index}|${index + 1}` : undefined;
  }
}

function letter(index: number): string {
  return String.fromCharCode('A'.charCodeAt(0) + index);
}

function address(column: number, row: number): string {
  return `${letter(column)}${row + 1}`;
}

function say(length: Length): string {
  if (roundedSign(length, 'in') === '') return `${printInches(length, 'plain')} in`;
  return `${printDecimal(length, 'mm', 3)} mm`;
}
