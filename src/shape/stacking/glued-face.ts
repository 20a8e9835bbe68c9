import type { Face } from '../../project/ref.ts';
import type { FlatPoint } from '../net.ts';

/** One of two areas that stick together: a panel, the face of it, and where on it. */
export type GluedFace = {
  readonly panel: string;
  readonly face: Face;
  /**
   * What meets its mate, on the flat net: one outline, or several that share no more than edges. Exact where it lies
   * on a mark to 1/64 in, or on whole 1/1000 mm.
   */
  readonly areas: readonly (readonly FlatPoint[])[];
};
