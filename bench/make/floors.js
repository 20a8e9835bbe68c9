/**
 * What the work takes with nothing of ours around it: `node bench/make/floors.js WHICH FOLDER`.
 *
 * `read`: every sheet, ledger, setting and shared file read and hashed. `parse`: every sheet parsed by remark, its head by
 * yaml. `encode`: every photo in the sizes and encodings of the site, one after the other. `print`: every HTML file of the
 * folder printed by one page of the browser that prints for us. `launch`: that browser started and ended.
 */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const [which, folder = '.'] = process.argv.slice(2);

function filesOf(pattern) {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && pattern.test(entry.name))
    .map(({ parentPath, name }) => join(parentPath, name))
    .sort();
}

async function browserPage() {
  const [{ firstThatStarts, sources }, { launch }, { realSurroundings }] = await Promise.all([
    import('../../dist/modules/print/find-browser.js'),
    import('../../dist/modules/print/launch.js'),
    import('../../dist/modules/print/surroundings.js'),
  ]);
  const surroundings = realSurroundings();
  const request = { download: false, onDownload: () => {} };
  const running = await firstThatStarts(
    sources(request, surroundings),
    (candidate) => launch(candidate, { surroundings, timeout: 30_000 }),
    surroundings,
  );
  return { running, page: (await running.browser.pages())[0] ?? (await running.browser.newPage()) };
}

const FLOORS = {
  read: () => {
    for (const path of filesOf(/\.(?:md|yaml)$/u))
      createHash('sha256').update(readFileSync(path)).digest('hex');
  },
  parse: async () => {
    const [{ unified }, { default: remarkParse }, { default: gfm }, { default: directive }, { parse }] =
      await Promise.all([
        import('unified'),
        import('remark-parse'),
        import('remark-gfm'),
        import('remark-directive'),
        import('yaml'),
      ]);
    const remark = unified().use(remarkParse).use(gfm).use(directive);
    for (const path of filesOf(/^sheet\.md$/u)) {
      const [, head = '', body = ''] = readFileSync(path, 'utf8').split(/^---$/mu);
      parse(head);
      remark.runSync(remark.parse(body));
    }
  },
  encode: async () => {
    const { WIDTHS } = await import('../../dist/modules/make/picture-cache.js');
    const { ENCODERS } = await import('../../dist/modules/make/encode-photo.js');
    const { default: sharp } = await import('sharp');
    for (const path of filesOf(/\.jpe?g$/u)) {
      for (const encode of Object.values(ENCODERS)) {
        for (const width of WIDTHS) {
          const upright = sharp(readFileSync(path)).rotate().resize({ width, withoutEnlargement: true });
          await encode(upright).toBuffer();
        }
      }
    }
  },
  launch: async () => {
    const { running } = await browserPage();
    await running.stop();
  },
  print: async () => {
    const { running, page } = await browserPage();
    for (const path of filesOf(/\.html$/u)) {
      await page.setContent(readFileSync(path, 'utf8'), { waitUntil: 'load' });
      await page.pdf({ preferCSSPageSize: true, printBackground: true, tagged: true, outline: true });
    }
    await running.stop();
  },
};

await FLOORS[which]();
