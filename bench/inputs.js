/**
 * Measures how the time of a command grows with each class of input: `node bench/inputs.js`, of what is built in
 * `dist/lib`. See bench/README.md.
 *
 *     node bench/inputs.js --only 'prose,pieces' --command make
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { CLASSES } from './make/input-classes.js';

const { values } = parseArgs({
  options: {
    only: { type: 'string', default: Object.keys(CLASSES).join(',') },
    command: { type: 'string', default: 'proof' },
    patience: { type: 'string', default: '120' },
  },
});
const BIN = fileURLToPath(new URL('../dist/lib/bin.js', import.meta.url));
const USAGE = fileURLToPath(new URL('make/usage.js', import.meta.url));
const MAKING = ['--no-pdf', '--out'];

/** Seconds of the processor that a command takes for a workspace, nothing remembered; undefined of one that was ended. */
function secondsOf(files) {
  const folder = mkdtempSync(join(tmpdir(), 'sheetwright-inputs-'));
  const usage = join(folder, 'usage.json');
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, 'ws', path)), { recursive: true });
    writeFileSync(join(folder, 'ws', path), text);
  }
  const out = values.command === 'proof' ? [] : [...MAKING, join(folder, 'dist')];
  // Whatever else the machine does, a command has this much of the processor's time.
  const { status, stdout } = spawnSync(
    'sh',
    [
      '-c',
      `ulimit -t ${values.patience}; exec "$0" "$@"`,
      process.execPath,
      '--import',
      USAGE,
      BIN,
      values.command,
      '--quiet',
      ...out,
      join(folder, 'ws'),
    ],
    {
      encoding: 'utf8',
      env: { ...process.env, XDG_CACHE_HOME: join(folder, 'cache'), BENCH_USAGE: usage },
      maxBuffer: 2 ** 28,
    },
  );
  const cpu = status === null ? undefined : JSON.parse(readFileSync(usage, 'utf8')).cpu;
  rmSync(folder, { recursive: true, force: true });
  return { cpu, status, rules: tally(stdout) };
}

/** How often each rule was told of. */
function tally(told) {
  const rules = new Map();
  for (const [, rule] of told.matchAll(/ {2}\[([\w-]+)\]$/gmu)) rules.set(rule, (rules.get(rule) ?? 0) + 1);
  return [...rules].map(([rule, count]) => `${rule} ${count}`).join(', ') || 'nothing';
}

const start = secondsOf(CLASSES.nothing.files(1)).cpu;
console.log(`Of each time, ${start.toFixed(2)} s are the start and a card of one piece.\n`);
console.log('| class | items | seconds of the processor | for 10 × the items | told of the most |');
console.log('| --- | --- | --- | --- | --- |');
for (const name of values.only.split(',')) {
  const { sizes, files } = CLASSES[name];
  const runs = sizes.map((size) => secondsOf(files(size)));
  const seconds = runs.map(({ cpu }) => cpu?.toFixed(1) ?? `over ${values.patience}`);
  const own = runs.map(({ cpu = Number.POSITIVE_INFINITY }) => Math.max(cpu - start, 0.1));
  const ratios = own.slice(1).map((each, index) => `${(each / own[index]).toFixed(1)} ×`);
  const told = runs.at(-1).status === null ? '' : runs.at(-1).rules;
  console.log(`| ${[name, sizes.join(', '), seconds.join(', '), ratios.join(', '), told].join(' | ')} |`);
}
