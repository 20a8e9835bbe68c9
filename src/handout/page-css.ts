import type { Voice } from '../words/voice.ts';
import { cssString } from './fonts.ts';
import type { Target } from './setting.ts';

/** What stands in the margins of every printed page. */
export type Margins = {
  /** Runs over every page but the first. */
  readonly title: string;
  readonly site: string;
  /** Where the page is found; none for a sheet that is nowhere. */
  readonly address: string | undefined;
  /** `Revision 3, December 10, 2026`. */
  readonly state: string | undefined;
};

type Print = Exclude<Target, 'page'>;

/** Paper, and the size of the lettering in its margins. Large print is made for Letter. */
const PAPER: Readonly<Record<Print, { readonly size: string; readonly lettering: string }>> = {
  letter: { size: '8.5in 11in', lettering: '8pt' },
  a4: { size: '210mm 297mm', lettering: '8pt' },
  'large-print': { size: '8.5in 11in', lettering: '14pt' },
};

/** The `@page` rules of a print. Every text is a CSS string, so that none can end its rule. */
export function pageCss(target: Print, { title, site, address, state }: Margins, voice: Voice): string {
  const { size, lettering } = PAPER[target];
  // In large type three texts do not go beside one another.
  const wide = target !== 'large-print';
  const box = (place: string, content: string): string =>
    `@${place} { content: ${content}; font: ${lettering}/1.3 "Public Sans", sans-serif; color: #333; }`;
  return `@page {
  size: ${size};
  ${box('top-left', cssString(title))}
  ${box('top-right', cssString(wide ? site : (state ?? site)))}
  ${box('bottom-left', cssString(address ?? site))}
  ${wide ? box('bottom-center', cssString(state ?? '')) : ''}
  ${box('bottom-right', pageOf(voice))}
}
@page :first { @top-left { content: none; } @top-right { content: none; } }`;
}

/** `"Page " counter(page) " of " counter(pages)`, in whatever order the language has them. */
export function pageOf({ say }: Voice): string {
  const [page, pages] = ['\u{f000}', '\u{f001}'];
  const counters: Readonly<Record<string, string>> = { [page]: 'counter(page)', [pages]: 'counter(pages)' };
  return say('page-of', { page, pages })
    .split(/([\uf000\uf001])/u)
    .map((part) => counters[part] ?? cssString(part))
    .join(' ');
}
