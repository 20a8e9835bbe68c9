import { join } from 'node:path';
import type { Sharp } from 'sharp';
import { versionOf } from '../recall/program.ts';
import { sha256 } from '../recall/sealed.ts';
import { putFiles, readIfThere } from './files.ts';
import { loadSharp } from './load-sharp.ts';
import { imageOf, type Pixels, pixelsOf } from './pixels.ts';

/** A way a picture is written for the web. */
type Encoding = {
  readonly ending: 'avif' | 'webp' | 'jpg';
  readonly mediaType: string;
  readonly encode: (image: Sharp) => Sharp;
};

/**
 * Best first: a browser takes the first it knows; every one knows the last, which is printed too. More effort takes twice
 * the time for files a hundredth smaller.
 */
export const ENCODINGS: readonly Encoding[] = [
  { ending: 'avif', mediaType: 'image/avif', encode: (image) => image.avif({ quality: 55, effort: 1 }) },
  { ending: 'webp', mediaType: 'image/webp', encode: (image) => image.webp({ quality: 78, effort: 2 }) },
  {
    ending: 'jpg',
    mediaType: 'image/jpeg',
    encode: (image) =>
      image.flatten({ background: '#fff' }).jpeg({ quality: 82, mozjpeg: true, optimizeScans: false }),
  },
];

/** A phone, a tablet, a desk screen or a print: 1600 pixels across 62 mm of paper are more than enough. */
export const WIDTHS: readonly number[] = [480, 960, 1600];

/** Part of every cache key: a picture remade by other rules, or by another encoder, is another picture. */
const RULES_OF_REMAKING = `avif 55/1, webp 78/2, jpeg 82, upright, no metadata, read once, sealed with its size; sharp ${versionOf('sharp')}`;

export type MadePicture = {
  readonly encoding: Encoding;
  readonly bytes: Uint8Array;
  readonly width: number;
  readonly height: number;
};

/** More pixels than any camera takes is a trap laid for the program's memory: a small file that unpacks to gigabytes. */
const MOST_PIXELS = 120_000_000;
/** What a camera or a phone saves. SVG is none of them: it can carry scripts. */
const FORMATS = new Set(['jpeg', 'png', 'webp', 'avif', 'heif', 'tiff', 'gif']);

/**
 * A picture in every encoding: turned upright by its own orientation, no wider than `widest`, and with no metadata at all:
 * where it was taken is nobody's business. Kept in `cache`, a folder in which anything may be deleted.
 * @throws when it is no picture that can be shown, with the reason.
 */
export async function remade(
  source: Uint8Array,
  widest: number,
  cache: string,
): Promise<readonly MadePicture[]> {
  const rules = sha256(`${RULES_OF_REMAKING}\n${widest}`).slice(0, 16);
  // Of which photo it is stands first: with the photo goes what was made of it.
  const name = `${sha256(source)}-${rules}`;
  let upright: Promise<Pixels> | undefined;
  const made: MadePicture[] = [];
  for (const encoding of ENCODINGS) {
    const file = `${name}.${encoding.ending}`;
    const kept = await keptIn(join(cache, file), encoding);
    if (kept) {
      made.push(kept);
      continue;
    }
    // To read a photo takes as long as to write one: it is read once for all encodings.
    upright ??= pixelsUpright(source, widest);
    const { data, info } = await encoding
      .encode(imageOf(await upright))
      .toBuffer({ resolveWithObject: true });
    const { width, height } = info;
    await putFiles(cache, [{ path: file, bytes: sealed(data, width, height) }]);
    made.push({ encoding, bytes: data, width, height });
  }
  return made;
}

async function pixelsUpright(source: Uint8Array, widest: number): Promise<Pixels> {
  const image = loadSharp()(source, { limitInputPixels: MOST_PIXELS, failOn: 'truncated' });
  const { format, width = 0, height = 0 } = await image.metadata();
  if (!FORMATS.has(format)) throw new Error(`it is ${format.toUpperCase()}, which is not shown`);
  if (width * height > MOST_PIXELS) throw new Error(`it has ${width} × ${height} pixels`);
  return pixelsOf(image.rotate().resize({ width: widest, withoutEnlargement: true }));
}

/** How long the digest of what is kept is, which stands before it. */
const SEAL = sha256('').length;

/** As many characters for the size of a picture, which stands before it: to read it would take the picture library. */
const SIZE = 16;

/** A picture as it is kept: one cut short or empty may still say how large it is, and would be shown for good. */
function sealed(bytes: Uint8Array, width: number, height: number): Uint8Array {
  const size = Buffer.from(`${width} ${height}`.padEnd(SIZE), 'latin1');
  const all = Buffer.concat([size, bytes]);
  return Buffer.concat([Buffer.from(sha256(all), 'latin1'), all]);
}

/** A picture of the cache; undefined where there is none, or one that a full or broken disk has spoilt. */
async function keptIn(path: string, encoding: Encoding): Promise<MadePicture | undefined> {
  const kept = await readIfThere(path);
  if (!kept) return undefined;
  const head = Buffer.from(kept.subarray(0, SEAL + SIZE)).toString('latin1');
  if (head.slice(0, SEAL) !== sha256(kept.subarray(SEAL))) return undefined;
  const [width = 0, height = 0] = head.slice(SEAL).trim().split(' ').map(Number);
  return { encoding, bytes: kept.subarray(SEAL + SIZE), width, height };
}
