import type { Size } from '../measure/size.ts';
import type { RoundedCorners } from '../project/corners.ts';
import type { Slit } from '../project/net-as-written.ts';
import { isOnSegment, isSamePoint, middleOf, sideOf } from './exact.ts';
import {
  type BoardScores,
  boundsOf,
  type FlatPoint,
  type FlatSegment,
  type Fold,
  type Mate,
  type Net,
  type Panel,
  type PanelRole,
} from './net.ts';
import { type CornerCut, cutCorners } from './outline.ts';
import { type GridLines, type Patch, patchesOf, patchName, type Seam, seamsOf } from './patches.ts';
import { unionOutlines } from './union-outline.ts';

/** How two panels fold against each other; without a stage, that is derived. */
export type FoldedBy = Pick<Fold, 'direction' | 'angle' | 'stage'>;

/**
 * A net on a grid of score lines, as explicit nets and most forms are: every cell that is not trimmed is a panel, or
 * several with one name are.
 */
export type Grid = GridLines & {
  readonly size: Size;
  /** The panel in each cell, row by row from the top: its name, else the cell's; empty where it is trimmed off. */
  readonly cells: readonly (readonly string[])[];
  /** The same of each part of a cell that an angled line cuts up, by the part's name: `C2 left`. */
  readonly parts?: ReadonlyMap<string, string>;
  /** The panels that have a name. */
  readonly names: ReadonlySet<string>;
  /** What panels are for, of those that are for something. */
  readonly roles: ReadonlyMap<string, PanelRole>;
  /** How two neighbors fold against each other; undefined where they are slit apart. */
  readonly foldAt: (seam: Seam, panels: Fold['panels']) => FoldedBy | undefined;
  /** Panels whose free corners are cut at an angle. */
  readonly taper: readonly string[];
  readonly glue: readonly Mate[];
  /** Panels that are meant to move once all is made. */
  readonly opens?: readonly string[];
  /** As said at the board. */
  readonly scores: readonly BoardScores[];
  /** Rounds such free corners of every panel that is not tapered. */
  readonly corners?: RoundedCorners | undefined;
};

/**
 * The exact net of a grid.
 * @throws Error on a grid that cannot be: lines out of order, glue on no panel. What a person wrote is checked
 * before it becomes a grid.
 */
export function gridNet(grid: Grid): Net {
  const { size, scores, glue, opens = [], slants = [] } = grid;
  const patches = patchesOf(grid);
  const idOf = (patch: Patch): string => panelAt(grid, patch);
  const ids = [...new Set(patches.map(idOf))].filter((id) => id !== '');
  const joints = jointsOf(grid, patches);
  const folds = runningOn(joints.flatMap(({ fold }) => fold ?? []));
  const cut = ids.map((id) =>
    cutPanel(
      id,
      patches.filter((patch) => idOf(patch) === id),
      folds,
      grid,
    ),
  );
  const stray = glue.flatMap(({ from, to }) => [from, to]).find((id) => !ids.includes(id));
  if (stray !== undefined) throw new Error(`the grid has no panel "${stray}" to glue`);
  return {
    size,
    panels: cut.map(({ panel }) => panel),
    folds,
    scores,
    ...(slants.length > 0 && { slants }),
    slits: slitsOf(grid).map(({ segment }) => segment),
    waste: [
      ...patches.filter((patch) => idOf(patch) === '').map(({ outline }) => outline),
      ...cut.flatMap(({ waste }) => waste),
    ],
    glue,
    ...(opens.length > 0 && { opens }),
  };
}

/** The panel a patch belongs to; empty where it is trimmed off. */
function panelAt({ cells, parts }: Grid, patch: Patch): string {
  const { cell, part } = patch;
  return (part ? parts?.get(patchName(patch)) : cells[cell.row]?.[cell.column]) ?? '';
}

/** The cuts between patches that are slit apart; those that follow one another on a line are one. */
export function slitsOf(grid: Grid): { readonly slit: Omit<Slit, 'at'>; readonly segment: FlatSegment }[] {
  const found: ReturnType<typeof slitsOf> = [];
  for (const { seam, fold } of jointsOf(grid, patchesOf(grid))) {
    if (fold || !seam.stretch) continue;
    const { between, line, along } = seam.stretch;
    const index = found.findIndex(
      ({ slit, segment }) =>
        slit.between === between && slit.line === line && isSamePoint(segment.to, seam.from),
    );
    const before = found[index];
    if (before)
      found[index] = {
        slit: { ...before.slit, to: along },
        segment: { from: before.segment.from, to: seam.to },
      };
    else
      found.push({
        slit: { between, line, from: along, to: along },
        segment: { from: seam.from, to: seam.to },
      });
  }
  return found;
}

/** A seam that is folded or slit; one within a panel, where there is no line, is none. */
type GridJoint = { readonly seam: Seam; readonly fold?: Fold };

function jointsOf(grid: Grid, patches: readonly Patch[]): readonly GridJoint[] {
  return seamsOf(patches).flatMap((seam): GridJoint[] => {
    const [first, second] = seam.patches;
    const panels = [panelAt(grid, first), panelAt(grid, second)] as const;
    if (panels.includes('')) return [];
    const by = grid.foldAt(seam, panels);
    if (!by) return [{ seam }];
    if (panels[0] === panels[1]) return [];
    const { from, to } = seam;
    const { direction, angle, stage } = by;
    return [{ seam, fold: { panels, from, to, direction, angle, ...(stage !== undefined && { stage }) } }];
  });
}

/** Folds between two panels that follow one another on a line, as one. */
function runningOn(folds: readonly Fold[]): readonly Fold[] {
  const found: Fold[] = [];
  for (const fold of folds) {
    const index = found.findIndex((each) => goesOn(each, fold));
    const before = found[index];
    if (before) found[index] = { ...before, to: fold.to };
    else found.push(fold);
  }
  return found;
}

function goesOn(before: Fold, fold: Fold): boolean {
  return (
    isSamePoint(before.to, fold.from) &&
    before.panels.every((panel) => fold.panels.includes(panel)) &&
    before.direction === fold.direction &&
    before.angle === fold.angle &&
    sideOf(before, fold.to).sign === 0
  );
}

/** A panel of one patch or several, and what is cut off its corners. */
function cutPanel(
  id: string,
  patches: readonly Patch[],
  folds: readonly Fold[],
  { taper, corners, names, roles }: Grid,
): { readonly panel: Panel; readonly waste: readonly (readonly FlatPoint[])[] } {
  const [only, ...others] = patches.map(({ outline }) => outline);
  const whole = (others.length === 0 ? only : unionOutlines(patches.map(({ outline }) => outline))[0]) ?? [];
  const own = folds.filter(({ panels }) => panels.includes(id));
  const hinges = whole.map((from, index) => {
    const side = { from, to: whole[(index + 1) % whole.length] ?? from };
    return own.some((fold) => isOnSegment(side, middleOf(fold)));
  });
  const untapered: CornerCut = corners ? { kind: 'round', corners } : { kind: 'square' };
  const { outline, waste } = cutCorners(whole, hinges, taper.includes(id) ? { kind: 'taper' } : untapered);
  const role = roles.get(id);
  const panel = {
    id,
    ...(names.has(id) && { name: id }),
    outline,
    box: boundsOf(whole),
    ...(role && { role }),
  };
  return { panel, waste };
}
