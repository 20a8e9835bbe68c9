import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { howTo, jsonScript } from '../../src/site/how-to.ts';
import { html, SafeHtml } from '../../src/words/safe-html.ts';
import { labels, sample } from '../handout/sample.ts';

const SHEET = `---
title: "</script><script>alert(1)</script> & box"
summary: Holds six.
minutes: 40
measurements:
  unit: in
  stock: { cream: { name: Cream cardstock, sheet: 8 1/2 x 11 } }
  pieces:
    card: { stock: cream, cut: 8 x 5, score: [{ from: left, at: [4] }], panels: { back: A1, front: B1 } }
supplies:
  - { item: Bone folder, kind: tool }
  - { item: Corner punch, kind: punch }
  - { item: Tape, kind: adhesive }
---
Hello.

## Score *it* :step{minutes=10}
Score :piece[card] 1/8 in from the edge. ![Flat](photos/flat.jpg "Flat") Then & there.

::drawing{of=card view=flat}

:::host
Only mine.
:::

## Wait :step{dry=30}
- one
- two
`;

const pictures = new Map([['photos/flat.jpg', { src: 'flat-480.jpg', width: 480, height: 320 }]]);
const { editions } = sample(SHEET, { 'sample/photos/flat.jpg': 'a picture' });
const data = howTo({ editions, labels, pictures, image: 'finished.jpg' }) as {
  readonly '@context': string;
  readonly totalTime: string;
  readonly supply: readonly { readonly name: string }[];
  readonly tool: readonly { readonly name: string }[];
  readonly step: readonly object[];
};

/**
 * What schema.org has for these types and takes there, typed by hand from schemaorg/schemaorg data/schema.ttl, release
 * 30.0: HowTo and HowToStep are CreativeWorks (HowToStep a ListItem too), HowToSupply and HowToTool are HowToItems, all
 * are Things.
 */
const THING = { name: 'text', description: 'text', image: 'address', url: 'address' };
const VOCABULARY: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  HowTo: {
    ...THING,
    inLanguage: 'text',
    estimatedCost: 'text',
    performTime: 'duration',
    prepTime: 'duration',
    totalTime: 'duration',
    step: 'HowToStep',
    supply: 'HowToSupply',
    tool: 'HowToTool',
    yield: 'text',
  },
  HowToStep: { ...THING, position: 'integer', text: 'text' },
  HowToSupply: { ...THING, requiredQuantity: 'text', estimatedCost: 'text' },
  HowToTool: { ...THING, requiredQuantity: 'text' },
};

/** ISO 8601, durations as schema.org takes them. */
const DURATION = /^P(?!$)(?:\d+D)?(?:T(?=\d)(?:\d+H)?(?:\d+M)?(?:\d+S)?)?$/u;

function fits(value: unknown, range: string | undefined): boolean {
  if (Array.isArray(value)) return value.every((item) => fits(item, range));
  if (range === 'integer') return Number.isInteger(value);
  if (range === 'duration') return typeof value === 'string' && DURATION.test(value);
  if (range === 'text' || range === 'address') return typeof value === 'string' && value !== '';
  return (
    typeof value === 'object' && value !== null && misuses(value).length === 0 && typeOf(value) === range
  );
}

const typeOf = (node: object): unknown => ('@type' in node ? node['@type'] : undefined);

/** The properties of a node that its type has not, or whose values are of another kind. */
function misuses(node: object): string[] {
  const properties = VOCABULARY[String(typeOf(node))] ?? {};
  return Object.entries(node)
    .filter(([key]) => !key.startsWith('@'))
    .filter(([key, value]) => !fits(value, properties[key]))
    .map(([key]) => `${typeOf(node)}.${key}`);
}

describe('a project as schema.org has it', () => {
  it('uses only what the vocabulary has', () => {
    expect(data['@context']).toBe('https://schema.org');
    expect(misuses(data)).toEqual([]);
    expect(misuses({ ...data, steps: 'old' })).toEqual(['HowTo.steps']);
    expect(misuses({ ...data, totalTime: '40 minutes' })).toEqual(['HowTo.totalTime']);
  });

  it('tells supplies from tools, and how long it all takes', () => {
    expect(data.supply.map(({ name }) => name)).toEqual(['Cream cardstock', 'Tape']);
    expect(data.tool.map(({ name }) => name)).toEqual(['Bone folder', 'Corner punch']);
    // 40 minutes of work and 30 of drying.
    expect(data.totalTime).toBe('PT70M');
  });

  it('says each step in plain words, once, with its picture', () => {
    expect(data.step).toEqual([
      {
        '@type': 'HowToStep',
        position: 1,
        name: 'Score it',
        // Both panels are 4 in, 102 mm in the metric edition; so the card is twice that.
        text: 'Score card 8 × 5 in (204 × 127 mm) 1/8 in (3 mm) from the edge. Then & there.',
        url: '#step-1',
        image: 'flat-480.jpg',
      },
      { '@type': 'HowToStep', position: 2, name: 'Wait', text: 'one two', url: '#step-2' },
    ]);
  });
});

describe('JSON in a page', () => {
  const script = /^<script type="application\/ld\+json">(.*)<\/script>$/su;

  it('is what it was, whatever is in it, and never ends its element', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ unit: 'binary' }),
          fc.constantFrom('</script>', '<!--', '<script', ']]>', '\u2028&lt;'),
        ),
        (name) => {
          const [, json = ''] = script.exec(jsonScript({ name }).toHTML()) ?? [];
          expect(json).not.toMatch(/[<>&\u2028\u2029]/u);
          expect(JSON.parse(json)).toEqual({ name });
        },
      ),
      { seed: 3, numRuns: 300 },
    );
  });
});

describe('plain text', () => {
  it.each([
    [html`<p>One <em title="${'a > b'}">${'two'}</em>.</p><p>${3}</p>`, ' One two.  3 '],
    [html`a&${'b <i>'} ${html`<i title="${'x'}" class="${'y'}">${"'c'"}</i>`}`, "a&b <i> 'c'"],
    [html`<ul>${SafeHtml.join(['one', 'two'].map((item) => html`<li>${item}</li>`))}</ul>`, ' one  two '],
    [SafeHtml.join([html`<b>a</b>`, html`${'b'}`], ' & '), 'a & b'],
    [SafeHtml.vouched('<svg><text>1</text></svg>'), ''],
  ])('of %s', (markup, text) => {
    expect(markup.text).toBe(text);
  });
});

it('says the author’s unit first', () => {
  const metric = sample(
    SHEET.replace('unit: in', 'unit: mm').replace('cut: 8 x 5', 'cut: 200 x 130').replace('[4]', '[100]'),
    {
      'sample/photos/flat.jpg': 'a picture',
    },
  );
  const said = JSON.stringify(howTo({ editions: metric.editions, labels, pictures, image: undefined }));
  expect(said).toContain('Score card 200 × 130 mm (≈7 7/8 × ≈5 1/8 in)');
  expect(JSON.stringify(data)).toContain('Score card 8 × 5 in (204 × 127 mm)');
});
