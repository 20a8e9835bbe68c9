import { accentOf } from '../drawing/accent.ts';
import type { Drawing } from '../drawing/canvas.ts';
import { foldedDrawing } from '../drawing/folded.ts';
import { lowestBases } from '../drawing/pile.ts';
import { stackDrawing } from '../drawing/stack.ts';
import { type Editions, ownEdition, shownEditions } from '../edition/editions.ts';
import { leadPhoto } from '../handout/drawings.ts';
import { mainPiece } from '../handout/finished-size.ts';
import { shownText } from '../handout/measured-text.ts';
import { settingOf } from '../handout/setting.ts';
import { paperColor } from '../handout/supplies.ts';
import type { Project } from '../project/model.ts';
import { slugOf } from '../project/slug.ts';
import type { ListedPicture, ListedProject } from '../site/listed.ts';
import { type Labels, speaker } from '../words/labels.ts';
import { pieceNamed } from '../words/names.ts';
import type { ProjectMaterial } from './output.ts';
import { picturesOnPage } from './pictures.ts';

/** What the site's own pages know of a project. */
export function cardOf(material: ProjectMaterial): ListedProject {
  const { slug, editions, ledger, labels, downloads } = material;
  const setting = settingOf(editions, 'letter', labels, new Map());
  const { project } = ownEdition(editions);
  return {
    slug,
    title: project.title.value,
    summary: project.summary && shownText(project.summary.value, setting),
    session: project.session?.value,
    place: project.place?.value,
    host: project.host?.value,
    contact: project.contact?.value,
    terms: project.terms?.value,
    ...(project.links.length > 0 && { links: project.links }),
    level: project.level?.value,
    minutes: project.minutes?.value,
    tags: project.tags.map(({ value }) => value),
    occasion: project.occasion?.value,
    picture: pictureOf(material),
    accent: accentOf(paperColor(project)).color,
    papers: downloads.flatMap(({ listed, href }) => (listed ? [{ ...listed, href: `${slug}/${href}` }] : [])),
    parts: partsOf(project, labels),
    forms: formsOf(project),
    ...(project.was.length > 0 && { was: project.was.map(({ value }) => slugOf(value)) }),
    revisions: ledger.revisions,
    ...(editions.printed === 'both' ? {} : { alone: editions.printed }),
  };
}

/** Each once, as it is called on paper; not the stock: nearly every sheet is of cardstock. */
function partsOf({ pieces, supplies }: Project, labels: Labels): readonly string[] {
  const say = speaker(labels);
  const names = [
    ...[...pieces.keys()].map((id) => pieceNamed(id, say)),
    ...supplies.map(({ item }) => item.value),
  ];
  return [...new Set(names)];
}

function formsOf({ pieces }: Project): readonly string[] {
  const forms = [...pieces.values()].flatMap(({ body }) => (body.kind === 'form' ? [body.form.value] : []));
  return [...new Set(forms)];
}

function pictureOf(material: ProjectMaterial): ListedPicture | undefined {
  const { slug, editions, pictures } = material;
  const lead = leadPhoto(ownEdition(editions).project);
  const photo = lead && picturesOnPage(pictures).get(lead.path.value);
  if (lead && photo) {
    const { alternative } = lead;
    const sources = photo.sources?.map(({ type, srcset }) => ({ type, srcset: movedInto(slug, srcset) }));
    return { ...photo, src: `${slug}/${photo.src}`, alternative, sources: sources ?? [], drawn: false };
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

/** The picture's name in the project's folder. */
export const DRAWN_PICTURE = 'picture.svg';

const ROOM = { width: 120, height: 90 };

/**
 * The picture of a project that has no photo, for people, not for cutting by: the folded shape of its main piece, or
 * a flat one with what lies on it. No measurements stand in it; it is shown small.
 */
export function drawnPicture({ editions, labels }: ProjectMaterial): Drawing | undefined {
  if (!drawn.has(editions)) drawn.set(editions, drawPicture(editions, labels));
  return drawn.get(editions);
}

/** Several outputs show it. */
const drawn = new WeakMap<Editions, Drawing | undefined>();

function drawPicture(editions: Editions, labels: Labels): Drawing | undefined {
  const style = { shown: shownEditions(editions), say: speaker(labels) };
  const main = mainPiece(editions);
  const drawing = main && foldedDrawing(editions, main.id.value, 'folded', ROOM, style);
  if (drawing) return drawing;
  const [base] = lowestBases(editions);
  return base && stackDrawing(editions, base, ROOM, style);
}
