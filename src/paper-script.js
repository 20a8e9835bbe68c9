// Writes templates/paper.js: what folds and paints paper in the drawings, as a plain script for a page, which has no
// modules when it is opened from disk. Runs before every build, check and test; what it writes is not committed.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Each after those it imports. */
const FILES = [
  'shape/space',
  'shape/paint/pose',
  'shape/paint/plane-tree',
  'shape/paint/picture',
  'shape/paint/paper-sheet',
  'drawing/tint',
];
const OFFERED = ['USUAL_LOOK', 'foldPaper', 'paint', 'placeInPicture', 'shaded', 'sharesAfter'];

const source = dirname(fileURLToPath(import.meta.url));
const emitted = mkdtempSync(join(tmpdir(), 'paper-script-'));
try {
  const compiler = createRequire(import.meta.url).resolve('typescript/package.json');
  const settings =
    '--ignoreConfig --target es2023 --module esnext --moduleResolution bundler --removeComments';
  const places = ['--allowImportingTsExtensions', '--rewriteRelativeImportExtensions', '--rootDir', source];
  execFileSync(process.execPath, [
    join(dirname(compiler), 'bin/tsc'),
    ...settings.split(' '),
    ...places,
    '--outDir',
    emitted,
    ...FILES.map((file) => join(source, `${file}.ts`)),
  ]);
  const parts = FILES.map((file) =>
    readFileSync(join(emitted, `${file}.js`), 'utf8')
      .replace(/^import .*;\n/gmu, '')
      .replace(/^export /gmu, ''),
  );
  const offer = `globalThis.sheetwright = { ...globalThis.sheetwright, paper: { ${OFFERED.join(', ')} } };\n`;
  const head = '// Folds and paints paper. Written by src/paper-script.js.\n';
  writeFileSync(join(source, '../templates/paper.js'), `${head}(() => {\n${parts.join('')}${offer}})();\n`);
} finally {
  rmSync(emitted, { recursive: true });
}
