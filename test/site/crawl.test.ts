import { cpSync, existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { dirname, extname, join, normalize, resolve, sep } from 'node:path';
import { HtmlValidate } from 'html-validate';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { demoCopy, sheetwright } from '../cli/terminal.ts';
import { touching } from '../drawing/drawn.ts';
import { madeDemo } from '../made-demo.ts';
import { addressesIn, addressesInCss, elementsIn, isOutside } from './links.ts';

/** One with photos, a box of two sheets with food, and one without session or fold. */
const PROJECTS = ['seed-packet-keeper', 'shortbread-tray', 'pull-out-tag'];

let site = '';
let host = '';

beforeAll(async () => {
  const folder = await madeDemo();
  site = join(folder, 'dist/site');
  host = join(folder, 'dist/host');
}, 180_000);

/** A copy of the demo that need not encode its photos again. */
function copyWithPictures(): string {
  const folder = demoCopy();
  cpSync(join(dirname(site), '.cache'), join(folder, 'dist/.cache'), { recursive: true });
  return folder;
}

function filesOf(folder: string, ending = ''): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith(ending))
    .map((entry) => join(entry.parentPath, entry.name));
}

function addressesOfFile(path: string): readonly string[] {
  if (path.endsWith('.html')) return addressesIn(readFileSync(path, 'utf8'));
  return path.endsWith('.css') ? addressesInCss(readFileSync(path, 'utf8')) : [];
}

/** Every link of a site that leads to nothing, or out of it; and how many were followed. */
function linksOf(site: string): { readonly followed: number; readonly missing: readonly string[] } {
  const missing: string[] = [];
  let followed = 0;
  for (const from of [...filesOf(site, '.html'), ...filesOf(site, '.css')]) {
    for (const address of addressesOfFile(from)) {
      if (isOutside(address)) continue;
      followed += 1;
      const [path = '', fragment] = address.split('#');
      const target = path === '' ? from : resolve(dirname(from), decodeURIComponent(path));
      const named = `${from.slice(site.length)} → ${address}`;
      if (address.startsWith('/') || !target.startsWith(site + sep)) missing.push(`${named} leaves the site`);
      else if (!existsSync(target) || statSync(target).isDirectory()) missing.push(named);
      else if (fragment && !hasId(target, fragment) && !offers(target, fragment))
        missing.push(`${named}: no such place`);
    }
  }
  return { followed, missing };
}

/** Whether a list can be asked for what a fragment asks: `tag=gift+wrap`. */
function offers(path: string, fragment: string): boolean {
  const options = elementsIn(readFileSync(path, 'utf8')).filter(({ name }) => name === 'option');
  const values = new Set(options.map(({ attributes }) => attributes.value));
  const asked = [...new URLSearchParams(fragment).values()];
  return asked.every((value) => value !== '' && values.has(value));
}

describe('the site on disk', () => {
  it('has every kind of page and file', () => {
    const paths = filesOf(site).map((path) => path.slice(site.length + 1).replaceAll(sep, '/'));
    for (const path of ['index.html', '404.html', 'feed.xml', 'sessions.ics', 'sitemap.xml', 'make.json']) {
      expect(paths).toContain(path);
    }
    for (const slug of PROJECTS) {
      for (const file of [
        'index.html',
        'share/index.html',
        `${slug}-letter.pdf`,
        `share/${slug}-tent.pdf`,
        `share/${slug}-tent-a4.pdf`,
      ]) {
        expect(paths).toContain(`${slug}/${file}`);
      }
    }
    expect(paths).toContain('seed-packet-keeper/seed-packet-keeper.ics');
    expect(paths).not.toContain('pull-out-tag/pull-out-tag.ics');
    // What is the demonstrator's own is elsewhere.
    expect(existsSync(host)).toBe(true);
    expect(paths.filter((path) => path.includes('cue-card'))).toEqual([]);
  });

  it('leads from every file to files that are there, each relative to it', () => {
    const { followed, missing } = linksOf(site);
    expect(missing).toEqual([]);
    expect(followed).toBeGreaterThan(100);
  });

  it('made without PDFs leads to none', async () => {
    const folder = copyWithPictures();
    await sheetwright(folder, 'make', '--quiet', '--no-pdf', '--only', ...PROJECTS);
    const { followed, missing } = linksOf(join(folder, 'dist/site'));
    expect(missing).toEqual([]);
    expect(followed).toBeGreaterThan(100);
  });

  it('made without PDFs leads to none of an earlier make, which stay at their addresses', async () => {
    const folder = copyWithPictures();
    // Out of date as they may be; no fresh page leads to them.
    const { code, err } = await sheetwright(folder, 'make', '--quiet', '--only', 'pull-out-tag');
    expect([code, err]).toEqual([0, '']);
    const paper = join(folder, 'dist/site/pull-out-tag/pull-out-tag-letter.pdf');
    const page = (): string => readFileSync(join(dirname(paper), 'index.html'), 'utf8');
    expect(page()).toContain('pull-out-tag-letter.pdf');
    await sheetwright(folder, 'make', '--quiet', '--no-pdf', '--only', 'pull-out-tag');
    expect(page()).not.toContain('pull-out-tag-letter.pdf');
    expect(existsSync(paper)).toBe(true);
  });

  it('is HTML as the standard has it, as an independent checker reads it', async () => {
    const checker = new HtmlValidate({ root: true, extends: ['html-validate:standard'] });
    const amiss: string[] = [];
    for (const path of filesOf(site, '.html')) {
      const { results } = await checker.validateString(readFileSync(path, 'utf8'));
      for (const { line, ruleId, message } of results.flatMap(({ messages }) => messages))
        amiss.push(`${path.slice(site.length)}:${line} ${ruleId}: ${message}`);
    }
    expect(amiss).toEqual([]);
  });

  it('loads nothing from elsewhere, and leaves only by links that a person wrote or the address of the site', () => {
    const outside = filesOf(site, '.html').flatMap((path) => addressesOfFile(path).filter(isOutside));
    const others = outside.filter(
      (address) =>
        !address.startsWith('https://example.org/') &&
        !address.startsWith('data:') &&
        // Where questions go, as the demo's settings say.
        address !== 'mailto:bench@example.org',
    );
    expect(others).toEqual([]);
    for (const path of filesOf(site, '.html')) {
      const loading = elementsIn(readFileSync(path, 'utf8')).filter(({ name }) =>
        ['script', 'img', 'source', 'iframe'].includes(name),
      );
      const from = loading.flatMap(({ attributes }) => [attributes.src ?? '', attributes.srcset ?? '']);
      expect(from.filter((address) => isOutside(address) && !address.startsWith('data:'))).toEqual([]);
    }
  });

  it('shows the page that is not there the same at any address: nothing in it is relative', () => {
    const addresses = addressesIn(readFileSync(join(site, '404.html'), 'utf8'));
    expect(addresses.filter((address) => !isOutside(address) && !address.startsWith('#'))).toEqual([]);
  });
});

