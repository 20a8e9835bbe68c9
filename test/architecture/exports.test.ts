import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { sha256 } from '../../src/recall/sealed.ts';
import { builtPackage } from '../built.ts';
import { type Edge, edgesOf, exportsOf, sources } from './source.ts';
import { STILL_UNUSED } from './still-unused.ts';

type Files = ReadonlyMap<string, string>;

function edgesIn(files: Files): ReadonlyMap<string, readonly Edge[]> {
  return new Map([...files].map(([path, text]) => [path, edgesOf(path, text)]));
}

/** What the page's script is made of, which is no file of src that is compiled with the others. */
const [, onPage = ''] = /OFFERED = \[(.*)\]/u.exec(readFileSync('src/paper-script.js', 'utf8')) ?? [];

/** What the files that are started take, of which the bundle is loaded. */
const bundling = readFileSync('src/bundle.js', 'utf8');

/** `path:name` of each export that no other file of src takes. What src/index.ts hands on is for everybody. */
function unusedExports(files: Files): string[] {
  const taken = new Set(
    [...edgesIn(files).values()]
      .flat()
      .flatMap(({ target, names }) => names.map((name) => `${target}:${name}`)),
  );
  return [...files].flatMap(([path, text]) =>
    exportsOf(text)
      .map((name) => `${path}:${name}`)
      .filter((name) => !taken.has(name) && !taken.has(`${path}:*`)),
  );
}

/** Files that import one another in a circle, each circle as the way round it. */
function circlesIn(files: Files): string[] {
  const edges = edgesIn(files);
  const done = new Set<string>();
  const circles: string[] = [];
  const visit = (path: string, way: readonly string[]): void => {
    if (way.includes(path)) {
      circles.push([...way.slice(way.indexOf(path)), path].join(' > '));
      return;
    }
    if (done.has(path)) return;
    for (const { target } of edges.get(path) ?? []) if (files.has(target)) visit(target, [...way, path]);
    done.add(path);
  };
  for (const path of files.keys()) visit(path, []);
  return circles;
}

/** Lists of all files of a folder, written by the registry: whoever asks one asks for what is in it, whichever it is. */
const REGISTERED = /\/(?:rules|forms|outlines|outputs)\/index\.ts$/u;

/** The longest way from a file to one it imports, to one that imports, and so on. */
function longestChain(files: Files): readonly string[] {
  const edges = edgesIn(files);
  const known = new Map<string, readonly string[]>();
  const chainFrom = (path: string): readonly string[] => {
    const found = known.get(path);
    if (found) return found;
    const imported = (edges.get(path) ?? []).map(({ target }) => target);
    const onward = imported.filter((target) => files.has(target) && !REGISTERED.test(target)).map(chainFrom);
    const chain = [path, ...longestOf(onward)];
    known.set(path, chain);
    return chain;
  };
  return longestOf([...files.keys()].map(chainFrom));
}

function longestOf(chains: readonly (readonly string[])[]): readonly string[] {
  return chains.reduce((longest, chain) => (chain.length > longest.length ? chain : longest), []);
}

/** The packages that are loaded with a file, before anything asks for more. */
function packagesWith(path: string, files: Files): ReadonlySet<string> {
  const edges = edgesIn(files);
  const seen = new Set<string>();
  const visit = (each: string): void => {
    if (seen.has(each)) return;
    seen.add(each);
    for (const { target, isLater } of edges.get(each) ?? []) if (!isLater) visit(target);
  };
  visit(path);
  return new Set([...seen].filter((each) => !files.has(each)));
}

describe('the exports of src', () => {
  it('are each taken by another file of src, or handed on by its index', () => {
    expect(sources.size).toBeGreaterThan(100);
    const isOnPage = (name: string): boolean => onPage.includes(`'${name.split(':')[1]}'`);
    const isStarted = (name: string): boolean => bundling.includes(`import { ${name.split(':')[1]} }`);
    const unused = unusedExports(sources).filter((name) => !isOnPage(name) && !isStarted(name));
    expect(unused.toSorted()).toEqual(STILL_UNUSED.toSorted());
  });

  it('would not be passed over', () => {
    const files = new Map([
      ['index.ts', "export { type Size, area } from './a.ts';"],
      ['a.ts', 'export type Size = number;\nexport const area = 1;\nexport async function alone() {}'],
      ['b.ts', "import {\n  area,\n} from './a.ts';\nexport const left = area;"],
    ]);
    expect(unusedExports(files)).toEqual(['a.ts:alone', 'b.ts:left']);
  });
});

