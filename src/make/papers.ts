import type { Paper, Site } from '../project/model.ts';
import type { KeptPrint } from '../recall/kept.ts';
import type { ProjectMaterial } from './output.ts';

type TentLink = { readonly paper: Paper; readonly href: string };

/** A PDF for one of the site's papers; the one for the first has the plain name. */
export function pdfName({ paper: papers }: Site, stem: string, paper: Paper): string {
  return paper === papers[0] ? `${stem}.pdf` : `${stem}-${paper}.pdf`;
}

/** A print of an earlier revision, relative to the project's folder. */
export function keptHref(slug: string, { revision, of, paper }: KeptPrint): string {
  return `r${revision}/${slug}-r${revision}-${of}-${paper}.pdf`;
}

/** A table tent lies by the page for sharing; its name is relative to the project's folder. */
export function tentName(site: Site, slug: string, paper: Paper): string {
  return pdfName(site, `share/${slug}-tent`, paper);
}

/** The table tents; a site without an address has none. */
export function tentsOf({ site, slug, offersPdfs }: ProjectMaterial): readonly TentLink[] {
  if (!offersPdfs || !site.url) return [];
  return site.paper.map((paper) => ({ paper, href: tentName(site, slug, paper) }));
}
