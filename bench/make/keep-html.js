// Loaded before a make: keeps every page that is printed, in the order of printing, in the folder BENCH_HTML.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { BrowserPool } from '../../dist/modules/print/pool.js';

const folder = process.env.BENCH_HTML;
mkdirSync(folder, { recursive: true });
let count = 0;

function keep(html) {
  count += 1;
  writeFileSync(join(folder, `${String(count).padStart(5, '0')}.html`), html);
}

const { inTurn } = BrowserPool.prototype;
BrowserPool.prototype.inTurn = function (what, job) {
  return inTurn.call(this, what, (desk) =>
    job({
      ...desk,
      lay: (html, ...rest) => {
        keep(html);
        return desk.lay(html, ...rest);
      },
    }),
  );
};
