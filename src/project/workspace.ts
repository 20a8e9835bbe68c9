import { compare } from '../measure/numbers.ts';
import type { Finding } from './finding.ts';
import { LEDGER_FILE } from './ledger.ts';
import type { Project, Workspace } from './model.ts';
import type { ReadDrawing } from './outline-grammar.ts';
import type { PictureState } from './pictures.ts';
import { readProject } from './read-project.ts';
import { readShared } from './read-shared.ts';
import { readSite } from './read-site.ts';
import { type Catalog, moneyDecimals } from './reader.ts';
import { slugOf } from './slug.ts';
import { digestOf, type SourceFile } from './source.ts';

/** The files of a workspace, read but not understood. */
type WorkspaceSource = Catalog & {
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

/** Reads a whole workspace from its files' texts. */
export function readWorkspace(source: WorkspaceSource): Workspace {
  const { root, files, folders, findings, findPicture, readDrawing, forms, outlines } = source;
  const settings = files.get('site.yaml');
  const others = [...files].flatMap(([path, file]) => (file && isSharedFile(path) ? [file] : []));
  const troubleOf = (...of: (SourceFile | undefined)[]): Finding[] =>
    findings.filter(({ at }) => of.includes(at.file));
  const site = readSite(settings, troubleOf(settings));
  const bench = { moneyDecimals: moneyDecimals(site.currency), forms, outlines };
  const shared = readShared(others, bench, troubleOf(...others));
  const basis = digestOf([settings, ...others].flatMap((file) => (file ? [file.path, file.text] : [])));
  const projects: Project[] = [];
  for (const [path, file] of files) {
    const [, folder] = /^([^/]+)\/sheet\.md$/u.exec(path) ?? [];
    if (folder === undefined || !file) continue;
    const project = readProject({
      ...bench,
      folder,
      file,
      ledger: files.get(`${folder}/${LEDGER_FILE}`),
      shared,
      basis,
      findPicture: (picture) => findPicture(folder, picture),
      readDrawing: (drawing) => readDrawing(folder, drawing),
      unreadable: troubleOf(file),
      units: site.units,
    });
    projects.push(project);
  }
  return {
    root,
    site,
    projects: projects.toSorted((a, b) => compare(a.slug, b.slug) || compare(a.folder, b.folder)),
    slugs: folders?.map((folder) => slugOf(folder)) ?? projects.map(({ slug }) => slug),
    findings: shared.findings,
  };
}
