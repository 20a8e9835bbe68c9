import { type LoadOptions, loadWorkspace as load } from '../project/load.ts';
import type { Workspace } from '../project/model.ts';
import { readWorkspaceFromTexts as readTexts } from '../project/workspace.ts';
import { forms } from './forms/index.ts';

/** Reads a workspace from disk, with every form there is. @throws when `root` itself is no folder that can be read. */
export function loadWorkspace(root: string, options: Omit<LoadOptions, 'forms'> = {}): Promise<Workspace> {
  return load(root, { ...options, forms });
}

/** Reads a workspace from texts by their paths, with every form there is. */
export function readWorkspaceFromTexts(files: Readonly<Record<string, string>>): Workspace {
  return readTexts(files, forms);
}
