import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const source = fileURLToPath(new URL('../../src', import.meta.url));

/** The floors of the house, lowest first: a folder may import from those before it. */
const FLOORS: readonly string[] = [
  'measure',
  'project',
  'shape',
  'proof',
  'edition',
  'examine',
  'recall',
  'kit',
  'season',
  'words',
  'drawing',
  'cutting',
  'handout',
  'cue',
  'kit-pages',
  'site',
  'print',
  'make',
  'publish',
  'preview',
  'cli',
];

/** Node modules that touch the world, and the folders that may. */
const WORLD = /^node:(?:fs|child_process|http|https|net|os|process|worker_threads)/u;
const MAY_TOUCH_THE_WORLD = new Set(['project', 'recall', 'print', 'make', 'publish', 'preview', 'cli']);

/** Files that round what is no length: counts, areas that are only compared, angles, colors, seconds, grams a square meter. */
const MAY_ROUND: ReadonlySet<string> = new Set([
  'cli/copies.ts',
  'cli/kit-telling.ts',
  'cli/preview.ts',
  'cutting/perforated.ts',
  'drawing/tint.ts',
  'handout/supplies.ts',
  'kit/solver/master.ts',
  'proof/rules/turned-layer.ts',
  'shape/closure/glue-lines.ts',
]);

/** The files that stand at the root of src, over every folder. */
const ROOT = '';

type Import = { file: string; folder: string; specifier: string; target: string | undefined };

function importsOf(text: string, path: string): Import[] {
  const file = relative(source, path);
  const folder = file.includes('/') ? (file.split('/')[0] ?? ROOT) : ROOT;
  const specifiers = [...text.matchAll(/(?:\bfrom\s+|\bimport\s*\(?\s*)'([^']+)'/gu)].map(
    (match) => match[1] ?? '',
  );
  return specifiers.map((specifier) => {
    if (!specifier.startsWith('.')) return { file, folder, specifier, target: undefined };
    const target = relative(source, resolve(dirname(path), specifier));
    return { file, folder, specifier, target: target.includes('/') ? target.split('/')[0] : ROOT };
  });
}

function againstTheArrows(imports: readonly Import[]): string[] {
  return imports
    .filter(({ folder, target }) => folder !== ROOT && target !== undefined && target !== folder)
    .filter(({ folder, target }) => FLOORS.indexOf(target ?? '') > FLOORS.indexOf(folder))
    .map(({ file, specifier }) => `${file} imports ${specifier}`);
}

const files = readdirSync(source, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts'))
  .map((name) => join(source, name));
const imports = files.flatMap((path) => importsOf(readFileSync(path, 'utf8'), path));

describe('the architecture', () => {
  it('knows every folder of src', () => {
    const folders = new Set(imports.map(({ folder }) => folder));
    expect([...folders].filter((folder) => folder !== ROOT && !FLOORS.includes(folder))).toEqual([]);
  });

  it('has imports that run one way only', () => {
    expect(imports.length).toBeGreaterThan(20);
    expect(againstTheArrows(imports)).toEqual([]);
  });

  it('has a solver that knows numbers only: it imports nothing of the house', () => {
    const own = imports.filter(({ file }) => file.startsWith('kit/solver/'));
    expect(own.length).toBeGreaterThan(20);
    const others = own.filter(({ specifier }) => /^(?:\.\.\/|node:)/u.test(specifier));
    expect(others.map(({ file, specifier }) => `${file} imports ${specifier}`)).toEqual([]);
  });

  it('keeps file system, network and clock out of the pure folders', () => {
    const touching = imports
      .filter(
        ({ folder, specifier }) =>
          folder !== ROOT && WORLD.test(specifier) && !MAY_TOUCH_THE_WORLD.has(folder),
      )
      .map(({ file, specifier }) => `${file} imports ${specifier}`);
    expect(touching).toEqual([]);
    const clocks = files
      .filter((path) => !MAY_TOUCH_THE_WORLD.has(relative(source, path).split('/')[0] ?? ''))
      .filter((path) => relative(source, path).includes('/'))
      .filter((path) => /\bnew Date\(\)|\bDate\.now\(|\bMath\.random\(/u.test(readFileSync(path, 'utf8')))
      .map((path) => relative(source, path));
    expect(clocks).toEqual([]);
  });

  it('rounds lengths in one folder', () => {
    const rounding = files
      .filter((path) => /\bMath\.round\(|\.toFixed\(|\.toPrecision\(/u.test(readFileSync(path, 'utf8')))
      .map((path) => relative(source, path))
      .filter((file) => !file.startsWith('measure/'));
    expect(rounding.toSorted()).toEqual([...MAY_ROUND]);
  });

  it('imports only packages that are installed with it', () => {
    const manifest: unknown = JSON.parse(readFileSync(join(source, '../package.json'), 'utf8'));
    const { dependencies, optionalDependencies } = manifest as Record<string, Record<string, string>>;
    const installed = new Set(Object.keys({ ...dependencies, ...optionalDependencies }));
    const resolved = files.flatMap((path) =>
      [...readFileSync(path, 'utf8').matchAll(/require\.resolve\([`']([^`']+)/gu)].map(
        (match) => match[1] ?? '',
      ),
    );
    const packages = [...imports.map(({ specifier }) => specifier), ...resolved]
      .filter((specifier) => !specifier.startsWith('.') && !specifier.startsWith('node:'))
      .map((specifier) => /^(?:@[^/]+\/)?[^/]+/u.exec(specifier)?.[0] ?? specifier);
    // Types alone are gone when it is compiled.
    const typesOnly = new Set(['mdast', 'hast', 'mdast-util-directive']);
    expect(packages.length).toBeGreaterThan(20);
    expect([...new Set(packages)].filter((name) => !installed.has(name) && !typesOnly.has(name))).toEqual([]);
  });

  it('would catch an arrow that runs down', () => {
    const wrong = importsOf("import { proof } from '../proof/proof.ts';", join(source, 'measure/length.ts'));
    expect(againstTheArrows(wrong)).toEqual(['measure/length.ts imports ../proof/proof.ts']);
  });
});
