/**
 * Measures how handouts are filled: `node bench/pages.ts [dist]` (Node 22.18 or later, which runs TypeScript as it is).
 *
 * Prints, for each project that was made, how many pages each of its handouts has and how full each page is, in
 * percent: how far down it is filled, between its margins, the mean of its two columns.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fillOf } from '../test/print/page-fill.ts';
import { readPdf } from '../test/print/read-pdf.ts';

const PRINTS = ['letter', 'a4', 'large-print'];

const site = join(process.argv[2] ?? 'dist', 'site');
const files = readdirSync(site, { recursive: true, encoding: 'utf8' });
const totals = new Map(PRINTS.map((print) => [print, { pages: 0, blank: 0 }]));
for (const print of PRINTS) {
  for (const file of files
    .filter((name) => name.endsWith(`-${print}.pdf`) && !name.includes('template'))
    .sort()) {
    const { pages } = await readPdf(readFileSync(join(site, file)));
    const fills = pages.map(fillOf);
    const total = totals.get(print);
    if (total) {
      total.pages += pages.length;
      total.blank += fills.reduce((sum, fill) => sum + 1 - fill, 0);
    }
    process.stdout.write(
      `${file.padEnd(60)} ${pages.length}: ${fills.map((fill) => Math.round(fill * 100)).join(' ')}\n`,
    );
  }
}
for (const [print, { pages, blank }] of totals) {
  process.stdout.write(`${print}: ${pages} pages, ${Math.round((blank / pages) * 100)} % blank\n`);
}
