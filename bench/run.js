/**
 * Measures making, proofing and previewing: `npm run bench`, after `npm run prepare`. See bench/README.md.
 *
 *     npm run bench -- --sizes 10,100,1000 --repeat 3 --preview 200
 */
import { spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { availableParallelism, homedir, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { writeWorkspace } from './make/workspace.js';

const { values } = parseArgs({
  options: {
    sizes: { type: 'string', default: '10,100,1000' },
    repeat: { type: 'string', default: '3' },
    preview: { type: 'string', default: '200' },
    seed: { type: 'string', default: '1' },
  },
});
const REPEAT = Number(values.repeat);
const BIN = fileURLToPath(new URL('../dist/lib/bin.js', import.meta.url));
const here = (name) => fileURLToPath(new URL(`make/${name}`, import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'sheetwright-bench-'));
const rows = [];

/** The user's cache, empty but for the browser that was unpacked there. */
function freshCache(name) {
  const cache = join(folder, `cache-${name}`);
  const usual = join(homedir(), '.cache', 'sheetwright');
  mkdirSync(join(cache, 'sheetwright'), { recursive: true });
  for (const entry of existsSync(usual) ? readdirSync(usual) : []) {
    if (entry !== 'work') symlinkSync(join(usual, entry), join(cache, 'sheetwright', entry));
  }
  return cache;
}

/** Runs a program to its end: seconds by the clock and of the processor, megabytes at most. The browser counts only by the clock. */
function run(args, env = {}) {
  const usage = join(folder, 'usage.json');
  const began = performance.now();
  const { stdout, stderr, status } = spawnSync(process.execPath, ['--import', here('usage.js'), ...args], {
    encoding: 'utf8',
    env: { ...process.env, ...env, BENCH_USAGE: usage },
    maxBuffer: 2 ** 28,
  });
  const seconds = (performance.now() - began) / 1000;
  if (status !== 0) throw new Error(`${args.join(' ')} ended with ${status}: ${stderr}`);
  return { seconds, stdout, ...JSON.parse(readFileSync(usage, 'utf8')) };
}

/** The run that took the median time of several. */
function median(args, env) {
  const runs = Array.from({ length: REPEAT }, () => run(args, env)).sort((a, b) => a.seconds - b.seconds);
  return runs[Math.floor(runs.length / 2)];
}

function note(size, work, taken, ratio = '') {
  const figures = [taken.seconds, taken.cpu].map((figure) => (figure === undefined ? '' : figure.toFixed(2)));
  rows.push([size, work, ...figures, taken.megabytes === undefined ? '' : taken.megabytes.toFixed(0), ratio]);
  console.error(rows.at(-1).join('  '));
}

const against = (taken, floor, target) =>
  `${(taken.seconds / floor.seconds).toFixed(2)} × (at most ${target})`;

function change(path, from, to) {
  const text = readFileSync(path, 'utf8');
  if (!text.includes(from)) throw new Error(`${path} has no ${from}`);
  writeFileSync(path, text.replace(from, to));
}

const projectsIn = ({ stdout }) =>
  new Set(
    [...stdout.matchAll(/^site\/([\w-]+)\/[^\n:]*: /gmu)]
      .map(([, slug]) => slug)
      .filter((slug) => slug !== 'assets'),
  );

async function measure(size) {
  const root = join(folder, `of-${size}`);
  const out = join(folder, `made-${size}`);
  const html = join(folder, `html-${size}`);
  await writeWorkspace(root, size, Number(values.seed));
  const env = { XDG_CACHE_HOME: freshCache(size) };

  const read = median([here('floors.js'), 'read', root]);
  note(size, 'reading and hashing alone', read);
  const parse = median([here('floors.js'), 'parse', root]);
  note(size, 'remark and yaml alone', parse);

  const cold = run([BIN, 'proof', root], env);
  note(size, 'proof, nothing remembered', cold, against(cold, parse, 2));
  note(size, 'proof again', median([BIN, 'proof', root], env), 'under 1 s');

  const make = [BIN, 'make', root, '--out', out];
  const made = run(['--import', here('keep-html.js'), ...make], { ...env, BENCH_HTML: html });
  const print = run([here('floors.js'), 'print', html], env);
  const encode = run([here('floors.js'), 'encode', root]);
  note(size, 'raw print of the same pages', print);
  note(size, 'raw encoding of the same photos', encode);
  note(size, 'make, all outputs', made, against(made, { seconds: print.seconds + encode.seconds }, 0.8));

  run(make, env);
  const again = median(make, env);
  note(size, 'make again, nothing changed', again, `${against(again, read, 4)}; under 1.5 s`);

  const sheet = readdirSync(root).find((name) => name.startsWith('project-'));
  change(join(root, sheet, 'sheet.md'), 'title: Project', 'title: Changed project');
  const onePages = join(folder, `one-${size}`);
  const one = run(['--import', here('keep-html.js'), ...make], { ...env, BENCH_HTML: onePages });
  const oneFloor = run([here('floors.js'), 'print', onePages], env);
  note(size, 'browser started, the pages of one project raw', oneFloor);
  note(size, 'make, one project changed', one, against(one, oneFloor, 1.3));

  change(join(root, 'shared', 'measured.yaml'), 'Measured cardstock', 'Another cardstock');
  const using = readdirSync(root).filter((name) => {
    const path = join(root, name, 'sheet.md');
    return existsSync(path) && readFileSync(path, 'utf8').includes('shared.measured');
  });
  const shared = run([...make, '--why'], env);
  note(
    size,
    'make, a shared paper changed',
    shared,
    `${projectsIn(shared).size} made, ${using.length} use it`,
  );
}

async function measurePreview(size) {
  const root = join(folder, `preview-of-${size}`);
  await writeWorkspace(root, size, Number(values.seed));
  const env = { XDG_CACHE_HOME: freshCache(`preview-${size}`) };
  const preview = [here('preview.js'), root, join(folder, `preview-${size}`)];
  run([...preview, '0'], env);
  const taken = run([...preview, '20'], env);
  const { start, waits } = JSON.parse(taken.stdout);
  const ordered = waits.toSorted((a, b) => a - b);
  note(size, 'preview, until it serves', { seconds: start, megabytes: taken.megabytes }, 'under 3 s');
  note(size, 'preview, save to page, median', { seconds: ordered[10] / 1000 }, 'under 0.2 s');
  note(size, 'preview, save to page, worst', { seconds: ordered.at(-1) / 1000 }, 'under 0.5 s');
}

try {
  const bare = median(['-e', '0']);
  note('', 'node -e 0', bare);
  const help = median([BIN, '--help']);
  const most = 2 * bare.seconds + 0.1;
  note('', '--help', help, `at most ${most.toFixed(2)} s: twice node and 0.1 s`);
  for (const size of values.sizes.split(',').filter(Boolean)) await measure(Number(size));
  if (Number(values.preview) > 0) await measurePreview(Number(values.preview));
} finally {
  rmSync(folder, { recursive: true, force: true });
}

const head = ['projects', 'work', 'seconds', 'of them node’s processor', 'node’s MB', 'ratio or target'];
const table = [head, head.map(() => '---'), ...rows].map((cells) => `| ${cells.join(' | ')} |`).join('\n');
console.log(
  `Node ${process.version}, ${availableParallelism()} cores, medians of ${REPEAT}, seed ${values.seed}.\n\n${table}`,
);
