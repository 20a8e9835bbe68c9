import { shareHtml } from '../../site/share-page.ts';
import { pagesAt } from '../assets.ts';
import { cardOf } from '../card.ts';
import { postedPictures, projectLinkPicture } from '../link-picture.ts';
import type { Output, ProjectMaterial } from '../output.ts';
import { tentsOf } from '../papers.ts';

/** `site/<slug>/share/index.html`: everything to hand a project on with. */
export const share: Output = {
  ofProject: (material) => [
    { path: `site/${material.slug}/share/index.html`, produce: () => pageHtml(material) },
  ],
};

function pageHtml(material: ProjectMaterial): string {
  const card = cardOf(material);
  const links = {
    linkPicture: projectLinkPicture(material).name,
    posted: postedPictures(material.slug),
    tents: tentsOf(material),
  };
  return shareHtml(card, links, pagesAt('../../', material, 'share'));
}
