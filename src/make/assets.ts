import { extname } from 'node:path';
import { fontFaceCss, type Styles } from '../handout/css.ts';
import type { PageFont } from '../print/printer.ts';
import { sha256 } from '../recall/sealed.ts';
import { FAVICON } from '../site/favicon.ts';
import type { Icons, SitePages } from '../site/frame.ts';
import type { ListedProject } from '../site/listed.ts';
import { searchScript } from '../site/search.ts';
import { dataAddress } from './files.ts';
import type { Studio } from './output.ts';
import type { FontFile, PackageFiles } from './package-files.ts';

/** A file that several pages use, under a name that changes with its content so that it may be cached for good. */
type Asset = { readonly name: string; readonly bytes: Uint8Array | string };

/** The stylesheets of each print. */
const PRINTS = {
  handout: ['base', 'sheet', 'print', 'handout'],
  kit: ['base', 'sheet', 'print', 'kit'],
  template: ['base', 'template'],
  tent: ['base', 'tent'],
  cue: ['base', 'cue'],
} as const;

/** The scripts of each kind of page, and of the search, in the order in which they build on one another. */
const SCRIPTS = {
  list: ['days', 'downloads', 'filter'],
  sheet: [
    'page',
    'days',
    'downloads',
    'class-mode',
    'enlarge',
    'keep',
    'card',
    'more',
    'paper',
    'picture',
    'turn',
  ],
  share: ['days', 'downloads', 'share'],
  search: ['card', 'finder'],
} as const;

/** A kind of page that has a script. */
type Scripted = Exclude<keyof typeof SCRIPTS, 'search'>;

/** What keeps pages for a room without a network; at the root, for it may only keep what is below it. */
export const OFFLINE = 'offline.js';

/**
 * What says which projects a project's page leads on to, from the site's root. It is the site's, not the project's: it
 * follows the neighbors, and so changes while its own project is held, and is no part of a shard.
 */
export function moreScriptOf(slug: string): string {
  return `assets/more/${slug}.js`;
}

/** The search and what it finds, from the site's root. */
export function searchAsset(
  cards: readonly ListedProject[],
  { files, labels }: Pick<PageMaterial, 'files' | 'labels'>,
): Asset {
  return named(
    'search.js',
    lean(`${searchScript(cards, files.search, labels)}${scriptsOf('search', files)}`),
  );
}

/** Everything in the assets folder. */
export function siteAssets(files: PackageFiles): readonly Asset[] {
  const scripts = (['list', 'sheet', 'share'] as const).map((kind) => pageScript(kind, files));
  return [siteStyles(files), ...files.fonts.map(fontAsset), ...scripts];
}

/** The one stylesheet of the site, fonts by address. */
function siteStyles(files: PackageFiles): Asset {
  const fonts = fontFaceCss(files.fonts.map((font) => ({ ...font, url: fontAsset(font).name })));
  return named(
    'sheetwright.css',
    lean(`${fonts}\n${joined(files, ['base', 'sheet', 'site', 'turn', 'index', 'share'])}`),
  );
}

function pageScript(kind: Scripted, files: PackageFiles): Asset {
  return named(`${kind}.js`, lean(scriptsOf(kind, files)));
}

/** Each of ours is closed in itself, so that they need only stand in one file. */
function scriptsOf(kind: keyof typeof SCRIPTS, { scripts }: PackageFiles): string {
  return SCRIPTS[kind].map((name) => scripts.get(name) ?? missing(`${name}.js`)).join('\n');
}

/** Without indents, empty lines, and comments that have lines of their own: those are for whoever reads the source. */
function lean(text: string): string {
  return text.replace(/^[ \t]*(?:\/\*[\s\S]*?\*\/|\/\/.*)[ \t]*$/gmu, '').replace(/^\s+/gmu, '');
}

function fontAsset(font: FontFile): Asset {
  return named(font.name, font.bytes);
}

/** The icons' names below the site's root; they change with the drawing. */
export function iconNames(): Icons {
  const mark = sha256(FAVICON).slice(0, 10);
  return { svg: `assets/icon-${mark}.svg`, png: `assets/icon-${mark}.png` };
}

type PageMaterial = Pick<Studio, 'site' | 'labels' | 'renderer' | 'files'>;

