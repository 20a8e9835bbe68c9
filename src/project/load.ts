import { isUtf8 } from 'node:buffer';
import { lstatSync, readFileSync, realpathSync, type Stats, statSync } from 'node:fs';
import { readdir } from 'node:fs/promises';
import { dirname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import type { Finding } from './finding.ts';
import { lettersOf, type ReadFont, unpackFont } from './font-file.ts';
import type { ReadDrawing } from './grammar/outline-grammar.ts';
import { LEDGER_FILE } from './ledger/ledger.ts';
import type { PictureState } from './prose/pictures.ts';
import { digestOf, type SourceFile, sourceFile, startOf } from './source.ts';
import { isSharedFile, type WorkspaceTexts } from './workspace-texts.ts';

export type LoadOptions = {
  /** The folder that paths in messages are relative to: the one the command runs in. */
  readonly namedFrom?: string | undefined;
  /** Texts of the same workspace that still hold, but for those of projects in the folders named. */
  readonly earlier?: { readonly texts: WorkspaceTexts; readonly changed: ReadonlySet<string> } | undefined;
};

/**
 * The texts of a workspace on disk: `site.yaml`, `shared/*.yaml`, and the sheet and ledger of every folder. The only file
 * of the reader that touches the disk. A file that cannot be read is a finding.
 * @throws when `root` itself is no folder that can be read.
 */
export async function loadTexts(root: string, options: LoadOptions): Promise<WorkspaceTexts> {
  const folder = resolve(root);
  const named = (path: string): string => nameOf(path, options.namedFrom ?? process.cwd());
  if (options.earlier) return loadAgain(options.earlier, named);
  const entries = (await readdir(folder)).sort();
  const findings: Finding[] = [];
  const report = (finding: Finding): unknown => findings.push(finding);
  const inShared = await namesIn(join(folder, 'shared'), named, report);
  const paths = [
    'site.yaml',
    ...inShared.names.map((name) => `shared/${name}`).filter(isSharedFile),
    ...entries.filter(canBeProject).flatMap((entry) => [`${entry}/sheet.md`, `${entry}/${LEDGER_FILE}`]),
  ];
  const home = realpathSync.native(folder);
  const files = paths.map((path) => [path, load(join(folder, path), home, named, report)] as const);
  return {
    root: folder,
    files: new Map([...files, ...inShared.file]),
    folders: entries.filter(canBeProject),
    findings,
    ...readersIn(folder),
  };
}

/** Those of a workspace that look at its disk. */
export function readersIn(root: string): Pick<WorkspaceTexts, 'findPicture' | 'readFont' | 'readDrawing'> {
  return {
    findPicture: (project, path) => findPicture(join(root, project), path),
    readFont: (path) => readFont(root, path),
    readDrawing: (project, path) => readDrawing(join(root, project), path),
  };
}

/** The texts of some projects anew, all others as they were. */
function loadAgain(
  { texts, changed }: NonNullable<LoadOptions['earlier']>,
  named: (path: string) => string,
): WorkspaceTexts {
  const isAnew = (path: string): boolean => changed.has(path.split('/', 1)[0] ?? '');
  const findings: Finding[] = [];
  const anew = [...texts.files.keys()].filter(isAnew);
  const home = realpathSync.native(texts.root);
  const report = (finding: Finding): unknown => findings.push(finding);
  const files = anew.map((path) => [path, load(join(texts.root, path), home, named, report)] as const);
  const replaced = new Set(anew.map((path) => texts.files.get(path)));
  const still = texts.findings.filter(({ at }) => !replaced.has(at.file));
  return { ...texts, files: new Map([...texts.files, ...files]), findings: [...still, ...findings] };
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

/** The names in `shared/`, none where it is not there. One that may not be read is a file without text, and reported. */
async function namesIn(
  folder: string,
  named: (path: string) => string,
  report: (finding: Finding) => void,
): Promise<{ readonly names: readonly string[]; readonly file: readonly (readonly [string, SourceFile])[] }> {
  try {
    return { names: (await readdir(folder)).sort(), file: [] };
  } catch (error) {
    const code = codeOf(error);
    if (code === 'ENOENT' || code === 'ENOTDIR') return { names: [], file: [] };
    const empty = sourceFile(named(folder), '');
    report(unreadable(empty, code));
    return { names: [], file: [['shared', empty]] };
  }
}

/** Nobody writes as long a sheet; in bytes. */
const LARGEST = 2_000_000;

/**
 * A file's text; undefined when there is no such file, empty and reported when it cannot be read as text. One after the
 * other, at once: of two thousand small files, waiting for each takes several times as long as reading it.
 */
function load(
  path: string,
  home: string,
  named: (path: string) => string,
  report: (finding: Finding) => void,
): SourceFile | undefined {
  const empty = sourceFile(named(path), '');
  try {
    const here = lstatSync(path, { throwIfNoEntry: false });
    if (!here) return undefined;
    const isLink = here.isSymbolicLink();
    const stats = isLink ? statSync(path) : here;
    refuseOther(stats);
    if (isLink && !isOwnLink(path, home)) report(unreadable(empty, 'outside'));
    else if (stats.size > LARGEST) report(unreadable(empty, 'too large'));
    else {
      const text = asUtf8(readFileSync(path));
      if (text !== undefined) return sourceFile(empty.path, text);
      report({ rule: 'not-text', at: startOf(empty), facts: {} });
    }
  } catch (error) {
    const code = codeOf(error);
    if (code === 'ENOTDIR') return undefined;
    report(unreadable(empty, code));
  }
  return empty;
}

/** Whether a link stays in the workspace. A project's own folder may be a link that its owner made; nothing in it leads out. */
function isOwnLink(path: string, home: string): boolean {
  const real = realpathSync.native(path);
  return isWithin(home, real) || isWithin(realpathSync.native(dirname(path)), real);
}

/** @throws where it is no regular file: a pipe or a device would be read without end. */
function refuseOther(stats: Stats): void {
  if (!stats.isFile()) throw Object.assign(new Error(), { code: stats.isDirectory() ? 'EISDIR' : 'no file' });
}

function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : '';
}

function unreadable(file: SourceFile, code: string): Finding {
  return { rule: 'unreadable-file', at: startOf(file), facts: { problem: UNREADABLE[code] ?? code } };
}

const UNREADABLE: Readonly<Partial<Record<string, string>>> = {
  EACCES: 'you are not allowed to read it',
  EPERM: 'you are not allowed to read it',
  EISDIR: 'it is a folder',
  ENOENT: 'it is a link that leads nowhere',
  ELOOP: 'it is a link that leads to itself',
  'no file': 'it is a pipe or a device, not a file',
  outside: 'it is a link that leads out of the workspace',
  'too large': `it is larger than ${LARGEST / 1_000_000} MB, which nobody writes`,
};

function asUtf8(bytes: Uint8Array): string | undefined {
  return bytes.includes(0) || !isUtf8(bytes) ? undefined : new TextDecoder().decode(bytes);
}

/** Whether a path lies in a folder, both without links. */
function isWithin(folder: string, path: string): boolean {
  const way = relative(folder, path);
  return way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way);
}

