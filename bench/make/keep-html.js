// Loaded before a make: keeps every page that is printed, in the order of printing, in the folder BENCH_HTML.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fontFaceCss } from '../../dist/modules/handout/css.js';
import { BrowserPool } from '../../dist/modules/print/pool.js';

const folder = process.env.BENCH_HTML;
mkdirSync(folder, { recursive: true });
let count = 0;

function keep(html, fonts) {
  count += 1;
  const whole = html.replace('</head>', () => `<style>\n${fontFaceCss(fonts)}\n</style>\n</head>`);
  writeFileSync(join(folder, `${String(count).padStart(5, '0')}.html`), whole);
}

const { inTurn } = BrowserPool.prototype;
BrowserPool.prototype.inTurn = function (what, job, batch) {
  const keeping = (desk) =>
    job({
      ...desk,
      lay: (html, what, layout) => {
        keep(html, layout.fonts);
        return desk.lay(html, what, layout);
      },
    });
  return inTurn.call(this, what, keeping, batch);
};
