import { elements, type Node, parseMarkup } from '../handout/markup.ts';

const known = new Map<string, readonly Node[]>();

/** The elements of a page; one that is asked for again, as most are, is not read again. */
export function elementsIn(html: string): readonly Node[] {
  const nodes = known.get(html) ?? elements(parseMarkup(html));
  known.set(html, nodes);
  return nodes;
}

/** Everything a page leads to or loads, as written: `href`, `src`, `srcset`, and what its styles name. */
export function addressesIn(html: string): readonly string[] {
  return elementsIn(html).flatMap((node) => [...addressesOf(node), ...stylesOf(node)]);
}

/** Everything that a style sheet loads. */
export function addressesInCss(css: string): readonly string[] {
  return [...css.matchAll(/url\(\s*(["']?)(.*?)\1\s*\)/gu)].map((match) => match[2] ?? '');
}

function addressesOf({ name, attributes }: Node): string[] {
  const { href, src, srcset, action, poster } = attributes;
  // Where the page stands for good is said absolutely; nothing is loaded from there.
  if (name === 'link' && attributes.rel === 'canonical') return [];
  const candidates = (srcset ?? '').split(',').map((candidate) => candidate.trim().split(/\s+/u)[0] ?? '');
  return [href, src, action, poster, ...candidates].flatMap((address) =>
    address === undefined || address === '' ? [] : [address],
  );
}

function stylesOf({ name, attributes, children }: Node): readonly string[] {
  const css = name === 'style' ? children.filter((child) => typeof child === 'string').join('') : '';
  return addressesInCss(`${css} ${attributes.style ?? ''}`);
}

/** Whether an address leaves the site: it names a scheme. `//host` and `/path` do not, and have no place in it. */
export function isOutside(address: string): boolean {
  return /^[a-z][a-z0-9+.-]*:/iu.test(address);
}
