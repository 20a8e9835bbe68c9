import { join } from 'node:path';
import { versionOf } from '../recall/program.ts';
import { sealBytes, sha256, unsealBytes } from '../recall/sealed.ts';
import type { ENCODERS, EncodedPhoto } from './encode-photo.ts';
import { putFiles, readIfThere } from './files.ts';
import type { Painter } from './painter.ts';

/** A way a picture is written for the web. */
type Encoding = { readonly ending: keyof typeof ENCODERS; readonly mediaType: string };

/** Best first: a browser takes the first it knows; every one knows the last, which is printed too. */
export const ENCODINGS: readonly Encoding[] = [
  { ending: 'avif', mediaType: 'image/avif' },
  { ending: 'webp', mediaType: 'image/webp' },
  { ending: 'jpg', mediaType: 'image/jpeg' },
];

/** A phone, a tablet, a desk screen or a print: 1600 pixels across 62 mm of paper are more than enough. */
export const WIDTHS: readonly number[] = [480, 960, 1600];

/** Part of every cache key: a picture remade by other rules, or by another encoder, is another picture. */
const RULES_OF_REMAKING = `avif 55/1, webp 78/2, jpeg 82, upright, no metadata, read once, sealed with its name and size; sharp ${versionOf('sharp')}`;

export type MadePicture = EncodedPhoto & { readonly encoding: Encoding };

/**
 * A picture in every encoding, no wider than `widest`. Kept in `cache`, a folder in which anything may be deleted.
 * @throws when it is no picture that can be shown, with the reason.
 */
export async function remade(
  source: Uint8Array,
  widest: number,
  cache: string,
  painter: Pick<Painter, 'encodePhoto'>,
): Promise<readonly MadePicture[]> {
  const rules = sha256(`${RULES_OF_REMAKING}\n${widest}`).slice(0, 16);
  // Of which photo it is stands first: with the photo goes what was made of it.
  const nameOf = ({ ending }: Encoding): string => `${sha256(source)}-${rules}.${ending}`;
  const kept = await Promise.all(ENCODINGS.map((encoding) => keptIn(cache, nameOf(encoding), encoding)));
  if (kept.every((picture) => picture !== undefined)) return kept;
  const encoded = await painter.encodePhoto(source, widest);
  await putFiles(
    cache,
    ENCODINGS.map((encoding) => ({
      path: nameOf(encoding),
      bytes: sealed(nameOf(encoding), encoded[encoding.ending]),
    })),
  );
  return ENCODINGS.map((encoding) => ({ ...encoded[encoding.ending], encoding }));
}

/** As many characters for the size of a picture, which stands before it: to read it would take the picture library. */
const SIZE = 16;

/** A picture as it is kept: another in its place, or one cut short or empty, would be shown for good. */
function sealed(name: string, { bytes, width, height }: EncodedPhoto): Uint8Array {
  const size = Buffer.from(`${width} ${height}`.padEnd(SIZE), 'latin1');
  return sealBytes(Buffer.concat([size, bytes]), name);
}

/** A picture of the cache; undefined where there is none, or one that a full or broken disk has spoilt. */
async function keptIn(cache: string, name: string, encoding: Encoding): Promise<MadePicture | undefined> {
  const kept = await readIfThere(join(cache, name));
  const picture = kept && unsealBytes(kept, name);
  if (!picture) return undefined;
  const [width = 0, height = 0] = picture.toString('latin1', 0, SIZE).trim().split(' ').map(Number);
  return { encoding, bytes: picture.subarray(SIZE), width, height };
}
