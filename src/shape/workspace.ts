import { type LoadOptions, loadTexts } from '../project/load.ts';
import type { Workspace } from '../project/model.ts';
import { sourceFile } from '../project/source.ts';
import { readWorkspace } from '../project/workspace.ts';
import { forms } from './forms/index.ts';
import { outlines } from './outlines/index.ts';

/** Reads a workspace from disk, with every form there is. @throws when `root` itself is no folder that can be read. */
export async function loadWorkspace(root: string, options: LoadOptions = {}): Promise<Workspace> {
  return readWorkspace({ ...(await loadTexts(root, options)), forms, outlines });
}

/**
 * Reads a workspace from texts instead of a folder, with every form there is: path to text, such as
 * `seed-keeper/sheet.md`, `site.yaml`, `shared/stock.yaml`, and `seed-keeper/photos/flat.jpg` (any text) for a picture
 * or a font that is there.
 */
export function readWorkspaceFromTexts(texts: Readonly<Record<string, string>>): Workspace {
  return readWorkspace({
    root: '/',
    files: new Map(Object.entries(texts).map(([path, text]) => [path, sourceFile(path, text)])),
    findings: [],
    findPicture: (folder, path) => (`${folder}/${path}` in texts ? 'there' : 'missing'),
    readFont: (path) =>
      path in texts ? { path, file: path, digest: '', letters: [] } : { problem: 'missing' },
    readDrawing: (folder, path) => {
      const text = texts[`${folder}/${path}`];
      return text === undefined ? { kind: 'missing' } : { text };
    },
    forms,
    outlines,
  });
}
