import { join } from 'node:path';
import sharp from 'sharp';
import { putFiles, readIfThere, sha256 } from './files.ts';
import { type Encoding, RULES_OF_REMAKING } from './picture-encodings.ts';

/** The folder where remade pictures are kept by the content they were made from; anything in it may be deleted. */
export type PictureCache = { readonly folder: string };

export type Remade = { readonly bytes: Uint8Array; readonly width: number; readonly height: number };

/** More pixels than any camera takes is a trap laid for the program's memory: a small file that unpacks to gigabytes. */
const MOST_PIXELS = 120_000_000;
/** What a camera or a phone saves. SVG is none of them: it can carry scripts. */
const FORMATS = new Set(['jpeg', 'png', 'webp', 'avif', 'heif', 'tiff', 'gif']);

/**
 * A picture turned upright by its own orientation, no wider than `widest`, and with no metadata at all: where it was
 * taken is nobody's business. @throws when it is no picture that can be shown, with the reason.
 */
export async function remade(
  source: Uint8Array,
  encoding: Encoding,
  widest: number,
  cache: PictureCache,
): Promise<Remade> {
  const key = sha256(`${RULES_OF_REMAKING}\n${widest}\n${sha256(source)}`);
  const name = `${key}.${encoding.ending}`;
  const kept = await keptIn(join(cache.folder, name));
  if (kept) return kept;
  const image = sharp(source, { limitInputPixels: MOST_PIXELS, failOn: 'truncated' });
  const { format, width = 0, height = 0 } = await image.metadata();
  if (!FORMATS.has(format)) throw new Error(`it is ${format.toUpperCase()}, which is not shown`);
  if (width * height > MOST_PIXELS) throw new Error(`it has ${width} × ${height} pixels`);
  const upright = image.rotate().resize({ width: widest, withoutEnlargement: true });
  const { data, info } = await encoding.encode(upright).toBuffer({ resolveWithObject: true });
  await putFiles(cache.folder, [{ path: name, bytes: data }]);
  return { bytes: data, width: info.width, height: info.height };
}

/** A picture of the cache; undefined where there is none, or one that a full or broken disk has spoilt. */
async function keptIn(path: string): Promise<Remade | undefined> {
  const bytes = await readIfThere(path);
  if (!bytes) return undefined;
  return sharp(bytes)
    .metadata()
    .then(
      ({ width, height }) => ({ bytes, width, height }),
      () => undefined,
    );
}
