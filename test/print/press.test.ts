import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openPress, type Press } from '../../src/print/press.ts';
import { openPrinter } from '../../src/print/printer.ts';
import { builtPackage } from '../built.ts';
import { emptyFolder } from '../cli/terminal.ts';
import { DAY, documentOf, failure, pageFont } from './documents.ts';

const options = { title: 'Seed packet keeper', date: DAY };
const PAGE = documentOf('body { font-family: Sheet }', '<h1>Keeper</h1><p>Fold it.</p>');

/** What the other thread runs, as it is bundled. */
let script: string;
let press: Press;
beforeAll(async () => {
  script = join(await builtPackage(), 'dist', 'lib', 'presser.js');
  press = openPress({}, script);
});
afterAll(() => press.close());

describe('a printer in a thread of its own', () => {
  it('gives the bytes that one in this thread gives, each page its own', async () => {
    const here = openPrinter();
    const fonts = [pageFont('Sheet', 400, 'normal')];
    const pages = [PAGE, documentOf('', '<p>two</p>'), PAGE];
    const given = await Promise.all(pages.map((page) => press.pdf(page, { ...options, fonts })));
    for (const [index, page] of pages.entries()) {
      const expected = await here.pdf(page, { ...options, fonts });
      expect(Buffer.from(given[index] ?? []).equals(expected)).toBe(true);
    }
    await here.close();
  });

  it('refuses what the other refuses, in its words, and prints the next', async () => {
    const asking = documentOf('', '<img src="http://127.0.0.1:9/a.png">');
    expect(await failure(press.pdf(asking, options))).toMatchObject({
      name: 'PrintFault',
      message: expect.stringContaining('Seed packet keeper asks for http://127.0.0.1:9/a.png'),
    });
    const fonts = [{ ...pageFont('Sheet', 400, 'normal'), url: 'data:font/woff2;base64,AAAA' }];
    const error = await failure(press.pdf(PAGE, { ...options, fonts }));
    expect(error).toMatchObject({ name: 'PrintFault', family: 'Sheet' });
    expect(await press.pdf(PAGE, options)).not.toHaveLength(0);
  });

  it.each(['here', 'there'])(
    'prints none of a batch that waited for one of it that fails, %s',
    async (where) => {
      const own = openPress({}, where === 'there' ? script : undefined);
      const asking = documentOf('', '<img src="http://127.0.0.1:9/a.png">');
      const pages = [PAGE, asking, PAGE, PAGE, PAGE].map((page, index) => {
        const batch = index === 3 ? 'another' : 'keeper';
        return own.pdf(page, { ...options, batch }).then(String, String);
      });
      const [first = '', failed, waiting, other, last] = await Promise.all(pages);
      expect(first).toMatch(/^37,80,68,70,/u);
      expect(failed).toContain('asks for http://127.0.0.1:9/a.png');
      const refused = 'PrintFault: Seed packet keeper was not printed: another page before it failed';
      expect([waiting, other, last]).toEqual([refused, first, refused]);
      expect(await own.pdf(PAGE, { ...options, batch: 'keeper' })).not.toHaveLength(0);
      await own.close();
    },
  );

  it('says what is wrong with a browser as the other does', async () => {
    const browser = join(emptyFolder(), 'none');
    const both = [openPress({ browser }, script), openPrinter({ browser })];
    const [there, here] = await Promise.all(both.map((each) => failure(each.pdf(PAGE, options))));
    expect(there).toMatchObject({ name: 'BrowserMissing', message: expect.stringContaining(browser) });
    expect(there).toEqual(here);
    for (const each of both) await each.close();
  });

  it('refuses what still waits when it is closed, and what comes after', async () => {
    const other = openPress({}, script);
    const waiting = ['one', 'two'].map((name) => failure(other.pdf(documentOf('', name), options)));
    await other.close();
    const last = await failure(other.pdf(PAGE, options));
    const closed = { name: 'PrintFault', message: 'Seed packet keeper was not printed: printing was ended' };
    for (const each of [...(await Promise.all(waiting)), last]) expect(each).toMatchObject(closed);
  });

  it('says so when its thread dies, whatever waits, and prints the next in another', async () => {
    const dying = join(emptyFolder(), 'dying.mjs');
    writeFileSync(
      dying,
      `import { parentPort } from 'node:worker_threads';
      parentPort.on('message', ({ kind, number, html }) => {
        if (kind === 'close') process.exit();
        if (html === 'bad') throw new Error('out of luck');
        parentPort.postMessage({ kind: 'done', number, bytes: new Uint8Array(1) });
      });`,
    );
    const other = openPress({}, dying);
    const lost = ['bad', PAGE].map((html) => failure(other.pdf(html, options)));
    for (const each of await Promise.all(lost))
      expect(each).toMatchObject({ name: 'PrintFault', message: 'printing broke off (out of luck)' });
    expect(await other.pdf(PAGE, options)).toHaveLength(1);
    await other.close();
  });
});
