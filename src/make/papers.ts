import { templatePieces } from '../handout/piece-sheets.ts';
import type { Download, Print } from '../handout/prints.ts';
import type { Paper, Site } from '../project/model.ts';
import type { ProjectMaterial } from './output.ts';

type TentLink = { readonly paper: Paper; readonly href: string };

/** Which prints a site hands out: those of its papers, and large print always. */
export function handoutsOf({ paper }: Site): readonly Print[] {
  return [...paper, 'large-print'];
}

/** The template of the site's first paper has the plain name. */
export function templateName({ paper: papers }: Site, slug: string, paper: Paper): string {
  return paper === papers[0] ? `${slug}-template.pdf` : `${slug}-template-${paper}.pdf`;
}

/** The table tents lie by the page for sharing; the one on the site's first paper has the plain name. */
export function tentName({ paper: papers }: Site, slug: string, paper: Paper): string {
  return paper === papers[0] ? `share/${slug}-tent.pdf` : `share/${slug}-tent-${paper}.pdf`;
}

/** The table tents by their names relative to the project's folder; a site without an address has none. */
export function tentsOf({ site, slug, offersPdfs }: ProjectMaterial): readonly TentLink[] {
  if (!offersPdfs || !site.url) return [];
  return site.paper.map((paper) => ({ paper, href: tentName(site, slug, paper) }));
}

/** The PDFs a page offers, by names relative to it; none that will not be there. */
export function downloadsOf({ site, slug, editions, offersPdfs }: ProjectMaterial): readonly Download[] {
  if (!offersPdfs) return [];
  const handouts = handoutsOf(site).map((kind) => ({ kind, href: `${slug}-${kind}.pdf` }));
  if (templatePieces(editions).length === 0) return handouts;
  const isOne = site.paper.length === 1;
  const templates = site.paper.map((paper) => ({
    kind: isOne ? ('template' as const) : (`template-${paper}` as const),
    href: templateName(site, slug, paper),
  }));
  return [...handouts, ...templates];
}
