import sharp, { type Sharp } from 'sharp';

/** A way a picture is written for the web. */
export type Encoding = {
  readonly ending: 'avif' | 'webp' | 'jpg';
  readonly mediaType: string;
  readonly encode: (image: Sharp) => Sharp;
};

/** Best first: a browser takes the first it knows; every one knows the last, which is printed too. */
export const ENCODINGS: readonly Encoding[] = [
  { ending: 'avif', mediaType: 'image/avif', encode: (image) => image.avif({ quality: 55, effort: 2 }) },
  { ending: 'webp', mediaType: 'image/webp', encode: (image) => image.webp({ quality: 78 }) },
  {
    ending: 'jpg',
    mediaType: 'image/jpeg',
    encode: (image) => image.flatten({ background: '#fff' }).jpeg({ quality: 82, mozjpeg: true }),
  },
];

/** A phone, a tablet, a desk screen or a print: 1600 pixels across 62 mm of paper are more than enough. */
export const WIDTHS: readonly number[] = [480, 960, 1600];

/** Part of every cache key: a picture remade by other rules, or by another encoder, is another picture. */
export const RULES_OF_REMAKING: string = `avif 55/2, webp 78, jpeg 82, upright, no metadata; sharp ${sharp.versions.sharp}`;
