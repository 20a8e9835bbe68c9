import type { Length, Unit } from '../measure/length.ts';
import type { Piece } from '../project/model.ts';
import type { Edge, NetAsWritten } from '../project/net-as-written.ts';
import { writeName } from '../project/ref.ts';
import type { At, Place } from '../project/source.ts';
import { caliperOf, stockOf } from '../shape/caliper.ts';
import { columnName, parsePatch } from '../shape/cells.ts';
import { type Refold, refoldFor } from '../shape/closure/refold.ts';
import { folded, type Soundness } from '../shape/closure/sound.ts';
import type { FoldedShape } from '../shape/folded-shape.ts';
import type { Fold, Net } from '../shape/net.ts';
import { patchName } from '../shape/patches.ts';
import { sheetsOf } from '../shape/sheets.ts';
import { lineOf, positionOf } from '../shape/tube.ts';
import type { ProofContext } from './rule.ts';

/** What every finding on a folded sheet tells: its piece, and the unit of its lengths. */
export type OfPiece = { readonly piece: string; readonly unit: Unit };

/** A sheet of a project that is folded. */
export type FoldedSheet = {
  readonly body: Piece['body'];
  readonly of: OfPiece;
  /** As a person names it: `box`, or `box.lid` for a further sheet of a form. */
  readonly name: string;
  /** Where its shape as a whole is written: its form, else its piece. */
  readonly at: Place;
  /** The net that folds. */
  readonly net: Net;
  readonly shape: FoldedShape;
  readonly caliper: Length;
  readonly soundness: Soundness;
};

/** Of what is looked at now: many rules ask for them. */
const known: WeakMap<ProofContext, readonly FoldedSheet[]> = new WeakMap<
  ProofContext,
  readonly FoldedSheet[]
>();

/** Every sheet of a project that has folds, folded. */
export function foldedSheets(context: ProofContext): readonly FoldedSheet[] {
  const sheets = known.get(context) ?? foldSheets(context);
  known.set(context, sheets);
  return sheets;
}

function foldSheets({ project, shapes }: ProofContext): readonly FoldedSheet[] {
  return [...project.pieces.values()].flatMap((piece) => {
    const { id, body } = piece;
    const caliper = caliperOf(stockOf(piece, project)).thickness;
    const of = { piece: id.value, unit: project.unit };
    const at = body.kind === 'form' ? body.form.at : id.at;
    return sheetsOf(shapes.nets, id.value)
      .filter(({ net }) => net.folds.length > 0 || net.panels.length > 1)
      .map((sheet) => {
        const name = writeName({ piece: id.value, part: sheet.name });
        const { shape, soundness } = folded(sheet.net, caliper);
        return { body, of, name, at, net: shape.net, shape, caliper, soundness };
      });
  });
}

/** Those whose body closes, so that ends, flaps and glue can be judged. */
export function closedSheets(context: ProofContext): readonly FoldedSheet[] {
  return foldedSheets(context).filter(({ soundness }) => soundness === 'closes');
}

/** The number a score line was written as, and the edge it is measured from. */
type WrittenScore = { readonly from: Edge; readonly position: At<Length> };

/** The number of the score line that lies so far from the left (or top) edge; undefined where a form made it. */
function writtenScore(
  { body, net }: FoldedSheet,
  lines: 'upright' | 'across',
  position: Length,
): WrittenScore | undefined {
  if (body.kind !== 'net') return undefined;
  const [near, far] = lines === 'upright' ? ['left', 'right'] : ['top', 'bottom'];
  const extent = lines === 'upright' ? net.size.width : net.size.height;
  for (const { from, at } of body.score) {
    if (from.value !== near && from.value !== far) continue;
    const found = at.find(({ value }) =>
      (from.value === near ? value : extent.minus(value)).equals(position),
    );
    if (found) return { from: from.value, position: found };
  }
  return undefined;
}

/** Where to point for a fold: at its score line's number, else at the shape. */
export function foldPlace(sheet: FoldedSheet, fold: Fold): Place {
  const lines = lineOf(fold);
  const written = lines === 'slanted' ? undefined : writtenScore(sheet, lines, positionOf(fold));
  return written?.position.at ?? sheet.at;
}

/** A score line to be moved: the edge it is measured from, where it is and where it should be. */
export type LineMove = { readonly from: Edge; readonly now: Length; readonly better: Length };

/** A score line moved on, towards right or bottom, and where its number is; undefined where a form made it. */
export function moveScore(
  sheet: FoldedSheet,
  lines: 'upright' | 'across',
  position: Length,
  by: Length,
): { readonly at: Place; readonly move: LineMove } | undefined {
  const written = writtenScore(sheet, lines, position);
  if (!written) return undefined;
  const { from } = written;
  const { value: now, at } = written.position;
  const isFar = from === 'right' || from === 'bottom';
  return { at, move: { from, now, better: isFar ? now.minus(by) : now.plus(by) } };
}

/** The words under `folds:` that say how a fold is folded; the shape where nothing does. */
export function foldWords(sheet: FoldedSheet, fold: Fold): Place {
  return writtenFold(sheet, fold)?.at ?? sheet.at;
}

