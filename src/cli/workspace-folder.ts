import { existsSync, readdirSync } from 'node:fs';
import { basename, dirname, join, relative, resolve } from 'node:path';
import { Refusal } from './terminal.ts';

const SHEET = 'sheet.md';

/**
 * A command for somebody to paste, for the workspace that was named or for the usual one. Options come last: `--only` takes
 * every word after it.
 */
export function commandFor(
  words: string,
  named: string | undefined,
  options: readonly string[] = [],
): string {
  const folder = named === undefined ? [] : [named];
  const line = ['sheetwright', words, ...[...folder, ...options].map(typed)].join(' ');
  return line.includes('"') ? `'${line}'` : `"${line}"`;
}

/** A word as every shell takes it whole, that of Windows too. */
function typed(word: string): string {
  return /^[\w./:\\-]+$/u.test(word) ? word : `"${word}"`;
}

/** Whether a folder is a workspace: it has settings, or a folder with a sheet in it. */
export function isWorkspace(folder: string): boolean {
  return (
    existsSync(join(folder, 'site.yaml')) ||
    namesIn(folder).some((name) => existsSync(join(folder, name, SHEET)))
  );
}

/**
 * The workspace a command works on: the one named, else the current folder if it has projects, else `projects`.
 * @throws Refusal when there is none.
 */
export function workspaceFolder(named: string | undefined, cwd: string): string {
  if (named !== undefined) {
    const folder = resolve(cwd, named);
    checkListable(folder, named);
    if (isWorkspace(folder)) return folder;
    throw new Refusal(
      oneProject(named, cwd) ??
        `no projects in ${named}: name a folder that holds <project>/${SHEET}, or write a first project with ${commandFor('draft my-first-card', named)}`,
    );
  }
  checkListable(cwd, 'this folder');
  const usual = [cwd, join(cwd, 'projects')].find(isWorkspace);
  if (usual === undefined) {
    throw new Refusal(
      `no projects here or in projects/: go to your workspace, or write a first project with ${commandFor('draft my-first-card', undefined)}`,
    );
  }
  return usual;
}

/** @throws Refusal where there is a folder that may not be listed: its projects would seem not to be there. */
function checkListable(folder: string, named: string): void {
  try {
    readdirSync(folder);
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : '';
    if (code === 'EACCES' || code === 'EPERM')
      throw new Refusal(`you are not allowed to list ${named}: ask for the right to read it`);
  }
}

/** What is said to who names a project, or its sheet, where its workspace is meant. */
function oneProject(named: string, cwd: string): string | undefined {
  const path = resolve(cwd, named);
  const project = basename(path) === SHEET ? dirname(path) : path;
  if (!existsSync(join(project, SHEET))) return undefined;
  const workspace = relative(cwd, dirname(project)) || '.';
  return `${named} is one project: name the folder of projects that it lies in, ${workspace}`;
}

/** What lies in a folder; nothing where there is none, or none that may be read. */
function namesIn(folder: string): readonly string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}
