import type { Study } from '../edition/study.ts';
import type { Project, Workspace } from '../project/model.ts';
import { type Finding, isFailure } from './finding.ts';
import { inOrder, proofConverted, proofProject, proofSettings, withoutDoubles } from './proof.ts';

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
      const converted = isFailure(asWritten, false) ? [] : proofConverted(workspace, worked.editions);
      return [project, [...asWritten, ...converted]];
    }),
  );
}

/** Every finding of a workspace whose projects were studied; what several of them have in common is said once. */
export function proofStudied(workspace: Workspace, studies: readonly Study[]): Finding[] {
  return mergeFindings(workspace, proofEach(workspace, studies));
}

/** The findings of the settings, the shared files and the projects as one list, sorted by file and place. */
export function mergeFindings(workspace: Workspace, ofProjects: ProjectFindings): Finding[] {
  return inOrder(withoutDoubles([...proofSettings(workspace), ...[...ofProjects.values()].flat()]));
}
