import type { Paper } from '../../project/model.ts';
import { tentHtml } from '../../site/tent.ts';
import { tentStyles } from '../assets.ts';
import { cardOf } from '../card.ts';
import { dayOf } from '../day.ts';
import type { Job, Output, ProjectMaterial } from '../output.ts';
import { tentName } from '../papers.ts';

/** `site/<slug>/share/<slug>-tent.pdf`: a tent for the table with the QR code on both sides. */
export const tent: Output = {
  id: 'tent',
  ofProject: (material) =>
    material.pdf ? material.site.paper.flatMap((paper) => tentJob(material, paper)) : [],
};

function tentJob(material: ProjectMaterial, paper: Paper): Job[] {
  const { site, slug, labels, renderer, files, printer, editions, ledger } = material;
  const styles = { kind: 'inline', css: tentStyles(files) } as const;
  const card = cardOf(material);
  const html = tentHtml(card, { site, labels, renderer, styles, paper });
  if (html === undefined) return [];
  const date = dayOf(editions, ledger);
  return [
    {
      path: `site/${slug}/${tentName(site, slug, paper)}`,
      from: `${date}\n${html}`,
      produce: () => printer.pdf(html, { title: card.title, date }),
    },
  ];
}
