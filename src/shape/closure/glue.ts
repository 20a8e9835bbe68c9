import { Length } from '../../measure/length.ts';
import type { Overlap } from '../common-parts.ts';
import { apart, type FoldedShape, foldedPanelOf, runAlike } from '../folded-shape.ts';
import type { Mate } from '../net.ts';
import { perNet } from '../per-net.ts';
import { overlapOf } from './overlap.ts';
import { tolerance } from './tolerance.ts';

/** The least that holds with tape or glue, in both directions. Common practice, no source. */
export const LEAST_GLUE: Length = Length.of(1, 4, 'in');

/** How one glue area meets its mate once everything is folded; lengths in millimeters. */
export type GlueFit = {
  readonly mate: Mate;
  /** `askew` when the panels run different ways, `apart` when one lies off the other's plane. */
  readonly verdict: 'meets' | 'askew' | 'apart' | 'beside';
  /** How far the glue area lies off its mate's plane. */
  readonly distance: number;
  readonly overlap: Overlap;
};

/** Every glue area of a folded net against what it sticks to. */
export const glueFits: (shape: FoldedShape, caliper: Length) => readonly GlueFit[] = perNet(
  (shape: FoldedShape, caliper: Length) => {
    return shape.net.glue.map((mate) => glueFit(shape, mate, tolerance(caliper).mm));
  },
);

/** Whether every glue area of a folded net comes to lie on what it sticks to. */
export function allMeet(shape: FoldedShape, caliper: Length): boolean {
  return glueFits(shape, caliper).every(({ verdict }) => verdict === 'meets');
}

function glueFit(shape: FoldedShape, mate: Mate, allowed: number): GlueFit {
  const from = foldedPanelOf(shape, mate.from);
  const to = foldedPanelOf(shape, mate.to);
  const distance = apart(from, to);
  const overlap = overlapOf(from, to);
  const fit = { mate, distance, overlap };
  if (!runAlike(from, to)) return { ...fit, verdict: 'askew' };
  if (distance > allowed) return { ...fit, verdict: 'apart' };
  return { ...fit, verdict: overlap.area > 0.01 ? 'meets' : 'beside' };
}
