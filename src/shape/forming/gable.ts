import { Length } from '../../measure/length.ts';
import type { RoundedCorners } from '../../project/corners.ts';
import { type FoldedBy, type Grid, gridNet } from '../grid.ts';
import type { FlatPoint, FlatSegment, Net, PanelRole } from '../net.ts';

/** A gable box from score line to score line, and the sheet it is cut from. */
type GableMeasures = {
  readonly width: Length;
  readonly depth: Length;
  readonly height: Length;
  /** From the eaves up the slope to the ridge. */
  readonly roof: Length;
  readonly handle: Length;
  readonly tab: Length;
};

/** Angles of the closed roof, in degrees out of the flat. */
type RoofAngles = {
  /** By how much roof and gables lean inward at the eaves, and the handles turn upright again at the ridge. */
  readonly lean: number;
  /** Between a gable and the gussets beside it. */
  readonly gusset: number;
};

/**
 * The roof over half a depth `a` along a slope `r` leans by the angle whose sine is a / r. A gable leans as far: its
 * apex comes to lie on the ridge, `a` in from the end of it. Its gussets then lie in the planes of the roof; the
 * angle of gable and gusset is that of the ways in both planes square to the line between them.
 */
function roofAngles({ depth, roof }: Pick<GableMeasures, 'depth' | 'roof'>): RoofAngles {
  const [a, r] = [depth.mm / 2, roof.mm];
  const rise = Math.sqrt(r * r - a * a);
  // Along the line from the eaves' corner to the apex; from that corner to the other one, and to the end of the ridge.
  const crease = [a, a, rise];
  const [gable, ridge] = [squareTo(crease, [0, 2 * a, 0]), squareTo(crease, [0, a, rise])];
  const cosine = dot(gable, ridge) / Math.sqrt(dot(gable, gable) * dot(ridge, ridge));
  return { lean: degrees(Math.asin(a / r)), gusset: 180 - degrees(Math.acos(cosine)) };
}

function squareTo(way: readonly number[], point: readonly number[]): number[] {
  const share = dot(point, way) / dot(way, way);
  return point.map((value, index) => value - share * (way[index] ?? 0));
}

function dot(one: readonly number[], other: readonly number[]): number {
  return one.reduce((sum, value, index) => sum + value * (other[index] ?? 0), 0);
}

function degrees(radians: number): number {
  return (radians * 180) / Math.PI;
}

/** The panels where they lie; a side is two columns wide, whose line is scored nowhere. */
const CELLS: readonly (readonly string[])[] = [
  ['front-handle', '', '', 'back-handle', '', '', ''],
  ['front-roof', '', '', 'back-roof', '', '', ''],
  ['front', 'right', 'right', 'back', 'left', 'left', 'tab'],
  ['front-bottom', 'right-bottom', 'right-bottom', 'back-bottom', 'left-bottom', 'left-bottom', ''],
];

/** The parts of the cells that the angled lines cut up: under the roof a gable between two gussets. */
const PARTS: ReadonlyMap<string, string> = new Map([
  ['B2 left', 'right-front-gusset'],
  ['B2 right', 'right-gable'],
  ['C2 left', 'right-gable'],
  ['C2 right', 'right-back-gusset'],
  ['E2 left', 'left-back-gusset'],
  ['E2 right', 'left-gable'],
  ['F2 left', 'left-gable'],
  ['F2 right', 'left-front-gusset'],
]);

const ROLES: ReadonlyMap<string, PanelRole> = new Map([['front', 'front']]);

/** The net of a gable box, its roof closed. */
export function gableNet(measures: GableMeasures, corners: RoundedCorners | undefined): Net {
  const { width, depth, height, roof, handle, tab } = measures;
  const half = depth.half();
  const across = linesOf([width, half, half, width, half, half]);
  const down = linesOf([handle, roof, height]);
  const size = {
    width: Length.sum([...across.slice(-1), tab]),
    height: Length.sum([...down.slice(-1), depth]),
  };
  const bends = bendsOf(roofAngles(measures));
  const grid: Grid = {
    size,
    across,
    down,
    slants: slantsOf(across, down),
    cells: CELLS,
    parts: PARTS,
    names: new Set([...CELLS.flat(), ...PARTS.values()].filter((name) => name !== '')),
    roles: ROLES,
    taper: ['tab', 'right-bottom', 'left-bottom'],
    foldAt: (_seam, [first, second]) =>
      first === second
        ? bends.get('front|right')
        : (bends.get(`${first}|${second}`) ?? bends.get(`${second}|${first}`)),
    glue: ['right-bottom', 'left-bottom', 'front-bottom']
      .map((from) => ({ from, to: 'back-bottom' }))
      .toSpliced(0, 0, { from: 'tab', to: 'front' }),
    opens: ['front-roof', 'back-roof', 'right-back-gusset', 'left-front-gusset'],
    scores: [
      // Not the middle lines of the sides.
      { from: 'left', at: across.filter((_, index) => index !== 1 && index !== 4) },
      { from: 'bottom', at: down.map((line) => size.height.minus(line)).toReversed() },
    ],
    corners,
  };
  const net = gridNet(grid);
  const isHalf = (id: string): boolean => id.endsWith('-gusset');
  return {
    ...net,
    panels: net.panels.map((panel) => (isHalf(panel.id) ? { ...panel, slanted: true } : panel)),
  };
}

function linesOf(stretches: readonly Length[]): Length[] {
  return stretches.map((_, index) => Length.sum(stretches.slice(0, index + 1)));
}

function bendsOf({ lean, gusset }: RoofAngles): ReadonlyMap<string, FoldedBy> {
  const mountain = (stage: number, angle: number, pairs: readonly string[]): [string, FoldedBy][] =>
    pairs.map((pair) => [pair, { direction: 'mountain', angle, stage }]);
  const valley = (stage: number, angle: number, pairs: readonly string[]): [string, FoldedBy][] =>
    pairs.map((pair) => [pair, { direction: 'valley', angle, stage }]);
  return new Map([
    ...mountain(1, 90, ['front|right', 'right|back', 'back|left', 'left|tab']),
    ...mountain(2, 90, ['right|right-bottom', 'left|left-bottom']),
    ...mountain(3, 90, ['back|back-bottom']),
    ...mountain(4, 90, ['front|front-bottom']),
    ...mountain(5, lean, ['front|front-roof', 'back|back-roof', 'right|right-gable', 'left|left-gable']),
    ...mountain(5, 180, ['front-roof|right-front-gusset', 'back-roof|right-back-gusset']),
    ...mountain(5, 180, ['back-roof|left-back-gusset']),
    ...valley(5, gusset, ['right-gable|right-front-gusset', 'right-gable|right-back-gusset']),
    ...valley(5, gusset, ['left-gable|left-back-gusset', 'left-gable|left-front-gusset']),
    ...valley(5, lean, ['front-roof|front-handle', 'back-roof|back-handle']),
  ]);
}

/** From the corners at the eaves of each side to the middle of its upper edge. */
function slantsOf(across: readonly Length[], down: readonly Length[]): FlatSegment[] {
  const at = (line: number, row: number): FlatPoint => {
    const [x, y] = [across[line], down[row]];
    if (!x || !y) throw new Error('the grid of a gable box has no such crossing');
    return { x, y };
  };
  return [0, 3].flatMap((side) => [
    { from: at(side, 1), to: at(side + 1, 0) },
    { from: at(side + 1, 0), to: at(side + 2, 1) },
  ]);
}
