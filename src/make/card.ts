import { accentOf } from '../drawing/accent.ts';
import { type Editions, ownEdition } from '../edition/editions.ts';
import { leadPhoto } from '../handout/hero.ts';
import type { ListedPicture } from '../site/listed.ts';
import { DRAWN_PICTURE, drawnPicture } from './drawn-picture.ts';
import type { ProjectMaterial } from './output.ts';
import { downloadsOf } from './papers.ts';
import { picturesOnPage } from './placed-pictures.ts';
import type { Card } from './record.ts';

/** What the site's own pages know of a project. */
export function cardOf(material: ProjectMaterial): Card {
  const { slug, editions, ledger } = material;
  const { project } = ownEdition(editions);
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
    accent: accentOf(firstColor(editions)).color,
    papers: downloadsOf(material).map(({ kind, href }) => ({ kind, href: `${slug}/${href}` })),
    revisions: ledger.revisions,
  };
}

/** The colour of the first of its papers that has one. */
export function firstColor(editions: Editions): string | undefined {
  const { project } = ownEdition(editions);
  const stocks = [...project.pieces.values()].flatMap(({ stock }) =>
    stock ? [project.stock.get(stock.value)] : [],
  );
  return stocks.find((stock) => stock?.color)?.color?.value;
}

function pictureOf(material: ProjectMaterial): ListedPicture | undefined {
  const { slug, editions, pictures } = material;
  const lead = leadPhoto(ownEdition(editions).project);
  const photo = lead && picturesOnPage(pictures).get(lead.path.value);
  if (lead && photo) {
    const { src, width, height, sources = [] } = photo;
    const moved = sources.map(({ type, srcset }) => ({ type, srcset: movedInto(slug, srcset) }));
    return {
      src: `${slug}/${src}`,
      alternative: lead.alternative,
      width,
      height,
      sources: moved,
      drawn: false,
    };
  }
  const drawing = drawnPicture(material);
  if (!drawing) return undefined;
  const { alternative, width, height } = drawing;
  return { src: `${slug}/${DRAWN_PICTURE}`, alternative, width, height, sources: [], drawn: true };
}

/** `a.jpg 480w, b.jpg 960w` as seen from the folder above. */
function movedInto(folder: string, srcset: string): string {
  return srcset
    .split(', ')
    .map((candidate) => `${folder}/${candidate}`)
    .join(', ');
}
