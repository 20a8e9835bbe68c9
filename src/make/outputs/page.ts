import { buildSheet, renderSheet } from '../../sheet/sheet.ts';
import { siteScript, siteStyles } from '../assets.ts';
import type { Output, ProjectMaterial } from '../output-kind.ts';
import { downloadsOf } from '../papers.ts';
import { picturesOnPage } from '../placed-pictures.ts';

/** `site/<slug>/index.html`: the sheet as a page, and the pictures it shows. */
export const page: Output = {
  id: 'page',
  ofProject: (material) => [
    { path: `site/${material.slug}/index.html`, produce: () => pageHtml(material) },
    ...material.pictures
      .flatMap(({ renditions }) => renditions)
      .map(({ name, bytes }) => ({ path: `site/${material.slug}/${name}`, produce: () => bytes })),
  ],
};

function pageHtml(material: ProjectMaterial): string {
  const { editions, site, ledger, labels, files, pictures, renderer } = material;
  const model = buildSheet({
    editions,
    site,
    labels,
    ledger,
    target: 'page',
    pictures: picturesOnPage(pictures),
    styles: { kind: 'linked', hrefs: [`../assets/${siteStyles(files).name}`] },
    scripts: [`../assets/${siteScript(files).name}`],
    links: { home: '../index.html', downloads: downloadsOf(material) },
  });
  return renderSheet(model, renderer, labels);
}
