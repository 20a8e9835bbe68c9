import { existsSync, readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { Refusal } from './terminal.ts';

/** Whether a folder is a workspace: it has settings, or a folder with a sheet in it. */
export function isWorkspace(folder: string): boolean {
  if (!existsSync(folder)) return false;
  if (existsSync(join(folder, 'site.yaml'))) return true;
  return readdirSync(folder, { withFileTypes: true }).some(
    (entry) => entry.isDirectory() && existsSync(join(folder, entry.name, 'sheet.md')),
  );
}

/**
 * The workspace a command works on: the one named, else the current folder if it has projects, else `projects`.
 * @throws Refusal when there is none.
 */
export function workspaceFolder(named: string | undefined, cwd: string): string {
  if (named !== undefined) {
    const folder = resolve(cwd, named);
    if (!isWorkspace(folder)) {
      throw new Refusal(
        `no projects in ${named}: name a folder that holds <project>/sheet.md, or write one with "sheetwright draft"`,
      );
    }
    return folder;
  }
  const usual = [cwd, join(cwd, 'projects')].find(isWorkspace);
  if (usual === undefined) {
    throw new Refusal(
      'no projects here nor in projects/: go to your workspace, or write a first project with "sheetwright draft my-first-card"',
    );
  }
  return usual;
}
