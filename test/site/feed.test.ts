import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import { feedXml } from '../../src/site/feed.ts';
import { sitemapXml } from '../../src/site/sitemap.ts';
import { labels } from '../handout/sample.ts';
import { listed, siteOf } from './bench.ts';

const SITE = siteOf('title: Bench & <co>\nurl: https://example.org/bench\n');
const BARE = siteOf('title: Bench\n');
const revision = (
  number: number,
  date: string,
  changes: string[] = [],
  recut: string[] = [],
): { number: number; date: string; changes: string[]; recut: string[] } => ({
  number,
  date,
  changes,
  recut,
});
const PROJECTS = [
  listed('box', {
    title: 'A "box" <b>&amp;\u0007',
    summary: 'Holds <six>.',
    session: '2026-12-10',
    tags: ['box', 'gift & wrap'],
    revisions: [
      revision(1, '2026-11-01'),
      revision(2, '2026-12-09', ['front was 3 1/4 × 4 1/2 in, is 3 1/4 × 4 3/8 in'], ['front']),
    ],
  }),
  listed('tag', { title: 'Tag', session: '2026-10-15' }),
  listed('future', {
    title: 'To come',
    session: '2099-01-01',
    place: 'Garden <hall>',
    picture: { src: 'future/a.jpg', width: 4, height: 3, alternative: 'A "box"', drawn: false },
  }),
];

type Xml = Readonly<Record<string, unknown>>;

function parse(text: string): Xml {
  expect(XMLValidator.validate(text)).toBe(true);
  const parser = new XMLParser({
    ignoreAttributes: false,
    attributeNamePrefix: '@',
    processEntities: true,
    parseTagValue: false,
    isArray: (name) =>
      ['entry', 'link', 'category', 'url', 'author', 'id', 'title', 'updated', 'content'].includes(name),
  });
  return parser.parse(text) as Xml;
}

const list = (value: unknown): readonly Xml[] => (value ?? []) as readonly Xml[];
const texts = (value: unknown): readonly string[] =>
  list(value).map((item) => (typeof item === 'string' ? item : String(item['#text'] ?? '')));

/** RFC 3339, the profile that RFC 4287 3.3 demands. */
const TIMESTAMP = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(?:\.\d+)?(?:Z|[+-]\d\d:\d\d)$/u;
/** An IRI with a scheme: RFC 4287 4.2.6 wants an id absolute. */
const ABSOLUTE = /^[a-z][a-z0-9+.-]*:/u;

describe.each([
  ['of a site with an address', SITE],
  ['of a site without one', BARE],
])('the feed %s', (_, site) => {
  const feed = parse(feedXml(PROJECTS, site, labels)).feed as Xml;
  const entries = list(feed.entry);

  it('has what RFC 4287 4.1.1 demands of a feed', () => {
    expect(feed['@xmlns']).toBe('http://www.w3.org/2005/Atom');
    for (const name of ['id', 'title', 'updated']) expect(list(feed[name])).toHaveLength(1);
    expect(list(feed.author).length).toBeGreaterThan(0);
    expect(list(feed.author).every(({ name }) => typeof name === 'string' && name !== '')).toBe(true);
    expect(list(feed.link).filter((link) => link['@rel'] === 'self')).toHaveLength(1);
    // "no more than one" alternate of a type and language.
    expect(list(feed.link).filter((link) => link['@rel'] === 'alternate')).toHaveLength(1);
    expect(texts(feed.id)[0]).toMatch(ABSOLUTE);
    expect(texts(feed.updated)[0]).toMatch(TIMESTAMP);
  });

  it('has what RFC 4287 4.1.2 demands of an entry', () => {
    expect(entries).toHaveLength(4);
    for (const entry of entries) {
      for (const name of ['id', 'title', 'updated', 'content']) expect(list(entry[name])).toHaveLength(1);
      expect(texts(entry.id)[0]).toMatch(ABSOLUTE);
      expect(texts(entry.updated)[0]).toMatch(TIMESTAMP);
      expect(list(entry.link).filter((link) => link['@rel'] === 'alternate')).toHaveLength(1);
      expect(list(entry.content)[0]?.['@type']).toBe('html');
    }
    expect(new Set(entries.flatMap(({ id }) => texts(id))).size).toBe(entries.length);
  });

  it('tells the latest first, and is as old as that', () => {
    expect(entries.flatMap(({ updated }) => texts(updated))).toEqual([
      '2026-12-09T00:00:00Z',
      '2026-11-01T00:00:00Z',
      // Never published: of no day, and last, whenever the session is.
      '2000-01-01T00:00:00Z',
      '2000-01-01T00:00:00Z',
    ]);
    expect(texts(feed.updated)).toEqual(['2026-12-09T00:00:00Z']);
  });
});

