import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { deadLinks, PAGES, proseOf, root } from './pages.ts';

/** What the package takes along, besides its README, which npm always packs. */
const { files } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { files: string[] };
const packed = (path: string): boolean =>
  path === 'README.md' || files.some((each) => path === each || path.startsWith(`${each}/`));

it('leads somewhere with every link and picture', () => {
  expect(PAGES.flatMap(deadLinks)).toEqual([]);
});

it('leads to nothing outside the package from a page inside it', () => {
  const outward = PAGES.filter(({ path }) => packed(path)).flatMap((page) =>
    [...proseOf(page).matchAll(/\]\((?!https?:)([^)\s#]+)/gu)]
      .map(([, link = '']) => join(page.path, '..', link))
      .filter((target) => !packed(target))
      .map((target) => `${page.path}: ${target}`),
  );
  expect(outward).toEqual([]);
});

/** Paths of the repository that a page names between backticks. */
const PATH = /`((?:src|test|docs|templates|bench|schema|projects)\/[\w./-]*[\w/])`/gu;

it('names no file that is not there', () => {
  // The guide names files of the reader's own workspace.
  const pages = PAGES.filter(({ path }) => !/writing-a-project|rules|README|CHANGELOG|tour/u.test(path));
  const named = pages.flatMap((page) =>
    [...page.text.matchAll(PATH)].map(([, path = '']) => [page.path, path]),
  );
  expect(named.length).toBeGreaterThan(60);
  expect(named.filter(([, path = '']) => !existsSync(join(root, path)))).toEqual([]);
});

/** `make/make.ts` in DEVELOPERS.md is a file of src/, `print.ts` one of the folder that its sentence speaks of. */
it('names no source file in DEVELOPERS.md that is not there', () => {
  const page = readFileSync(join(root, 'DEVELOPERS.md'), 'utf8');
  const named = [...page.matchAll(/`([\w-]+\/[\w/-]+\.(?:ts|js))`/gu)].map(([, path = '']) => path);
  const places = ['', 'src', 'src/shape', 'templates', 'src/project'];
  expect(named.filter((path) => !places.some((place) => existsSync(join(root, place, path))))).toEqual([]);
});

it('says of every package why it is there, and of none that is not', () => {
  const page = readFileSync(join(root, 'DEVELOPERS.md'), 'utf8');
  const [, after = ''] = page.split('## Dependencies, and why each');
  const { dependencies, devDependencies, optionalDependencies } = JSON.parse(
    readFileSync(join(root, 'package.json'), 'utf8'),
  ) as Record<string, Record<string, string>>;
  const names = Object.keys({ ...dependencies, ...devDependencies, ...optionalDependencies });
  expect(names.filter((name) => !after.includes(name))).toEqual([]);
  const rows = [...after.matchAll(/^\| ([^|]+) \|/gmu)].slice(2).flatMap(([, cell = '']) => cell.split(', '));
  const told = rows.map((name) => name.replace(' (optional)', '').replace('the `-core` package', ''));
  expect(told.filter((name) => !names.includes(name))).toEqual([]);
});
