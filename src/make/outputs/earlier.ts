import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { keptPath } from '../../recall/kept.ts';
import type { Output } from '../output.ts';
import { keptHref } from '../papers.ts';

/** `site/<slug>/r1/`: the handouts and templates of earlier revisions, the very files that were downloaded then. */
export const earlier: Output = {
  ofProject: ({ slug, source, kept }) =>
    kept.map((print) => ({
      path: `site/${slug}/${keptHref(slug, print)}`,
      produce: () => readFile(join(source, keptPath(print))),
    })),
};
