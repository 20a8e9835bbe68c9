import type { Editions } from '../edition/editions.ts';
import type { Finding } from '../project/finding.ts';
import type { Commons, Project } from '../project/model.ts';
import type { Told } from '../proof/told.ts';
import type { Shapes } from '../shape/shapes.ts';

/** A project with all that is worked out of it: its geometry, both its editions, and what was found. */
export type Study = {
  readonly project: Project;
  /** Of its own edition. */
  readonly shapes: Shapes;
  readonly editions: Editions;
  /** What is wrong in it, in the shared files it uses included. */
  readonly findings: readonly Finding[];
  /** What was looked at to read and to examine it beside its sheet and ledger, as `Project.uses` names it. */
  readonly uses: ReadonlySet<string>;
};

/** A workspace whose projects are read and examined one at a time, each when it is asked for. */
export type Examination = {
  readonly commons: Commons;
  /** What each setting and each shared value is, by the names that `Study.uses` has for them, as digests. */
  readonly values: Readonly<Record<string, string>>;
  /** The project of a folder that has a sheet, examined. */
  readonly study: (folder: string) => Study;
  readonly tell: (findings: readonly Finding[]) => readonly Told[];
};
