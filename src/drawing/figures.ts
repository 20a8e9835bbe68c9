import { roundDecimals } from '../measure/round.ts';
import { type HtmlValue, html, SafeHtml } from '../words/safe-html.ts';
import type { Drawing } from './canvas.ts';
import { type PlacedPicture, pictureElement } from './placed-picture.ts';

/** A drawing or photo set as a figure, and the width it wants in millimeters of paper. */
export type Figure = { readonly html: SafeHtml; readonly width: number };

/** Photos are set no wider than this; a tall one no higher. */
const PHOTO = { width: 58, height: 76 };

export function pictureFigure(picture: PlacedPicture, alternative: string, caption?: HtmlValue): Figure {
  const width = Math.min(PHOTO.width, (PHOTO.height * picture.width) / picture.height);
  return { width, html: figureElement('photo', pictureElement(picture, alternative), caption) };
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
