/** One file of a typeface, beside those that a page brings by itself. */
export type PageFont = {
  readonly family: string;
  readonly weight: number;
  readonly style: 'normal' | 'italic';
  /** A CSS `unicode-range`. */
  readonly unicodeRange: string;
  /** The file itself as its address: `data:…`. */
  readonly url: string;
  /** As CSS calls it; WOFF2 where it is not said. */
  readonly format?: 'woff' | 'truetype' | 'opentype' | undefined;
};

/** Our script that has a browser's page keep fonts, out of reach for what is written into it. */
export const KEPT = 'const KEPT = []';

/**
 * The fonts that a page has beside its own. A font set into a page is unpacked and checked for each anew, which took a
 * tenth of the browser's work: these are handed to the browser once and stay when the page is written over.
 */
export class KeptFonts {
  readonly #numbers = new Map<PageFont, number>();
  #shown: readonly PageFont[] = [];

  /** Our script that has the page show these and no others, in their order; nothing when it does already. */
  show(fonts: readonly PageFont[]): string {
    const { length } = this.#shown;
    if (fonts.length === length && fonts.every((font, index) => font === this.#shown[index])) return '';
    this.#shown = fonts;
    return `document.fonts.clear();\n${fonts.map((font) => `document.fonts.add(${this.#keep(font)});`).join('\n')}`;
  }

  #keep(font: PageFont): string {
    const known = this.#numbers.get(font);
    if (known !== undefined) return `KEPT[${known}]`;
    const number = this.#numbers.size;
    this.#numbers.set(font, number);
    const { family, weight, style, unicodeRange, url, format = 'woff2' } = font;
    const source = `url(${JSON.stringify(url)}) format("${format}")`;
    const parts = [family, source, { weight: `${weight}`, style, unicodeRange }];
    return `KEPT[${number}] = new FontFace(${parts.map((part) => JSON.stringify(part)).join(', ')})`;
  }
}
