import type { Site } from '../project/model.ts';
import type { Download } from '../sheet/sheet.ts';

/** The prints of a sheet. */
export type Handout = 'letter' | 'a4' | 'large-print';

/** Which prints a site hands out: those of its papers, and large print always. */
export function handoutsOf({ paper }: Site): readonly Handout[] {
  return [...paper, 'large-print'];
}

/** The PDFs a page offers, by names relative to it. */
export function downloadsOf({
  site,
  slug,
}: {
  readonly site: Site;
  readonly slug: string;
}): readonly Download[] {
  const kinds = [...handoutsOf(site)] as const;
  return kinds.map((kind) => ({ kind, href: `${slug}-${kind}.pdf` }));
}

/** Where a project's page stands on the web, if the site says where it does. */
export function addressOf({ url }: Site, slug: string): string | undefined {
  if (url === undefined) return undefined;
  return new URL(`${slug}/`, url.value.endsWith('/') ? url.value : `${url.value}/`).href;
}
