import sharp, { type Sharp } from 'sharp';
import { imageOf, type Pixels, pixelsOf } from './pixels.ts';

// Its own cache helps nobody who encodes each picture once, and takes memory.
sharp.cache(false);
// By default it follows the machine, and the bytes of an AVIF follow it.
sharp.concurrency(1);

type Encoder = (image: Sharp) => Sharp;

/** How a photo is written for the web. More effort takes twice the time for files a hundredth smaller. */
export const ENCODERS: Readonly<Record<'avif' | 'webp' | 'jpg', Encoder>> = {
  avif: (image) => image.avif({ quality: 55, effort: 1 }),
  webp: (image) => image.webp({ quality: 78, effort: 2 }),
  jpg: (image) =>
    image.flatten({ background: '#fff' }).jpeg({ quality: 82, mozjpeg: true, optimizeScans: false }),
};

/** A photo in one size and encoding. */
export type EncodedPhoto = { readonly bytes: Uint8Array; readonly width: number; readonly height: number };

/** By the endings of their names. */
type EncodedPhotos = Readonly<Record<keyof typeof ENCODERS, EncodedPhoto>>;

/** More pixels than any camera takes is a trap laid for the program's memory: a small file that unpacks to gigabytes. */
const MOST_PIXELS = 120_000_000;
/** What a camera or a phone saves. SVG is none of them: it can carry scripts. */
const FORMATS = new Set(['jpeg', 'png', 'webp', 'avif', 'heif', 'tiff', 'gif']);

/**
 * A photo in every encoding: turned upright by its own orientation, no wider than `widest`, and with no metadata at all:
 * where it was taken is nobody's business.
 * @throws when it is no picture that can be shown, with the reason.
 */
export async function encodePhoto(source: Uint8Array, widest: number): Promise<EncodedPhotos> {
  // To read a photo takes as long as to write one: it is read once for all encodings.
  const upright = await pixelsUpright(source, widest);
  const encode = async (encoder: Encoder): Promise<EncodedPhoto> => {
    const { data, info } = await encoder(imageOf(upright)).toBuffer({ resolveWithObject: true });
    return { bytes: data, width: info.width, height: info.height };
  };
  const avif = await encode(ENCODERS.avif);
  const webp = await encode(ENCODERS.webp);
  return { avif, webp, jpg: await encode(ENCODERS.jpg) };
}

async function pixelsUpright(source: Uint8Array, widest: number): Promise<Pixels> {
  const image = sharp(source, { limitInputPixels: MOST_PIXELS, failOn: 'truncated' });
  const { format, width = 0, height = 0 } = await image.metadata();
  if (!FORMATS.has(format)) throw new Error(`it is ${format.toUpperCase()}, which is not shown`);
  if (width * height > MOST_PIXELS) throw new Error(`it has ${width} × ${height} pixels`);
  return pixelsOf(image.rotate().resize({ width: widest, withoutEnlargement: true }));
}
