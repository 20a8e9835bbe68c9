/** One file of a typeface: where it is (an address, or `data:`), and the characters it covers. */
export type FontFace = {
  readonly family: string;
  readonly weight: number;
  readonly style: 'normal' | 'italic';
  readonly url: string;
  /** A CSS `unicode-range`. */
  readonly unicodeRange: string;
};

/** The `@font-face` rules of a typeface's files. */
export function fontFaceCss(files: readonly FontFace[]): string {
  return files.map(ruleOf).join('\n');
}

function ruleOf({ family, weight, style, url, unicodeRange }: FontFace): string {
  return `@font-face {
  font-family: ${cssString(family)};
  font-weight: ${weight};
  font-style: ${style};
  font-display: swap;
  src: url(${cssString(url)}) format("woff2");
  unicode-range: ${unicodeRange};
}`;
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
