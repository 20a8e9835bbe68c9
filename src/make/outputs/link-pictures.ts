import type { PictureFormat } from '../../site/picture-formats.ts';
import type { Job } from '../job.ts';
import { linkPictureSource, postedPictures, projectLinkPicture, siteLinkPicture } from '../link-picture.ts';
import type { Output } from '../output.ts';
import type { Painter } from '../painter.ts';

/**
 * `site/<slug>/preview-….jpg` and one of the site in `site/assets/`: what is shown beside a link that is passed on.
 * `site/<slug>/<slug>-square.jpg` and `-tall.jpg`: the same, to be posted.
 */
export const linkPictures: Output = {
  mayWait: true,
  ofProject: (material) => {
    const { slug, painter } = material;
    const picture = projectLinkPicture(material);
    return [
      jobOf(painter, `site/${slug}/`, picture, 'wide'),
      ...postedPictures(slug).map(({ name, format }) =>
        jobOf(painter, `site/${slug}/`, { ...picture, name }, format),
      ),
    ];
  },
  ofSite: ({ site, painter }) => [jobOf(painter, 'site/', siteLinkPicture(site), 'wide')],
};

function jobOf(
  painter: Painter,
  folder: string,
  { name, content }: ReturnType<typeof siteLinkPicture>,
  format: PictureFormat,
): Job {
  return {
    path: `${folder}${name}`,
    from: () => linkPictureSource(content),
    produce: () => painter.paintLinkPicture(content, format),
  };
}
