import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Paper } from '../project/model.ts';

/** A PDF as it was handed out with a revision, kept in the project's folder. */
export type KeptPrint = {
  readonly revision: number;
  readonly of: 'handout' | 'template';
  readonly paper: Paper;
};

/** Where it is kept, below the project's folder: `revisions/r1/handout-a4.pdf`. */
export function keptPath({ revision, of, paper }: KeptPrint): string {
  return `revisions/r${revision}/${of}-${paper}.pdf`;
}

/** What is kept of a revision, in the order it is offered; none where it was published without PDFs. */
export function findKept(root: string, folder: string, revision: number): readonly KeptPrint[] {
  const all = (['handout', 'template'] as const).flatMap((of) =>
    (['letter', 'a4'] as const).map((paper): KeptPrint => ({ revision, of, paper })),
  );
  const names = namesIn(join(root, folder, 'revisions', `r${revision}`));
  return all.filter((print) => names.some((name) => keptPath(print).endsWith(`/${name}`)));
}

function namesIn(folder: string): readonly string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}
