import fc from 'fast-check';
import remarkDirective from 'remark-directive';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { describe, expect, it } from 'vitest';
import { renderMarkdown } from '../../src/handout/markdown.ts';
import { proseSetting } from '../../src/handout/steps.ts';
import { all, elements, one, parseMarkup, textOf } from './markup.ts';
import { sampleOf, settingFor } from './sample.ts';

const PIECES = `
unit: in
pieces:
  card:  { cut: 8 1/2 x 5 1/2, score: [{ from: left, at: [4 1/4] }], panels: { front: B1 } }
  front: { cut: 4 x 5 1/4, on: card.front }
  tag:   { cut: 2 x 3, count: 4 }
`;

/** The introduction of a project, as markup. */
function render(body: string): string {
  const setting = settingFor(sampleOf(PIECES, body), 'letter', PICTURES);
  const { nodes } = setting.project.introduction;
  return renderMarkdown(nodes, proseSetting(setting, 2)).toString();
}

const PICTURES = new Map([['photos/flat.jpg', { src: 'flat.jpg', width: 600, height: 400 }]]);

const read = (body: string): string => textOf(parseMarkup(render(body)));

describe('Markdown of a project', () => {
  it('becomes plain HTML', () => {
    expect(render('Cut *once*, **twice**, ~~never~~.\n\n- one\n- two')).toBe(
      '<p>Cut <em>once</em>, <strong>twice</strong>, <del>never</del>.</p>\n<ul>\n<li>one</li>\n<li>two</li>\n</ul>',
    );
  });

  it('keeps tables, with their headings marked', () => {
    const table = parseMarkup(render('| Part | Size |\n| --- | ---: |\n| lid | small |'));
    expect(all(table, 'th').map(({ attributes }) => attributes.scope)).toEqual(['col', 'col']);
    expect(all(table, 'td').map(textOf)).toEqual(['lid', 'small']);
  });

  it('draws the boxes of a task list, with a word for who cannot see them', () => {
    const list = parseMarkup(render('- [ ] cut\n- [x] score'));
    expect(all(list, '.tick').map(({ attributes }) => attributes['aria-label'])).toEqual(['To do', 'Done']);
    expect(all(list, 'input')).toEqual([]);
    expect(all(list, 'li').map(textOf)).toEqual(['cut', 'score']);
  });

  it('puts headings under the heading they stand under', () => {
    expect(render('### Papers')).toBe('<h2>Papers</h2>');
  });
});

