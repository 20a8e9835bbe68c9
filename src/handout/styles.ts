import { html, SafeHtml } from '../words/safe-html.ts';

/** How a page gets its CSS and scripts: set into it for print, or by address. */
export type Styles =
  | { readonly kind: 'inline'; readonly css: string }
  | { readonly kind: 'linked'; readonly hrefs: readonly string[] };

/** The `<link>` or `<style>` elements of a page; `more` is CSS of this very page, such as its colours. */
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
