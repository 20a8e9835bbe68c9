import type { Site } from '../../src/project/model.ts';
import { readSite } from '../../src/project/reading/read-site.ts';
import { sourceFile } from '../../src/project/source.ts';
import type { ListedProject } from '../../src/site/listed.ts';

/** The settings that a `site.yaml` of these lines gives. */
export function siteOf(text: string): Site {
  const site = readSite(sourceFile('site.yaml', text));
  if (site.findings.length > 0)
    throw new Error(`faults in ${text}: ${JSON.stringify(site.findings.map(({ rule }) => rule))}`);
  return site;
}

/** A project as the site's pages know it. */
export function listed(slug: string, more: Partial<ListedProject> = {}): ListedProject {
  return { slug, title: slug, tags: [], papers: [], revisions: [], accent: '#33414e', ...more };
}
