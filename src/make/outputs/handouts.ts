import type { Print } from '../../handout/prints.ts';
import { sheetHtml } from '../../handout/sheet.ts';
import { absolute } from '../../site/place.ts';
import { printStyles } from '../assets.ts';
import { type Output, type ProjectMaterial, pdfJob } from '../output.ts';
import { handoutsOf } from '../papers.ts';
import { picturesInPrint } from '../pictures.ts';

/** `site/<slug>/<slug>-letter.pdf`, `-a4.pdf`, `-large-print.pdf`: the sheet to be handed out on paper. */
export const handouts: Output = {
  id: 'handouts',
  ofProject: (material) => {
    const { editions, site, slug, pdf } = material;
    const title = editions[editions.own].project.title.value;
    const prints = pdf ? handoutsOf(site) : [];
    return prints.map((print) =>
      pdfJob(material, `${slug}-${print}.pdf`, handoutHtml(material, print), title),
    );
  },
};

function handoutHtml(material: ProjectMaterial, target: Print): string {
  const { editions, site, slug, ledger, labels, files, pictures, renderer } = material;
  const address = absolute(site, `${slug}/`);
  return sheetHtml({
    editions,
    site,
    labels,
    renderer,
    ledger,
    target,
    pictures: picturesInPrint(pictures),
    styles: printStyles(files, 'handout'),
    scripts: [],
    links: { ...(address === undefined ? {} : { address }), downloads: [] },
  });
}
