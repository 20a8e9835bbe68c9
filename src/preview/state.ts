import type { MakeResult } from '../make/make-options.ts';
import { findingJson } from '../proof/print.ts';
import { mergeTold, type Told } from '../proof/told.ts';
import { workDraft } from '../publish/revisions.ts';
import type { Recall } from '../recall/recall.ts';

/** A project that differs from what was published of it, and how, in words. */
type Draft = { readonly slug: string; readonly changes: readonly string[] };

/** What is known at a moment, beside the pages. */
export type PreviewState = {
  /** Rises with every make that changed something, so that a page knows whether it is the latest. */
  readonly version: number;
  readonly findings: readonly Told[];
  readonly drafts: readonly Draft[];
  /** A broken environment or a mistake of ours, in one line. */
  readonly trouble?: string;
};

/** What the previewed pages are told of it, as JSON. */
export function stateJson({ version, findings, drafts, trouble }: PreviewState): string {
  return JSON.stringify({ version, findings: findings.map(findingJson), drafts, trouble });
}

/** The state after everything was looked at. */
export async function stateAfter(
  { recall, spots, findings }: MakeResult,
  version: number,
): Promise<PreviewState> {
  const drafts: Draft[] = [];
  for (const spot of spots) {
    const changes = await recall.work('draft', spot, workDraft);
    recall.release(spot);
    if (changes) drafts.push({ slug: spot.slug, changes });
  }
  recall.save();
  return { version, findings, drafts };
}

/** The state after some projects alone were looked at: of all others it says what it said. */
export function stateWith(
  before: PreviewState,
  { spots, findings }: MakeResult,
  version: number,
): PreviewState {
  const anew = new Set(spots.map(({ file }) => file.path));
  const others = before.findings.filter(({ at }) => !anew.has(at.file.path));
  return { version, findings: mergeTold([...others, ...findings]), drafts: before.drafts };
}

/** Whether an open page would look otherwise: a save that changed nothing should not move it. */
export function isNews({ written }: MakeResult, before: PreviewState, after: PreviewState): boolean {
  const said = (state: PreviewState): string => stateJson({ ...state, version: 0 });
  return before.version === 0 || written.some(({ how }) => how !== 'kept') || said(before) !== said(after);
}

/** The folders that are projects. */
export function foldersIn(recall: Recall | undefined): ReadonlySet<string> {
  return new Set(recall?.spots.map(({ folder }) => folder));
}
