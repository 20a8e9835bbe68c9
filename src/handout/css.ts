import { roundDecimals } from '../measure/round.ts';
import { html, SafeHtml } from '../words/safe-html.ts';
import type { Voice } from '../words/voice.ts';
import type { Print } from './prints.ts';

/** How a page gets its CSS and scripts: set into it for print, or by address. */
export type Styles =
  | { readonly kind: 'inline'; readonly css: string }
  | { readonly kind: 'linked'; readonly hrefs: readonly string[] };

/** The `<link>` or `<style>` elements of a page; `more` is CSS of this very page, such as its colors. */
export function styleElements(styles: Styles, more: string): SafeHtml {
  if (styles.kind === 'inline') return styleElement(`${styles.css}\n${more}`);
  const links = styles.hrefs.map((href) => html`<link rel="stylesheet" href="${href}">`);
  return SafeHtml.join([...links, styleElement(more)], '\n');
}

/** @throws Error when the CSS could end its element: CSS is ours, and texts in it are escaped before. */
function styleElement(css: string): SafeHtml {
  if (/<[/!]/u.test(css)) throw new Error('CSS must not contain markup');
  return SafeHtml.vouched(`<style>\n${css}\n</style>`);
}

/** What stands in the margins of every printed page. */
export type PageMargins = {
  /** Runs over every page but the first. */
  readonly title: string;
  readonly site: string;
  /** Where the page is found; none for a sheet that is nowhere. */
  readonly address: string | undefined;
  /** `Revision 3, December 10, 2026`. */
  readonly state: string | undefined;
};

/** A page's size. Large print is made for Letter. */
export const PAPER_SIZE: Readonly<Record<Print, string>> = {
  letter: '8.5in 11in',
  a4: '210mm 297mm',
  'large-print': '8.5in 11in',
};

/** The size of a handout's paper, and the margins round what is printed on it, in millimeters. */
const PAPER: Readonly<Record<Print, { readonly width: number; readonly height: number }>> = {
  letter: { width: 215.9, height: 279.4 },
  a4: { width: 210, height: 297 },
  'large-print': { width: 215.9, height: 279.4 },
};
const MARGIN = { top: 14, bottom: 14 };
/** Large type takes what a printer can reach of the paper's width. */
const SIDE: Readonly<Record<Print, number>> = { letter: 15, a4: 15, 'large-print': 11 };

/** The width of what is printed on a page, in millimeters. */
export function areaWidth(target: Print): number {
  return PAPER[target].width - 2 * SIDE[target];
}

/**
 * Where a handout's pages are printed on: margins for its paper, and the area left, for whoever arranges what is on it.
 * Its first page says over its title what later ones say with it.
 */
export function areaCss(target: Print, site: string, voice: Voice): string {
  const side = SIDE[target];
  const [across, down] = [areaWidth(target), PAPER[target].height - MARGIN.top - MARGIN.bottom];
  const head = (place: string, text: string): string => `@${place} { content: ${cssString(text)}; }`;
  const margin = `margin: ${MARGIN.top}mm ${side}mm ${MARGIN.bottom}mm;`;
  return `@page { ${margin} }
@page :first { ${margin} ${head('top-left', site)} ${head('top-right', voice.say('sheet-kind'))} }
:root { --area-width: ${roundDecimals(across, 1)}mm; --area-height: ${roundDecimals(down, 1)}mm; }`;
}

/** The `@page` rules of a print. Every text is a CSS string, so that none can end its rule. */
export function pageCss(target: Print, { title, site, address, state }: PageMargins, voice: Voice): string {
  // In large type three texts do not go beside one another.
  const wide = target !== 'large-print';
  const box = (place: string, content: string): string => marginBox(place, content, wide ? '8pt' : '14pt');
  return `@page {
  size: ${PAPER_SIZE[target]};
  ${box('top-left', cssString(title))}
  ${box('top-right', cssString(wide ? site : (state ?? site)))}
  ${box('bottom-left', cssString(address ?? site))}
  ${wide ? box('bottom-center', cssString(state ?? '')) : ''}
  ${box('bottom-right', pageOf(voice))}
}
@page :first { @top-left { content: none; } @top-right { content: none; } }`;
}

/**
 * One place in the margin of every page, and what stands there as CSS writes it. It keeps to the text: few printers reach
 * the edge of their paper.
 */
export function marginBox(place: string, content: string, lettering: string): string {
  const toText = place.startsWith('top')
    ? 'vertical-align: bottom; padding-bottom: 1.7mm;'
    : 'vertical-align: top; padding-top: 1.7mm;';
  return `@${place} { content: ${content}; ${toText} font: ${lettering}/1.1 "Public Sans", sans-serif; color: #333; }`;
}

/** `"Page " counter(page) " of " counter(pages)`, in whatever order the language has them. */
export function pageOf({ say }: Voice): string {
  const [page, pages] = [{ counter: 'page' }, { counter: 'pages' }];
  return say
    .parts('page-of', { page, pages })
    .map((part) => (typeof part === 'string' ? cssString(part) : `counter(${part.counter})`))
    .join(' ');
}

/** One file of a typeface: where it is (an address, or `data:`), and the characters it covers. */
type FontFace = {
  readonly family: string;
  readonly weight: number;
  readonly style: 'normal' | 'italic';
  readonly url: string;
  readonly format?: 'woff' | 'truetype' | 'opentype' | undefined;
  /** A CSS `unicode-range`. */
  readonly unicodeRange: string;
};

/** The `@font-face` rules of a typeface's files. */
export function fontFaceCss(files: readonly FontFace[]): string {
  const rules = files.map(
    ({ family, weight, style, url, unicodeRange, format = 'woff2' }) => `@font-face {
  font-family: ${cssString(family)};
  font-weight: ${weight};
  font-style: ${style};
  font-display: swap;
  src: url(${cssString(url)}) format("${format}");
  unicode-range: ${unicodeRange};
}`,
  );
  return rules.join('\n');
}

/**
 * A CSS string of any text. Everything with a meaning to CSS or to the HTML round it is written as its code, so that
 * no text can end the string or the style element.
 */
export function cssString(text: string): string {
  const safe = text.replace(
    /[\\"'<>&\p{Cc}]/gu,
    (character) => `\\${character.codePointAt(0)?.toString(16)} `,
  );
  return `"${safe}"`;
}
