// Writes the program as people run it: few files instead of a thousand, since a run would spend most of its start on finding
// and opening modules. `node src/bundle.js [folder]`; without a folder, dist/lib.
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { argv } from 'node:process';
import { fileURLToPath } from 'node:url';
import { rolldown } from 'rolldown';
import { parse } from 'yaml';

const source = dirname(fileURLToPath(import.meta.url));
const root = dirname(source);

/** What is started or imported by its own path, each a file of this name in the folder. A worker's first file is one, too. */
const ENTRIES = {
  bin: 'bin.ts',
  index: 'index.ts',
  examiner: 'recall/examiner.ts',
  presser: 'print/presser.ts',
  painter: 'make/painter-entry.ts',
};

/** Packages that stay as they are installed: machine code, and those whose files are read by their paths. */
const OUTSIDE = ['sharp', 'highs', 'hyphen', 'minisearch', '@fontsource/public-sans', '@sparticuz/chromium'];

/** Of all files of a folder of our source and those below: of what they are called, too. */
function sourceDigest(folder) {
  const digest = createHash('sha256');
  for (const name of readdirSync(join(source, folder), { recursive: true }).sort()) {
    if (/\.[jt]s$/u.test(name)) digest.update(`${name}\n`).update(readFileSync(join(source, folder, name)));
  }
  return digest;
}

/** What `recall/program.ts` tells this program by. The lock names what is in the bundle besides. */
const BUNDLED = {
  program: sourceDigest('')
    .update(readFileSync(join(root, 'package-lock.json')))
    .digest('hex'),
  printing: sourceDigest('print').digest('hex'),
  outside: OUTSIDE,
};

/**
 * What downloads a browser loads a megabyte and a half for proxies, among it an engine for JavaScript; whoever only starts
 * one goes without.
 */
const PROXIES = `import { createRequire } from 'node:module';
const require = createRequire(createRequire(import.meta.url).resolve('@puppeteer/browsers'));
function ProxyAgent(...options) {
  return new (require('proxy-agent').ProxyAgent)(...options);
}
export { ProxyAgent };`;
const proxiesLate = {
  name: 'proxies-late',
  resolveId: (id) => (id === 'proxy-agent' ? '\0proxy-agent' : null),
  load: (id) => (id === '\0proxy-agent' ? PROXIES : null),
};

const folder = argv[2] ?? join(root, 'dist', 'lib');

/** Bundles files of our source, each by its name. */
async function write(files, output) {
  const bundle = await rolldown({
    cwd: root,
    input: Object.fromEntries(Object.entries(files).map(([name, file]) => [name, join(source, file)])),
    platform: 'node',
    preserveEntrySignatures: 'strict',
    plugins: [proxiesLate],
    external: (id) => OUTSIDE.some((name) => id === name || id.startsWith(`${name}/`)),
    transform: { target: 'node20.19', define: { BUNDLED: JSON.stringify(BUNDLED) } },
    onLog: (level, log) => {
      if (level !== 'warn') return;
      throw new Error(log.message);
    },
  });
  const { output: written } = await bundle.write({
    dir: folder,
    comments: { legal: true, annotation: false, jsdoc: false },
    ...output,
  });
  await bundle.close();
  return written;
}

/** In the form that `recall/load-code.ts` loads with the code that is kept of it. */
const written = await write(ENTRIES, {
  format: 'cjs',
  cleanDir: true,
  entryFileNames: '[name].cjs',
  chunkFileNames: 'chunks/[name].cjs',
});
await write({ 'load-code': 'recall/load-code.ts' }, { format: 'esm' });

for (const { isEntry, name, exports } of written) {
  if (!isEntry) continue;
  const first = name === 'bin' ? '#!/usr/bin/env node\n' : '';
  const given = exports.length > 0 ? `export const { ${exports.join(', ')} } = ` : '';
  const path = join(folder, `${name}.js`);
  writeFileSync(path, `${first}import { loadCode } from './load-code.js';\n${given}loadCode('${name}');\n`);
}

/** The labels of each language as `make/package-files.ts` reads them, by the text they were parsed from. */
const labels = join(root, 'templates', 'labels');
mkdirSync(join(folder, 'labels'));
for (const name of readdirSync(labels)) {
  const text = readFileSync(join(labels, name), 'utf8');
  const digest = createHash('sha256').update(text).digest('hex');
  writeFileSync(join(folder, 'labels', `${digest}.json`), JSON.stringify(parse(text)));
}
