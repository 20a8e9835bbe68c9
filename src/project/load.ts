import { realpathSync, statSync } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import { isAbsolute, join, relative, resolve, sep } from 'node:path';
import type { Finding } from './finding.ts';
import { LEDGER_FILE } from './ledger.ts';
import type { FormGrammar, Workspace } from './model.ts';
import type { FindPicture } from './pictures.ts';
import type { ProjectSource } from './read-project.ts';
import { slugOf } from './slug.ts';
import { type SourceFile, sourceFile, startOf } from './source.ts';
import { readWorkspace } from './workspace.ts';

export type LoadOptions = {
  /** The ready-made forms that sheets may name. */
  readonly forms: readonly FormGrammar[];
  /** Only the projects with these slugs. */
  readonly only?: readonly string[] | undefined;
  /** The folder that paths in messages are relative to: the one the command runs in. */
  readonly namedFrom?: string | undefined;
};

type Loaded = { readonly file: SourceFile; readonly finding?: Finding };

/**
 * Reads a workspace from disk: `site.yaml`, `shared/*.yaml` and `sheet.md` of every folder that has one. The only
 * file of the reader that touches the disk. A file that cannot be read is a finding.
 * @throws when `root` itself is no folder that can be read.
 */
export async function loadWorkspace(root: string, options: LoadOptions): Promise<Workspace> {
  const folder = resolve(root);
  const named = (path: string): string => nameOf(path, options.namedFrom ?? process.cwd());
  const entries = (await readdir(folder)).sort();
  const site = await load(join(folder, 'site.yaml'), named);
  const shared = await loadShared(join(folder, 'shared'), named);
  const isWanted = (entry: string): boolean =>
    canBeProject(entry) && (options.only?.includes(slugOf(entry)) ?? true);
  const sheets = await Promise.all(
    entries.filter(isWanted).map((entry) => loadProject(folder, entry, named)),
  );
  const settings = [...(site ? [site] : []), ...shared];
  return readWorkspace({
    root: folder,
    forms: options.forms,
    site: site?.file,
    shared: shared.map(({ file }) => file),
    projects: sheets.filter((sheet) => sheet !== undefined),
    findings: settings.flatMap(({ finding }) => (finding ? [finding] : [])),
  });
}

/** Folders of a workspace that are no project, whatever lies in them. */
const NO_PROJECTS: readonly string[] = ['shared', 'node_modules', 'dist'];

/** Whether a folder of this name can be a project. */
export function canBeProject(folder: string): boolean {
  return !folder.startsWith('.') && !NO_PROJECTS.includes(folder);
}

/** A path as a person at `from` would type it, with forward slashes everywhere. */
function nameOf(path: string, from: string): string {
  return relative(from, path).split(sep).join('/') || '.';
}

async function loadProject(
  root: string,
  folder: string,
  named: (path: string) => string,
): Promise<ProjectSource | undefined> {
  const path = join(root, folder);
  const sheet = await load(join(path, 'sheet.md'), named);
  if (!sheet) return undefined;
  const ledger = await load(join(path, LEDGER_FILE), named);
  return { ...sheet, folder, findPicture: pictureFinder(path), ledger: ledger?.file };
}

async function loadShared(folder: string, named: (path: string) => string): Promise<Loaded[]> {
  const names = await readdir(folder).catch(() => []);
  const files = names.filter((name) => /\.ya?ml$/u.test(name)).sort();
  const loaded = await Promise.all(files.map((name) => load(join(folder, name), named)));
  return loaded.filter((file) => file !== undefined);
}

/** A file's text; undefined when there is no such file, a finding when it is there and cannot be read as text. */
async function load(path: string, named: (path: string) => string): Promise<Loaded | undefined> {
  const empty = sourceFile(named(path), '');
  try {
    const bytes = await readFile(path);
    const text = asUtf8(bytes);
    if (text !== undefined) return { file: sourceFile(empty.path, text) };
    return { file: empty, finding: { rule: 'not-text', at: startOf(empty), facts: {} } };
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    if (['ENOENT', 'ENOTDIR'].includes(code)) return undefined;
    return {
      file: empty,
      finding: { rule: 'unreadable-file', at: startOf(empty), facts: { problem: UNREADABLE[code] ?? code } },
    };
  }
}

const UNREADABLE: Readonly<Partial<Record<string, string>>> = {
  EACCES: 'you are not allowed to read it',
  EPERM: 'you are not allowed to read it',
  EISDIR: 'it is a folder',
  ELOOP: 'it is a link that leads to itself',
  ERR_FS_FILE_TOO_LARGE: 'it is too large',
};

function asUtf8(bytes: Uint8Array): string | undefined {
  if (bytes.includes(0)) return undefined;
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

/** Looks for pictures in a project's folder, following links on disk to see that they do not lead out of it. */
function pictureFinder(folder: string): FindPicture {
  return (path) => {
    const picture = join(folder, path);
    try {
      const real = relative(realpathSync(folder), realpathSync(picture));
      if (real === '..' || real.startsWith(`..${sep}`) || isAbsolute(real)) return 'outside';
      return statSync(picture).isFile() ? 'there' : 'missing';
    } catch {
      return 'missing';
    }
  };
}
