/**
 * Measures making, proofing and previewing: `npm run bench`, after `npm run prepare`. See bench/README.md.
 *
 *     npm run bench -- --sizes 10,100,1000 --repeat 3 --preview 200
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import {
  cpSync,
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
import { text } from 'node:stream/consumers';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { watchProcesses } from './make/processes.js';
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
/** The same, each module a file that can be taken hold of. */
const MODULES = fileURLToPath(new URL('../dist/modules/bin.js', import.meta.url));
const here = (name) => fileURLToPath(new URL(`make/${name}`, import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'sheetwright-bench-'));
const rows = [];

/** The user's cache, empty but for what was unpacked there. */
function freshCache(name) {
  const cache = join(folder, `cache-${name}`);
  const usual = join(homedir(), '.cache', 'sheetwright');
  mkdirSync(join(cache, 'sheetwright'), { recursive: true });
  for (const entry of existsSync(usual) ? readdirSync(usual) : []) {
    if (entry !== 'work' && entry !== 'code')
      symlinkSync(join(usual, entry), join(cache, 'sheetwright', entry));
  }
  return cache;
}

/** Runs a program to its end: seconds by the clock and of the processor, megabytes at most; of the browser apart. */
async function run(args, env = {}) {
  const usage = join(folder, 'usage.json');
  const began = performance.now();
  const program = spawn(process.execPath, ['--import', here('usage.js'), ...args], {
    env: { ...process.env, ...env, BENCH_USAGE: usage },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const watch = watchProcesses(program.pid);
  const [stdout, stderr, [status]] = await Promise.all([
    text(program.stdout),
    text(program.stderr),
    once(program, 'exit'),
  ]);
  const seconds = (performance.now() - began) / 1000;
  const { cpu, megabytes } = watch.stop();
  if (status !== 0) throw new Error(`${args.join(' ')} ended with ${status}: ${stderr}`);
  const own = JSON.parse(readFileSync(usage, 'utf8'));
  return {
    seconds,
    stdout,
    cpu: own.cpu + cpu.ours,
    megabytes: own.megabytes + megabytes.ours,
    browser: { cpu: cpu.browser, megabytes: megabytes.browser },
  };
}

/** The run that took the median time of several. */
async function median(args, env) {
  const runs = [];
  for (let count = 0; count < REPEAT; count += 1) runs.push(await run(args, env));
  runs.sort((a, b) => a.seconds - b.seconds);
  return runs[Math.floor(runs.length / 2)];
}

function note(size, work, { seconds, cpu, megabytes, browser }, ratio = '') {
  const figure = (value, digits) => (value ? value.toFixed(digits) : '');
  const taken = [figure(seconds, 2), figure(cpu, 2), figure(browser?.cpu, 2)];
  const memory = [figure(megabytes, 0), figure(browser?.megabytes, 0)];
  rows.push([size, work, ...taken, ...memory, ratio]);
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

/** Keeps the pages that a make prints, of a make beside the one that is measured. */
async function keepPages(size, root, html) {
  const cache = join(folder, `cache-kept-${size}`);
  const env = { XDG_CACHE_HOME: existsSync(cache) ? cache : freshCache(`kept-${size}`), BENCH_HTML: html };
  const out = join(folder, `kept-${size}`);
  await run(['--import', here('keep-html.js'), MODULES, 'make', root, '--out', out], env);
}

async function measure(size) {
  const root = join(folder, `of-${size}`);
  const out = join(folder, `made-${size}`);
  await writeWorkspace(root, size, Number(values.seed));
  const env = { XDG_CACHE_HOME: freshCache(size) };

  const read = await median([here('floors.js'), 'read', root]);
  note(size, 'reading and hashing alone', read);
  const parse = await median([here('floors.js'), 'parse', root]);
  note(size, 'remark and yaml alone', parse);

  const cold = await run([BIN, 'proof', root], env);
  note(size, 'proof, nothing remembered', cold, against(cold, parse, 2));
  note(size, 'proof again', await median([BIN, 'proof', root], env), 'under 1 s');

  const make = [BIN, 'make', root, '--out', out];
  await measureCold(size, { root, make, env });

  await run(make, env);
  const again = await median(make, env);
  note(size, 'make again, nothing changed', again, `${against(again, read, 4)}; under 1.5 s`);

  const sheet = readdirSync(root).find((name) => name.startsWith('project-'));
  change(join(root, sheet, 'sheet.md'), 'title: Project', 'title: Changed project');
  const onePages = join(folder, `one-${size}`);
  const one = await run(make, env);
  await keepPages(size, root, onePages);
  const oneFloor = await run([here('floors.js'), 'print', onePages], env);
  note(size, 'browser started, the pages of one project raw', oneFloor);
  note(size, 'make, one project changed', one, against(one, oneFloor, 1.3));

  change(join(root, 'shared', 'measured.yaml'), 'Measured cardstock', 'Another cardstock');
  const using = readdirSync(root).filter((name) => {
    const path = join(root, name, 'sheet.md');
    return existsSync(path) && readFileSync(path, 'utf8').includes('shared.measured');
  });
  const shared = await run([...make, '--why'], env);
  note(
    size,
    'make, a shared paper changed',
    shared,
    `${projectsIn(shared).size} made, ${using.length} use it`,
  );
}

/** A make of everything, against the same pages printed and the same photos encoded, one after the other. */
async function measureCold(size, { root, make, env }) {
  const html = join(folder, `html-${size}`);
  const made = await run(make, env);
  await keepPages(size, root, html);
  const print = await run([here('floors.js'), 'print', html], env);
  const encode = await run([here('floors.js'), 'encode', root]);
  note(size, 'raw print of the same pages', print);
  note(size, 'raw encoding of the same photos', encode);
  note(size, 'make, all outputs', made, against(made, { seconds: print.seconds + encode.seconds }, 0.8));
}

async function measureDemo() {
  const root = join(folder, 'demo');
  cpSync(fileURLToPath(new URL('../projects', import.meta.url)), root, { recursive: true });
  const make = [BIN, 'make', root, '--out', join(folder, 'made-demo')];
  await measureCold('demo', { root, make, env: { XDG_CACHE_HOME: freshCache('demo') } });
}

async function measurePreview(size) {
  const root = join(folder, `preview-of-${size}`);
  await writeWorkspace(root, size, Number(values.seed));
  const env = { XDG_CACHE_HOME: freshCache(`preview-${size}`) };
  const preview = [here('preview.js'), root, join(folder, `preview-${size}`)];
  await run([...preview, '0'], env);
  const taken = await run([...preview, '20'], env);
  const { start, waits } = JSON.parse(taken.stdout);
  const ordered = waits.toSorted((a, b) => a - b);
  note(size, 'preview, until it serves', { seconds: start, megabytes: taken.megabytes }, 'under 3 s');
  note(size, 'preview, save to page, median', { seconds: ordered[10] / 1000 }, 'under 0.2 s');
  note(size, 'preview, save to page, worst', { seconds: ordered.at(-1) / 1000 }, 'under 0.5 s');
}

try {
  const bare = await median(['-e', '0']);
  note('', 'node -e 0', bare);
  const help = await median([BIN, '--help']);
  const most = 2 * bare.seconds + 0.1;
  note('', '--help', help, `at most ${most.toFixed(2)} s: twice node and 0.1 s`);
  await measureDemo();
  for (const size of values.sizes.split(',').filter(Boolean)) await measure(Number(size));
  if (Number(values.preview) > 0) await measurePreview(Number(values.preview));
} finally {
  rmSync(folder, { recursive: true, force: true });
}

const head = [
  'projects',
  'work',
  'seconds',
  'node’s processor',
  'the browser’s',
  'node’s MB',
  'the browser’s',
  'ratio or target',
];
const table = [head, head.map(() => '---'), ...rows].map((cells) => `| ${cells.join(' | ')} |`).join('\n');
console.log(
  `Node ${process.version}, ${availableParallelism()} cores, medians of ${REPEAT}, seed ${values.seed}.\n\n${table}`,
);
