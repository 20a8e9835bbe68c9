import { accentOf } from '../drawing/accent.ts';
import { ownEdition } from '../edition/editions.ts';
import { leadPhoto } from '../handout/hero.ts';
import type { Site } from '../project/model.ts';
import { FAVICON } from '../site/favicon.ts';
import { typographic } from '../words/typographic.ts';
import { voiceOf } from '../words/voice.ts';
import { firstColor } from './card.ts';
import { drawnPicture } from './drawn-picture.ts';
import { sha256 } from './files.ts';
import { type LinkPicture, linkPictureSource } from './link-picture.ts';
import type { ProjectMaterial } from './output.ts';
import { plain } from './placed-pictures.ts';

/** A picture for a link, not painted yet; its name changes with what it shows, so that no service shows an old one. */
export type NamedLinkPicture = { readonly name: string; readonly content: LinkPicture };

/** The picture of a project; its name is relative to the project's folder. */
export function projectLinkPicture(material: ProjectMaterial): NamedLinkPicture {
  const { editions, site, labels } = material;
  const { project } = ownEdition(editions);
  const voice = voiceOf(labels);
  const { color, tint } = accentOf(firstColor(editions));
  const { session, minutes, level, title } = project;
  const facts = [
    session && voice.date(session.value),
    minutes && voice.duration(minutes.value),
    level?.value,
  ];
  return named('', {
    title: typographic(title.value, voice.language),
    siteTitle: site.title,
    facts: facts.filter(Boolean).join('\n'),
    accent: color,
    tint,
    picture: pictureOf(material),
  });
}

/** The picture of the site itself; its name is relative to the site's root. */
export function siteLinkPicture({ title }: Site): NamedLinkPicture {
  const { color, tint } = accentOf(undefined);
  const bytes = new TextEncoder().encode(FAVICON);
  const picture = { kind: 'drawing', bytes } as const;
  return named('assets/', { title, siteTitle: '', facts: '', accent: color, tint, picture });
}

function named(folder: string, content: LinkPicture): NamedLinkPicture {
  return { name: `${folder}preview-${sha256(linkPictureSource(content)).slice(0, 10)}.png`, content };
}

function pictureOf(material: ProjectMaterial): LinkPicture['picture'] {
  const { editions, pictures } = material;
  const lead = leadPhoto(ownEdition(editions).project);
  const photo = pictures.find(({ path }) => path === lead?.path.value);
  if (photo) return { kind: 'photo', bytes: plain(photo.renditions).bytes };
  const drawing = drawnPicture(material);
  return drawing && { kind: 'drawing', bytes: new TextEncoder().encode(drawing.svg) };
}
