import { z } from 'zod';
import { isWebAddress } from '../project/grammar/values.ts';
import { revisionCodec } from '../project/ledger/ledger-format.ts';
import type { ListedProject } from '../site/listed.ts';
import type { Labels } from '../words/labels.ts';
import { ENGLISH } from '../words/languages.ts';
import { readLabels } from './package-files.ts';

/** What lies in a project's folder, seen from the site: whatever follows, a browser looks for it there. */
const below = z.string().regex(/^[a-z0-9-]+\/(?!\/)/u);
const candidates = z
  .string()
  .refine((text) => text.split(', ').every((each) => below.safeParse(each).success));
const picture = z.object({
  src: below,
  alternative: z.string(),
  width: z.number(),
  height: z.number(),
  sources: z.array(z.object({ type: z.string(), srcset: candidates })).default([]),
  drawn: z.boolean(),
});
let english: Labels | undefined;

/** Those of the program as it started: to look whether they were edited since takes longer than all else here. */
function isLabel(key: string): boolean {
  english ??= readLabels().get(ENGLISH);
  return english?.texts.has(key) === true;
}

const label = z.string().refine(isLabel);
const paper = z.object({ line: label, paper: label, href: below });
const link = z.object({ name: z.string(), href: z.string().refine(isWebAddress) });

/** What the site's own pages know of a project, as it is written into its record. */
export const cardCodec: z.ZodType<ListedProject, unknown> = z.object({
  slug: z.string().regex(/^[a-z0-9-]+$/u),
  title: z.string(),
  summary: z.string().optional(),
  session: z.iso.date().optional(),
  place: z.string().optional(),
  host: z.string().optional(),
  contact: z.string().optional(),
  terms: z.string().optional(),
  links: z.array(link).optional(),
  level: z.string().optional(),
  minutes: z.number().optional(),
  tags: z.array(z.string()),
  occasion: z.string().optional(),
  picture: picture.optional(),
  accent: z.string().regex(/^#[0-9a-f]{6}$/u),
  papers: z.array(paper),
  parts: z.array(z.string()).optional(),
  forms: z.array(z.string()).optional(),
  was: z.array(z.string().regex(/^[a-z0-9-]+$/u)).optional(),
  revisions: z.array(revisionCodec),
  alone: z.enum(['inch', 'metric']).optional(),
});

/** The card of a record, checked as a sheet would be; undefined for one that no make wrote of this project. */
export function readCard(card: unknown, slug: string): ListedProject | undefined {
  const read = cardCodec.safeDecode(card);
  return read.success && read.data.slug === slug ? read.data : undefined;
}
