import type { Making, PlannedSession } from '../kit/plan.ts';

/** A session of a season: what is made, and by how many. */
export type SeasonSession = Making & { readonly session: PlannedSession };