describe('the feed', () => {
  const feed = parse(feedXml(PROJECTS, SITE, labels)).feed as Xml;
  const [second, first] = list(feed.entry);

  it('says what changed, and what to cut again', () => {
    expect(texts(second?.title)).toEqual(['A "box" <b>&amp;: revision 2']);
    const [content = ''] = texts(second?.content);
    expect(content).toContain('<li>front was 3 1/4 × 4 1/2 in, is 3 1/4 × 4 3/8 in</li>');
    expect(content).toContain('If you cut your pieces from revision 1 or earlier, cut these again: front.');
    expect(content).toContain('Holds &lt;six&gt;.');
    expect(texts(first?.title)).toEqual(['A "box" <b>&amp;']);
  });

  it('leads to the pages absolutely where the site has an address, else relatively', () => {
    const hrefs = (of: Xml | undefined): unknown[] => list(of?.link).map((link) => link['@href']);
    expect(hrefs(feed)).toEqual(['https://example.org/bench/feed.xml', 'https://example.org/bench/']);
    expect(hrefs(second)).toEqual(['https://example.org/bench/box/']);
    const bare = parse(feedXml(PROJECTS, BARE, labels)).feed as Xml;
    expect(hrefs(bare)).toEqual(['feed.xml', 'index.html']);
    expect(hrefs(list(bare.entry)[0])).toEqual(['box/index.html']);
  });

  it('has its names for good: another title or summary is the same entry', () => {
    const renamed = PROJECTS.map((project) => ({ ...project, title: 'Another', summary: 'Other' }));
    const ids = (of: Xml): string[] => list(of.entry).flatMap(({ id }) => texts(id));
    expect(ids(parse(feedXml(renamed, SITE, labels)).feed as Xml)).toEqual(ids(feed));
  });

  it('tells the session in its text, with the picture', () => {
    const future = list(feed.entry).find(({ title }) => texts([title].flat()).includes('To come'));
    const [content = ''] = texts(future?.content);
    expect(content).toContain(
      '<img src="https://example.org/bench/future/a.jpg" width="4" height="3" alt="A &quot;box&quot;">',
    );
    expect(content).toContain('Thursday, January\u00a01,\u00a02099, Garden &lt;hall&gt;');
  });

  it('is a feed when there is nothing to tell', () => {
    const empty = parse(feedXml([], SITE, labels)).feed as Xml;
    expect(list(empty.entry)).toEqual([]);
    expect(texts(empty.updated)[0]).toMatch(TIMESTAMP);
  });
});

describe('the sitemap', () => {
  // sitemaps.org, protocol 0.9: loc is required and absolute, lastmod is a W3C date.
  it('names every page by its address', () => {
    const { urlset } = parse(sitemapXml(PROJECTS, SITE) ?? '') as { urlset: Xml };
    expect(urlset['@xmlns']).toBe('http://www.sitemaps.org/schemas/sitemap/0.9');
    expect(list(urlset.url)).toEqual([
      { loc: 'https://example.org/bench/' },
      { loc: 'https://example.org/bench/box/', lastmod: '2026-12-09' },
      { loc: 'https://example.org/bench/tag/' },
      { loc: 'https://example.org/bench/future/' },
    ]);
  });

  it('is not there where the site has no address', () => {
    expect(sitemapXml(PROJECTS, BARE)).toBeUndefined();
  });
});
