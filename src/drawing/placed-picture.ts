import { roundDecimals } from '../measure/round.ts';
import { html, SafeHtml } from '../words/safe-html.ts';

/** A photo where the page finds it. */
export type PlacedPicture = {
  /** An address relative to the page, or `data:` for print. */
  readonly src: string;
  /** In pixels. */
  readonly width: number;
  readonly height: number;
  /** Other encodings and sizes of it, best first, for a browser to choose from. */
  readonly sources?: readonly { readonly type: string; readonly srcset: string }[];
};

/** How large a photo is shown on a page, as the `sizes` of HTML: on a desk screen beside the words, else nearly as wide as the screen. */
const USUAL_SIZES = '(min-width: 60rem) 24rem, 92vw';

/** @param shown where it is not shown as in a sheet: its `sizes`, and whether it is fetched only as it comes into view. */
export function pictureElement(
  picture: PlacedPicture,
  alternative: string,
  shown: { readonly sizes?: string; readonly lazy?: boolean } = {},
): SafeHtml {
  const { src, width, height, sources = [] } = picture;
  const lazy = shown.lazy ? html` loading="lazy"` : '';
  // HTML takes whole pixels alone; a drawing's are of paper.
  const [across, upright] = [roundDecimals(width, 0), roundDecimals(height, 0)];
  const image = html`<img src="${src}" width="${across}" height="${upright}" alt="${alternative}" decoding="async"${lazy}>`;
  if (sources.length === 0) return image;
  const sizes = shown.sizes ?? USUAL_SIZES;
  const choices = sources.map(
    ({ type, srcset }) => html`<source type="${type}" srcset="${srcset}" sizes="${sizes}">`,
  );
  return html`<picture>${SafeHtml.join(choices)}${image}</picture>`;
}
