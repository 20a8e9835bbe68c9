import type { Project } from '../project/model.ts';
import { firstReference } from '../proof/mentions.ts';

/** The pieces that are first named after a step, by its number: what is not yet put on when that is done. */
export function piecesToCome(project: Project, step: number): ReadonlySet<string> {
  const later = new Set(project.steps.slice(step).flatMap(({ prose }) => prose.references));
  return new Set(
    [...project.pieces.keys()].filter((piece) => {
      const first = firstReference(piece, project);
      return first !== undefined && later.has(first);
    }),
  );
}
