import type { PlacedPicture } from '../drawing/figures.ts';
import { dataAddress } from './assets.ts';
import type { ProjectPicture, Rendition } from './pictures.ts';

/** The pictures of a project as its page shows them: the browser chooses among sizes and encodings. */
export function picturesOnPage(pictures: readonly ProjectPicture[]): ReadonlyMap<string, PlacedPicture> {
  return new Map(
    pictures.map(({ path, renditions }) => {
      const { name, width, height } = plain(renditions);
      return [path, { src: name, width, height, sources: sourcesOf(renditions) }];
    }),
  );
}

/** The pictures as a print holds them. */
export function picturesInPrint(pictures: readonly ProjectPicture[]): ReadonlyMap<string, PlacedPicture> {
  return new Map(
    pictures.map(({ path, renditions }) => {
      const { encoding, width, height, bytes } = plain(renditions);
      return [path, { src: dataAddress(encoding.mediaType, bytes), width, height }];
    }),
  );
}

/** The widest of the encoding that everybody reads. */
export function plain(renditions: readonly Rendition[]): Rendition {
  const widest = renditions.at(-1);
  if (!widest) throw new Error('a picture without a rendition');
  return widest;
}

function sourcesOf(renditions: readonly Rendition[]): NonNullable<PlacedPicture['sources']> {
  const encodings = [...new Set(renditions.map(({ encoding }) => encoding))];
  return encodings.map((encoding) => ({
    type: encoding.mediaType,
    srcset: renditions
      .filter((rendition) => rendition.encoding === encoding)
      .map(({ name, width }) => `${name} ${width}w`)
      .join(', '),
  }));
}