/**
 * What the pages of the site share, and the script of one kind of them, seen from a page from which `root` leads to the
 * site's root: `''` or `../`.
 */
export function pagesAt(
  root: string,
  { site, labels, renderer, files }: PageMaterial,
  kind: Scripted,
): SitePages {
  return {
    site,
    labels,
    renderer,
    styles: { kind: 'linked', hrefs: [`${root}assets/${siteStyles(files).name}`] },
    scripts: [`${root}assets/${pageScript(kind, files).name}`],
    root,
    icons: iconNames(),
  };
}

/** As `pagesAt`, for a page that may be shown at any address: it asks for nothing, and brings along one face, for each weighs 20 KB. */
export function pagesAnywhere({ site, labels, renderer, files }: PageMaterial): SitePages {
  const plain = files.fonts.filter(
    ({ style, weight, subset }) => style === 'normal' && weight === 400 && subset === 'latin',
  );
  const css = `${fontFaceCss(plain.map(asData))}\nhtml { font-synthesis: none; }\n${lean(joined(files, ['base', 'site']))}`;
  const styles = { kind: 'inline', css } as const;
  return { site, labels, renderer, styles, scripts: [], root: '', icons: undefined };
}

/** The CSS of a print, but for its typeface, which `typeset` sets in. */
export function printStyles(files: PackageFiles, print: keyof typeof PRINTS): Styles {
  return { kind: 'inline', css: joined(files, PRINTS[print]) };
}

type PrintFont = Pick<FontFile, 'subset'> & { readonly font: PageFont; readonly has: RegExp };

const printFonts = new WeakMap<PackageFiles, readonly PrintFont[]>();

/**
 * The typeface as a page is printed with it, which asks nobody for anything: every face of it, in those of its files that
 * have a letter of the page.
 */
export function fontsFor(html: string, files: PackageFiles): readonly PageFont[] {
  const fonts = printFonts.get(files) ?? files.fonts.map(printFont);
  printFonts.set(files, fonts);
  // The files of a subset have the same letters, and a page is long to look through.
  const subsets = new Map(fonts.map(({ subset, has }) => [subset, has]));
  const needed = new Set([...subsets].flatMap(([subset, has]) => (has.test(html) ? [subset] : [])));
  return fonts.flatMap(({ subset, font }) => (needed.has(subset) ? [font] : []));
}

const typefaceDigests = new WeakMap<PackageFiles, string>();

/** Tells the typeface from any other: no page says what its letters look like. */
export function typefaceDigest(files: PackageFiles): string {
  const digest =
    typefaceDigests.get(files) ?? sha256(files.fonts.map(({ bytes }) => sha256(bytes)).join('\n'));
  typefaceDigests.set(files, digest);
  return digest;
}

/** A page with the typeface it needs as data in it, for whoever keeps it as a file. */
export function typeset(html: string, files: PackageFiles): string {
  const css = fontFaceCss(fontsFor(html, files));
  return html.replace('</head>', () => `<style>\n${css}\n</style>\n</head>`);
}

function printFont(font: FontFile): PrintFont {
  // CSS Fonts 4, section 11.1: `U+0100-02BA, U+2113`.
  const letters = font.unicodeRange.replace(/U\+([0-9A-F]+)|,\s*/giu, (_, code) =>
    code ? `\\u{${code}}` : '',
  );
  return {
    subset: font.subset,
    font: asData(font),
    has: new RegExp(`[${letters.replace(/-([0-9A-F]+)/giu, '-\\u{$1}')}]`, 'u'),
  };
}

/** For a page that asks nobody for anything. */
function asData({ name, bytes, ...font }: FontFile): PageFont {
  return { ...font, url: dataAddress(`font/${extname(name).slice(1)}`, bytes) };
}

function joined({ styles }: PackageFiles, names: readonly string[]): string {
  return names.map((name) => styles.get(name) ?? missing(`css/${name}.css`)).join('\n');
}

function missing(name: string): never {
  throw new Error(`templates/${name} is missing from the package`);
}

function named(name: string, bytes: Asset['bytes']): Asset {
  const dot = name.lastIndexOf('.');
  return { name: `${name.slice(0, dot)}-${sha256(bytes).slice(0, 10)}${name.slice(dot)}`, bytes };
}