/** Whether a page has a place of this name. */
function hasId(path: string, id: string): boolean {
  return elementsIn(readFileSync(path, 'utf8')).some(({ attributes }) => attributes.id === id);
}

describe.each(['/', '/some/where/else/'])('the site served at %s', (base) => {
  let server: Server;
  let root = '';
  const served = new Set<string>();

  beforeAll(async () => {
    server = createServer((request, response) => {
      const { pathname } = new URL(request.url ?? '/', 'http://localhost');
      const path = fileAt(base, decodeURIComponent(pathname));
      if (path) served.add(path);
      response.writeHead(path ? 200 : 404);
      response.end(request.method === 'HEAD' ? undefined : readFileSync(path ?? join(site, '404.html')));
    });
    await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
    root = `http://127.0.0.1:${(server.address() as AddressInfo).port}${base}`;
  });

  afterAll(() => new Promise((closed) => server?.close(closed)));

  it('is found whole from its first page, and nothing in it is missing', async () => {
    const seen = new Set<string>();
    const broken: string[] = [];
    const waiting = [root];
    for (let address = waiting.pop(); address !== undefined; address = waiting.pop()) {
      if (seen.has(address)) continue;
      seen.add(address);
      const ending = extname(new URL(address).pathname);
      const html = ending === '' || ending === '.html';
      // What leads no further need only be there.
      const response = await fetch(address, { method: html || ending === '.css' ? 'GET' : 'HEAD' });
      const body = await response.text();
      if (response.status !== 200) broken.push(`${address}: ${response.status}`);
      const further = html ? addressesIn(body) : ending === '.css' ? addressesInCss(body) : [];
      for (const next of further.filter((each) => !isOutside(each))) {
        const target = new URL(next, address);
        target.hash = '';
        waiting.push(target.href);
      }
    }
    expect(broken).toEqual([]);
    // Whatever no page leads to: the page that is not there, what programs and scripts ask for by name, pictures for link previews.
    const unseen = filesOf(site)
      .filter((path) => !served.has(path))
      .map((path) => path.slice(site.length + 1).replaceAll(sep, '/'));
    expect(
      unseen.filter(
        (path) =>
          !/^(?:404\.html|offline\.js|sitemap\.xml|make\.json|assets\/(?:preview-.*\.jpg|search-.*\.js)|.*-template(?:-.*)?\.svg)$/u.test(
            path,
          ),
      ),
    ).toEqual([]);
  });
});

/** The file a plain host would answer with; undefined where there is none. */
function fileAt(base: string, pathname: string): string | undefined {
  if (!pathname.startsWith(base)) return undefined;
  const path = join(site, normalize(pathname.slice(base.length)));
  const file = existsSync(path) && statSync(path).isDirectory() ? join(path, 'index.html') : path;
  return file.startsWith(site) && existsSync(file) ? file : undefined;
}

describe('the drawings of every page', () => {
  it('have no label that touches another', () => {
    const pages = filesOf(site, 'index.html');
    const found = pages.flatMap((page) => {
      const drawings =
        readFileSync(page, 'utf8').match(/<svg[^>]* class="drawing[^"]*"[^>]*>.*?<\/svg>/gsu) ?? [];
      return drawings.flatMap((svg) => touching(svg)).map((each) => `${page.slice(site.length)}: ${each}`);
    });
    expect(pages.length).toBeGreaterThan(20);
    expect(found).toEqual([]);
  });
});
