import type { Unit } from '../measure/length.ts';
import { radiiOf } from '../project/corners.ts';
import type { Finding, RuleId } from '../project/finding.ts';
import type { Piece } from '../project/model.ts';
import type { CellName, FoldSetting, NetAsWritten, Slit } from '../project/net-as-written.ts';
import type { AtSize } from '../project/sizes-as-written.ts';
import { layAngledScores } from './angled-scores.ts';
import { CellReader, isSlit, liesOn, seamName } from './cell-reader.ts';
import type { FormPart } from './form.ts';
import { type FoldedBy, type Grid, gridNet } from './grid.ts';
import { JoinedPanels, type SaidOf } from './joined-panels.ts';
import type { Mate, Net, PanelRole } from './net.ts';
import { partScores } from './part-scores.ts';
import { type GridLines, type Patch, patchesOf, patchName, type Seam, seamsOf } from './patches.ts';
import { gatherScoreLines } from './score-lines.ts';
import { CIRCLE } from './tracing/curves.ts';

/** What was made of a piece, as far as it could be, and what stood in the way. */
export type NetReading = {
  readonly net?: Net;
  /** Further sheets, of a form made of several. */
  readonly parts?: readonly FormPart[];
  readonly findings: readonly Finding[];
};

type WrittenNet = NetAsWritten & { readonly cut: AtSize };

/** Findings that leave no doubt what is meant, so that the net can be made all the same. */
const HARMLESS: ReadonlySet<RuleId> = new Set(['score-order']);

/** The net of a piece given by its score lines, or what is wrong with them. */
export function explicitNet(piece: Piece, written: WrittenNet, unit: Unit): NetReading {
  const { lines, findings } = readLines(piece, written, unit);
  const isGrave = findings.some(({ rule }) => !HARMLESS.has(rule));
  // With a score line missing or doubled every cell behind it has another name: what is found there would mislead.
  if (isGrave) return { findings };
  const { grid, findings: further } = readGrid(piece, written, lines);
  return further.length === 0 ? { net: gridNet(grid), findings } : { findings: [...findings, ...further] };
}

/** Where the score lines lie, those at an angle among them. */
function readLines(
  piece: Piece,
  { cut, score, slants }: WrittenNet,
  unit: Unit,
): { readonly lines: GridLines; readonly findings: readonly Finding[] } {
  const direction = { piece: piece.id.value, unit };
  const across = gatherScoreLines(score, { ...direction, extent: cut.width, between: 'columns' });
  const down = gatherScoreLines(score, { ...direction, extent: cut.height, between: 'rows' });
  const size = { width: cut.width.value, height: cut.height.value };
  const lines = { size, across: across.lines, down: down.lines };
  const angled = layAngledScores(piece.id.value, slants, lines);
  return {
    lines: { ...lines, slants: angled.slants },
    findings: [...across.findings, ...down.findings, ...angled.findings],
  };
}

/** A score line nothing is said of. */
const MOUNTAIN: FoldedBy = { direction: 'mountain', angle: 90 };