describe('the imports of src', () => {
  it('go round in no circle', () => {
    expect(circlesIn(sources)).toEqual([]);
  });

  it('would not be passed over where they do', () => {
    const files = new Map([
      ['a/one.ts', "import type { Two } from '../b/two.ts';"],
      ['b/two.ts', "export const three = () => import('./three.ts');"],
      ['b/three.ts', "import { one } from '../a/one.ts';"],
    ]);
    expect(circlesIn(files)).toEqual(['a/one.ts > b/two.ts > b/three.ts > a/one.ts']);
  });
});

describe('a chain of imports in src', () => {
  it('is never longer than twenty files', () => {
    const chain = longestChain(sources);
    expect(chain.length, chain.join(' > ')).toBeLessThanOrEqual(20);
  });

  it('is followed to its end', () => {
    const files = new Map([
      ['a.ts', "import { b } from './b.ts';\nimport { d } from './d.ts';"],
      ['b.ts', "import type { C } from './c.ts';"],
      ['c.ts', "const later = () => import('./d.ts');"],
      ['d.ts', ''],
    ]);
    expect(longestChain(files)).toEqual(['a.ts', 'b.ts', 'c.ts', 'd.ts']);
  });
});

const DRAWS = ['handlebars', 'sharp', 'qrcode'];
const PRINTS = ['puppeteer-core', '@puppeteer/browsers'];
const READS = ['yaml', 'zod', 'unified', 'remark-parse'];

describe('what a command loads before it is asked for more', () => {
  it.each([
    ['the help', 'bin.ts', [...DRAWS, ...PRINTS, ...READS, 'highs', 'chokidar', 'cli-progress']],
    ['a proof of what is known', 'cli/proof.ts', [...DRAWS, ...PRINTS, ...READS, 'highs']],
    ['a make of what is made', 'cli/make.ts', [...DRAWS, ...PRINTS, ...READS, 'highs']],
    ['an examination', 'examine/examine.ts', [...DRAWS, ...PRINTS, 'highs']],
  ])('is, for %s, no package that it does without', (_, path, without) => {
    const packages = packagesWith(path, sources);
    const all = new Set([...edgesIn(sources).values()].flat().map(({ target }) => target));
    expect(packages.size).toBeGreaterThan(0);
    expect(without.filter((name) => packages.has(name))).toEqual([]);
    expect(without.filter((name) => !all.has(name))).toEqual([]);
  });
});

describe('the name of a type', () => {
  it('means one thing: only the facts of each rule are called alike', () => {
    const files = new Map<string, Set<string>>();
    for (const [path, text] of sources)
      for (const [, name = ''] of text.matchAll(/^(?:export )?(?:type|interface) (\w+)/gmu))
        files.set(name, (files.get(name) ?? new Set()).add(path));
    expect(files.size).toBeGreaterThan(500);
    const several = [...files].filter(([, paths]) => paths.size > 1);
    expect(several.map(([name]) => name)).toEqual(['Facts']);
  });
});

/** The length of a bundled file and of all that are loaded with it. */
function lengthOf(path: string, seen: Set<string>): number {
  if (seen.has(path)) return 0;
  seen.add(path);
  const text = readFileSync(path, 'utf8');
  const imported = [...text.matchAll(/^(?:const \w+ = )?require\("(\.[^"]+)"\);$/gmu)];
  return imported.reduce((sum, [, to = '']) => sum + lengthOf(join(dirname(path), to), seen), text.length);
}

describe('the bundle', () => {
  it('has what is loaded late in files of its own', async () => {
    const folder = join(await builtPackage(), 'dist', 'lib');
    const [atOnce = 0, whole = 0] = ['bin', 'index'].map((name) =>
      lengthOf(join(folder, `${name}.cjs`), new Set()),
    );
    expect(atOnce).toBeGreaterThan(0);
    expect(atOnce).toBeLessThan(whole / 8);
  });

  it('has the labels of each language, parsed', async () => {
    const folder = join(await builtPackage(), 'dist', 'lib', 'labels');
    const texts = readdirSync('templates/labels').map((name) =>
      readFileSync(`templates/labels/${name}`, 'utf8'),
    );
    expect(texts.length).toBeGreaterThan(4);
    expect(readdirSync(folder)).toHaveLength(texts.length);
    for (const text of texts) {
      const read = JSON.parse(readFileSync(join(folder, `${sha256(text)}.json`), 'utf8'));
      expect(Object.entries(read)).toEqual(Object.entries(parse(text)));
    }
  });
});
