import type { Paper } from '../project/model.ts';
import type { WorkspaceTexts } from '../project/workspace-texts.ts';

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

/**
 * What is kept of a revision, in the order it is offered; none where it was published without PDFs. All of it is for
 * everybody to read: a link that leads out of the project's folder is no print.
 */
export function findKept(
  { findPicture }: Pick<WorkspaceTexts, 'findPicture'>,
  folder: string,
  revision: number,
): readonly KeptPrint[] {
  const all = (['handout', 'template'] as const).flatMap((of) =>
    (['letter', 'a4'] as const).map((paper): KeptPrint => ({ revision, of, paper })),
  );
  return all.filter((print) => findPicture(folder, keptPath(print)) === 'there');
}
