import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root: string = fileURLToPath(new URL('../..', import.meta.url));

/** A page of the docs, by its path in the repository. */
export type Page = { readonly path: string; readonly text: string };

/** What stands between the fences of a page, and the line it begins on. */
export type Block = {
  readonly page: string;
  readonly line: number;
  readonly language: string;
  readonly text: string;
};

const PAPERS = ['README.md', 'DEVELOPERS.md', 'CHANGELOG.md', 'SECURITY.md', 'bench/README.md'];

/** Everything that is written for people to read. */
export const PAGES: readonly Page[] = [
  ...PAPERS,
  ...['docs', 'docs/forms'].flatMap((folder) =>
    readdirSync(join(root, folder))
      .filter((name) => name.endsWith('.md'))
      .map((name) => `${folder}/${name}`),
  ),
].map((path) => ({ path, text: readFileSync(join(root, path), 'utf8') }));

/** The fenced blocks of a page, freed from the indent of the list they stand in. */
export function blocksOf({ path, text }: Page): Block[] {
  const fences = [...text.matchAll(/^( *)(`{3,})(\w*)\n([\s\S]*?)^\1\2$/gmu)];
  return fences.map(({ index, 1: indent = '', 3: language = '', 4: body = '' }) => ({
    page: path,
    line: text.slice(0, index).split('\n').length + 1,
    language,
    text: indent === '' ? body : body.replaceAll(new RegExp(`^${indent}`, 'gmu'), ''),
  }));
}

/** A page without its code: neither what stands between fences nor what stands between backticks. */
export function proseOf({ text }: Page): string {
  return text.replaceAll(/^( *)(`{3,})\w*\n[\s\S]*?^\1\2$/gmu, '').replaceAll(/`[^`\n]*`/gu, '');
}

/** The anchor of a heading, as the hosts of Markdown make it. */
function anchorOf(heading: string): string {
  return heading
    .trim()
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N} _-]/gu, '')
    .replaceAll(' ', '-');
}

/** Where a link or a picture of a page leads nowhere, as `page: link`. */
export function deadLinks(page: Page): string[] {
  const links = [...proseOf(page).matchAll(/\]\((?!https?:)([^)\s]+)\)/gu)].map(([, link = '']) => link);
  return links.filter((link) => !leads(page, link)).map((link) => `${page.path}: ${link}`);
}

function leads(page: Page, link: string): boolean {
  const [path = '', anchor] = link.split('#');
  const target = path === '' ? page.path : relative(root, join(root, dirname(page.path), path));
  if (!existsSync(join(root, target))) return false;
  if (anchor === undefined) return true;
  const text = proseOf({ path: target, text: readFileSync(join(root, target), 'utf8') });
  return [...text.matchAll(/^#+ (.+)$/gmu)].some(([, heading = '']) => anchorOf(heading) === anchor);
}

/** The first block of a page that has these words. */
export function blockWith(path: string, words: string): Block {
  const page = PAGES.find((each) => each.path === path);
  const block = page && blocksOf(page).find(({ text }) => text.includes(words));
  if (!block) throw new Error(`no block of ${path} says ${words}`);
  return block;
}