/** The grid a piece's score lines make; only a grid without findings may be made a net. */
function readGrid(
  piece: Piece,
  written: WrittenNet,
  lines: GridLines,
): { readonly grid: Grid; readonly findings: readonly Finding[] } {
  const patches = patchesOf(lines);
  const seams = seamsOf(patches);
  const reader = new CellReader(piece.id.value, patches, written);
  const slits = written.slit.filter((slit) => reader.hasLine(slit, slit.at, 'slit', seams));
  const folds = written.folds.filter(({ line, at }) => reader.hasLine(line, at, 'folds', seams));
  const said = saidOf(slits, folds, reader);
  const joined = new JoinedPanels(patches, seams, said, reader);
  const idOf = (address: string): string => (reader.isTrimmed(address) ? '' : joined.idOf(address));
  const panels = (names: readonly CellName[], key: string): string[] =>
    names.flatMap((name) => reader.address(name, key) ?? []).map((address) => joined.idOf(address));
  const isThere = (seam: Seam): boolean => said(seam)?.direction !== 'none';
  const grid: Grid = {
    ...lines,
    cells: cellsOf(patches, lines, idOf),
    parts: new Map(
      patches.flatMap((patch) => (patch.part ? [[patchName(patch), idOf(patchName(patch))]] : [])),
    ),
    names: new Set(reader.names.keys()),
    roles: ROLES,
    taper: panels(written.taper, 'taper'),
    foldAt: (seam) => {
      const by = said(seam);
      // Within a panel there is none, whatever it would be.
      return by && (by.direction === 'none' ? MOUNTAIN : { direction: by.direction, angle: by.angle });
    },
    glue: written.glue.flatMap((mate) => readMate(mate, reader, joined) ?? []),
    opens: panels(written.opens, 'opens'),
    scores: partScores(written.score, lines, seams, { isThere, isSlit: (seam) => said(seam) === undefined }),
    corners: piece.corners,
  };
  reportJoints(folds, seams, reader);
  joined.reportNames();
  reader.reportTrimmedNames(written);
  const at = folds.findLast(({ direction }) => direction === 'none')?.at ?? piece.id.at;
  const faults = joined
    .faults(seams, said)
    .map((fault): Finding => ({ rule: 'joined-panel', at, facts: { piece: piece.id.value, ...fault } }));
  return { grid, findings: [...reader.findings, ...faults] };
}

/** What is said of a seam: by two cells before a stretch of a line, by that before all of it; nothing of a slit. */
function saidOf(slits: readonly Slit[], folds: readonly FoldSetting[], reader: CellReader): SaidOf {
  const rank = ({ line }: FoldSetting): number => ('cells' in line ? 2 : line.from === undefined ? 0 : 1);
  const byRank = folds.toSorted((a, b) => rank(a) - rank(b));
  return (seam) =>
    isSlit(slits, seam) ? undefined : (byRank.findLast(({ line }) => liesOn(line, seam, reader)) ?? MOUNTAIN);
}

function cellsOf(
  patches: readonly Patch[],
  { across, down }: GridLines,
  idOf: (address: string) => string,
): string[][] {
  return Array.from({ length: down.length + 1 }, (_, row) =>
    Array.from({ length: across.length + 1 }, (_each, column) => {
      const patch = patches.find(({ cell }) => cell.row === row && cell.column === column);
      return patch && !patch.part ? idOf(patchName(patch)) : '';
    }),
  );
}

function readMate(
  { from, to }: NetAsWritten['glue'][number],
  reader: CellReader,
  joined: JoinedPanels,
): Mate | undefined {
  const [first, second] = [reader.address(from, 'glue'), reader.address(to, 'glue')];
  if (first === undefined || second === undefined) return undefined;
  if (first === second) {
    reader.reportSelf(to);
    return undefined;
  }
  const at = { file: from.at.file, start: from.at.start, end: Math.max(from.at.end, to.at.end) };
  return { from: joined.idOf(first), to: joined.idOf(second), at };
}

/** Says where a stretch that is left out would join what is trimmed off; of a whole line it would do no harm. */
function reportJoints(folds: readonly FoldSetting[], seams: readonly Seam[], reader: CellReader): void {
  for (const { line, direction, at } of folds) {
    if (direction !== 'none' || (!('cells' in line) && line.from === undefined)) continue;
    for (const seam of seams.filter((each) => liesOn(line, each, reader))) {
      const [first, second] = seam.patches.map(patchName);
      const trimmed = [first, second].filter((each) => each !== undefined && reader.isTrimmed(each));
      if (trimmed.length === 1 && trimmed[0]) reader.reportTrimmed(seamName(seam), trimmed[0], at);
    }
  }
}

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
    corners,
  });
  const isSquare = cut.width.value.equals(cut.height.value);
  const isRound = isSquare && radiiOf(corners).every((each) => !each.times(2).lessThan(cut.width.value));
  return isRound ? { ...net, shape: CIRCLE } : net;
}
