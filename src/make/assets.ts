import { fontFaceCss } from '../handout/fonts.ts';
import { sha256 } from './files.ts';
import type { FontFile, PackageFiles } from './package-files.ts';

/** A file that several pages use, under a name that changes with its content so that it may be cached for good. */
export type Asset = { readonly name: string; readonly bytes: Uint8Array };

const FAMILY = 'Public Sans';
const PAGE_STYLES = ['base', 'sheet', 'site', 'turn', 'index', 'share'];
const BARE_STYLES = ['base', 'sheet', 'site'];
const TENT_STYLES = ['base', 'tent'];
const TEMPLATE_STYLES = ['base', 'template'];
const PRINT_STYLES = ['base', 'sheet', 'print'];
const CUE_STYLES = ['base', 'cue'];

/** The one stylesheet of the site, fonts by address. */
export function siteStyles(files: PackageFiles): Asset {
  const fonts = fontFaceCss(files.fonts.map((font) => faceOf(font, fontAsset(font).name)));
  return named('sheetwright.css', `${fonts}\n${joined(files, PAGE_STYLES)}`);
}

/** The CSS of a page that may be shown at any address: it asks for nothing, and is set in whatever the reader has. */
export function bareStyles(files: PackageFiles): string {
  return joined(files, BARE_STYLES);
}

export function fontAsset(font: FontFile): Asset {
  return named(font.name, font.bytes);
}

/** The one script of the site: each of ours is closed in itself, so that they need only stand in one file. */
export function siteScript(files: PackageFiles): Asset {
  return named('sheetwright.js', [...files.scripts.values()].join('\n'));
}

/** Everything in the assets folder. */
export function siteAssets(files: PackageFiles): readonly Asset[] {
  return [siteStyles(files), ...files.fonts.map(fontAsset), siteScript(files)];
}

const fontSheets = new WeakMap<PackageFiles, string>();

/** The CSS of every handout, its fonts set in as data: a print asks nobody for anything. */
export function printStyles(files: PackageFiles): string {
  return `${fontData(files)}\n${joined(files, PRINT_STYLES)}`;
}

/** The CSS of the actual-size template. */
export function templateStyles(files: PackageFiles): string {
  return `${fontData(files)}\n${joined(files, TEMPLATE_STYLES)}`;
}

/** The CSS of the table tent. */
export function tentStyles(files: PackageFiles): string {
  return `${fontData(files)}\n${joined(files, TENT_STYLES)}`;
}

/** The CSS of the demonstrator's cue card. */
export function cueStyles(files: PackageFiles): string {
  return `${fontData(files)}\n${joined(files, CUE_STYLES)}`;
}

function fontData(files: PackageFiles): string {
  const known = fontSheets.get(files);
  if (known !== undefined) return known;
  const css = fontFaceCss(files.fonts.map((font) => faceOf(font, dataAddress('font/woff2', font.bytes))));
  fontSheets.set(files, css);
  return css;
}

/** Bytes as an address of their own. */
export function dataAddress(mediaType: string, bytes: Uint8Array): string {
  return `data:${mediaType};base64,${Buffer.from(bytes).toString('base64')}`;
}

function faceOf(
  { weight, style, unicodeRange }: FontFile,
  url: string,
): Parameters<typeof fontFaceCss>[0][number] {
  return { family: FAMILY, weight, style, unicodeRange, url };
}

function joined({ styles }: PackageFiles, names: readonly string[]): string {
  return names.map((name) => styles.get(name) ?? missing(name)).join('\n');
}

function missing(name: string): never {
  throw new Error(`templates/css/${name}.css is missing from the package`);
}

function named(name: string, content: string | Uint8Array): Asset {
  const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
  const dot = name.lastIndexOf('.');
  return { name: `${name.slice(0, dot)}-${sha256(bytes).slice(0, 10)}${name.slice(dot)}`, bytes };
}
