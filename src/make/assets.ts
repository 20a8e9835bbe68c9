import { fontFaceCss, type Styles } from '../handout/css.ts';
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

/** What keeps pages for a room without a network; at the root, for it may only keep what is below it. */
export const OFFLINE = 'offline.js';

/** The search and what it finds, from the site's root. */
export function searchAsset(cards: readonly ListedProject[], files: PackageFiles): Asset {
  return named('search.js', searchScript(cards, files.search));
}

/** Everything in the assets folder. */
export function siteAssets(files: PackageFiles): readonly Asset[] {
  return [siteStyles(files), ...files.fonts.map(fontAsset), siteScript(files)];
}

/** The one stylesheet of the site, fonts by address. */
function siteStyles(files: PackageFiles): Asset {
  const fonts = fontFaceCss(files.fonts.map((font) => ({ ...font, url: fontAsset(font).name })));
  return named(
    'sheetwright.css',
    lean(`${fonts}\n${joined(files, ['base', 'sheet', 'site', 'turn', 'index', 'share'])}`),
  );
}

/** The one script of the site: each of ours is closed in itself, so that they need only stand in one file. */
function siteScript(files: PackageFiles): Asset {
  return named('sheetwright.js', lean([...files.scripts.values()].join('\n')));
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

/** What the pages of the site share, seen from a page from which `root` leads to the site's root: `''` or `../`. */
export function pagesAt(root: string, { site, labels, renderer, files }: PageMaterial): SitePages {
  return {
    site,
    labels,
    renderer,
    styles: { kind: 'linked', hrefs: [`${root}assets/${siteStyles(files).name}`] },
    scripts: [`${root}assets/${siteScript(files).name}`],
    root,
    icons: iconNames(),
  };
}

/** As `pagesAt`, for a page that may be shown at any address: it asks for nothing, and is set in whatever the reader has. */
export function pagesAnywhere({ site, labels, renderer, files }: PageMaterial): SitePages {
  const styles = { kind: 'inline', css: joined(files, ['base', 'sheet', 'site']) } as const;
  return { site, labels, renderer, styles, scripts: [], root: '', icons: undefined };
}

const fontSheets = new WeakMap<PackageFiles, string>();

/** The CSS of a print, its fonts set in as data: a print asks nobody for anything. */
export function printStyles(files: PackageFiles, print: keyof typeof PRINTS): Styles {
  const fonts =
    fontSheets.get(files) ??
    fontFaceCss(files.fonts.map((font) => ({ ...font, url: dataAddress('font/woff2', font.bytes) })));
  fontSheets.set(files, fonts);
  return { kind: 'inline', css: `${fonts}\n${joined(files, PRINTS[print])}` };
}

function joined({ styles }: PackageFiles, names: readonly string[]): string {
  return names.map((name) => styles.get(name) ?? missing(name)).join('\n');
}

function missing(name: string): never {
  throw new Error(`templates/css/${name}.css is missing from the package`);
}

function named(name: string, bytes: Asset['bytes']): Asset {
  const dot = name.lastIndexOf('.');
  return { name: `${name.slice(0, dot)}-${sha256(bytes).slice(0, 10)}${name.slice(dot)}`, bytes };
}