/** A score line as `folds:` names it, and where that is written, if it is. */
export type WrittenFold = { readonly name: string; readonly at?: Place };

/**
 * A score line as `folds:` names it, `3|4`, or `B1|B2` where that says it, and where that is written, if it is;
 * undefined where a form made it.
 */
export function writtenFold({ body, net }: FoldedSheet, fold: Fold): WrittenFold | undefined {
  if (body.kind !== 'net') return undefined;
  const ofCells = body.folds.findLast(
    ({ line }) => 'cells' in line && line.cells.every((cell) => fold.panels.includes(panelNamed(body, cell))),
  );
  if (ofCells && 'cells' in ofCells.line) return { name: ofCells.line.cells.join('|'), at: ofCells.at };
  if (lineOf(fold) === 'slanted') return { name: fold.panels.join('|') };
  const { between, line, name } = scoreLineOf(net, fold);
  const written = body.folds.findLast(
    ({ line: each, direction }) =>
      !('cells' in each) && each.between === between && each.line === line && direction !== 'none',
  );
  return { name, ...(written && { at: written.at }) };
}

/** The score line that a fold is on: `3|4` is the third between rows. */
function scoreLineOf(
  net: Net,
  fold: Fold,
): { readonly between: 'columns' | 'rows'; readonly line: number; readonly name: string } {
  const between = lineOf(fold) === 'upright' ? 'columns' : 'rows';
  const line = linesOf(net, between).filter((each) => each.lessThan(positionOf(fold))).length;
  return { between, line, name: `${bandName(between, line)}|${bandName(between, line + 1)}` };
}

/** A column or a row, as a sheet names it. */
function bandName(bands: 'columns' | 'rows', index: number): string {
  return bands === 'columns' ? columnName(index) : `${index + 1}`;
}

/** The panel that a sheet calls by its name or by its cell. */
function panelNamed({ panels }: NetAsWritten, text: string): string {
  const patch = parsePatch(text);
  const isIt = (name: string): boolean => name.toLowerCase() === text.toLowerCase();
  const named = panels.find(({ name, cell }) => isIt(name.value) || patchName(cell.value) === patch);
  return named?.name.value ?? patch ?? text;
}

/** Where the score lines between columns (or rows) lie, from the left (or the top), each once. */
function linesOf({ scores, size }: Net, between: 'columns' | 'rows'): readonly Length[] {
  const [near, far, extent] =
    between === 'columns'
      ? (['left', 'right', size.width] as const)
      : (['top', 'bottom', size.height] as const);
  const all = scores
    .filter(({ from }) => from === near || from === far)
    .flatMap(({ from, at }) => at.map((each) => (from === near ? each : extent.minus(each))));
  return all.filter((line, index) => all.findIndex((each) => each.equals(line)) === index);
}

/** The cuts that would part panels, as `slit:` names them: `A|B 4`, `B|C 2-3`; none where a form made the folds. */
export function writtenSlits({ body, net }: FoldedSheet, folds: readonly Fold[]): readonly string[] {
  const slits: {
    readonly line: string;
    readonly bands: 'columns' | 'rows';
    readonly from: number;
    to: number;
  }[] = [];
  for (const fold of body.kind === 'net' ? folds : []) {
    if (lineOf(fold) === 'slanted') continue;
    const { between, name: line } = scoreLineOf(net, fold);
    const bands = between === 'columns' ? 'rows' : 'columns';
    const axis = between === 'columns' ? 'y' : 'x';
    const lines = linesOf(net, bands);
    const from = lines.filter((each) => !each.greaterThan(fold.from[axis])).length;
    const to = lines.filter((each) => each.lessThan(fold.to[axis])).length;
    const before = slits.at(-1);
    if (before?.line === line && before.to === from - 1) before.to = to;
    else slits.push({ line, bands, from, to });
  }
  return slits.map(({ line, bands, from, to }) => {
    const rows = [...new Set([from, to])].map((band) => bandName(bands, band));
    return `${line} ${rows.join('-')}`;
  });
}

/** How a score line would have to be folded. */
export type Better = Pick<Refold, 'direction' | 'angle'>;

/** The one written score line that, folded otherwise, makes a shape come right; of those only that may be to blame. */
export function refoldedLine(
  sheet: FoldedSheet,
  panels: readonly string[],
  isRight: (shape: FoldedShape) => boolean,
  mayBlame: (fold: Fold, better: Better) => boolean = () => true,
): { readonly name: string; readonly at?: Place; readonly better: Better } | undefined {
  const { net, shape, caliper } = sheet;
  const found = refoldFor(net, shape.base, panels, (each) => isRight(folded(each, caliper).shape));
  const [first] = found?.folds ?? [];
  const written = found && first && mayBlame(first, found) ? writtenFold(sheet, first) : undefined;
  if (!found || !written) return undefined;
  return { ...written, better: { direction: found.direction, angle: found.angle } };
}

/** `say "3|4: mountain 90" under "folds:"`. */
export function sayRefold(line: string, { direction, angle }: Better): string {
  return `say "${line}: ${direction} ${angle}" under "folds:"`;
}
