import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { cssString, fontFaceCss, pageCss, styleElements } from '../../src/handout/css.ts';
import { voiceOf } from '../../src/words/voice.ts';
import { labels } from './sample.ts';

const voice = voiceOf(labels);
const HOSTILE = `"; } </style><script>alert(1)</script> \\ \n @import url(x) {`;

describe('the margins of a print', () => {
  const margins = { title: 'A box', site: 'Bench', address: 'https://example.org/a', state: 'Revision 2' };

  it('have the size of the paper', () => {
    expect(pageCss('letter', margins, voice)).toContain('size: 8.5in 11in;');
    expect(pageCss('a4', margins, voice)).toContain('size: 210mm 297mm;');
  });

  it('count the pages in the words of the language', () => {
    expect(pageCss('letter', margins, voice)).toContain('"Page " counter(page) " of " counter(pages)');
    const german = {
      ...labels,
      texts: new Map([...labels.texts, ['page-of', 'von {pages} Seiten die {page}.']]),
    };
    expect(pageCss('letter', margins, voiceOf(german))).toContain(
      '"von " counter(pages) " Seiten die " counter(page) "."',
    );
  });

  it('say title, revision and address', () => {
    const css = pageCss('letter', margins, voice);
    for (const text of ['"A box"', '"Revision 2"', '"https://example.org/a"']) expect(css).toContain(text);
  });

  it('keep any text a text', () => {
    const css = pageCss('letter', { ...margins, title: HOSTILE }, voice);
    const bare = css.replace(/"(?:[^"\\]|\\.)*"/gu, '');
    expect(bare).not.toMatch(/script|import|style/u);
    expect(css).not.toContain('<');
    expect(bare.match(/\{/gu)?.length).toBe(bare.match(/\}/gu)?.length);
  });
});

describe('a CSS string', () => {
  it('writes what has a meaning as its code', () => {
    expect(cssString(`a"b\\c<d\ne'`)).toBe('"a\\22 b\\5c c\\3c d\\a e\\27 "');
  });
});

describe('the typeface', () => {
  it('is declared file by file', () => {
    const css = fontFaceCss([
      { family: 'Public Sans', weight: 700, style: 'normal', url: 'a.woff2', unicodeRange: 'U+0-FF' },
      {
        family: 'Public Sans',
        weight: 400,
        style: 'italic',
        url: 'data:font/woff2;base64,AA',
        unicodeRange: 'U+0-FF',
      },
    ]);
    expect(css.match(/@font-face/gu)).toHaveLength(2);
    expect(css).toContain('src: url("a.woff2") format("woff2");');
    expect(css).toContain('font-style: italic;');
  });
});

describe('style elements', () => {
  it('are links or set in', () => {
    expect(styleElements({ kind: 'linked', hrefs: ['a.css'] }, 'b {}').toString()).toBe(
      '<link rel="stylesheet" href="a.css">\n<style>\nb {}\n</style>',
    );
    expect(styleElements({ kind: 'inline', css: 'a {}' }, 'b {}').toString()).toContain('a {}\nb {}');
  });

  it('are never ended by what is in them', () => {
    expect(() => styleElements({ kind: 'inline', css: '</style>' }, '')).toThrow('markup');
  });
});

describe('the style sheets', () => {
  const folder = new URL('../../templates/css/', import.meta.url);
  const sheets = readdirSync(folder).map(
    (name) => [name, readFileSync(new URL(name, folder), 'utf8')] as const,
  );

  it.each(sheets)('keep no room on a side that a page from right to left would turn: %s', (_, css) => {
    const sides = css.match(/(?:margin|padding|border)-(?:left|right):.*|text-align: (?:left|right)/gu) ?? [];
    // Its folded corner is drawn, and stays where it is.
    expect(sides.filter((side) => side !== 'padding-right: var(--fold);')).toEqual([]);
  });
});
