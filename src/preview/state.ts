import type { MakeResult } from '../make/make.ts';
import { findingJson } from '../proof/print.ts';
import { tellPublished, unpublished } from '../publish/publish.ts';

/** What the previewed pages are told: what was found, and which projects differ from what was published. */
export type PreviewState = {
  /** Rises with every make, so that a page knows whether it is the latest. */
  readonly version: number;
  readonly findings: readonly ReturnType<typeof findingJson>[];
  readonly drafts: readonly { readonly slug: string; readonly changes: readonly string[] }[];
  /** A broken environment or a mistake of ours, in one line. */
  readonly trouble?: string;
};

export function stateAfter(result: MakeResult, today: string, version: number): PreviewState {
  const drafts = unpublished(result.studies, today).map((published) => {
    const { changes } = tellPublished(published, result.workspace.site);
    return { slug: published.project.slug, changes: changes.length > 0 ? changes : ['never published yet'] };
  });
  return { version, findings: result.findings.map(findingJson), drafts };
}

export function stateInTrouble(error: unknown, version: number): PreviewState {
  const trouble = error instanceof Error ? error.message : String(error);
  return { version, findings: [], drafts: [], trouble };
}
