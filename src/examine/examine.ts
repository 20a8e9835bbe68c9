import { type WorkedOut, workOutEditions } from '../edition/edition.ts';
import { editionWritten, plainEditions } from '../edition/editions.ts';
import type { Finding } from '../project/finding.ts';
import type { Project, Workspace } from '../project/model.ts';
import { proofProject } from '../proof/proof.ts';
import { mergeFindings } from '../proof/tell.ts';
import { isFailure } from '../proof/told.ts';
import { buildShapes } from '../shape/build.ts';
import type { Shapes } from '../shape/shapes.ts';

/** A project with all that is worked out of it: its geometry, both its editions, and what was found. */
export type Study = WorkedOut & {
  readonly project: Project;
  /** Of the project as written. */
  readonly shapes: Shapes;
  /** What is wrong in it, in the shared files it uses included. */
  readonly findings: readonly Finding[];
};

/**
 * Examines projects of a workspace, every one unless some are named: the one way from what was read to what is shown.
 * A project with an error as written is not made in another edition, where the error would only come back in other
 * numbers; nor is an edition that is printed nowhere.
 */
export function examine(
  workspace: Workspace,
  projects: readonly Project[] = workspace.projects,
): readonly Study[] {
  return projects.map((project) => examineProject(workspace, project));
}

function examineProject(workspace: Workspace, project: Project): Study {
  const shapes = buildShapes(project);
  const findings = proofProject(workspace, project, shapes);
  const own = { project, shapes };
  const alone = project.units === editionWritten(project) || isFailure(mergeFindings(findings), false);
  const worked = alone
    ? { editions: plainEditions(own), findings: [] }
    : workOutEditions(workspace, own, findings);
  return { ...worked, project, shapes, findings: [...findings, ...worked.findings] };
}

/** Everything that was found: in the settings, in the shared files and in the projects examined. */
export function findingsOf(workspace: Workspace, studies: readonly Study[]): readonly Finding[] {
  return [...workspace.site.findings, ...workspace.findings, ...studies.flatMap(({ findings }) => findings)];
}
