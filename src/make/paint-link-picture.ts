import sharp from 'sharp';
import type { Font } from '../project/font-file.ts';
import { sha256 } from '../recall/sealed.ts';
import { PICTURE_SIZES, type PictureFormat } from '../site/picture-formats.ts';
import { fittedLettering, lettering, letterWith } from './lettering.ts';
import { Ground, imageOf, opaquePixelsOf, type PictureBox, type Pixels } from './pixels.ts';

/** What is painted for a link's preview. */
export type LinkPicture = {
  readonly title: string;
  readonly siteTitle: string;
  /** Lines at the foot: the day, the time it takes. */
  readonly facts: string;
  /** Colors as `#rrggbb`: a strip at the edge, and the ground of a drawing. */
  readonly accent: string;
  readonly tint: string;
  /** A drawing (SVG) is shown whole, a photo fills its half. */
  readonly picture: { readonly kind: 'photo' | 'drawing'; readonly bytes: Uint8Array } | undefined;
  /** The font that the settings name. */
  readonly font: Font | undefined;
};

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

/** Colors as fine as the rest, or thin colored lines blur; codes of each file's own would take as long as all the rest. */
const JPEG = { quality: 86, chromaSubsampling: '4:4:4', optimizeCoding: false } as const;

/** The picture in one format, a JPEG. Its letters are the package's own, whatever fonts the computer has. */
export async function paintLinkPicture(content: LinkPicture, format: PictureFormat): Promise<Uint8Array> {
  await letterWith(content.font?.letters.length ? content.font : undefined);
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
  font: Font | undefined,
  style: Parameters<typeof lettering>[1],
): ReturnType<typeof lettering> {
  const key = JSON.stringify([siteTitle, font?.digest, style]);
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
  const drawing = sharp(picture.bytes, { density: DENSITY });
  const shown = drawing.resize({ ...room, fit: 'contain', background: tint });
  ground.lay(await opaquePixelsOf(shown, tint), left + MARGIN, top + MARGIN);
}

/** Photos once read, by their digests: every format of a project's picture shows the same, one after the other. */
const opened = new Map<string, Promise<Pixels>>();
const MOST_OPENED = 2;

function openPhoto(bytes: Uint8Array): Promise<Pixels> {
  const key = sha256(bytes);
  const photo = opened.get(key) ?? opaquePixelsOf(sharp(bytes), '#ffffff');
  opened.set(key, photo);
  const [oldest] = opened.keys();
  if (opened.size > MOST_OPENED && oldest !== undefined) opened.delete(oldest);
  return photo;
}
