import { ownEdition } from '../shape/editions.ts';
import { leadPhoto } from '../sheet/hero.ts';
import { speaker } from '../sheet/labels.ts';
import { DRAWN_PICTURE, drawnPicture } from './drawn-picture.ts';
import type { ProjectMaterial } from './output-kind.ts';
import { downloadsOf } from './papers.ts';
import { plain } from './placed-pictures.ts';
import type { Card, CardPicture } from './record.ts';

/** What the index shows of a project. */
export function cardOf(material: ProjectMaterial): Card {
  const { slug, editions, labels } = material;
  const { project } = ownEdition(editions);
  const say = speaker(labels);
  return {
    slug,
    title: project.title.value,
    summary: project.summary?.value,
    session: project.session?.value,
    level: project.level?.value,
    minutes: project.minutes?.value,
    tags: project.tags.map(({ value }) => value),
    occasion: project.occasion?.value,
    picture: pictureOf(material),
    papers: downloadsOf(material).map(({ kind, href }) => ({
      name: say(`pdf-${kind}`),
      href: `${slug}/${href}`,
    })),
  };
}

function pictureOf(material: ProjectMaterial): CardPicture | undefined {
  const { slug, editions, pictures } = material;
  const lead = leadPhoto(ownEdition(editions).project);
  const placed = pictures.find(({ path }) => path === lead?.path.value);
  if (lead && placed) {
    const { name, width, height } = plain(placed.renditions);
    return { src: `${slug}/${name}`, alternative: lead.alternative, width, height };
  }
  const drawing = drawnPicture(material);
  if (!drawing) return undefined;
  const { alternative, width, height } = drawing;
  return { src: `${slug}/${DRAWN_PICTURE}`, alternative, width, height };
}
