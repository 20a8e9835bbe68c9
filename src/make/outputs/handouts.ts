import { buildSheet, renderSheet } from '../../handout/sheet.ts';
import { printStyles } from '../assets.ts';
import { dayOf } from '../day.ts';
import type { Job, Output, ProjectMaterial } from '../output.ts';
import { addressOf, type Handout, handoutsOf } from '../papers.ts';
import { picturesInPrint } from '../placed-pictures.ts';

/** `site/<slug>/<slug>-letter.pdf`, `-a4.pdf`, `-large-print.pdf`: the sheet to be handed out on paper. */
export const handouts: Output = {
  id: 'handouts',
  ofProject: (material) =>
    material.pdf ? handoutsOf(material.site).map((handout) => handoutJob(material, handout)) : [],
};

function handoutJob(material: ProjectMaterial, handout: Handout): Job {
  const { slug, printer, editions, ledger } = material;
  const html = handoutHtml(material, handout);
  const date = dayOf(editions, ledger);
  return {
    path: `site/${slug}/${slug}-${handout}.pdf`,
    from: `${date}\n${html}`,
    produce: () => printer.pdf(html, { title: editions[editions.own].project.title.value, date }),
  };
}

function handoutHtml(material: ProjectMaterial, target: Handout): string {
  const { editions, site, slug, ledger, labels, files, pictures, renderer } = material;
  const address = addressOf(site, slug);
  const model = buildSheet({
    editions,
    site,
    labels,
    ledger,
    target,
    pictures: picturesInPrint(pictures),
    styles: { kind: 'inline', css: printStyles(files) },
    scripts: [],
    links: { ...(address === undefined ? {} : { address }), downloads: [] },
  });
  return renderSheet(model, renderer, labels);
}
