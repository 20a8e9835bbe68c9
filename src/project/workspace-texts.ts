import type { Finding } from './finding.ts';
import type { ReadFont } from './font-file.ts';
import type { ReadDrawing } from './grammar/outline-grammar.ts';
import { LEDGER_FILE } from './ledger/ledger.ts';
import type { PictureState } from './prose/pictures.ts';
import { slugOf } from './slug.ts';
import type { SourceFile } from './source.ts';

/** The files of a workspace, read but not understood. */
export type WorkspaceTexts = {
  readonly root: string;
  /** By their paths under the root, with `/` between. */
  readonly files: ReadonlyMap<string, SourceFile | undefined>;
  /** Every folder that can be a project; those of the files where it isn't said. */
  readonly folders?: readonly string[];
  /** Why files could not be read as text. */
  readonly findings: readonly Finding[];
  /** Whether a project's folder has the picture at a path in it. */
  readonly findPicture: (folder: string, path: string) => PictureState;
  readonly readFont: ReadFont;
  readonly readDrawing: (folder: string, path: string) => ReturnType<ReadDrawing>;
};

/** Whether a path under the root is that of a file whose values projects share; `shared` itself stands for a folder that may not be read. */
export function isSharedFile(path: string): boolean {
  return /^shared(?:\/[^/]+\.ya?ml)?$/u.test(path);
}

const shared = new WeakMap<WorkspaceTexts['files'], readonly SourceFile[]>();

/** The files whose values projects share; looked for once, for each project asks. */
export function sharedFiles({ files }: Pick<WorkspaceTexts, 'files'>): readonly SourceFile[] {
  const found =
    shared.get(files) ?? [...files].flatMap(([path, file]) => (file && isSharedFile(path) ? [file] : []));
  shared.set(files, found);
  return found;
}

/** The ledgers that speak of a shared piece, in the order of their folders. */
export function ledgersNaming(use: string, { files }: Pick<WorkspaceTexts, 'files'>): readonly SourceFile[] {
  return [...files].flatMap(([path, file]) =>
    file && path.endsWith(`/${LEDGER_FILE}`) && file.text.includes(use) ? [file] : [],
  );
}

/** The folders that have a sheet. */
export function sheetFolders({ files }: Pick<WorkspaceTexts, 'files'>): readonly string[] {
  return [...files].flatMap(([path, file]) => (file && /^([^/]+)\/sheet\.md$/u.exec(path)?.[1]) ?? []);
}

/** The folders that can be projects by the addresses they become: of each, those that have a sheet. */
export function addressesOf(
  texts: Pick<WorkspaceTexts, 'files' | 'folders'>,
): ReadonlyMap<string, readonly string[]> {
  const withSheet = sheetFolders(texts).toSorted();
  const addresses = new Map<string, string[]>();
  for (const folder of texts.folders ?? withSheet) addresses.set(slugOf(folder), []);
  for (const folder of withSheet) addresses.get(slugOf(folder))?.push(folder);
  return addresses;
}
