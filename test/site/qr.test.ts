import jsQrPackage from 'jsqr';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { qrSvg } from '../../src/handout/qr.ts';
import { all, one, parseMarkup } from '../handout/markup.ts';

// The package's types describe its bundled form.
const jsQr = jsQrPackage as unknown as typeof jsQrPackage.default;

/** What another library reads in a picture of `side` pixels. */
async function decoded(svg: string, side: number): Promise<string | undefined> {
  const { data, info } = await sharp(Buffer.from(svg), { density: 600 })
    .resize(side, side, { kernel: 'nearest' })
    .ensureAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return jsQr(new Uint8ClampedArray(data), info.width, info.height)?.data;
}

const sideOf = (svg: string): number => Number(/viewBox="0 0 (\d+) /u.exec(svg)?.[1]);

describe('a QR code', () => {
  it.each([
    'https://example.org/bench/seed-packet-keeper/',
    'http://a.example/',
    `https://example.org/${'a-long-name-of-a-project/'.repeat(8)}`,
  ])('of %s is read back by jsqr, as small as it may be printed', async (address) => {
    const svg = qrSvg(address, () => 'Code').toHTML();
    expect(await decoded(svg, 480)).toBe(address);
    // qrcode.com: a module is at least four dots of the printer.
    expect(await decoded(svg, sideOf(svg) * 4)).toBe(address);
  });

  it('has a version for its length, and a border of four modules', () => {
    // ISO/IEC 18004: 17 + 4 v modules a side. At level M, version 4 holds 62 bytes and version 3 holds 42.
    const svg = qrSvg('https://example.org/bench/seed-packet-keeper/', () => 'Code');
    expect(sideOf(svg.toHTML())).toBe(33 + 2 * 4);
    const [ground, modules] = all(one(parseMarkup(svg.toHTML()), 'svg'), 'path').map(
      ({ attributes }) => attributes.d ?? '',
    );
    expect(ground).toBe('M0 0h41v41H0z');
    const places = [...(modules ?? '').matchAll(/M(\d+) (\d+)h(\d+)/gu)].map((match) =>
      match.slice(1).map(Number),
    );
    expect(Math.min(...places.flatMap(([x = 0, y = 0]) => [x, y]))).toBe(4);
    expect(Math.max(...places.flatMap(([x = 0, y = 0, run = 0]) => [x + run, y + 1]))).toBe(4 + 33);
  });

  it('is still read with a corner of its middle hidden, as level M promises', async () => {
    const svg = qrSvg('https://example.org/bench/seed-packet-keeper/', () => 'Code').toHTML();
    const stained = svg.replace('</svg>', '<path fill="#fff" d="M18 20h7v7h-7z"/></svg>');
    expect(await decoded(stained, 480)).toBe('https://example.org/bench/seed-packet-keeper/');
  });

  it('is named for those who cannot see it, whatever is in the name', () => {
    const svg = one(parseMarkup(qrSvg('https://example.org/', () => '"><script>').toHTML()), 'svg');
    expect(svg.attributes).toMatchObject({ role: 'img', 'aria-label': '"><script>' });
  });
});
