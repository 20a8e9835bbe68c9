import jsQrPackage from 'jsqr';
import sharp from 'sharp';
import { expect, it } from 'vitest';
import { found, openSite, visit } from './made.ts';

openSite();

const jsQr = jsQrPackage as unknown as typeof jsQrPackage.default;

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

it('embeds as a card in a foreign page: picture, title, link, and no script of ours', async () => {
  const { page } = await visit(PATH, { width: 390 });
  const card = await (await found(page, '#share-embed')).evaluate((field) => field.textContent ?? '');
  expect(card).not.toMatch(/<script|onclick|class=/u);
  await page.goto('about:blank');
  await page.setContent(`<main style="width: 300px">${card}</main>`, { waitUntil: 'domcontentloaded' });
  const link = (await page.evaluate(`(() => {
    const link = document.querySelector('a');
    return [link.href, link.querySelector('strong').textContent, link.querySelector('img').src.startsWith('https://example.org/bench/seed-packet-keeper/preview-'), link.getBoundingClientRect().width <= 300];
  })()`)) as unknown;
  expect(link).toEqual(['https://example.org/bench/seed-packet-keeper/', 'Seed packet keeper', true, true]);
});
