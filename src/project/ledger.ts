import { parse, stringify } from 'yaml';
import { z } from 'zod';
import type { Finding } from './finding.ts';
import { type SourceFile, startOf } from './source.ts';

/** A published state of a project. */
export type Revision = {
  readonly number: number;
  /** `YYYY-MM-DD`. */
  readonly date: string;
  /** What changed, in sentences. */
  readonly changes: readonly string[];
  /** The pieces whose paper is cut or scored otherwise than before, as a person calls them. */
  readonly recut: readonly string[];
};

/** What counts when a project is compared with what was published: every measurement and every step, as text. */
export type PublishedState = {
  /** `front` to `3 1/4 x 4 1/2 in`; in the order of the sheet. */
  readonly measurements: Readonly<Record<string, string>>;
  readonly steps: readonly { readonly title: string; readonly words: string }[];
};

/** `revisions.yaml` of a project. */
export type Ledger = { readonly revisions: readonly Revision[]; readonly state?: PublishedState | undefined };

export const NO_REVISIONS: Ledger = { revisions: [] };

/** Its name in the project's folder. */
export const LEDGER_FILE = 'revisions.yaml';

const revision = z.object({
  number: z.number().int().positive(),
  date: z.string().regex(/^\d{4}-\d{2}-\d{2}$/u),
  changes: z.array(z.string()),
  recut: z.array(z.string()).default([]),
});
const ledger = z.object({
  revisions: z.array(revision),
  state: z
    .object({
      measurements: z.record(z.string(), z.string()),
      steps: z.array(z.object({ title: z.string(), words: z.string() })),
    })
    .optional(),
});

const EXPECTED =
  'what "sheetwright publish" wrote there: restore it, or delete it to begin again at revision 1';

/** Reads a ledger. One that was broken by hand is reported: publishing over it would lose what it recorded. */
export function readLedger(file: SourceFile | undefined, report: (finding: Finding) => void): Ledger {
  if (!file) return NO_REVISIONS;
  const refuse = (): Ledger => {
    report({
      rule: 'unexpected-value',
      at: startOf(file),
      facts: { key: LEDGER_FILE, expected: EXPECTED, actual: '' },
    });
    return NO_REVISIONS;
  };
  try {
    const read = ledger.safeParse(parse(file.text));
    return read.success ? read.data : refuse();
  } catch {
    return refuse();
  }
}

/** A ledger as it is written. */
export function ledgerText(value: Ledger): string {
  const head =
    '# The published revisions of this project, written by "sheetwright publish". Do not edit by hand.\n';
  return head + stringify(value, { lineWidth: 110, defaultStringType: 'PLAIN', defaultKeyType: 'PLAIN' });
}
