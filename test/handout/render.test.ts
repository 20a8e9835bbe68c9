import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compiledTemplates } from '../../src/handout/compiled-templates.ts';
import { createRenderer } from '../../src/handout/render.ts';
import { escapeHtml, html, SafeHtml } from '../../src/words/safe-html.ts';
import { sampleOf, sheetHtml, templates } from './sample.ts';

const noWords = (): string => '';

function render(template: string, model: object, partials: Readonly<Record<string, string>> = {}): string {
  const renderer = createRenderer({
    pages: new Map([['page', template]]),
    partials: new Map(Object.entries(partials)),
  });
  return renderer.render('page', model, noWords);
}

describe('a template', () => {
  it('escapes text and prints markup of ours', () => {
    const model = { text: `<b 'x' "y">&`, markup: html`<i>${'<'}</i>` };
    expect(render('{{text}} {{markup}}', model)).toBe(
      '&lt;b &#x27;x&#x27; &quot;y&quot;&gt;&amp; <i>&lt;</i>',
    );
  });

  it('takes template syntax in a text as text', () => {
    const text = '{{constructor}} {{{lookup this "x"}}} {{> head}} {{#each}}';
    expect(render('{{text}}', { text })).toBe(escapeHtml(text));
  });

  it('takes no object for markup but ours', () => {
    expect(render('{{text}}', { text: { toHTML: '<b>' } })).not.toContain('<b>');
  });

  it('is refused when it would print unescaped', () => {
    for (const template of ['{{{text}}}', '{{&text}}', '{{~&text}}'])
      expect(() => render(template, { text: '' })).toThrow('unescaped');
    expect(() => render('', {}, { part: '{{{text}}}' })).toThrow('"part" prints a value unescaped');
  });

  it('asks only for what the model has', () => {
    expect(() => render('{{missing}}', {})).toThrow('missing');
    expect(render('{{#if there}}x{{/if}}', { there: undefined })).toBe('');
  });

  it('cannot reach a prototype', () => {
    for (const name of ['constructor', '__proto__', 'toString', 'hasOwnProperty'])
      expect(render(`{{${name}}}`, {})).toBe('');
    expect(() => render('{{text.constructor}}', { text: 'x' })).toThrow(TypeError);
  });

  it('knows no helper but its own', () => {
    expect(() => render('{{shout text}}', { text: '' })).toThrow('shout');
  });

  it('that is not there is a bug of ours', () => {
    expect(() => createRenderer(templates).render('nowhere', {}, noWords)).toThrow(
      'there is no page template "nowhere"',
    );
  });

  it('speaks', () => {
    const renderer = createRenderer({
      pages: new Map([['page', '{{say "steps" number=count}}']]),
      partials: new Map(),
    });
    expect(renderer.render('page', { count: 3 }, (key, values) => `${key} ${values?.number}`)).toBe(
      'steps 3',
    );
  });
});

describe('markup of ours', () => {
  it('keeps any text a text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        const markup = html`<p title="${text}">${text}</p>`.toString();
        expect(markup.match(/</gu)?.length).toBe(2);
        expect(markup.match(/"/gu)?.length).toBe(2);
      }),
    );
  });

  it('joins', () => {
    expect(SafeHtml.join([html`a`, html`<b>`], ' & ').toString()).toBe('a &amp; <b>');
    expect(SafeHtml.join([]).toString()).toBe('');
  });
});

describe('a template of the program', () => {
  const all = [...templates.pages.values(), ...templates.partials.values()];

  it('is compiled before it is asked for', () => {
    expect(all.length).toBeGreaterThan(30);
    expect(all.filter((text) => !compiledTemplates.has(text))).toEqual([]);
  });

  it('comes out the same where it is compiled only then', () => {
    const changed = (texts: ReadonlyMap<string, string>): ReadonlyMap<string, string> =>
      new Map([...texts].map(([name, text]) => [name, `${text}{{! changed }}`]));
    const late = createRenderer({ pages: changed(templates.pages), partials: changed(templates.partials) });
    const card = sampleOf('stock: white\npieces: { card: { size: 4 x 5 } }', "1. Fold {{card}} & 'smile'.");
    for (const target of ['page', 'letter'] as const)
      expect(sheetHtml(card, target, { renderer: late })).toBe(sheetHtml(card, target));
  });
});
