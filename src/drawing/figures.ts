import { roundDecimals } from '../measure/round.ts';
import { type HtmlValue, html, SafeHtml } from '../words/safe-html.ts';
import type { Drawing } from './canvas.ts';

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

/** A drawing or photo set as a figure, and the width it wants in millimeters of paper. */
export type Figure = { readonly html: SafeHtml; readonly width: number };

/** Photos are set no wider than this; a tall one no higher. */
const PHOTO = { width: 58, height: 76 };

export function pictureFigure(picture: PlacedPicture, alternative: string, caption?: HtmlValue): Figure {
  const width = Math.min(PHOTO.width, (PHOTO.height * picture.width) / picture.height);
  return { width, html: figureElement('photo', pictureElement(picture, alternative), caption) };
}

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

/** A drawing at the size it wants, or smaller where the page is narrower. */
export function drawingFigure(drawing: Drawing, caption?: HtmlValue): Figure {
  return { width: drawing.width, html: figureElement('drawing', drawingElement(drawing), caption) };
}

/** Several figures as one, side by side where there is room; undefined where there is none. */
export function figuresTogether(figures: readonly Figure[]): Figure | undefined {
  const [only, ...more] = figures;
  if (!only || more.length === 0) return only;
  const width = figures.reduce((sum, figure) => sum + figure.width, 0);
  return {
    width,
    html: html`<div class="figures-beside">${SafeHtml.join(figures.map((figure) => figure.html))}</div>`,
  };
}

/** A drawing as it stands in a table or beside a title. */
export function drawingElement({ svg, width, height }: Drawing): SafeHtml {
  const size = `--width: ${millimeters(width)}; --height: ${millimeters(height)}`;
  return html`<span class="drawn" style="${size}">${SafeHtml.vouched(svg)}</span>`;
}

function millimeters(length: number): string {
  return `${roundDecimals(length, 2)}mm`;
}

function figureElement(kind: 'photo' | 'drawing', content: SafeHtml, caption: HtmlValue = ''): SafeHtml {
  const told = caption ? html`<figcaption>${caption}</figcaption>` : '';
  return html`<figure class="${kind}">${content}${told}</figure>`;
}
