import { tentHtml } from '../../site/share-page.ts';
import { printStyles } from '../assets.ts';
import { cardOf } from '../card.ts';
import type { Output } from '../output.ts';
import { tentName } from '../papers.ts';
import { pdfJob } from '../pdf-job.ts';

/** `site/<slug>/share/<slug>-tent.pdf`: a tent for the table with the QR code on both sides. */
export const tent: Output = {
  ofProject: (material) => {
    const { site, slug, labels, renderer, files, pdf } = material;
    if (!pdf) return [];
    const card = cardOf(material);
    const styles = printStyles(files, 'tent');
    return site.paper.flatMap((paper) => {
      const html = tentHtml(card, { site, labels, renderer, styles, paper });
      return html === undefined
        ? []
        : [pdfJob(material, tentName(site, slug, paper), () => html, { title: card.title })];
    });
  },
};
