import type { Workspace } from '../project/model.ts';
import { type Study, shapesIn } from '../shape/edition/study.ts';
import type { Finding } from './finding.ts';
import { inOrder, proofConverted, proofWorkspace } from './proof.ts';

/**
 * Every finding of a workspace whose projects were studied: of the projects as written, and of the other edition of
 * those that have no error as written (an error would only come back in other numbers).
 */
export function proofStudied(workspace: Workspace, studies: readonly Study[]): Finding[] {
  const asWritten = proofWorkspace(workspace, shapesIn(studies));
  const faulty = new Set(
    asWritten.filter(({ severity }) => severity === 'error').map(({ at, file }) => at?.file.path ?? file),
  );
  const sound = studies.filter(({ project }) => !faulty.has(project.file.path));
  const converted = sound.flatMap(({ worked }) => proofConverted(workspace, worked.editions));
  return inOrder([...asWritten, ...converted]);
}
