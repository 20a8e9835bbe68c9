import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { renderer, styles, templates } from './sample.ts';

const source = fileURLToPath(new URL('../../src/', import.meta.url));
const files = readdirSync(source, { recursive: true, encoding: 'utf8' }).filter((name) =>
  name.endsWith('.ts'),
);
const textOf = (name: string): string => readFileSync(`${source}${name}`, 'utf8');

/**
 * Who may say that a string is our own markup: the tag itself, the sanitiser, drawings, CSS, and
 * data for scripts, in which no `<` is left.
 */
const TRUSTED = [
  'drawing/figures.ts',
  'handout/markdown.ts',
  'words/safe-html.ts',
  'handout/css.ts',
  'handout/template-print.ts',
  'handout/drawings.ts',
  'site/how-to.ts',
];

describe('markup taken on trust', () => {
  it('comes from few places', () => {
    const vouching = files.filter((name) => textOf(name).includes('SafeHtml.vouched('));
    expect(vouching.filter((name) => !TRUSTED.includes(name))).toEqual([]);
    expect(vouching).toEqual(expect.arrayContaining(TRUSTED));
  });
});

describe('the templates', () => {
  it('all compile, and switch escaping off nowhere', () => {
    expect(renderer).toBeDefined();
    for (const text of [...templates.pages.values(), ...templates.partials.values()])
      expect(text).not.toMatch(/\{\{\{|\{\{~?&/u);
  });

  it('hold no script and no style of their own, and no handlers', () => {
    for (const text of [...templates.pages.values(), ...templates.partials.values()])
      expect(text).not.toMatch(
        /<script(?! defer src| type="application\/json")|<style|\son[a-z]+=|javascript:/iu,
      );
  });

  it('ask no other server for anything', () => {
    const all = [...templates.pages.values(), ...templates.partials.values(), ...styles.values()];
    for (const text of all) expect(text).not.toMatch(/https?:\/\/|@import|url\(/iu);
  });
});
