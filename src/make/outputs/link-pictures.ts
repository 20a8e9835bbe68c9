import type { Job } from '../job.ts';
import { linkPicturePng, linkPictureSource, projectLinkPicture, siteLinkPicture } from '../link-picture.ts';
import type { Output } from '../output.ts';

/** `site/<slug>/preview-….png` and one of the site in `site/assets/`: what is shown beside a link that is passed on. */
export const linkPictures: Output = {
  ofProject: (material) => [jobOf(`site/${material.slug}/`, projectLinkPicture(material))],
  ofSite: ({ site }) => [jobOf('site/', siteLinkPicture(site))],
};

function jobOf(folder: string, { name, content }: ReturnType<typeof siteLinkPicture>): Job {
  return {
    path: `${folder}${name}`,
    from: () => linkPictureSource(content),
    produce: () => linkPicturePng(content),
  };
}
