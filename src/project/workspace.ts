import { compare } from '../measure/numbers.ts';
import type { Finding } from './finding.ts';
import type { ReadDrawing } from './grammar/outline-grammar.ts';
import { type Catalog, moneyDecimals } from './grammar/reader.ts';
import { LEDGER_FILE } from './ledger/ledger.ts';
import type { Commons, Project, Workspace } from './model.ts';
import type { PictureState } from './prose/pictures.ts';
import { readProject } from './reading/read-project.ts';
import { readShared } from './reading/read-shared.ts';
import { readSite } from './reading/read-site.ts';
import { watchShared } from './reading/shared.ts';
import { slugOf } from './slug.ts';
import { digestOf, type SourceFile } from './source.ts';
import type { Note } from './watch.ts';

/** The files of a workspace, read but not understood. */
export type WorkspaceSource = Catalog & {
  readonly root: string;
  /** By their paths under the root, with `/` between. */
  readonly files: ReadonlyMap<string, SourceFile | undefined>;
  /** Every folder that can be a project; those of the files where it isn't said. */
  readonly folders?: readonly string[];
  /** Why files could not be read as text. */
  readonly findings: readonly Finding[];
  /** Whether a project's folder has the picture at a path in it. */
  readonly findPicture: (folder: string, path: string) => PictureState;
  readonly readDrawing: (folder: string, path: string) => ReturnType<ReadDrawing>;
};

/** Whether a path under the root is that of a file whose values projects share. */
export function isSharedFile(path: string): boolean {
  return /^shared\/[^/]+\.ya?ml$/u.test(path);
}

/** Reads what the projects have in common: the settings, the shared files, and which projects there are. */
export function readCommons(source: WorkspaceSource): Commons {
  const { root, files, forms, outlines } = source;
  const settings = files.get('site.yaml');
  const others = sharedFiles(source);
  const site = readSite(settings, troubleOf(source, settings));
  const bench = { moneyDecimals: moneyDecimals(site.currency), forms, outlines };
  const shared = readShared(others, bench, troubleOf(source, ...others));
  return { root, site, shared, addresses: addressesOf(source), findings: shared.findings };
}

/** Reads the sheet of one folder; undefined where it has none. */
export function readSheet(source: WorkspaceSource, commons: Commons, folder: string): Project | undefined {
  const { files, findPicture, readDrawing, forms, outlines } = source;
  const { site, shared } = commons;
  const file = files.get(`${folder}/sheet.md`);
  if (!file) return undefined;
  const uses = new Set(['site.units', 'site.currency']);
  const note: Note = (input) => uses.add(input);
  return readProject({
    moneyDecimals: moneyDecimals(site.currency),
    forms,
    outlines,
    folder,
    file,
    ledger: files.get(`${folder}/${LEDGER_FILE}`),
    shared: watchShared(shared, note),
    basis: basisOf(source),
    uses,
    findPicture: (picture) => {
      note(`picture ${picture}`);
      return findPicture(folder, picture);
    },
    readDrawing: (drawing) => {
      note(`drawing ${drawing}`);
      return readDrawing(folder, drawing);
    },
    unreadable: troubleOf(source, file),
    units: site.units,
  });
}

/** Reads a whole workspace from its files' texts. */
export function readWorkspace(source: WorkspaceSource): Workspace {
  const commons = readCommons(source);
  const projects = [...source.files.keys()].flatMap((path) => {
    const [, folder] = SHEET.exec(path) ?? [];
    return (folder !== undefined && readSheet(source, commons, folder)) || [];
  });
  return {
    ...commons,
    projects: projects.toSorted((a, b) => compare(a.slug, b.slug) || compare(a.folder, b.folder)),
  };
}

const SHEET = /^([^/]+)\/sheet\.md$/u;

/** The folders by the addresses they become; those of the files where it isn't said which folders there are. */
export function addressesOf({
  files,
  folders,
}: Pick<WorkspaceSource, 'files' | 'folders'>): ReadonlyMap<string, readonly string[]> {
  const withSheet = [...files].flatMap(([path, file]) => (file && SHEET.exec(path)?.[1]) ?? []).sort();
  const addresses = new Map<string, string[]>((folders ?? withSheet).map((folder) => [slugOf(folder), []]));
  for (const folder of withSheet) addresses.get(slugOf(folder))?.push(folder);
  return addresses;
}

function sharedFiles({ files }: WorkspaceSource): readonly SourceFile[] {
  return [...files].flatMap(([path, file]) => (file && isSharedFile(path) ? [file] : []));
}

/** Tells apart the settings and shared files that projects are read with. */
function basisOf(source: WorkspaceSource): string {
  const files = [source.files.get('site.yaml'), ...sharedFiles(source)];
  return digestOf(files.flatMap((file) => (file ? [file.path, file.text] : [])));
}

/** Why files could not be read as text. */
function troubleOf({ findings }: WorkspaceSource, ...of: (SourceFile | undefined)[]): readonly Finding[] {
  return findings.filter(({ at }) => of.includes(at.file));
}
