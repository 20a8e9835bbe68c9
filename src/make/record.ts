import { join } from 'node:path';
import { z } from 'zod';
import { revisionCodec } from '../project/ledger/ledger-format.ts';
import type { ListedProject } from '../site/listed.ts';
import { readIfThere } from './files.ts';

/** One file that was made. `from` is what its bytes followed from, hashed; absent where making it is quick. */
export type FileRecord = { readonly from?: string | undefined; readonly sha256: string };

/** `make.json`: what was made, from what, with which version. */
export type MakeRecord = {
  readonly sheetwright: string;
  readonly projects: Readonly<Record<string, ProjectRecord>>;
  readonly site: Readonly<Record<string, FileRecord>>;
};

type ProjectRecord = {
  readonly source: string;
  readonly sha256: string;
  /** What the index shows: a project with an error keeps its place and its last good sheet. */
  readonly card: ListedProject;
  readonly files: Readonly<Record<string, FileRecord>>;
};

const made = z.object({ from: z.string().optional(), sha256: z.string() });
const picture = z.object({
  src: z.string(),
  alternative: z.string(),
  width: z.number(),
  height: z.number(),
  sources: z.array(z.object({ type: z.string(), srcset: z.string() })).default([]),
  drawn: z.boolean(),
});
const paper = z.object({ line: z.string(), paper: z.string(), href: z.string() });
const card = z.object({
  slug: z.string(),
  title: z.string(),
  summary: z.string().optional(),
  session: z.string().optional(),
  level: z.string().optional(),
  minutes: z.number().optional(),
  tags: z.array(z.string()),
  occasion: z.string().optional(),
  picture: picture.optional(),
  accent: z.string(),
  papers: z.array(paper),
  revisions: z.array(revisionCodec),
  alone: z.enum(['inch', 'metric']).optional(),
});
const record: z.ZodType<MakeRecord, unknown> = z.object({
  sheetwright: z.string(),
  projects: z.record(
    z.string(),
    z.object({ source: z.string(), sha256: z.string(), card, files: z.record(z.string(), made) }),
  ),
  site: z.record(z.string(), made),
});

/** Where the record lies below the output folder. */
export const RECORD_PATH: string = 'site/make.json';

const NOTHING_MADE: MakeRecord = { sheetwright: '', projects: {}, site: {} };

/** The record of the last make; an absent, broken or older one counts as nothing made. */
export async function readRecord(out: string): Promise<MakeRecord> {
  const bytes = await readIfThere(join(out, RECORD_PATH));
  if (!bytes) return NOTHING_MADE;
  try {
    const read = record.safeDecode(JSON.parse(new TextDecoder().decode(bytes)));
    return read.success ? read.data : NOTHING_MADE;
  } catch {
    return NOTHING_MADE;
  }
}

/** The record as it is written: stable order, no clock. */
export function recordText(value: MakeRecord): string {
  return `${JSON.stringify(record.encode(value), null, 1)}\n`;
}
