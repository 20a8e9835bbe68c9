import { readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { openPrinter } from '../../src/print/printer.ts';
import { DAY, DOT, documentOf, face, failure, pageFont } from './documents.ts';
import { linesAt } from './pdf-lines.ts';
import { type Pdf, readPdf } from './read-pdf.ts';

const printer = openPrinter({ download: false });
afterAll(() => printer.close());

const options = { title: 'Seed packet keeper', date: DAY };

async function printed(css: string, body: string, lang?: string): Promise<Pdf> {
  return readPdf(await printer.pdf(documentOf(css, body, lang), options));
}

describe('paper', () => {
  // Letter: 8 1/2 × 11 in, 1 in = 72 pt (ISO 32000-1, 8.3.2.3). A4: ISO 216, 210 × 297 mm, which allows ± 2 mm; the
  // browser rounds to its own grid of 0.24 pt, so that a fifth of a millimeter is asked for here.
  it.each([
    ['letter', 612, 792],
    ['A4', 595.28, 841.89],
    ['A4 landscape', 841.89, 595.28],
    ['210mm 297mm', 595.28, 841.89],
  ])('of size %s is %f × %f pt', async (size, width, height) => {
    const { pages } = await printed(`@page { size: ${size} }`, '<p>one</p>');
    expect(pages).toHaveLength(1);
    expect(Math.abs((pages[0]?.widthMm ?? 0) - (width * 25.4) / 72)).toBeLessThan(0.2);
    expect(Math.abs((pages[0]?.heightMm ?? 0) - (height * 25.4) / 72)).toBeLessThan(0.2);
  });

  it('may be of several sizes in one file', async () => {
    const { pages } = await printed(
      '@page { size: letter } @page plan { size: 297mm 210mm } .plan { page: plan }',
      '<p>sheet</p><div class="plan">plan</div><p>sheet again</p>',
    );
    const sizes = pages.map(({ widthMm, heightMm }) => [Math.round(widthMm), Math.round(heightMm)]);
    expect(sizes).toEqual([
      [216, 279],
      [297, 210],
      [216, 279],
    ]);
  });

  it('has page x of y in its margin', async () => {
    const { pages } = await printed(
      '@page { margin: 20mm; @bottom-center { content: counter(page) " of " counter(pages) } } h2 { break-before: page }',
      '<h1>One</h1><h2>Two</h2><h2>Three</h2>',
    );
    const feet = pages.map(({ text }) => /\d of \d/u.exec(text)?.[0]);
    expect(feet).toEqual(['1 of 3', '2 of 3', '3 of 3']);
  });
});

describe('a handout', () => {
  const css = ['base', 'sheet', 'handout'].map((name) =>
    readFileSync(new URL(`../../templates/css/${name}.css`, import.meta.url), 'utf8'),
  );

  it('has room for a label of one long word in large print', async () => {
    const [label, value] = ['Schwierigkeitsgrad', 'Fortgeschrittene'];
    const facts = `<dl class="facts"><div><dt>${label}</dt><dd>${value}</dd></div></dl>`;
    const { pages } = await printed(css.join('\n'), `<div class="large-print">${facts}</div>`);
    const words = pages.flatMap((page) => page.words);
    const [from, to] = [label, value].map((text) => words.find((each) => each.text.startsWith(text)));
    // A letter is about half as wide as high; a narrow one, of which the word has several, a quarter.
    const least = label.length * (from?.size ?? 0) * 0.4;
    expect((to?.x ?? 0) - (from?.x ?? 0)).toBeGreaterThan(least);
  });

  it('has room for a kind of supplies of two lines beside a single supply', async () => {
    const group = (kind: string, item: string): string =>
      `<section class="supply-group"><h3>${kind}</h3><ul><li>${item}</li></ul></section>`;
    const groups = [group('Colles et adhésifs pour papier', 'Colle'), group('Lavande', 'Fleurs')].join('');
    const body = `<section class="supplies"><div class="supply-groups">${groups}</div></section>`;
    const { pages } = await printed(css.join('\n'), body);
    const words = pages.flatMap((page) => page.words);
    const kinds = words.filter(({ x }) => x === Math.min(...words.map((word) => word.x)));
    const baselines = kinds.map(({ y }) => y);
    const gaps = baselines.slice(1).map((y, index) => y - (baselines[index] ?? 0));
    expect(kinds.map(({ text }) => text).join(' ')).toMatch(/^Colles.* Lavande$/u);
    for (const gap of gaps) expect(gap).toBeGreaterThan(kinds[0]?.size ?? 0);
  });
});

describe('a printed file', () => {
  it('is tagged, has title, language, outline and text alternatives', async () => {
    const pdf = await printed(
      '',
      '<h1>Keeper</h1><h2>Score</h2><p>Score it.</p><h2>Fold</h2><svg role="img" aria-label="a panel, 2 in wide" width="40" height="40"><rect width="40" height="40"/></svg>',
      'de',
    );
    expect(pdf.tagged).toBe(true);
    expect(pdf.title).toBe(options.title);
    expect(pdf.lang).toBe('de');
    expect(pdf.outline).toEqual([
      { title: 'Keeper', depth: 0 },
      { title: 'Score', depth: 1 },
      { title: 'Fold', depth: 1 },
    ]);
    expect(pdf.pages[0]?.alternatives).toEqual(['a panel, 2 in wide']);
    expect(pdf.pages[0]?.roles).toEqual(expect.arrayContaining(['H1', 'H2', 'P', 'Figure']));
  });

  it('keeps the alternatives of drawings with and without text, and of pictures, adding nothing to read', async () => {
    const shape = '<rect width="9" height="9"/>';
    const drawing = (label: string, inside: string): string =>
      `<svg role="img" aria-label="${label}" width="40" height="40" viewBox="0 0 10 10">${inside}</svg>`;
    const body = [
      drawing('shapes alone', shape),
      drawing('a named shape', `${shape}<text x="1" y="5" font-size="3">7 in</text>`),
      `<img src="${DOT}" alt="a photo" width="40" height="40">`,
      drawing('title only', `<title>t</title>${shape}`),
    ];
    const { pages } = await printed('', body.join(''));
    expect(pages[0]?.alternatives).toEqual(['shapes alone', 'a named shape', 'a photo', 'title only']);
    expect(pages[0]?.words.map(({ text }) => text)).toEqual(['7 in']);
  });

  it('names the day it is told, not the one it was made on', async () => {
    const { created, modified } = await printed('', '<p>x</p>');
    expect([created, modified]).toEqual(["D:20261210000000+00'00'", "D:20261210000000+00'00'"]);
  });

  it('takes any title', async () => {
    const title = 'Größe (2¼ "in") \\ </title> /ModDate (D:20200101000000)';
    const pdf = await readPdf(await printer.pdf(documentOf('', '<p>x</p>'), { title, date: DAY }));
    expect(pdf.title).toBe(title);
    expect(pdf.created).toBe("D:20261210000000+00'00'");
  });

  it('embeds the fonts the page brings, also one that only a margin uses', async () => {
    const css = [
      face('Sheet', 400, 'normal'),
      face('Foot', 800, 'italic'),
      'body { font-family: Sheet } @page { margin: 20mm; @bottom-left { content: "foot"; font-family: Foot; font-weight: 800; font-style: italic } }',
    ].join('\n');
    const { fonts } = await printed(css, '<p>Text</p>');
    expect(fonts.map(({ name }) => name.replace(/^[A-Z]{6}\+/u, ''))).toEqual(
      expect.arrayContaining(['PublicSansThin-Regular', 'PublicSansThin-ExtraBoldItalic']),
    );
    expect(fonts).toHaveLength(2);
    expect(fonts.every(({ embedded }) => embedded)).toBe(true);
  });

  it('embeds the fonts that are given with it, and of no other page', async () => {
    const [plain, bold] = [pageFont('Sheet', 400, 'normal'), pageFont('Sheet', 700, 'normal')];
    const page = documentOf('body { font-family: Sheet } b { font-weight: 700 }', '<p>Text <b>bold</b></p>');
    const given = [[plain, bold], [bold], [], [plain, bold]];
    const bytes: Uint8Array[] = [];
    for (const fonts of given) bytes.push(await printer.pdf(page, { ...options, fonts }));
    const read = await Promise.all(bytes.map((pdf) => readPdf(pdf)));
    const ours = read.map(({ fonts }) => fonts.filter(({ name }) => name.includes('PublicSans')).length);
    expect(ours).toEqual([2, 1, 0, 2]);
    const own = `${face('Sheet', 400, 'normal')} ${face('Sheet', 700, 'normal')}`;
    const whole = await printer.pdf(page.replace('</style>', `${own}</style>`), options);
    expect([bytes[3], whole].map((pdf) => Buffer.from(pdf ?? []).equals(bytes[0] ?? Buffer.of()))).toEqual([
      true,
      true,
    ]);
  });

  it('draws at its true size', async () => {
    const drawing = `<svg width="120mm" height="120mm" viewBox="0 0 120 120" fill="none" stroke="#000" stroke-width="0.3">
      <rect x="10" y="10" width="100" height="80"/>
      <path d="M 10 40 H 110" stroke-dasharray="3 2"/>
      <path d="M 60 10 V 90" stroke-dasharray="6 1.5 0.5 1.5"/>
      <path d="M 10 90 L 110 10" stroke-dasharray="4 2" stroke-linecap="round"/>
    </svg>`;
    const css = '@page { size: letter; margin: 0 } body { margin: 0 } svg { display: block; margin: 48px }';
    const { pages } = await printed(css, drawing);
    // 48 px is 1/2 in (CSS Values and Units 3, 6.2: 96 px = 1 in), a whole number, as a browser places drawings on them.
    const at = (x: number, y: number): { x: number; y: number } => ({ x: 12.7 + x, y: 12.7 + y });
    const lines = pages[0]?.lines ?? [];
    const exact = { beside: 0.05, ends: 0 };
    expect(linesAt(lines, at(10, 10), at(110, 10), exact)).toHaveLength(1);
    expect(linesAt(lines, at(110, 10), at(110, 90), exact)).toHaveLength(1);
    expect(linesAt(lines, at(110, 90), at(10, 90), exact)).toHaveLength(1);
    expect(linesAt(lines, at(10, 90), at(10, 10), exact)).toHaveLength(1);
    const [dashed] = linesAt(lines, at(10, 40), at(110, 40), { beside: 0.05, ends: 2 });
    expect(dashed?.dashes).toBe(20);
    expect(linesAt(lines, at(60, 10), at(60, 90), { beside: 0.05, ends: 1.5 })[0]?.dashes).toBe(17);
    expect(linesAt(lines, at(10, 90), at(110, 10), { beside: 0.05, ends: 2 })).toHaveLength(1);
    expect(lines).toHaveLength(7);
  });
});

describe('the same page', () => {
  const rich = documentOf(
    `${face('Sheet', 400, 'normal')} body { font-family: Sheet } @page { size: A4; @bottom-left { content: counter(page) } }`,
    `<h1 id="top">Head</h1><table><tr><th>a</th><th>b</th></tr><tr><td>1</td><td>2</td></tr></table>
     <ul><li><a href="#top">up</a></li><li><a href="https://example.org/">out</a></li></ul>
     <svg role="img" aria-label="fades" width="90" height="40"><defs><linearGradient id="g"><stop stop-color="#888"/><stop offset="1" stop-color="#fff"/></linearGradient>
     <pattern id="h" width="4" height="4" patternUnits="userSpaceOnUse"><path d="M0 4L4 0" stroke="#000"/></pattern></defs>
     <rect width="40" height="40" fill="url(#g)"/><rect x="45" width="40" height="40" fill="url(#h)" opacity="0.5"/></svg>`,
  );

  it('gives the same bytes, whatever was printed before and by whichever browser', async () => {
    const first = Buffer.from(await printer.pdf(rich, options));
    await printer.pdf(documentOf('', '<table><tr><th>x</th></tr></table>'), options);
    await printer.picture(rich, { width: 300, height: 200, scale: 1 });
    expect(first.equals(await printer.pdf(rich, options))).toBe(true);
    const other = openPrinter({ download: false });
    try {
      expect(first.equals(await other.pdf(rich, options))).toBe(true);
    } finally {
      await other.close();
    }
  });

  it('gives other bytes on another day', async () => {
    const first = Buffer.from(await printer.pdf(rich, options));
    expect(first.equals(await printer.pdf(rich, { ...options, date: '2026-12-11' }))).toBe(false);
  });
});

describe('a printer', () => {
  it('prints pages asked for at once, each its own', async () => {
    const names = ['one', 'two', 'three', 'four'];
    const pdfs = await Promise.all(names.map((name) => printed('', `<p>${name}</p>`)));
    expect(pdfs.map(({ pages }) => pages[0]?.text.trim())).toEqual(names);
  });

  it('takes pictures in the size and scale asked for', async () => {
    const html = documentOf('body { margin: 0; background: #fff }', '<p>x</p>');
    const png = Buffer.from(await printer.picture(html, { width: 320, height: 200, scale: 2 }));
    // PNG, Third Edition, 5.2 and 11.2.1: eight bytes of signature, then width and height in the header chunk.
    expect(png.subarray(0, 8).toString('latin1')).toBe('\x89PNG\r\n\x1a\n');
    expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([640, 400]);
  });

  it('says which browser serves', async () => {
    const other = openPrinter({ download: false });
    expect(other.browser()).toBe('not started');
    await printer.pdf(documentOf('', '<p>x</p>'), options);
    expect(printer.browser()).toMatch(/^(?:HeadlessChrome|Chrome|Edg)\/\d+\S* \(\S.*, \S.*\)$/u);
    await other.close();
  });

  it('refuses a page that takes too long, and prints the next', async () => {
    const hasty = openPrinter({ download: false, pageTimeout: 1500 });
    try {
      await hasty.pdf(documentOf('', '<p>x</p>'), options);
      const long = documentOf('', `<p>${'many words '.repeat(20)}</p>`.repeat(40_000));
      const error = await failure(hasty.pdf(long, options));
      expect(error).toMatchObject({ name: 'PrintFault' });
      expect(String(error)).toMatch(/Seed packet keeper took longer than 1.5 s to print with .*Chrome/u);
      await hasty.picture(documentOf('', '<p>x</p>'), { width: 10, height: 10, scale: 1 });
    } finally {
      await hasty.close();
    }
  });

  it('refuses what still waits when it is closed', async () => {
    const other = openPrinter({ download: false });
    const waiting = [
      other.pdf(documentOf('', '<p>x</p>'), options),
      other.pdf(documentOf('', '<p>y</p>'), options),
    ];
    const failures = Promise.all(waiting.map(failure));
    await other.close();
    const last = await failure(other.pdf(documentOf('', '<p>z</p>'), options));
    const closed = { name: 'PrintFault', message: 'Seed packet keeper was not printed: printing was ended' };
    for (const each of [...(await failures), last]) expect(each).toMatchObject(closed);
  });
});
