/**
 * How soon a save shows in a preview: `node bench/make/preview.js WORKSPACE OUT SAVES` prints, as JSON, the seconds until
 * it serves and the milliseconds from each save to the new text on the page.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { openPreview } from '../../dist/lib/index.js';

const [root, out, saves] = process.argv.slice(2);
const began = performance.now();
const preview = await openPreview({
  root: resolve(root),
  out: resolve(out),
  namedFrom: process.cwd(),
  today: '2026-12-01',
  port: 0,
  told: () => {},
});
const start = (performance.now() - began) / 1000;

const slugs = readdirSync(root).filter((name) => name.startsWith('project-'));
const waits = [];
for (let index = 0; index < Number(saves); index += 1) {
  const slug = slugs[(index * 7) % slugs.length];
  const sheet = join(root, slug, 'sheet.md');
  const text = readFileSync(sheet, 'utf8');
  const word = `Saved for the ${index + 1}th time`;
  const events = (await fetch(`${preview.address}-preview/events`)).body.getReader();
  await events.read();
  const saved = performance.now();
  writeFileSync(sheet, text.replace(/^title: .*$/mu, `title: ${word}`));
  for (;;) {
    await events.read();
    const page = await (await fetch(`${preview.address}${slug}/`)).text();
    if (page.includes(word)) break;
  }
  waits.push(performance.now() - saved);
  await events.cancel();
  writeFileSync(sheet, text);
  await new Promise((resume) => setTimeout(resume, 400));
}
await preview.close();
console.log(JSON.stringify({ start, waits }));
