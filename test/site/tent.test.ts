import jsQrPackage from 'jsqr';
import sharp from 'sharp';
import { afterAll, describe, expect, it } from 'vitest';
import { pagesAnywhere, printStyles, typeset } from '../../src/make/assets.ts';
import { readPackageFiles } from '../../src/make/package-files.ts';
import { openPrinter } from '../../src/print/printer.ts';
import { tentHtml } from '../../src/site/share-page.ts';
import { labels, renderer } from '../handout/sample.ts';
import { readPdf } from '../print/read-pdf.ts';
import { listed, siteOf } from './bench.ts';

const jsQr = jsQrPackage as unknown as typeof jsQrPackage.default;
const files = readPackageFiles();
const printer = openPrinter({ download: false });
const SITE = siteOf(
  'title: Bench\nurl: https://example.org/bench/\nsessions: { every: week, at: "18:30", zone: America/Chicago }\n',
);
const BOX = listed('box', {
  title: 'A box with a rather long name, and a lid',
  session: '2026-12-10',
  accent: '#5f7350',
});

function tent(paper: 'letter' | 'a4', site = SITE): string {
  const html = tentHtml(BOX, {
    site,
    labels,
    renderer,
    paper,
    styles: printStyles(files, 'tent'),
  });
  if (html === undefined) throw new Error('there is no tent');
  return typeset(html, files);
}

afterAll(() => printer.close());

/** Millimeters of the papers: ANSI/ASME Y14.1 A is 8½ × 11 in; ISO 216 A4. */
const PAPERS = [
  ['letter', 215.9, 279.4],
  ['a4', 210, 297],
] as const;

describe.each(PAPERS)('a table tent on %s', (paper, width, height) => {
  it('is one page, with two faces and two feet', async () => {
    const { pages, lang, title } = await readPdf(
      await printer.pdf(tent(paper), { title: 'Tent', date: '2026-12-10' }),
    );
    expect([pages.length, lang, title]).toEqual([1, 'en', 'Tent']);
    const [page] = pages;
    expect(page?.widthMm).toBeCloseTo(width, 0);
    expect(page?.heightMm).toBeCloseTo(height, 0);
    const text = page?.text.replace(/\s+/gu, ' ') ?? '';
    expect(text.split('A box with a rather long name, and a lid')).toHaveLength(3);
    expect(text.split('example.org/bench/box')).toHaveLength(3);
    expect(
      page?.alternatives.filter((words) => words === 'QR code for https://example.org/bench/box/'),
    ).toHaveLength(2);
  });

  it('shows a code on each face that another library reads, one of them on its head', async () => {
    const [across, down] = [width, height].map((side) => Math.round((side / 25.4) * 96)) as [number, number];
    const png = await printer.picture(tent(paper), { width: across, height: down, scale: 2 });
    for (const top of [0, down]) {
      const half = sharp(png).extract({ left: 0, top, width: across * 2, height: down });
      const { data, info } = await half.ensureAlpha().raw().toBuffer({ resolveWithObject: true });
      const read = jsQr(new Uint8ClampedArray(data), info.width, info.height);
      expect(read?.data).toBe('https://example.org/bench/box/');
      // The upper edge of the code lies above its lower edge, or below it on the face that stands on its head.
      const upright = (read?.location.topLeftCorner.y ?? 0) < (read?.location.bottomLeftCorner.y ?? 0);
      expect(upright).toBe(top > 0);
    }
  });

  it('has its ridge in the middle and a fold line at each foot, all across the sheet', async () => {
    const [across, down] = [width, height].map((side) => Math.round((side / 25.4) * 96)) as [number, number];
    const png = await printer.picture(tent(paper), { width: across, height: down, scale: 2 });
    const column = await sharp(png)
      .extract({ left: 20, top: 0, width: 12, height: down * 2 })
      .grayscale()
      .raw()
      .toBuffer();
    const dark = Array.from({ length: down * 2 }, (_, row) => row).filter((row) =>
      column.subarray(row * 12, row * 12 + 12).some((value) => value < 128),
    );
    const lines = dark
      .filter((row, index) => row - (dark[index - 1] ?? -9) > 4)
      .map((row) => (row / 2 / 96) * 25.4);
    const expected = [32, height / 2, height - 32];
    expect(lines).toHaveLength(3);
    for (const [index, line] of lines.entries())
      expect(Math.abs(line - (expected[index] ?? 0))).toBeLessThan(0.8);
  });
});

describe('a tent', () => {
  it('is none where there is no address for its code', () => {
    const styles = { kind: 'inline', css: '' } as const;
    const site = siteOf('title: Bench\n');
    expect(tentHtml(BOX, { site, labels, renderer, paper: 'a4', styles })).toBeUndefined();
  });
});

describe('the styles of a page that is shown at any address', () => {
  it('load nothing', () => {
    const { styles, scripts } = pagesAnywhere({ site: siteOf('title: Bench\n'), labels, renderer, files });
    expect(styles).toMatchObject({
      kind: 'inline',
      css: expect.not.stringMatching(/url\((?!"?data:)|@import/u),
    });
    expect(scripts).toEqual([]);
  });
});
