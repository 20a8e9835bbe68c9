import { accentOf } from '../drawing/accent.ts';
import { ownEdition } from '../edition/editions.ts';
import { leadPhoto } from '../handout/drawings.ts';
import { paperColor } from '../handout/supplies.ts';
import type { Site } from '../project/model.ts';
import { sha256 } from '../recall/sealed.ts';
import { FAVICON } from '../site/favicon.ts';
import { PICTURE_SIZES, type PictureFormat } from '../site/picture-formats.ts';
import { capital, typographic } from '../words/typographic.ts';
import { voiceOf } from '../words/voice.ts';
import { drawnPicture } from './card.ts';
import { fittedLettering, lettering } from './lettering.ts';
import { loadSharp } from './load-sharp.ts';
import type { ProjectMaterial } from './output.ts';
import { plain } from './pictures.ts';
import { Ground, imageOf, opaquePixelsOf, type PictureBox, type Pixels } from './pixels.ts';

/** What is painted for a link's preview. */
type LinkPicture = {
  readonly title: string;
  readonly siteTitle: string;
  /** Lines at the foot: the day, the time it takes. */
  readonly facts: string;
  /** Colors as `#rrggbb`: a strip at the edge, and the ground of a drawing. */
  readonly accent: string;
  readonly tint: string;
  /** A drawing (SVG) is shown whole, a photo fills its half. */
  readonly picture: { readonly kind: 'photo' | 'drawing'; readonly bytes: Uint8Array } | undefined;
  /** Tells the font that the settings name from any other. */
  readonly font: string | undefined;
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
    level && capital(level.value),
  ];
  return named('', {
    title: typographic(title.value, voice.say),
    siteTitle: site.title,
    facts: facts.filter(Boolean).join('\n'),
    accent: color,
    tint,
    picture: shownPicture(material),
    font: site.font?.digest,
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
  const words = { title, siteTitle: '', facts: '', font: font?.digest };
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

/** Where on the paper everything stands: a strip in the project's color, the words, the picture. */
type PictureLayout = {
  readonly strip: PictureBox;
  readonly words: PictureBox;
  readonly picture: PictureBox;
  /** What stands between the facts: a low picture has a single line for them. */
  readonly between: '\n' | ' · ';
  /** How many times as large as beside a link all words are. */
  readonly scale: number;
};

const LAYOUTS: Readonly<Record<PictureFormat, PictureLayout>> = {
  wide: {
    strip: { left: 0, top: 0, width: 18, height: 630 },
    words: { left: 72, top: 60, width: 544, height: 510 },
    picture: { left: 660, top: 0, width: 540, height: 630 },
    between: '\n',
    scale: 1,
  },
  square: {
    strip: { left: 0, top: 620, width: 1080, height: 16 },
    words: { left: 72, top: 684, width: 936, height: 340 },
    picture: { left: 0, top: 0, width: 1080, height: 620 },
    between: ' · ',
    scale: 1.25,
  },
  tall: {
    strip: { left: 0, top: 1200, width: 1080, height: 20 },
    words: { left: 72, top: 1300, width: 936, height: 530 },
    // As high as a lying photo of 1,600 pixels: one that is made larger takes three times as long and looks no better.
    picture: { left: 0, top: 0, width: 1080, height: 1200 },
    between: '\n',
    scale: 1.5,
  },
};

/** Kept free round a drawing. */
const MARGIN = 64;
/** Kept free over the title and under it, or more. */
const GAP = 34;
const TITLE_SIZES = [76, 66, 58, 50, 42, 34];
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

/** Colors as fine as the rest, or thin colored lines blur; codes of each file's own would take as long as all the rest. */
const JPEG = { quality: 86, chromaSubsampling: '4:4:4', optimizeCoding: false } as const;

/** The picture in one format, a JPEG. Its letters are the package's own, whatever fonts the computer has. */
export async function paintLinkPicture(content: LinkPicture, format: PictureFormat): Promise<Uint8Array> {
  const layout = LAYOUTS[format];
  const ground = new Ground(PICTURE_SIZES[format]);
  ground.fill(layout.strip, content.accent);
  await layPicture(ground, content, layout.picture);
  await layWords(ground, content, layout);
  return imageOf(ground.pixels).jpeg(JPEG).toBuffer();
}

async function layWords(
  ground: Ground,
  { title, siteTitle, facts, font }: LinkPicture,
  { words: { left, top, width, height }, between, scale }: PictureLayout,
): Promise<void> {
  const small = { weight: 400, size: 30 * scale, color: SOFT, width } as const;
  const sizes = TITLE_SIZES.map((size) => size * scale);
  const head = await headOf(siteTitle, font, small);
  const foot = await lettering(facts.replaceAll('\n', between), { ...small, weight: 700 });
  const above = head ? head.height + GAP : 0;
  const below = foot ? foot.height + GAP : 0;
  const name = await fittedLettering(title, sizes, height - above - below, {
    weight: 700,
    color: INK,
    width,
  });
  if (head) ground.lay(head.pixels, left, top);
  if (name) ground.lay(name.pixels, left, top + above);
  if (foot) ground.lay(foot.pixels, left, top + height - foot.height);
}

/** The site's title, by all that it is painted with: the same stands on every project's pictures. */
const heads = new Map<string, ReturnType<typeof lettering>>();

function headOf(
  siteTitle: string,
  font: string | undefined,
  style: Parameters<typeof lettering>[1],
): ReturnType<typeof lettering> {
  const key = JSON.stringify([siteTitle, font, style]);
  const head = heads.get(key) ?? lettering(siteTitle, style);
  heads.set(key, head);
  return head;
}

async function layPicture(ground: Ground, { picture, tint }: LinkPicture, place: PictureBox): Promise<void> {
  const { left, top, width, height } = place;
  ground.fill(place, tint);
  if (!picture) return;
  if (picture.kind === 'photo') {
    const photo = imageOf(await openPhoto(picture.bytes));
    ground.lay(await opaquePixelsOf(photo.resize(width, height, { fit: 'cover' }), tint), left, top);
    return;
  }
  const room = { width: width - 2 * MARGIN, height: height - 2 * MARGIN };
  const drawing = loadSharp()(picture.bytes, { density: DENSITY });
  const shown = drawing.resize({ ...room, fit: 'contain', background: tint });
  ground.lay(await opaquePixelsOf(shown, tint), left + MARGIN, top + MARGIN);
}

/** Photos once read: every format of a project's picture shows the same. */
const opened = new WeakMap<Uint8Array, Promise<Pixels>>();

function openPhoto(bytes: Uint8Array): Promise<Pixels> {
  const photo = opened.get(bytes) ?? opaquePixelsOf(loadSharp()(bytes), '#ffffff');
  opened.set(bytes, photo);
  return photo;
}
