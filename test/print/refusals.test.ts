import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, describe, expect, it } from 'vitest';
import { openPrinter } from '../../src/print/printer.ts';
import { DAY, DOT, documentOf, failure } from './documents.ts';
import { readPdf } from './read-pdf.ts';

const printer = openPrinter({ download: false });
afterAll(() => printer.close());

const options = { title: 'Seed packet keeper', date: DAY };

describe('a page', () => {
  it.each([
    ['a picture', '<img src="http://127.0.0.1:9/a.png">', 'http://127.0.0.1:9/a.png'],
    ['a file', '<img src="file:///etc/passwd">', 'file:///etc/passwd'],
    [
      'a file in its styles',
      '<style>p { background: url(file:///etc/hosts) }</style><p>x</p>',
      'file:///etc/hosts',
    ],
    ['a style sheet', '<link rel="stylesheet" href="http://127.0.0.1:9/a.css">', 'http://127.0.0.1:9/a.css'],
    ['an import', '<style>@import "http://127.0.0.1:9/b.css";</style>', 'http://127.0.0.1:9/b.css'],
    [
      'a font',
      '<style>@font-face { font-family: A; src: url(http://127.0.0.1:9/a.woff2) }</style>',
      'http://127.0.0.1:9/a.woff2',
    ],
    ['a frame', '<iframe src="http://127.0.0.1:9/frame"></iframe>', 'http://127.0.0.1:9/frame'],
    ['a frame of a file', '<iframe src="file:///etc/shadow"></iframe>', 'file:///etc/shadow'],
    [
      'a drawing’s picture',
      '<svg><image href="http://127.0.0.1:9/c.png"/></svg>',
      'http://127.0.0.1:9/c.png',
    ],
    [
      'another page',
      '<meta http-equiv="refresh" content="0;url=http://127.0.0.1:9/away">',
      'http://127.0.0.1:9/away',
    ],
    ['a film', '<video src="http://127.0.0.1:9/d.mp4"></video>', 'http://127.0.0.1:9/d.mp4'],
  ])('that asks for %s is refused, with the address', async (_, body, address) => {
    const error = await failure(printer.pdf(documentOf('', body), options));
    expect(error).toMatchObject({ name: 'PrintFault' });
    expect(String(error)).toContain(`${options.title} asks for ${address}`);
  });

  it('that asks for something only when printed is refused too', async () => {
    const css = '@media print { p { background: url(http://127.0.0.1:9/print.png) } }';
    const error = await failure(printer.pdf(documentOf(css, '<p>x</p>'), options));
    expect(String(error)).toContain(`${options.title} asks for http://127.0.0.1:9/print.png`);
  });

  it('reaches no server, by whatever it asks', async () => {
    let connections = 0;
    const server = createServer((_, response) => response.end('x'));
    server.on('connection', () => {
      connections += 1;
    });
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    const address = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
    const hints = ['preconnect', 'prefetch', 'preload', 'stylesheet', 'icon'];
    const bodies = [
      ...hints.map((rel) => `<link rel="${rel}" href="${address}/" as="image">`),
      ...['img', 'iframe', 'video', 'embed'].map((element) => `<${element} src="${address}/"></${element}>`),
      `<object data="${address}/"></object>`,
      `<meta http-equiv="refresh" content="0;url=${address}/">`,
    ];
    for (const body of bodies) await failure(printer.pdf(documentOf('', body), options));
    // Where a server is asked at all, it is within this time.
    await new Promise((resolve) => setTimeout(resolve, 500));
    server.close();
    expect(connections).toBe(0);
  });

  it('does not run its scripts', async () => {
    const body = `<p id="a">still</p><script>document.getElementById('a').textContent = 'ran'</script>
       <img src="${DOT}" alt="" onload="document.getElementById('a').textContent = 'ran'">
       <svg onload="document.getElementById('a').textContent = 'ran'"></svg>`;
    const { pages } = await readPdf(await printer.pdf(documentOf('', body), options));
    expect(pages[0]?.text.trim()).toBe('still');
  });

  it('with a font that cannot be read is refused, with the font', async () => {
    const css =
      '@font-face { font-family: Broken; src: url(data:font/woff2;base64,AAAA) } p { font-family: Broken }';
    const error = await failure(printer.pdf(documentOf(css, '<p>x</p>'), options));
    expect(error).toMatchObject({ name: 'PrintFault' });
    expect(String(error)).toContain('brings a font Broken normal normal that cannot be read');
  });

  it('given with a font that cannot be read is refused, with the font', async () => {
    const font = { family: 'Broken', weight: 400, style: 'normal', unicodeRange: 'U+0-FF' } as const;
    const fonts = [{ ...font, url: 'data:font/woff2;base64,AAAA' }];
    const error = await failure(printer.pdf(documentOf('', '<p>x</p>'), { ...options, fonts }));
    expect(error).toMatchObject({ name: 'PrintFault', family: 'Broken' });
  });

  it('with a picture that cannot be read is refused, with its alternative', async () => {
    const body = `<img src="${DOT}" alt="fine"><img src="${DOT.slice(0, 60)}" alt="the box flat">`;
    const error = await failure(printer.pdf(documentOf('', body), options));
    expect(error).toMatchObject({ name: 'PrintFault' });
    expect(String(error)).toContain('brings a picture “the box flat” that cannot be read');
  });

  it('after a refused one is printed as ever', async () => {
    await failure(printer.pdf(documentOf('', '<img src="http://127.0.0.1:9/a.png">'), options));
    const { pages } = await readPdf(await printer.pdf(documentOf('', '<p>fine</p>'), options));
    expect(pages[0]?.text.trim()).toBe('fine');
  });
});