/** Each with what must not come through. */
const HOSTILE: readonly (readonly [string, RegExp])[] = [
  ['<script>alert(1)</script>', /script|alert/iu],
  ['<img src=x onerror=alert(1)>', /onerror|<img/iu],
  ['text <b onclick="x()">bold</b>', /onclick|<b/iu],
  ['<style>p { display: none }</style>', /style/iu],
  ['<iframe src="https://example.org"></iframe>', /iframe/iu],
  ['[link](javascript:alert(1))', /javascript|<a\s/iu],
  ['[link](JaVaScRiPt&#58;alert(1))', /javascript|<a\s/iu],
  ['[link](data:text/html,<script>1</script>)', /data:|<a\s/iu],
  ['[link](vbscript:x)', /vbscript|<a\s/iu],
  ['[link](//example.org/x)', /<a\s/iu],
  ['[link][1]\n\n[1]: javascript:alert(1)', /javascript|<a\s/iu],
  ['![picture](javascript:alert(1))', /javascript|<img/iu],
  ['![picture](https://example.org/x.png)', /<img|https/iu],
  ['<https://example.org/"onmouseover="x>', /"onmouseover/iu],
  ['`<script>`', /<script/iu],
  ['```html\n<script>alert(1)</script>\n```', /<script/iu],
  ['<span data-slot="0">x</span>', /data-slot/iu],
  [':piece[tag]{onclick=x data-slot=0 .tip}', /onclick|data-slot/iu],
  ['<!-- <script> -->', /script/iu],
];

describe('what a project contains', () => {
  it.each(HOSTILE)('never becomes code: %s', (body, code) => {
    expect(render(body)).not.toMatch(code);
  });

  it('may hold template syntax, which stays text', () => {
    expect(read('{{constructor}} and {{{x}}} and {{#each}}')).toBe(
      '{{constructor}} and {{{x}}} and {{#each}}',
    );
  });

  it('is made of known elements and attributes, whatever is typed', () => {
    const bits = fc.constantFrom(
      ...HOSTILE.map(([body]) => body),
      ...[
        '*a*',
        '# b',
        '::drawing{of=card}',
        ':::tip\nc\n:::',
        '> d',
        '1. e',
        ':size[tag]',
        '|a|b|\n|-|-|',
        '<',
        '"',
        "'",
      ],
    );
    const known =
      /^(?:p|h[2-6]|em|strong|del|a|code|pre|br|hr|blockquote|ul|ol|li|table|thead|tbody|tr|th|td|aside|span|small|b|figure|figcaption|svg|g|path|text|tspan|circle|all)$/u;
    fc.assert(
      fc.property(fc.array(bits, { maxLength: 6 }), (parts) => {
        const markup = parseMarkup(render(parts.join('\n\n')));
        for (const { name, attributes } of elements(markup)) {
          expect(name).toMatch(known);
          expect(Object.keys(attributes).join(' ')).not.toMatch(/\bon\w|srcdoc|formaction|data-slot/iu);
          if (attributes.href) expect(attributes.href).toMatch(/^(?:https?:|mailto:|[^:]*$)/u);
        }
      }),
      { numRuns: 60 },
    );
  });

  it.each(HOSTILE)('never becomes code, even if the reader had let it through: %s', (body, code) => {
    const from = sampleOf(PIECES, body);
    const setting = proseSetting(
      { ...settingFor(from), project: { ...from.project, file: { path: '', text: body } } },
      2,
    );
    const { children } = unified().use(remarkParse).use(remarkGfm).use(remarkDirective).parse(body);
    expect(renderMarkdown(children, setting).toString()).not.toMatch(code);
  });

  /** RFC 3986, 3.1: a scheme is a letter, then letters, digits, plus, hyphen, dot, and a colon, in either case. */
  it.each([
    ['https://example.org/a?b=c#d', true],
    ['HTTP://example.org/', true],
    ['mailto:someone@example.org', true],
    ['other/page.html', true],
    ['../index.html', true],
    ['#step-1', true],
    ['a/b:c', true],
    ['javascript:alert(1)', false],
    ['JavaScript:alert(1)', false],
    ['java&#115;cript:alert(1)', false],
    ['data:text/html,b', false],
    ['vbscript:x', false],
    ['file:///etc/passwd', false],
    ['x-app+1.2:go', false],
    ['//example.org/a', false],
  ])('makes a link of [here](<%s>): %s', (address, leads) => {
    const markup = parseMarkup(render(`[here](<${address}>)`));
    expect(textOf(markup)).toBe('here');
    expect(all(markup, 'a')).toHaveLength(leads ? 1 : 0);
  });

  it.each([
    ['<script>alert(1)</script>', 'script'],
    ['<style>p{}</style>', 'style'],
    ['<iframe src="https://example.org/"></iframe>', 'iframe'],
    ['<svg onload="x()"></svg>', 'svg'],
    ['<form><input></form>', 'form'],
    ['<object data="x"></object>', 'object'],
    ['<a href="javascript:x()">y</a>', 'a'],
    ['<p onclick="x()">y</p>', 'p onclick'],
    ['<span data-slot="0">y</span>', 'span'],
  ])('makes no element of %s', (typed, name) => {
    const [tag, attribute] = name.split(' ');
    const found = elements(parseMarkup(render(`Before ${typed} after`)));
    if (attribute === undefined) expect(found.filter((each) => each.name === tag)).toEqual([]);
    else expect(found.filter((each) => attribute in each.attributes)).toEqual([]);
  });

  it('keeps links that lead somewhere', () => {
    const markup = parseMarkup(render('[a](https://example.org/a) [b](mailto:a@example.org) [c](other/)'));
    expect(all(markup, 'a').map(({ attributes }) => attributes.href)).toEqual([
      'https://example.org/a',
      'mailto:a@example.org',
      'other/',
    ]);
  });
});

describe('directives', () => {
  it('name a piece with its size, the size once', () => {
    expect(read('Take :piece[front]. Turn :piece[front].')).toBe(
      'Take front 4 × 5 1/4 in (102 × 134 mm). Turn front.',
    );
  });

  it('answer with sizes, borders and counts', () => {
    expect(read('Cut :size[tag], :count[tag] of them.')).toBe('Cut 2 × 3 in (51 × 76 mm), 4 of them.');
    expect(read('leaving :reveal[front] all round')).toBe('leaving 1/8 in (3 mm) all round');
    expect(read('The :size[card.front] panel')).toBe('The 4 1/4 × 5 1/2 in (108 × 140 mm) panel');
  });

  it('say scores in sentences on a page, and on paper where they are listed', () => {
    expect(read(':scores[card] Then fold.')).toBe('Score it as listed under Score. Then fold.');
    expect(read('Take it. :scores[card]')).toBe('Take it. Score it as listed under Score.');
    const page = settingFor(sampleOf(PIECES, ':scores[card] Then fold.'), 'page');
    const said = renderMarkdown(page.project.introduction.nodes, proseSetting(page)).text;
    expect(said).toMatch(/^From the left edge, score at 4 1\/4 in.* \(108 mm\), mountain\. Then fold\.$/u);
  });

  it('make asides with a word, not by color alone', () => {
    const aside = one(parseMarkup(render(':::caution\nMind the blade.\n:::')), 'aside');
    expect(aside.attributes).toMatchObject({ class: 'caution', role: 'note' });
    expect(textOf(aside)).toBe('Caution Mind the blade.');
  });

  it('leave out what is for the host', () => {
    expect(read('Before.\n\n:::host\nSecret.\n:::\n\nAfter.')).toBe('Before. After.');
    expect(read(':::tip\nOpen.\n\n::::host\nSecret.\n::::\n:::')).not.toContain('Secret');
  });

  it('draw what they are asked for', () => {
    const figure = one(parseMarkup(render('::drawing{of=tag view=flat caption="The tag"}')), 'figure');
    expect(textOf(one(figure, 'figcaption'))).toBe('The tag');
    expect(one(figure, 'svg').attributes['aria-label']).toMatch(/2 by 3 inches/u);
  });

  it('stay text when they only look like ours', () => {
    expect(read('It starts at 18:30, see :smile: and ::note.')).toBe(
      'It starts at 18:30, see :smile: and ::note.',
    );
  });

  it('never show as they are typed, though they have nothing to say', () => {
    expect(read(':size[nothing] is unknown')).toBe('nothing is unknown');
    expect(read('**:trims[card]** is no list')).toBe('card is no list');
    expect(read('Draw.\n\n::drawing{of=nothing}')).toBe('Draw.');
    expect(read('Draw.\n\n::drawing{of=card view=fold-9}')).toBe('Draw.');
  });
});

describe('pictures', () => {
  it('are figures with their alternative and caption', () => {
    const markup = parseMarkup(render('![The card, flat](photos/flat.jpg "Before folding")'));
    expect(one(markup, 'img').attributes).toMatchObject({
      src: 'flat.jpg',
      alt: 'The card, flat',
      width: '600',
    });
    expect(textOf(one(markup, 'figcaption'))).toBe('Before folding');
  });

  it('stand apart from the text they were typed in', () => {
    const markup = parseMarkup(render('See ![a](photos/flat.jpg) here.'));
    expect(markup.children.filter((child) => typeof child !== 'string').map(({ name }) => name)).toEqual([
      'p',
      'figure',
      'p',
    ]);
  });

  it('that are missing leave their alternative', () => {
    expect(read('![The lid](photos/lost.jpg)')).toBe('[Picture: The lid]');
  });
});
