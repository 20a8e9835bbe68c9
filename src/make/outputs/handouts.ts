import type { Print } from '../../handout/prints.ts';
import { sheetHtml } from '../../handout/sheet.ts';
import type { Site } from '../../project/model.ts';
import { absolute } from '../../site/place.ts';
import { printStyles } from '../assets.ts';
import type { Output, ProjectMaterial } from '../output.ts';
import { pdfJob } from '../pdf-job.ts';
import { picturesInPrint } from '../pictures.ts';

/** `site/<slug>/<slug>-letter.pdf`, `-a4.pdf`, `-large-print.pdf`: the sheet to be handed out on paper. */
export const handouts: Output = {
  ofProject: (material) => {
    const { editions, site, slug, files, pdf } = material;
    const title = editions[editions.own].project.title.value;
    const prints = pdf ? printsOf(site) : [];
    return prints.map((print) =>
      pdfJob(material, `${slug}-${print}.pdf`, () => handoutHtml(material, print), {
        title,
        arrange: files.arrange,
      }),
    );
  },
  downloads: ({ site, slug, offersPdfs }) =>
    (offersPdfs ? printsOf(site) : []).map((print) => ({
      label: `pdf-${print}`,
      href: `${slug}-${print}.pdf`,
      listed: { line: 'site-handout', paper: `site-paper-${print}` },
    })),
};

/** Those for the site's papers, and large print always. */
function printsOf({ paper }: Site): readonly Print[] {
  return [...paper, 'large-print'];
}

/** How wide a photo is shown at most, in millimeters: a column; in large print the page. */
const WIDEST: Readonly<Record<Print, number>> = { letter: 86, a4: 86, 'large-print': 190 };

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
    pictures: picturesInPrint(pictures, WIDEST[target]),
    styles: printStyles(files, 'handout'),
    scripts: [],
    links: { ...(address === undefined ? {} : { address }), downloads: [] },
  });
}
