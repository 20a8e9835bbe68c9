import { LEDGER_FILE } from './ledger.ts';
import type { FormGrammar, Workspace } from './model.ts';
import type { ProjectSource } from './read-project.ts';
import { type SourceFile, sourceFile } from './source.ts';
import { readWorkspace } from './workspace.ts';

/**
 * Reads a workspace from texts instead of a folder: path to text, such as `seed-keeper/sheet.md`, `site.yaml`,
 * `shared/stock.yaml`, and `seed-keeper/photos/flat.jpg` (any text) for a picture that is there.
 */
export function readWorkspaceFromTexts(
  files: Readonly<Record<string, string>>,
  forms: readonly FormGrammar[],
): Workspace {
  const sources: SourceFile[] = Object.entries(files).map(([path, text]) => sourceFile(path, text));
  const projects = sources.flatMap((file): ProjectSource[] => {
    const [, folder] = /^([^/]+)\/sheet\.md$/u.exec(file.path) ?? [];
    if (folder === undefined) return [];
    const ledger = sources.find(({ path }) => path === `${folder}/${LEDGER_FILE}`);
    return [
      { folder, file, ledger, findPicture: (path) => (`${folder}/${path}` in files ? 'there' : 'missing') },
    ];
  });
  return readWorkspace({
    root: '/',
    forms,
    site: sources.find(({ path }) => path === 'site.yaml'),
    shared: sources.filter(({ path }) => /^shared\/[^/]+\.ya?ml$/u.test(path)),
    projects,
    findings: [],
  });
}
