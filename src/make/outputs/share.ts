import { shareHtml } from '../../site/share-page.ts';
import { siteScript, siteStyles } from '../assets.ts';
import { cardOf } from '../card.ts';
import { iconNames } from '../icons.ts';
import { projectLinkPicture } from '../link-pictures.ts';
import type { Output, ProjectMaterial } from '../output.ts';
import { tentsOf } from '../papers.ts';

/** `site/<slug>/share/index.html`: everything to hand a project on with. */
export const share: Output = {
  id: 'share',
  ofProject: (material) => [
    { path: `site/${material.slug}/share/index.html`, produce: () => pageHtml(material) },
  ],
};

function pageHtml(material: ProjectMaterial): string {
  const { slug, site, labels, files, renderer } = material;
  const card = cardOf(material);
  const links = {
    linkPicture: projectLinkPicture(material).name,
    calendar: card.session === undefined ? undefined : `${slug}.ics`,
    tents: tentsOf(material),
  };
  return shareHtml(card, links, {
    site,
    labels,
    renderer,
    styles: { kind: 'linked', hrefs: [`../../assets/${siteStyles(files).name}`] },
    scripts: [`../../assets/${siteScript(files).name}`],
    root: '../../',
    icons: iconNames(),
  });
}
