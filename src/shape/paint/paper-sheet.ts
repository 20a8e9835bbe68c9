import { bounds, distance, dot, type Point3 } from '../space.ts';
import { type PlaneFace, type PlaneTree, planeTree, type StackRules } from './plane-tree.ts';
import { type Hinge, type Pose, placed, posesOf } from './pose.ts';

/**
 * A sheet of paper to be folded and painted: plain data, which a page carries as JSON. Flat coordinates are millimeters
 * on the sheet, x to the right and y up, the outside towards the reader; x and y alternate in one list.
 */
export type PaperSheet = StackRules & {
  /** Where the paper lies before anything is folded. */
  readonly rest: Pose;
  /** Parents come before their children. */
  readonly panels: readonly PaperPanel[];
  /** In the order they are stuck on. */
  readonly layers: readonly PaperLayer[];
  /** `#rrggbb` of the paper's outside and inside in full light. */
  readonly outside: string;
  readonly inside: string;
};

export type PaperPanel = {
  readonly outline: readonly number[];
  /** Sides (by their first corner) that are not drawn: they lie within a bent panel, or lead to an opening. */
  readonly undrawn?: readonly number[];
  /** How it hangs on another panel; none for one that stays put. */
  readonly hinge?: PaperHinge;
};

type PaperHinge = Hinge & {
  /** Which step of the folding turns it, from 0; none for a fold that stays flat. */
  readonly step?: number;
};

export type PaperLayer = {
  readonly panel: number;
  readonly outline: readonly number[];
  readonly color: string;
  /** It is on the inside of the paper; on the outside if nothing is said. */
  readonly isInside?: true;
  /** Sides that are not drawn: they lead to an opening in it, or it is a part of a layer on a bent panel. */
  readonly undrawn?: readonly number[];
};

/** A sheet as it is folded: its faces, the middle of the box round them, and how far it reaches from there. */
type FoldedPaper = {
  readonly tree: PlaneTree | undefined;
  readonly middle: Point3;
  readonly radius: number;
};

/** The share, 0 to 1, each panel's hinge has turned when so many steps of the folding are done. */
export function sharesAfter(done: number, { panels }: PaperSheet): readonly number[] {
  return panels.map(({ hinge }) => Math.min(1, Math.max(0, done - (hinge?.step ?? done))));
}

/** Folds a sheet, each panel turned by its share, 0 to 1, of its hinge's angle. */
export function foldPaper(sheet: PaperSheet, shares: readonly number[]): FoldedPaper {
  const faces = facesOf(sheet, shares);
  const corners = faces.flatMap((face) => face.corners);
  const { least, most } = bounds(corners);
  const middle = { x: (least.x + most.x) / 2, y: (least.y + most.y) / 2, z: (least.z + most.z) / 2 };
  const radius = Math.max(...corners.map((corner) => distance(corner, middle)));
  return { tree: planeTree(faces, sheet), middle, radius };
}

function facesOf(sheet: PaperSheet, shares: readonly number[]): readonly PlaneFace[] {
  const poses = posesOf(sheet.panels, sheet.rest, shares);
  const { outside, inside } = sheet;
  const panels = sheet.panels.map(({ outline, undrawn = [] }, panel) => {
    const drawn = (side: number): boolean => !undrawn.includes(side);
    return faceAt(poses[panel] ?? sheet.rest, outline, drawn, { panel, level: 0, outside, inside });
  });
  const layers = sheet.layers.map(({ panel, outline, color, isInside, undrawn = [] }, index) => {
    const drawn = (side: number): boolean => !undrawn.includes(side);
    const level = isInside ? -(index + 1) : index + 1;
    const look = { panel, level, outside: color, inside: color };
    return faceAt(poses[panel] ?? sheet.rest, outline, drawn, look);
  });
  return [...panels, ...layers];
}

function faceAt(
  pose: Pose,
  outline: readonly number[],
  isDrawn: (side: number) => boolean,
  look: Pick<PlaneFace, 'panel' | 'level' | 'outside' | 'inside'>,
): PlaneFace {
  const corners = pointsOf(outline).map((point) => placed(pose, point));
  const sides = corners.map((_, side) => isDrawn(side));
  return { corners, normal: pose.outside, offset: dot(pose.outside, pose.origin), sides, ...look };
}

function pointsOf(outline: readonly number[]): readonly Point3[] {
  return Array.from({ length: outline.length / 2 }, (_, at) => ({
    x: outline[2 * at] ?? 0,
    y: outline[2 * at + 1] ?? 0,
    z: 0,
  }));
}
