import { accentOf } from '../drawing/accent.ts';
import { ownEdition } from '../edition/editions.ts';
import { leadPhoto } from '../handout/drawings.ts';
import { paperColor } from '../handout/supplies.ts';
import type { Site } from '../project/model.ts';
import { sha256 } from '../recall/sealed.ts';
import { FAVICON } from '../site/favicon.ts';
import type { PictureFormat } from '../site/picture-formats.ts';
import { capital, typographic } from '../words/typographic.ts';
import { voiceOf } from '../words/voice.ts';
import { drawnPicture } from './card.ts';
import type { ProjectMaterial } from './output.ts';
import type { LinkPicture } from './paint-link-picture.ts';
import { plain } from './pictures.ts';

/** A picture for a link, not painted yet; its name changes with what it shows, so that no service shows an old one. */
type NamedLinkPicture = { readonly name: string; readonly content: LinkPicture };

/** The picture of a project; its name is relative to the project's folder. */
export function projectLinkPicture(material: ProjectMaterial): NamedLinkPicture {
  const { editions, site, labels } = material;
  const { project } = ownEdition(editions);
  const voice = voiceOf(labels);
  const { color, tint } = accentOf(paperColor(project));
  const { session, minutes, level, title } = project;
  const facts = [
    session && voice.date(session.value),
    minutes && voice.duration(minutes.value),
    level && capital(level.value),
  ];
  return named('', {
    title: typographic(title.value, voice.say),
    siteTitle: site.title,
    facts: facts.filter(Boolean).join('\n'),
    accent: color,
    tint,
    picture: shownPicture(material),
    font: site.font,
  });
}

/** The names of a project's pictures to be posted, relative to its folder. */
export function postedPictures(
  slug: string,
): readonly { readonly format: PictureFormat; readonly name: string }[] {
  return (['square', 'tall'] as const).map((format) => ({ format, name: `${slug}-${format}.jpg` }));
}

/** The picture of the site itself; its name is relative to the site's root. */
export function siteLinkPicture({ title, font }: Site): NamedLinkPicture {
  const { color, tint } = accentOf(undefined);
  const bytes = new TextEncoder().encode(FAVICON);
  const picture = { kind: 'drawing', bytes } as const;
  const words = { title, siteTitle: '', facts: '', font };
  return named('assets/', { ...words, accent: color, tint, picture });
}

function named(folder: string, content: LinkPicture): NamedLinkPicture {
  return { name: `${folder}preview-${sha256(linkPictureSource(content)).slice(0, 10)}.jpg`, content };
}

function shownPicture(material: ProjectMaterial): LinkPicture['picture'] {
  const { editions, pictures } = material;
  const lead = leadPhoto(ownEdition(editions).project);
  const photo = pictures.find(({ path }) => path === lead?.path.value);
  if (photo) return { kind: 'photo', bytes: plain(photo.renditions).bytes };
  const drawing = drawnPicture(material);
  return drawing && { kind: 'drawing', bytes: new TextEncoder().encode(drawing.svg) };
}

/** Everything the picture's bytes follow from. */
export function linkPictureSource(content: LinkPicture): string {
  const { picture, font, ...words } = content;
  return JSON.stringify({
    ...words,
    font: font?.digest,
    picture: picture && { kind: picture.kind, sha256: sha256(picture.bytes) },
  });
}
