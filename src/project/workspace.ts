import { compare } from '../measure/numbers.ts';
import type { Finding } from './finding.ts';
import { type Catalog, moneyDecimals } from './grammar/reader.ts';
import { LEDGER_FILE } from './ledger/ledger.ts';
import { publishedFirst } from './ledger/published-first.ts';
import { findLacking } from './letters.ts';
import type { Commons, Project, Workspace } from './model.ts';
import { readProject } from './reading/read-project.ts';
import { readShared } from './reading/read-shared.ts';
import { readSite } from './reading/read-site.ts';
import { watchShared } from './reading/shared.ts';
import { digestOf, type SourceFile } from './source.ts';
import type { Note } from './watch.ts';
import { addressesOf, sharedFiles, sheetFolders, type WorkspaceTexts } from './workspace-texts.ts';

/** The files of a workspace, and what is ready-made for its sheets to name. */
export type WorkspaceSource = Catalog & WorkspaceTexts;

/** Reads what the projects have in common: the settings, the shared files, and which projects there are. */
export function readCommons(source: WorkspaceSource): Commons {
  const { root, files, forms, outlines, readFont } = source;
  const settings = files.get('site.yaml');
  const others = sharedFiles(source);
  const site = readSite(settings, troubleOf(source, settings), readFont);
  const bench = { moneyDecimals: moneyDecimals(site.currency), forms, outlines };
  const shared = readShared(others, bench, troubleOf(source, ...others));
  const lacking = [...(settings ? [settings] : []), ...others].flatMap((file): Finding[] => {
    const found = findLacking(file, site.font);
    return found ? [{ rule: 'missing-letters', ...found }] : [];
  });
  return { root, site, shared, addresses: addressesOf(source), findings: [...shared.findings, ...lacking] };
}

/** Reads the sheet of one folder; undefined where it has none. */
export function readSheet(source: WorkspaceSource, commons: Commons, folder: string): Project | undefined {
  const { files, findPicture, readDrawing, forms, outlines } = source;
  const { site, shared } = commons;
  const file = files.get(`${folder}/sheet.md`);
  if (!file) return undefined;
  const ledger = files.get(`${folder}/${LEDGER_FILE}`);
  const uses = new Set(['site.units', 'site.currency']);
  const note: Note = (input) => uses.add(input);
  return readProject({
    moneyDecimals: moneyDecimals(site.currency),
    forms,
    outlines,
    folder,
    file,
    ledger,
    publishedFirst: (use) => {
      note(`published ${use}`);
      return publishedFirst(use, source);
    },
    shared: watchShared(shared, note),
    basis: basisOf(source, commons),
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
    unreadableLedger: troubleOf(source, ledger),
    units: site.units,
  });
}

/** Reads a whole workspace from its files' texts. */
export function readWorkspace(source: WorkspaceSource): Workspace {
  const commons = readCommons(source);
  const projects = sheetFolders(source).flatMap((folder) => readSheet(source, commons, folder) ?? []);
  return {
    ...commons,
    projects: projects.toSorted((a, b) => compare(a.slug, b.slug) || compare(a.folder, b.folder)),
  };
}

/** Tells apart the settings, their font and the shared files that projects are read with. */
function basisOf(source: WorkspaceSource, { site }: Commons): string {
  const files = [source.files.get('site.yaml'), ...sharedFiles(source)];
  const texts = files.flatMap((file) => (file ? [file.path, file.text] : []));
  return digestOf([...texts, site.font?.digest ?? '']);
}

/** Why files could not be read as text. */
function troubleOf({ findings }: WorkspaceSource, ...of: (SourceFile | undefined)[]): readonly Finding[] {
  return findings.filter(({ at }) => of.includes(at.file));
}
