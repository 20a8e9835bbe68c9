import { cpSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { beforeAll, describe, expect, it } from 'vitest';
import { make } from '../../src/make/make.ts';
import { demoCopy } from '../cli/terminal.ts';
import { all, type Node, one, parseMarkup, textOf } from '../handout/markup.ts';
import { isOutside } from './links.ts';

const BOX = 'seed-packet-keeper';
const TAG = 'pull-out-tag';

type Made = { readonly folder: string; readonly page: (path: string) => Node };

/** The demo with its address, and without, with pictures encoded before. */
async function made(url: boolean, pictures?: string): Promise<Made> {
  const root = demoCopy();
  if (pictures) cpSync(pictures, join(root, 'dist/.cache'), { recursive: true });
  const settings = join(root, 'projects/site.yaml');
  const text = readFileSync(settings, 'utf8');
  if (!url) writeFileSync(settings, text.replace(/^url:.*$/mu, ''));
  await make({
    root: join(root, 'projects'),
    out: join(root, 'dist'),
    namedFrom: root,
    only: [BOX, TAG],
    pdf: false,
    pdfsLater: true,
    today: '2026-11-25',
  });
  const folder = join(root, 'dist/site');
  return { folder, page: (path) => parseMarkup(readFileSync(join(folder, path), 'utf8')) };
}

let withAddress: Made;
let without: Made;

beforeAll(async () => {
  withAddress = await made(true);
  without = await made(false, join(withAddress.folder, '../.cache'));
}, 120_000);

/** `og:title` and its like to what they say. */
function openGraph(page: Node): Readonly<Record<string, string>> {
  const meta = all(page, 'meta').filter(({ attributes }) => attributes.property?.startsWith('og:'));
  return Object.fromEntries(
    meta.map(({ attributes }) => [attributes.property?.slice(3), attributes.content ?? '']),
  );
}

const named = (page: Node, rel: string): (string | undefined)[] =>
  all(page, 'link')
    .filter(({ attributes }) => attributes.rel === rel)
    .map(({ attributes }) => attributes.href);

describe('a link that is passed on', () => {
  it('has the four things that ogp.me asks for, its addresses absolute', () => {
    const og = openGraph(withAddress.page(`${BOX}/index.html`));
    expect(og).toMatchObject({
      title: 'Seed packet keeper',
      type: 'article',
      url: `https://example.org/bench/${BOX}/`,
      description: 'A slim box with a clip-top that holds six seed packets.',
      site_name: 'Harbour Street Library paper bench',
      locale: 'en',
      'image:width': '1200',
      'image:height': '630',
    });
    expect(og.image).toMatch(
      /^https:\/\/example\.org\/bench\/seed-packet-keeper\/preview-[0-9a-f]{10}\.jpg$/u,
    );
    expect(og['image:alt']).not.toBe('');
    const index = openGraph(withAddress.page('index.html'));
    expect(index).toMatchObject({ type: 'website', url: 'https://example.org/bench/' });
    expect(index.image).toMatch(/^https:\/\/example\.org\/bench\/assets\/preview-[0-9a-f]{10}\.jpg$/u);
  });

  it('shows a picture that is there, 1200 by 630, with something on every part of it', async () => {
    for (const [path, folder] of [
      ['index.html', ''],
      [`${BOX}/index.html`, BOX],
      [`${TAG}/index.html`, TAG],
    ] as const) {
      const name = openGraph(withAddress.page(path)).image?.split('/').at(-1) ?? '';
      const image = sharp(join(withAddress.folder, folder === '' ? 'assets' : folder, name));
      expect(await image.metadata()).toMatchObject({ format: 'jpeg', width: 1200, height: 630 });
      // Words on the left half, a picture on the right: neither is one flat color.
      for (const left of [60, 700]) {
        const part = await image
          .clone()
          .extract({ left, top: 60, width: 440, height: 500 })
          .grayscale()
          .toBuffer();
        const { channels } = await sharp(part).stats();
        expect(channels[0]?.stdev).toBeGreaterThan(10);
      }
    }
  });

  it('leads from the page for sharing to the sheet, and keeps search engines to the sheet', () => {
    const share = withAddress.page(`${BOX}/share/index.html`);
    expect(openGraph(share).url).toBe(`https://example.org/bench/${BOX}/`);
    expect(named(share, 'canonical')).toEqual([`https://example.org/bench/${BOX}/`]);
    expect(
      all(share, 'meta').some(
        ({ attributes }) => attributes.name === 'robots' && attributes.content === 'noindex',
      ),
    ).toBe(true);
  });

  it('says no address where the site has none', () => {
    for (const path of ['index.html', `${BOX}/index.html`, `${BOX}/share/index.html`]) {
      const page = without.page(path);
      const og = openGraph(page);
      expect([og.url, og.image, ...named(page, 'canonical')]).toEqual([undefined, undefined]);
      expect(og.title).not.toBe('');
    }
  });
});

describe('a page', () => {
  it('has icons and the feed, by relative addresses', () => {
    for (const [path, root] of [
      ['index.html', ''],
      [`${BOX}/index.html`, '../'],
      [`${BOX}/share/index.html`, '../../'],
    ] as const) {
      const page = withAddress.page(path);
      const [svg, png] = named(page, 'icon');
      expect(svg).toMatch(new RegExp(`^${root.replaceAll('.', '\\.')}assets/icon-[0-9a-f]+\\.svg$`, 'u'));
      expect(png).toMatch(/\.png$/u);
      expect(named(page, 'alternate')).toEqual([`${root}feed.xml`]);
    }
  });

  it('shows icons of its own, in both formats', async () => {
    const names = readdirSync(join(withAddress.folder, 'assets')).filter((name) => name.startsWith('icon-'));
    const sizes = await Promise.all(
      names.sort().map((name) => sharp(join(withAddress.folder, 'assets', name)).metadata()),
    );
    expect(sizes.map(({ format, width, height }) => [format, width, height])).toEqual([
      ['png', 180, 180],
      ['svg', 64, 64],
    ]);
  });

  it('tells machines of the session, an Event of schema.org', () => {
    const event = all(withAddress.page(`${BOX}/index.html`), 'script')
      .filter(({ attributes }) => attributes.type === 'application/ld+json')
      .map((script) => JSON.parse(textOf(script)) as Record<string, unknown>)
      .find((data) => data['@type'] === 'Event');
    // schema.org/Event: name, startDate (ISO 8601) and location are what search engines ask for.
    expect(event).toMatchObject({
      name: 'Seed packet keeper',
      startDate: expect.stringMatching(/^2026-12-10/u),
    });
  });

  it('holds its structured data whole', () => {
    const [script] = all(withAddress.page(`${BOX}/index.html`), 'script').filter(
      ({ attributes }) => attributes.type === 'application/ld+json',
    );
    const data = JSON.parse(script ? textOf(script) : '') as { image: string; step: { url: string }[] };
    expect(isOutside(data.image)).toBe(false);
    const page = readFileSync(join(withAddress.folder, BOX, 'index.html'), 'utf8');
    for (const { url } of data.step) expect(page).toContain(`id="${url.slice(1)}"`);
    expect(readdirSync(join(withAddress.folder, BOX))).toContain(data.image);
  });
});

describe('the page for sharing', () => {
  it('has the code, the text, the papers and the calendar', () => {
    const share = withAddress.page(`${BOX}/share/index.html`);
    expect(one(share, '.qr').attributes['aria-label']).toBe(`QR code for https://example.org/bench/${BOX}/`);
    const links = all(one(share, 'main'), 'a').map(({ attributes }) => attributes.href);
    expect(links).toEqual([
      'mailto:bench@example.org',
      `../${BOX}.ics`,
      'https://example.org/',
      '../index.html',
      `https://example.org/bench/${BOX}/`,
      `../../${BOX}/${BOX}-letter.pdf`,
      `../../${BOX}/${BOX}-a4.pdf`,
      `../../${BOX}/${BOX}-large-print.pdf`,
      `../../${BOX}/${BOX}-template.pdf`,
      `../../${BOX}/${BOX}-template-a4.pdf`,
      `../share/${BOX}-tent.pdf`,
      `../share/${BOX}-tent-a4.pdf`,
      expect.stringMatching(/^\.\.\/preview-[0-9a-f]{10}\.jpg$/u),
      `../${BOX}-square.jpg`,
      `../${BOX}-tall.jpg`,
    ]);
  });

  it('says how to give the site an address where it has none', () => {
    const share = without.page(`${BOX}/share/index.html`);
    expect(all(share, '.qr')).toEqual([]);
    const text = textOf(one(share, 'main'));
    expect(text).toContain('url: https://example.org/bench/');
    expect(text).toContain('Seed packet keeper');
    expect(all(share, 'a').some(({ attributes }) => attributes.href?.includes('-tent'))).toBe(false);
  });

  it('is led to from the sheet', () => {
    const page = withAddress.page(`${BOX}/index.html`);
    expect(all(page, 'a').map(({ attributes }) => attributes.href)).toContain('share/index.html');
  });
});
