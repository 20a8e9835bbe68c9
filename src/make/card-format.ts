import { z } from 'zod';
import { revisionCodec } from '../project/ledger/ledger-format.ts';
import type { ListedProject } from '../site/listed.ts';

const picture = z.object({
  src: z.string(),
  alternative: z.string(),
  width: z.number(),
  height: z.number(),
  sources: z.array(z.object({ type: z.string(), srcset: z.string() })).default([]),
  drawn: z.boolean(),
});
const paper = z.object({ line: z.string(), paper: z.string(), href: z.string() });

/** What the site's own pages know of a project, as it is written into its record. */
export const cardCodec: z.ZodType<ListedProject, unknown> = z.object({
  slug: z.string(),
  title: z.string(),
  summary: z.string().optional(),
  session: z.string().optional(),
  place: z.string().optional(),
  host: z.string().optional(),
  contact: z.string().optional(),
  terms: z.string().optional(),
  links: z.array(z.object({ name: z.string(), href: z.string() })).optional(),
  level: z.string().optional(),
  minutes: z.number().optional(),
  tags: z.array(z.string()),
  occasion: z.string().optional(),
  picture: picture.optional(),
  accent: z.string(),
  papers: z.array(paper),
  parts: z.array(z.string()).optional(),
  forms: z.array(z.string()).optional(),
  was: z.array(z.string()).optional(),
  revisions: z.array(revisionCodec),
  alone: z.enum(['inch', 'metric']).optional(),
});
