import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, inject, it } from 'vitest';
import { fittedLettering, lettering, letterWith } from '../../src/make/lettering.ts';
import { typefaceFiles } from '../../src/make/typeface.ts';
import { sha256 } from '../../src/recall/sealed.ts';
import { fontWithAlef } from './alef-font.ts';

const BOLD = await typefaceFiles(700);

/** OpenType specification, "Calculating checksums": the sum of a table's 32-bit words, as if it were filled up with zeros. */
function checksum(table: Buffer): number {
  const filled = Buffer.concat([table, Buffer.alloc(-table.length & 3)]);
  let sum = 0;
  for (let at = 0; at < filled.length; at += 4) sum = (sum + filled.readUInt32BE(at)) >>> 0;
  return sum;
}

describe('the typeface unpacked', () => {
  it.each(BOLD)('is the font that was packed (%s): every table has the checksum noted in it', (file) => {
    const font = readFileSync(file);
    const count = font.readUInt16BE(4);
    expect(font.readUInt32BE(0)).toBe(0x00010000);
    expect(count).toBeGreaterThan(9);
    // OpenType, "Table directory": (16, the largest power of two not over the count), and so on.
    expect(font.readUInt16BE(6) + font.readUInt16BE(10)).toBe(16 * count);
    for (let index = 0; index < count; index += 1) {
      const at = 12 + 16 * index;
      const tag = font.toString('latin1', at, at + 4);
      const table = font.subarray(
        font.readUInt32BE(at + 8),
        font.readUInt32BE(at + 8) + font.readUInt32BE(at + 12),
      );
      // The head table holds a checksum of the whole font, which its own is reckoned without.
      if (tag === 'head') {
        expect(table.readUInt32BE(12)).toBe(0x5f0f3cf5);
        const without = Buffer.from(table);
        without.writeUInt32BE(0, 8);
        expect(checksum(without)).toBe(font.readUInt32BE(at + 4));
      } else expect([tag, checksum(table)]).toEqual([tag, font.readUInt32BE(at + 4)]);
    }
  });

  it('lies in the cache of the user, each file once', async () => {
    const [regular, bold] = await Promise.all([typefaceFiles(400), typefaceFiles(700)]);
    for (const file of bold) expect(existsSync(file)).toBe(true);
    expect(await typefaceFiles(700)).toEqual(bold);
    expect(new Set([...regular, ...bold]).size).toBe(4);
  });
});

describe('lettering', () => {
  const style = { weight: 700, color: '#1a1a1a', width: 500 } as const;

  it.each([400, 700] as const)(
    'takes letters that ours lacks from the font that is named, and from no other of its name, at %i',
    async (weight) => {
      const painted = [];
      for (const glyph of [20, 21]) {
        const font = await fontWithAlef('Second Sans', glyph);
        const file = join(inject('temporary'), `alef-${weight}-${glyph}.ttf`);
        writeFileSync(file, font);
        await letterWith({ path: file, file, digest: sha256(font), letters: [[0x05d0, 0x05d0]] });
        painted.push((await lettering('א', { ...style, weight, size: 40 }))?.pixels.bytes.toString('hex'));
      }
      // Whatever the computer has itself would look the same both times.
      expect(painted[0]).not.toBe(painted[1]);
    },
  );

  it('is done with a named font only once that is known, whoever asked for it first', async () => {
    const bytes = await fontWithAlef('Third Sans', 22);
    const file = join(inject('temporary'), 'alef-awaited.ttf');
    writeFileSync(file, bytes);
    const font = { path: file, file, digest: sha256(bytes), letters: [[0x05d0, 0x05d0] as const] };
    const order: string[] = [];
    const first = letterWith(font).then(() => order.push('first'));
    await letterWith(font).then(() => order.push('second'));
    await first;
    expect(order).toEqual(['first', 'second']);
  });

  it('is done with our own typeface alone once no font is named', async () => {
    const bytes = await fontWithAlef('Fourth Sans', 20);
    const file = join(inject('temporary'), 'alef-left.ttf');
    writeFileSync(file, bytes);
    await letterWith(undefined);
    const before = await lettering('א', { ...style, size: 40 });
    await letterWith({ path: file, file, digest: sha256(bytes), letters: [[0x05d0, 0x05d0]] });
    const named = await lettering('א', { ...style, size: 40 });
    await letterWith(undefined);
    const after = await lettering('א', { ...style, size: 40 });
    expect(named?.pixels.bytes.equals(before?.pixels.bytes ?? Buffer.alloc(0))).toBe(false);
    expect(after?.pixels.bytes.equals(before?.pixels.bytes ?? Buffer.alloc(0))).toBe(true);
  });

  it('paints the same for the same words, heavier when bold, nothing for nothing', async () => {
    const one = await lettering('Seed packet keeper', { ...style, size: 40 });
    const again = await lettering('Seed packet keeper', { ...style, size: 40 });
    const light = await lettering('Seed packet keeper', { ...style, size: 40, weight: 400 });
    expect(one?.pixels.bytes.equals(again?.pixels.bytes ?? Buffer.alloc(0))).toBe(true);
    const ink = (painted: typeof one): number =>
      painted?.pixels.bytes.reduce((sum, level) => sum + 255 - level, 0) ?? 0;
    expect(ink(one)).toBeGreaterThan(ink(light) * 1.15);
    expect(await lettering(' \u0007 ', { ...style, size: 40 })).toBeUndefined();
  });

  it('ends a line at a space, and at a hyphen only where a word is longer than a line', async () => {
    const wide = async (words: string, width = 900) =>
      (await lettering(words, { ...style, width, size: 60 }))?.pixels.raw.width ?? 0;
    const room = (await wide('Gift tag, pull-')) + 10;
    expect(await wide('Gift tag, pull-out')).toBeGreaterThan(room);
    expect(await wide('Gift tag, pull-out', room)).toBe(await wide('Gift tag,'));
    expect(await wide('Well-and-truly-hyphenated', room)).toBeLessThanOrEqual(room);
  });

  it('takes any words for words', async () => {
    for (const words of ['a < b & c > "d"', '</span><b>', '&#0;', '\ud800 half', 'Šárka łódź ğ', '']) {
      await expect(lettering(words, { ...style, size: 30 })).resolves.not.toThrow();
    }
  });

  it('has no more of a text than a picture has room for, so that none is too high to be painted', async () => {
    const heightOf = async (letters: number): Promise<number> =>
      (await lettering('W'.repeat(letters), { ...style, width: 900, size: 80 }))?.height ?? 0;
    expect(await heightOf(9000)).toBe(await heightOf(3000));
    expect(await heightOf(300)).toBeLessThan(await heightOf(3000));
  });

  it('is as large as fits, and breaks what is too long', async () => {
    const short = await fittedLettering('Box', [80, 40], 200, style);
    const long = await fittedLettering('A box with a lid for '.repeat(9), [80, 40], 200, style);
    expect(short?.height).toBeGreaterThan(50);
    expect(long?.pixels.raw.width).toBeLessThanOrEqual(500);
    const unbroken = await lettering('W'.repeat(80), { ...style, size: 60 });
    expect(unbroken?.pixels.raw.width).toBeLessThanOrEqual(500);
    expect(unbroken?.height).toBeGreaterThan(200);
  });
});
