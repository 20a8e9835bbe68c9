import type { Project } from '../project/model.ts';
import { buildShapes } from '../shape/build.ts';
import type { Shapes } from '../shape/shapes.ts';
import { type WorkedOut, workOutEditions } from './edition.ts';
import { largeSolver } from './large.ts';

/** A project with all that is worked out of it. */
export type Study = { readonly project: Project; readonly shapes: Shapes; readonly worked: WorkedOut };

/** Above so many pieces the search for the other edition may be long enough to load a solver for it. */
const MANY_PIECES = 15;

/** Builds the geometry and both editions of every project. */
export async function studyProjects(projects: readonly Project[]): Promise<readonly Study[]> {
  const isLarge = projects.some(({ pieces }) => pieces.size > MANY_PIECES);
  const large = isLarge ? await largeSolver() : undefined;
  return projects.map((project) => {
    const shapes = buildShapes(project);
    return { project, shapes, worked: workOutEditions(project, shapes, large) };
  });
}

/** The geometry of a project that was studied. @throws when it was not. */
export function shapesIn(studies: readonly Study[]): (project: Project) => Shapes {
  const shapes = new Map(studies.map((study) => [study.project, study.shapes]));
  return (project) => {
    const found = shapes.get(project);
    if (!found) throw new Error(`${project.slug} was not studied`);
    return found;
  };
}
