import { resolve } from 'node:path';
import type { MakeResult } from '../make/make-options.ts';
import { isWholeFile, type Place, pointAt } from '../project/source.ts';
import { frameOf } from '../proof/frame.ts';
import { findingJson } from '../proof/print.ts';
import { mergeTold, type Told } from '../proof/told.ts';
import { workDraft } from '../publish/revisions.ts';
import type { Recall, Spot } from '../recall/recall.ts';
import { type MarkedPlace, markAt, workPlaces } from './places.ts';

/** A project that differs from what was published of it, and how, in words. */
type Draft = { readonly slug: string; readonly changes: readonly string[] };

/** What is known at a moment, beside the pages. */
export type PreviewState = {
  /** Rises with every make that changed something, so that a page knows whether it is the latest. */
  readonly version: number;
  readonly findings: readonly Told[];
  readonly drafts: readonly Draft[];
  /** Of each sheet in which something was found, by its path: whose it is, and what its page shows of it. */
  readonly sheets: ReadonlyMap<string, OpenSheet>;
  /** The address that opens a file in the demonstrator's editor, with `{file}`, `{line}` and `{column}` to be set in. */
  readonly editor?: string | undefined;
  /** A broken environment or a bug of our own, in one line. */
  readonly trouble?: string;
};

type OpenSheet = { readonly slug: string; readonly places: readonly MarkedPlace[] };

export const NOTHING_KNOWN: PreviewState = { version: 0, findings: [], drafts: [], sheets: new Map() };

/**
 * What the previewed pages are told of it, as JSON.
 * @param namedFrom The folder that paths are relative to; undefined for a reader who has no editor here.
 */
export function stateJson(state: PreviewState, namedFrom: string | undefined): string {
  const { version, findings, drafts, trouble } = state;
  const placed = (at: Place): object => ({
    ...quoted(at),
    editor: namedFrom && editorLink(at, state, namedFrom),
  });
  const told = findings.map((finding) => {
    const sheet = state.sheets.get(finding.at.file.path);
    return {
      ...findingJson(finding),
      ...placed(finding.at),
      slug: sheet?.slug ?? null,
      mark: sheet && markAt(sheet.places, finding.at.start),
      notes: finding.notes.map(({ message, at }) => ({ message, ...placed(at) })),
    };
  });
  return JSON.stringify({ version, findings: told, drafts, trouble });
}

/** A place by its name, and the line it stands in as a terminal shows it. */
function quoted(at: Place): { readonly where: string; readonly source?: string; readonly carets?: string } {
  if (isWholeFile(at)) return { where: at.file.path };
  const { line, column } = pointAt(at.file.text, at.start);
  return { where: `${at.file.path}:${line}:${column}`, ...frameOf(at) };
}

function editorLink({ file, start }: Place, { editor }: PreviewState, namedFrom: string): string | undefined {
  const { line, column } = pointAt(file.text, start);
  const path = resolve(namedFrom, file.path).split('/').map(encodeURIComponent).join('/');
  const values: Readonly<Record<string, string>> = { file: path, line: `${line}`, column: `${column}` };
  return editor?.replace(/\{(file|line|column)\}/gu, (_, name: string) => values[name] ?? '');
}

/** The state after everything was looked at. */
export async function stateAfter(result: MakeResult, version: number): Promise<PreviewState> {
  const { recall, spots, findings } = result;
  const drafts: Draft[] = [];
  for (const spot of spots) {
    const changes = await recall.work('draft', spot, workDraft);
    recall.release(spot);
    if (changes) drafts.push({ slug: spot.slug, changes });
  }
  const sheets = await sheetsIn(result);
  const editor = (await recall.commons()).site.editor?.value;
  recall.save();
  return { version, findings, drafts, sheets, editor };
}

/** The state after some projects alone were looked at: of all others it says what it said. */
export async function stateWith(
  before: PreviewState,
  result: MakeResult,
  version: number,
): Promise<PreviewState> {
  const anew = new Set(result.spots.map(({ file }) => file.path));
  const others = before.findings.filter(({ at }) => !anew.has(at.file.path));
  const findings = mergeTold([...others, ...result.findings]);
  const { trouble: _, ...rest } = before;
  return { ...rest, version, findings, sheets: new Map([...before.sheets, ...(await sheetsIn(result))]) };
}

async function sheetsIn({ recall, spots, findings }: MakeResult): Promise<ReadonlyMap<string, OpenSheet>> {
  const blamed = new Set(findings.map(({ at }) => at.file));
  const sheets = new Map<string, OpenSheet>();
  for (const spot of spots.filter(({ file }) => blamed.has(file))) {
    sheets.set(spot.file.path, { slug: spot.slug, places: await placesOf(recall, spot) });
    recall.release(spot);
  }
  return sheets;
}

/** A sheet that breaks us shows nothing of itself. */
async function placesOf(recall: Recall, spot: Spot): Promise<readonly MarkedPlace[]> {
  return recall.work('places', spot, workPlaces).catch(() => []);
}

/** Whether an open page would say otherwise, where no file is another: a save that changed nothing should not move it. */
export function isNews(before: PreviewState, after: PreviewState): boolean {
  const said = (state: PreviewState): string => stateJson({ ...state, version: 0 }, '/');
  return before.version === 0 || said(before) !== said(after);
}

/** The folders that are projects. */
export function foldersIn(recall: Recall | undefined): ReadonlySet<string> {
  return new Set(recall?.spots.map(({ folder }) => folder));
}