/** Looks for a picture in a project's folder, following links on disk to see that they do not lead out of it. */
function findPicture(folder: string, path: string): PictureState {
  try {
    const picture = realpathSync.native(join(folder, path));
    if (!isWithin(realpathSync.native(folder), picture)) return 'outside';
    return statSync(picture).isFile() ? 'there' : 'missing';
  } catch {
    return 'missing';
  }
}

/** An outline is a few lines; what is larger is a picture. In kilobytes. */
const LARGEST_DRAWING = 1000;

/** Reads a drawing in a project's folder, which links on disk must not lead out of. */
function readDrawing(folder: string, path: string): ReturnType<ReadDrawing> {
  const state = findPicture(folder, path);
  if (state !== 'there') return { kind: state };
  try {
    const kilobytes = Math.ceil(statSync(join(folder, path)).size / 1000);
    if (kilobytes > LARGEST_DRAWING) return { kind: 'too large', kilobytes, most: LARGEST_DRAWING };
    return { text: readFileSync(join(folder, path), 'utf8') };
  } catch {
    return { kind: 'missing' };
  }
}

/** Larger than any font of one weight; in bytes. */
const LARGEST_FONT = 20_000_000;

/** Reads a font in the workspace, which links on disk must not lead out of. */
function readFont(root: string, path: string): ReturnType<ReadFont> {
  const state = findPicture(root, path);
  if (state !== 'there') return { problem: state };
  try {
    if (statSync(join(root, path)).size > LARGEST_FONT) return { problem: 'too large' };
    const bytes = readFileSync(join(root, path));
    const font = unpackFont(bytes);
    const letters = font && lettersOf(font);
    if (!letters) return { problem: 'no font' };
    return { path, file: join(root, path), digest: digestOf([bytes.toString('base64')]), letters };
  } catch {
    return { problem: 'missing' };
  }
}
