import { readFileSync } from 'node:fs';
import { extname, join } from 'node:path';
import jsQrPackage from 'jsqr';
import type { ResponseForRequest } from 'puppeteer-core';
import sharp from 'sharp';
import { expect, it } from 'vitest';
import { found, openSite, siteFolder, visit } from './made.ts';

openSite();

const jsQr = jsQrPackage as unknown as typeof jsQrPackage.default;

const TYPES: Readonly<Record<string, string>> = { '.html': 'text/html; charset=utf-8', '.css': 'text/css' };

const PATH = 'seed-packet-keeper/share/index.html';

it("hands on by the phone's own way where it has one", async () => {
  const { page } = await visit(PATH, { width: 390 });
  await page.evaluateOnNewDocument(
    'globalThis.sent = []; navigator.share = async (what) => { sent.push(what); }',
  );
  await page.reload({ waitUntil: 'load' });
  await page.click('.send');
  expect(await page.evaluate('sent')).toEqual([
    { title: 'Seed packet keeper', url: 'https://example.org/bench/seed-packet-keeper/' },
  ]);
});

it('copies the link alone', async () => {
  const { page } = await visit(PATH, { width: 390 });
  await page.evaluate(
    `globalThis.copied = ''; navigator.clipboard.writeText = async (text) => { copied = text; }`,
  );
  await page.click('[data-copies="share-link"]');
  await page.waitForFunction(`copied !== ''`);
  expect(await page.evaluate('copied')).toBe('https://example.org/bench/seed-packet-keeper/');
});

it.each(['svg', 'png'])('gives the code as a file, in %s', async (kind) => {
  const { page } = await visit(PATH, { width: 390 });
  await page.evaluate(
    `HTMLAnchorElement.prototype.click = function () { globalThis.saved = [this.download, this.href]; }`,
  );
  await page.click(`.save-${kind}`);
  await page.waitForFunction('globalThis.saved');
  const [name, file = ''] = (await page.evaluate('saved')) as string[];
  expect(name).toBe(`seed-packet-keeper-qr.${kind}`);
  const bytes = Buffer.from(
    kind === 'png'
      ? file.slice(file.indexOf(',') + 1)
      : decodeURIComponent(file.slice(file.indexOf(',') + 1)),
    kind === 'png' ? 'base64' : 'utf8',
  );
  const { data, info } = await sharp(bytes, { density: 400 })
    .ensureAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  expect(jsQr(new Uint8ClampedArray(data), info.width, info.height)?.data).toBe(
    'https://example.org/bench/seed-packet-keeper/',
  );
});

it('embeds as a card in a foreign page that lets no script run: picture, title and link show', async () => {
  const { page } = await visit(PATH, { width: 390 });
  const card = await (await found(page, '#share-embed')).evaluate((field) => field.textContent ?? '');
  expect(card).not.toMatch(/<script|onclick|class=/u);
  const address = 'https://example.org/bench/';
  const blog = 'https://blog.example/post';
  await page.setRequestInterception(true);
  page.on('request', (request) => void request.respond(answerTo(request.url())));
  await page.goto(blog, { waitUntil: 'load' });
  const shown = await page.evaluate(`(() => {
    const link = document.querySelector('a');
    const [picture, title] = ['img', 'strong'].map((name) => link.querySelector(name));
    const wide = (element) => element.getBoundingClientRect().width;
    return [link.href, title.textContent, wide(title) > 0, picture.naturalWidth, wide(picture)];
  })()`);
  expect(shown).toEqual([`${address}seed-packet-keeper/`, 'Seed packet keeper', true, 1200, 300]);
  await Promise.all([page.waitForNavigation(), page.click('a')]);
  expect(page.url()).toBe(`${address}seed-packet-keeper/`);

  /** The blog's own page, and what our host would send. */
  function answerTo(url: string): Partial<ResponseForRequest> {
    if (url === blog) {
      const headers = { 'Content-Security-Policy': "script-src 'none'; object-src 'none'" };
      const body = `<!doctype html><title>A blog</title><main style="width: 300px">${card}</main>`;
      return { contentType: 'text/html; charset=utf-8', body, headers };
    }
    if (!url.startsWith(address)) return { status: 404 };
    const file = url.slice(address.length).replace(/\/$/u, '/index.html');
    return { contentType: TYPES[extname(file)] ?? '', body: readFileSync(join(siteFolder(), file)) };
  }
});
