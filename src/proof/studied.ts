import type { Study } from '../edition/study.ts';
import type { Finding } from '../project/finding.ts';
import type { Project, Workspace } from '../project/model.ts';
import { proofConverted, proofProject, proofSettings } from './proof.ts';
import { mergeFindings } from './tell.ts';
import { isFailure, type Told } from './told.ts';

/** What was found in each project, what is wrong in the shared files it uses included. */
export type ProjectFindings = ReadonlyMap<Project, readonly Finding[]>;

/**
 * The findings of every project that was studied: of the project as written, and of its other edition if it has no
 * error as written (an error would only come back in other numbers).
 */
export function proofEach(workspace: Workspace, studies: readonly Study[]): ProjectFindings {
  return new Map(
    studies.map(({ project, shapes, worked }) => {
      const asWritten = proofProject(workspace, project, shapes);
      const stopped = isFailure(mergeFindings(asWritten), false);
      const converted = stopped ? [] : proofConverted(workspace, worked.editions);
      return [project, [...asWritten, ...converted]];
    }),
  );
}

/** Every finding of a workspace whose projects were studied; what several of them have in common is said once. */
export function proofStudied(workspace: Workspace, studies: readonly Study[]): Told[] {
  const ofProjects = [...proofEach(workspace, studies).values()].flat();
  return mergeFindings([...proofSettings(workspace), ...ofProjects]);
}
