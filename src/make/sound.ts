import type { Project } from '../project/model.ts';
import type { Finding } from '../proof/finding.ts';

/**
 * Whether a project may be made: nothing blocking was found in its sheet, in the settings, or in the shared files
 * if it uses any of them.
 */
export function isSound(project: Project, findings: readonly Finding[], strict: boolean): boolean {
  const own = project.file.path.replace(/sheet\.md$/u, '');
  const usesShared = project.file.text.includes('shared.');
  return !findings.some((finding) => {
    if (finding.severity === 'note' || (finding.severity === 'warning' && !strict)) return false;
    const path = finding.at?.file.path ?? finding.file;
    if (path === undefined || path.startsWith(own)) return true;
    if (/(?:^|\/)(?:sheet\.md|revisions\.yaml)$/u.test(path)) return false;
    return usesShared || path.endsWith('site.yaml');
  });
}
