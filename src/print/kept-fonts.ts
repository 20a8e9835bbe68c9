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
  /** The number of each by what it is: from another thread come copies. */
  readonly #numbers = new Map<string, number>();
  #shown = '';

  /** Our script that has the page show these and no others, in their order; nothing when it does already. */
  show(fonts: readonly PageFont[]): string {
    const fresh: string[] = [];
    const numbers = fonts.map((font) => {
      const made = making(font);
      const number = this.#numbers.get(made) ?? this.#numbers.size;
      if (number === this.#numbers.size) fresh.push(`KEPT[${number}] = ${made};`);
      this.#numbers.set(made, number);
      return number;
    });
    const shown = numbers.join();
    if (shown === this.#shown) return '';
    this.#shown = shown;
    const added = numbers.map((number) => `document.fonts.add(KEPT[${number}]);`);
    return [...fresh, 'document.fonts.clear();', ...added].join('\n');
  }
}

/** Our script that makes it of its file. */
function making({ family, weight, style, unicodeRange, url, format }: PageFont): string {
  const source = `url(${JSON.stringify(url)}) format("${format ?? 'woff2'}")`;
  const parts = [family, source, { weight: `${weight}`, style, unicodeRange }];
  return `new FontFace(${parts.map((part) => JSON.stringify(part)).join(', ')})`;
}
