/**
 * Takes the pictures of the README and of the tour again: `npm run prepare && node docs/pictures/make.js`.
 *
 * Those of the tour are of its own commands, run in an empty folder; the others are of the demo workspace.
 */
import { spawn, spawnSync } from 'node:child_process';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import sharp from 'sharp';
import { firstThatStarts, sources } from '../../dist/modules/print/find-browser.js';
import { launch } from '../../dist/modules/print/launch.js';
import { realSurroundings } from '../../dist/modules/print/surroundings.js';

const HERE = fileURLToPath(new URL('.', import.meta.url));
const BIN = fileURLToPath(new URL('../../dist/lib/bin.js', import.meta.url));
const DEMO = fileURLToPath(new URL('../../projects', import.meta.url));
/** The day on which the pages are looked at. */
const TODAY = '2026-11-25';
const SHEET = 'projects/my-first-box/sheet.md';

function sheetwright(folder, ...words) {
  const { status, stderr } = spawnSync(process.execPath, [BIN, ...words], { cwd: folder, encoding: 'utf8' });
  if (status === null || status > 1) throw new Error(`sheetwright ${words.join(' ')}: ${stderr}`);
}

/** A picture as it is kept: few colors, small. */
async function keep(name, png, width) {
  const small = sharp(png).resize({ width, withoutEnlargement: true });
  await small.png({ palette: true, colors: 64, effort: 10 }).toFile(path.join(HERE, `${name}.png`));
}

/** The first page of a PDF. */
async function takePaper(name, file, width) {
  const pdf = await getDocument({ data: new Uint8Array(await readFile(file)), verbosity: 0 }).promise;
  const page = await pdf.getPage(1);
  const viewport = page.getViewport({ scale: (2 * width) / page.getViewport({ scale: 1 }).width });
  const { canvas, context } = pdf.canvasFactory.create(viewport.width, viewport.height);
  await page.render({ canvasContext: context, viewport }).promise;
  await keep(name, canvas.toBuffer('image/png'), width);
}

function openBrowser() {
  const surroundings = realSurroundings();
  return firstThatStarts(
    sources({ download: false, onDownload: () => {} }, surroundings),
    (candidate) => launch(candidate, { surroundings, timeout: 30_000, hosts: ['127.0.0.1'] }),
    surroundings,
  );
}

/** A page on a screen of that size. */
async function takePage(browser, name, address, [width, height], meanwhile = async () => {}) {
  const page = await browser.newPage();
  await page.setViewport({ width, height });
  await page.evaluateOnNewDocument(`const Clock = Date; globalThis.Date = class extends Clock {
    constructor(...parts) { if (parts.length === 0) super('${TODAY}T12:00:00'); else super(...parts); } }`);
  await page.goto(address);
  await meanwhile();
  await new Promise((drawn) => setTimeout(drawn, 3000));
  await keep(name, await page.screenshot({ type: 'png' }), Math.min(width, 760));
  await page.close();
}

/** The preview of a folder, as long as somebody looks at it. */
async function withPreview(folder, look) {
  const preview = spawn(process.execPath, [BIN, 'preview', '--port', '0'], { cwd: folder });
  try {
    const address = await new Promise((found) => {
      preview.stdout.on('data', (data) => {
        const [address] = /http:\/\/127\S+/u.exec(String(data)) ?? [];
        if (address) found(address);
      });
    });
    await look(address);
  } finally {
    preview.kill();
  }
}

async function tour(browser, folder) {
  sheetwright(folder, 'draft', 'my-first-box', '--form', 'clip-top box');
  const sheet = path.join(folder, SHEET);
  const right = await readFile(sheet, 'utf8');
  const slip = () => writeFile(sheet, right.replace('cut: 2 1/2 x 3 3/4', 'cut: 3 x 3 3/4'));
  await withPreview(folder, (address) =>
    takePage(browser, 'tour-finding', `${address}my-first-box/`, [900, 620], slip),
  );
  await writeFile(sheet, right);
  await writeFile(path.join(folder, 'projects/site.yaml'), 'url: https://example.org/bench/\n');
  sheetwright(folder, 'publish');
  const made = path.join(folder, 'dist/site/my-first-box');
  const at = (file) => pathToFileURL(path.join(made, file)).href;
  await takePage(browser, 'tour-page', at('index.html'), [390, 760]);
  await takePage(browser, 'tour-share', at('share/index.html'), [900, 620]);
  await takePaper('tour-handout', path.join(made, 'my-first-box-letter.pdf'), 560);
  await takePaper('tour-template', path.join(made, 'my-first-box-template.pdf'), 560);
}

async function demo(browser, folder) {
  sheetwright(folder, 'make', DEMO, '--no-pdf');
  await takePage(
    browser,
    'list',
    pathToFileURL(path.join(folder, 'dist/site/index.html')).href,
    [1200, 1078],
  );
  sheetwright(folder, 'make', DEMO, '--only', 'short-pencil-box');
  const made = path.join(folder, 'dist/site/short-pencil-box/short-pencil-box');
  await takePaper('handout', `${made}-letter.pdf`, 680);
  await takePaper('template', `${made}-template.pdf`, 760);
}

const { browser, stop } = await openBrowser();
const folders = await Promise.all(['tour-', 'demo-'].map((name) => mkdtemp(path.join(tmpdir(), name))));
try {
  await tour(browser, folders[0]);
  await demo(browser, folders[1]);
} finally {
  await stop();
  for (const folder of folders) await rm(folder, { recursive: true });
}
