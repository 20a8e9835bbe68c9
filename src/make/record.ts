import { join } from 'node:path';
import { z } from 'zod';
import { readIfThere } from './output.ts';

/** What the index shows of a project; kept so that a project with an error keeps its place and last good sheet. */
const card = z.object({
  slug: z.string(),
  title: z.string(),
  summary: z.string().optional(),
  session: z.string().optional(),
  level: z.string().optional(),
  minutes: z.number().optional(),
  tags: z.array(z.string()),
  occasion: z.string().optional(),
  /** Relative to the site's root. */
  picture: z
    .object({ src: z.string(), alternative: z.string(), width: z.number(), height: z.number() })
    .optional(),
  /** The handouts, by what a person calls them. */
  papers: z.array(z.object({ name: z.string(), href: z.string() })),
});

const made = z.object({
  /** What its bytes followed from, hashed; absent where making it is quick. */
  from: z.string().optional(),
  sha256: z.string(),
});

const record = z.object({
  sheetwright: z.string(),
  /** Which browser printed the PDFs. */
  browser: z.string().optional(),
  projects: z.record(
    z.string(),
    z.object({ source: z.string(), sha256: z.string(), card, files: z.record(z.string(), made) }),
  ),
  site: z.record(z.string(), made),
});

export type Card = z.infer<typeof card>;
export type Made = z.infer<typeof made>;

/** `make.json`: what was made, from what, with which version. */
export type MakeRecord = z.infer<typeof record>;

/** Where the record lies below the output folder. */
export const RECORD_PATH = 'site/make.json';

export const NOTHING_MADE: MakeRecord = { sheetwright: '', projects: {}, site: {} };

/** The record of the last make; an absent, broken or older one counts as nothing made. */
export async function readRecord(out: string): Promise<MakeRecord> {
  const bytes = await readIfThere(join(out, RECORD_PATH));
  if (!bytes) return NOTHING_MADE;
  try {
    const read = record.safeParse(JSON.parse(new TextDecoder().decode(bytes)));
    return read.success ? read.data : NOTHING_MADE;
  } catch {
    return NOTHING_MADE;
  }
}

/** The record as it is written: stable order, no clock. */
export function recordText(value: MakeRecord): string {
  return `${JSON.stringify(value, null, 1)}\n`;
}
