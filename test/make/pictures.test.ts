import { mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { deflateSync } from 'node:zlib';
import sharp, { type Sharp } from 'sharp';
import { describe, expect, it } from 'vitest';
import { paintLinkPicture } from '../../src/make/paint-link-picture.ts';
import { painting } from '../../src/make/painting.ts';
import { remade } from '../../src/make/picture-cache.ts';
import { Ground, imageOf, opaquePixelsOf } from '../../src/make/pixels.ts';
import { PICTURE_SIZES, type PictureFormat } from '../../src/site/picture-formats.ts';
import { emptyFolder, type Outcome, sheetwright } from '../cli/terminal.ts';

const SHEET = `---
title: Card
measurements:
  unit: in
  stock: { cream: { name: Cream, sheet: 8 1/2 x 11 } }
  pieces: { card: { stock: cream, cut: 4 x 5 } }
---
A card.

## Cut it
Cut :piece[card].

![The card on a table](photos/card.jpg)
`;

type Made = Outcome & { readonly folder: string; readonly site: string };

async function made(picture: Uint8Array): Promise<Made> {
  const folder = emptyFolder();
  mkdirSync(join(folder, 'projects/card/photos'), { recursive: true });
  writeFileSync(join(folder, 'projects/card/sheet.md'), SHEET);
  writeFileSync(join(folder, 'projects/card/photos/card.jpg'), picture);
  const outcome = await sheetwright(folder, 'make', '--no-pdf');
  return { ...outcome, folder, site: join(folder, 'dist/site/card') };
}

/** The photo in its sizes; what is shown beside a link or posted is painted anew. */
const pictureFiles = (site: string): string[] =>
  readdirSync(site).filter((name) => /^(?!preview-|card-(?:square|tall)).*\.(?:avif|webp|jpg)$/u.test(name));

/** A photo of a lying camera: left half red, right half blue, with the place where it was taken. */
async function photo(width: number, height: number): Promise<Buffer> {
  const half = { width: Math.round(width / 2), height, channels: 3 as const };
  const red = await sharp({ create: { ...half, background: '#c00' } })
    .png()
    .toBuffer();
  return sharp({ create: { width, height, channels: 3, background: '#00c' } })
    .composite([{ input: red, left: 0, top: 0 }])
    .jpeg()
    .withExif({
      IFD0: { Make: 'Secret camera' },
      IFD3: { GPSLatitude: '41/1 52/1 0/1', GPSLatitudeRef: 'N' },
    })
    .withMetadata({ orientation: 6 })
    .toBuffer();
}

/** A picture as programs save what is on the screen. */
const screen = (): Promise<Buffer> =>
  sharp({ create: { width: 60, height: 40, channels: 3, background: '#c00' } })
    .png()
    .toBuffer();

const DAMAGED = /cannot be shown: it is damaged/u;

/** A small file that says it is a picture of 30,000 × 30,000 pixels (PNG, ISO/IEC 15948). */
function bomb(): Buffer {
  const chunk = (type: string, data: Buffer): Buffer => {
    const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
    const head = Buffer.alloc(4);
    head.writeUInt32BE(data.length);
    const sum = Buffer.alloc(4);
    sum.writeUInt32BE(crc32(body));
    return Buffer.concat([head, body, sum]);
  };
  const header = Buffer.alloc(13);
  header.writeUInt32BE(30_000, 0);
  header.writeUInt32BE(30_000, 4);
  header.set([8, 0, 0, 0, 0], 8);
  const rows = deflateSync(Buffer.alloc(30_001 * 100));
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  return Buffer.concat([
    signature,
    chunk('IHDR', header),
    chunk('IDAT', rows),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

/** The checksum of PNG chunks, worked out bit by bit (ISO/IEC 15948, annex D). */
function crc32(bytes: Uint8Array): number {
  let sum = 0xffffffff;
  for (const byte of bytes) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit += 1) sum = sum & 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1;
  }
  return (sum ^ 0xffffffff) >>> 0;
}

describe('a photo', () => {
  it('is turned upright, sized for phone and desk, and says nothing of where it was taken', async () => {
    const source = await photo(2400, 1800);
    expect(source.toString('latin1')).toContain('Secret camera');
    const { code, site } = await made(source);
    expect(code).toBe(0);
    const files = pictureFiles(site);
    expect(files.filter((name) => name.endsWith('.jpg'))).toHaveLength(3);
    expect(files).toHaveLength(9);
    for (const name of files) {
      const bytes = readFileSync(join(site, name));
      const { width, height, exif, xmp, icc, iptc, orientation } = await sharp(bytes).metadata();
      // Orientation 6: the camera was turned a quarter, so the photo stands.
      expect(height).toBeGreaterThan(width);
      expect([exif, xmp, iptc, icc, orientation ?? 1]).toEqual([
        undefined,
        undefined,
        undefined,
        undefined,
        1,
      ]);
      expect(bytes.toString('latin1')).not.toMatch(/Secret camera|GPS/u);
      const corner = { left: 10, top: 10, width: 1, height: 1 };
      const [red = 0, , blue = 0] = await sharp(bytes).extract(corner).raw().toBuffer();
      expect(red).toBeGreaterThan(blue);
    }
    const html = readFileSync(join(site, 'index.html'), 'utf8');
    expect(html).toMatch(/<source type="image\/avif" srcset="[^"]+ 480w, [^"]+ 960w, [^"]+ 1600w"/u);
    expect(html).toContain('alt="The card on a table"');
  });

  it('is never published as it was taken, and is not remade when nothing changed', async () => {
    const source = await photo(640, 480);
    const { folder, site } = await made(source);
    for (const name of pictureFiles(site)) expect(readFileSync(join(site, name)).equals(source)).toBe(false);
    const cache = join(folder, 'dist/.cache/pictures');
    const times = (): number[] => readdirSync(cache).map((name) => statSync(join(cache, name)).mtimeMs);
    const before = times();
    await sheetwright(folder, 'make', '--no-pdf', '--all');
    expect(times()).toEqual(before);
  });

  it('is remade where what was kept of it is spoilt', async () => {
    const { folder, site } = await made(await photo(640, 480));
    const before = pictureFiles(site).map((name) => readFileSync(join(site, name)));
    const cache = join(folder, 'dist/.cache/pictures');
    for (const name of readdirSync(cache)) writeFileSync(join(cache, name), 'spoilt');
    const { code, out } = await sheetwright(folder, 'make', '--no-pdf', '--all');
    expect([code, out]).toEqual([0, expect.stringContaining('nothing found')]);
    expect(pictureFiles(site).map((name) => readFileSync(join(site, name)))).toEqual(before);
  });

  it('is forgotten with its photo, and no other is', async () => {
    const { folder } = await made(await photo(640, 480));
    const cache = join(folder, 'dist/.cache/pictures');
    const before = readdirSync(cache);
    const file = join(folder, 'projects/card/photos/card.jpg');
    await sheetwright(folder, 'make', '--no-pdf', '--only', 'card');
    expect(readdirSync(cache)).toEqual(before);
    writeFileSync(file, await photo(480, 640));
    await sheetwright(folder, 'make', '--no-pdf');
    const after = readdirSync(cache);
    expect(after).toHaveLength(before.length);
    expect(after.filter((name) => before.includes(name))).toEqual([]);
  });

  it('is not blamed for a disk that takes nothing', async () => {
    const { folder } = await made(await photo(640, 480));
    rmSync(join(folder, 'dist/.cache'), { recursive: true });
    writeFileSync(join(folder, 'dist/.cache'), '');
    const { code, err } = await sheetwright(folder, 'make', '--no-pdf', '--all');
    expect([code, err]).toEqual([2, expect.stringMatching(/^sheetwright: cannot write into .*\n$/u)]);
  });

  it.each<[string, () => Promise<Uint8Array> | Uint8Array, RegExp]>([
    ['cut short', async () => (await photo(800, 600)).subarray(0, 3000), DAMAGED],
    ['a screen picture cut short', async () => (await screen()).subarray(0, -20), DAMAGED],
    ['no more than the beginning of one', async () => (await screen()).subarray(0, 20), DAMAGED],
    ['a bomb', bomb, /cannot be shown: .*pixel/u],
    [
      'a drawing with a script',
      () =>
        Buffer.from(
          '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><script>alert(1)</script></svg>',
        ),
      /cannot be shown: it is SVG/u,
    ],
    ['no picture', () => Buffer.from('no picture at all'), /cannot be shown/u],
    ['empty', () => new Uint8Array(), /cannot be shown/u],
  ])('that is %s is a finding where it is named', async (_, picture, message) => {
    const { code, out, err, site } = await made(await picture());
    expect(code).toBe(1);
    expect(out).toMatch(/card\/sheet\.md:13:\d+ {2}error {2}photos\/card\.jpg .*\[unreadable-picture\]/u);
    expect(out).toMatch(message);
    expect(err).not.toMatch(/^\s+at /mu);
    expect(() => readdirSync(site)).toThrow();
  });
});

describe('a picture remade', () => {
  const gray = (): Sharp => sharp({ create: { width: 60, height: 40, channels: 3, background: '#808080' } });
  const clear = { create: { width: 60, height: 40, channels: 4, background: '#80808000' } } as const;
  const frames = Buffer.alloc(60 * 80 * 3, 128);

  // A gray may move by a sixteenth of the scale: a press’s inks do not give back every gray as it was.
  it.each<[string, Sharp, number]>([
    ['in the four colors of a press', gray().toColourspace('cmyk').jpeg(), 128],
    ['with 16 bits a color', gray().toColourspace('rgb16').png(), 128],
    ['without colors', gray().toColourspace('b-w').png(), 128],
    ['that moves', sharp(frames, { raw: { width: 60, height: 80, channels: 3, pageHeight: 40 } }).gif(), 128],
    ['that lets all through', sharp(clear).png(), 255],
  ])('%s is one frame of red, green and blue, on white as a JPEG', async (_, source, level) => {
    for (const { bytes, encoding, width, height } of await remade(
      await source.toBuffer(),
      480,
      emptyFolder(),
      painting,
    )) {
      const { space, depth, pages = 1 } = await sharp(bytes).metadata();
      expect([width, height, space, depth, pages]).toEqual([60, 40, 'srgb', 'uchar', 1]);
      const { channels } = await sharp(bytes).stats();
      if (encoding.ending !== 'jpg') continue;
      for (const { mean } of channels) expect(Math.abs(mean - level)).toBeLessThanOrEqual(16);
    }
  });

  it('has the same bytes whether all, some or nothing of it was kept', async () => {
    const source = await photo(640, 480);
    const cache = emptyFolder();
    const first = await remade(source, 480, cache, painting);
    const again = await remade(source, 480, cache, painting);
    for (const name of readdirSync(cache)) if (name.endsWith('.webp')) rmSync(join(cache, name));
    const mended = await remade(source, 480, cache, painting);
    const bytesOf = (made: typeof first): string[] =>
      made.map(({ bytes }) => Buffer.from(bytes).toString('hex'));
    expect(first.map(({ encoding }) => encoding.ending)).toEqual(['avif', 'webp', 'jpg']);
    expect([again, mended].map(bytesOf)).toEqual([bytesOf(first), bytesOf(first)]);
  });
});

describe('a picture for a link', () => {
  const words = {
    siteTitle: 'Harbour Street Library paper bench',
    picture: undefined,
    font: undefined,
  } as const;
  const colors = { accent: '#9c4a3c', tint: '#f4ecea' } as const;

  it.each(Object.keys(PICTURE_SIZES) as PictureFormat[])(
    '%s keeps its title clear of what stands under it',
    async (format) => {
      const facts = 'September 24, 2027\n1 hour 10 minutes\nConfident';
      const titles = [
        '',
        'Harbour light bookmark',
        'Gate-fold card with its own envelope',
        'A long title '.repeat(25),
      ];
      const inked = titles.map(async (title) => {
        const painted = await paintLinkPicture({ ...words, ...colors, title, facts }, format);
        return inkedRows(painted, format === 'wide' ? { left: 18, width: 642 } : { left: 0, width: 1080 });
      });
      const [bare = [], ...titled] = await Promise.all(inked);
      // Without a title, the widest white between two lines is where it would stand.
      const gaps = bare.map((row, index) => row - (bare[index - 1] ?? row));
      const foot = bare[gaps.indexOf(Math.max(...gaps))] ?? 0;
      expect(foot).toBeGreaterThan(0);
      for (const rows of titled) {
        expect(rows.length).toBeGreaterThan(bare.length);
        expect(rows.filter((row) => row >= foot - 20 && row < foot)).toEqual([]);
      }
    },
  );
});

/** The rows of a picture's columns, from its top, that are not white all along, below all that is colored. */
async function inkedRows(
  picture: Uint8Array,
  { left, width }: { readonly left: number; readonly width: number },
): Promise<readonly number[]> {
  const { height = 0 } = await sharp(picture).metadata();
  const gray = await sharp(picture).extract({ left, top: 0, width, height }).grayscale().raw().toBuffer();
  const rows = Array.from({ length: height }, (_, row) => gray.subarray(row * width, (row + 1) * width));
  return rows.flatMap((row, index) => (row.at(-1) === 255 && Math.min(...row) < 200 ? [index] : []));
}

describe('a picture that was kept', () => {
  it.each<[string, (whole: Buffer) => Uint8Array]>([
    ['empty', () => new Uint8Array()],
    ['cut short', (whole) => whole.subarray(0, whole.length - 40)],
    [
      'changed inside',
      (whole) => whole.map((byte, index) => (index === whole.length - 40 ? byte ^ 1 : byte)),
    ],
    ['another file', () => Buffer.from('spoilt')],
  ])('is remade where it is %s', async (_, spoilt) => {
    const source = await photo(640, 480);
    const cache = emptyFolder();
    const bytesOf = (made: Awaited<ReturnType<typeof remade>>): string[] =>
      made.map(({ bytes }) => Buffer.from(bytes).toString('hex'));
    const first = bytesOf(await remade(source, 480, cache, painting));
    for (const name of readdirSync(cache)) {
      const path = join(cache, name);
      writeFileSync(path, spoilt(readFileSync(path)));
    }
    expect(bytesOf(await remade(source, 480, cache, painting))).toEqual(first);
  });

  it('is remade where another picture is in its place', async () => {
    const cache = emptyFolder();
    const [source, wide] = [await photo(64, 48), await photo(64, 32)];
    const bytesOf = (made: Awaited<ReturnType<typeof remade>>): string[] =>
      made.map(({ bytes }) => Buffer.from(bytes).toString('hex'));
    const first = bytesOf(await remade(source, 480, cache, painting));
    const names = readdirSync(cache).toSorted();
    await remade(wide, 480, cache, painting);
    const others = readdirSync(cache).filter((name) => !names.includes(name));
    for (const [index, name] of others.toSorted().entries())
      writeFileSync(join(cache, names[index] ?? ''), readFileSync(join(cache, name)));
    expect(bytesOf(await remade(source, 480, cache, painting))).toEqual(first);
  });
});

describe('what is laid on a picture', () => {
  // Reference: sharp’s own composite, which blends as the W3C's Compositing and Blending Level 1 has it ("source over").
  it('looks as where the picture library lays it, but for a level of rounding, and is cut off at the edge', async () => {
    const size = { width: 40, height: 30 };
    const place = { left: 5, top: 4, width: 35, height: 26 };
    const shades = Buffer.from(Array.from({ length: 16 * 16 }, (_, index) => [200, 30, index, index]).flat());
    const shaded = { input: shades, raw: { width: 16, height: 16, channels: 4 } } as const;
    const gray = sharp(Buffer.alloc(10 * 10, 99), { raw: { width: 10, height: 10, channels: 1 } });
    const ground = new Ground(size);
    ground.fill(place, '#336699');
    ground.lay(await opaquePixelsOf(sharp(shades, { raw: shaded.raw }), '#336699'), 12, 10);
    ground.lay(await opaquePixelsOf(gray, '#336699'), 33, 22);
    const ours = await imageOf(ground.pixels).raw().toBuffer();

    const block = { create: { width: 35, height: 26, channels: 3, background: '#336699' } } as const;
    const corner = Buffer.alloc(7 * 8 * 3, 99);
    const theirs = await sharp({ create: { ...size, channels: 3, background: '#fff' } })
      .composite([
        { input: block, left: 5, top: 4 },
        { ...shaded, left: 12, top: 10 },
        { input: corner, raw: { width: 7, height: 8, channels: 3 }, left: 33, top: 22 },
      ])
      .removeAlpha()
      .raw()
      .toBuffer();
    expect(ours).toHaveLength(theirs.length);
    expect(
      Math.max(...ours.map((level, index) => Math.abs(level - (theirs[index] ?? 0)))),
    ).toBeLessThanOrEqual(1);
  });
});
