import type { SafeHtml } from '../words/safe-html.ts';

/** A tag of ours, whatever its attributes hold. */
const TAG = /<\/?[a-z](?:"[^"]*"|'[^']*'|[^"'>])*>/giu;

const NAMED: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"' };

/** What a reader reads of markup of ours, on one line. */
export function plainText(markup: SafeHtml): string {
  return markup
    .toHTML()
    .replace(/<(?:br|\/?(?:p|li|h\d|t[dhr]|div|dt|dd|aside))\b/giu, ' $&')
    .replace(TAG, '')
    .replace(/&(?:#x([0-9a-f]+)|#(\d+)|(\w+));/giu, (whole, hex, decimal, name) =>
      name === undefined
        ? String.fromCodePoint(hex === undefined ? Number(decimal) : Number.parseInt(hex, 16))
        : (NAMED[name] ?? whole),
    )
    .replace(/\s+/gu, ' ')
    .trim();
}
