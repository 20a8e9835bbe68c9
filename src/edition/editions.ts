import type { Length } from '../measure/length.ts';
import type { Project } from '../project/model.ts';
import type { Shapes } from '../shape/shapes.ts';

/** One project in one system of measurement, with its geometry. */
export type Edition = { readonly project: Project; readonly shapes: Shapes };

/**
 * A project in inches and in millimetres. Both have the same pieces, panels and score lines in the same order, so
 * any length can be picked from both; `own` says which of them the demonstrator wrote.
 */
export type Editions = { readonly own: 'inch' | 'metric'; readonly inch: Edition; readonly metric: Edition };

/** The same length in both editions: printed side by side, never converted again. */
export type Twin = { readonly inch: Length; readonly metric: Length };

/** Picks one length out of both editions; undefined where it is in neither. */
export function twin(editions: Editions, pick: (edition: Edition) => Length | undefined): Twin | undefined {
  const inch = pick(editions.inch);
  const metric = pick(editions.metric);
  return inch && metric ? { inch, metric } : undefined;
}

/** The edition the demonstrator wrote. */
export function ownEdition(editions: Editions): Edition {
  return editions[editions.own];
}

/** Both editions from the project as written: every length is converted plainly where it is printed. */
export function plainEditions(project: Project, shapes: Shapes): Editions {
  const edition = { project, shapes };
  return { own: project.unit === 'in' ? 'inch' : 'metric', inch: edition, metric: edition };
}
