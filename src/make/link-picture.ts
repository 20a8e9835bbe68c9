import sharp, { type OverlayOptions } from 'sharp';
import { accentOf } from '../drawing/accent.ts';
import { ownEdition } from '../edition/editions.ts';
import { leadPhoto } from '../handout/drawings.ts';
import { paperColor } from '../handout/supplies.ts';
import type { Site } from '../project/model.ts';
import { sha256 } from '../recall/sealed.ts';
import { FAVICON } from '../site/favicon.ts';
import { LINK_PICTURE_SIZE } from '../site/frame.ts';
import { typographic } from '../words/typographic.ts';
import { voiceOf } from '../words/voice.ts';
import { drawnPicture } from './card.ts';
import { fittedLettering, lettering } from './lettering.ts';
import type { ProjectMaterial } from './output.ts';
import { plain } from './pictures.ts';

/** What is painted for a link's preview. */
type LinkPicture = {
  readonly title: string;
  readonly siteTitle: string;
  /** A line at the foot: the day, the time it takes. */
  readonly facts: string;
  /** Colors as `#rrggbb`: a strip at the edge, and the ground of a drawing. */
  readonly accent: string;
  readonly tint: string;
  /** A drawing (SVG) is shown whole, a photo fills its half. */
  readonly picture: { readonly kind: 'photo' | 'drawing'; readonly bytes: Uint8Array } | undefined;
};

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
    level?.value,
  ];
  return named('', {
    title: typographic(title.value, voice.say),
    siteTitle: site.title,
    facts: facts.filter(Boolean).join('\n'),
    accent: color,
    tint,
    picture: shownPicture(material),
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

function shownPicture(material: ProjectMaterial): LinkPicture['picture'] {
  const { editions, pictures } = material;
  const lead = leadPhoto(ownEdition(editions).project);
  const photo = pictures.find(({ path }) => path === lead?.path.value);
  if (photo) return { kind: 'photo', bytes: plain(photo.renditions).bytes };
  const drawing = drawnPicture(material);
  return drawing && { kind: 'drawing', bytes: new TextEncoder().encode(drawing.svg) };
}

/** The paper, in pixels: a strip, the words, the picture. */
const STRIP = 18;
const LEFT = 72;
const EDGE = 60;
const PICTURE = 540;
const MARGIN = 64;
const WORDS = LINK_PICTURE_SIZE.width - PICTURE - LEFT - 44;
const TITLE_SIZES = [76, 66, 58, 50, 42, 34];
const TITLE_HEIGHT = 330;
/** Dots an inch at which a drawing in millimeters is larger than it is shown. */
const DENSITY = 400;

const INK = '#1a1a1a';
const SOFT = '#454545';

/** Everything the picture's bytes follow from. */
export function linkPictureSource(content: LinkPicture): string {
  const { picture, ...words } = content;
  return JSON.stringify({
    ...words,
    picture: picture && { kind: picture.kind, sha256: sha256(picture.bytes) },
  });
}

/** A PNG of 1200 × 630 pixels. Its letters are the package's own, whatever fonts the computer has. */
export async function linkPicturePng(content: LinkPicture): Promise<Uint8Array> {
  const { width, height } = LINK_PICTURE_SIZE;
  const picture = await pictureLayers(content);
  return sharp({ create: { width, height, channels: 3, background: '#fff' } })
    .composite([block(STRIP, content.accent, 0), ...picture, ...(await wordLayers(content))])
    .png({ compressionLevel: 9, palette: true, quality: 90 })
    .toBuffer();
}

async function wordLayers({ title, siteTitle, facts }: LinkPicture): Promise<OverlayOptions[]> {
  const small = { weight: 400, size: 30, color: SOFT, width: WORDS } as const;
  const head = await lettering(siteTitle, small);
  const foot = await lettering(facts, { ...small, weight: 700 });
  const name = await fittedLettering(title, TITLE_SIZES, TITLE_HEIGHT, {
    weight: 700,
    color: INK,
    width: WORDS,
  });
  const below = EDGE + (head ? head.height + 34 : 0);
  return [
    ...(head ? [{ input: head.bytes, left: LEFT, top: EDGE }] : []),
    ...(name ? [{ input: name.bytes, left: LEFT, top: below }] : []),
    ...(foot ? [{ input: foot.bytes, left: LEFT, top: LINK_PICTURE_SIZE.height - EDGE - foot.height }] : []),
  ];
}

async function pictureLayers({ picture, tint }: LinkPicture): Promise<OverlayOptions[]> {
  const left = LINK_PICTURE_SIZE.width - PICTURE;
  const { height } = LINK_PICTURE_SIZE;
  const ground = block(PICTURE, tint, left);
  if (!picture) return [ground];
  if (picture.kind === 'photo') {
    const photo = await sharp(picture.bytes).resize(PICTURE, height, { fit: 'cover' }).png().toBuffer();
    return [{ input: photo, left, top: 0 }];
  }
  const room = { width: PICTURE - 2 * MARGIN, height: height - 2 * MARGIN };
  const drawing = await sharp(Buffer.from(picture.bytes), { density: DENSITY })
    .resize({ ...room, fit: 'contain', background: '#0000' })
    .png()
    .toBuffer();
  return [ground, { input: drawing, left: left + MARGIN, top: MARGIN }];
}

function block(width: number, background: string, left: number): OverlayOptions {
  return {
    input: { create: { width, height: LINK_PICTURE_SIZE.height, channels: 3, background } },
    left,
    top: 0,
  };
}
