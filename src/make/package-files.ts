import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { parse } from 'yaml';
import { type FontFormat, formatOfFont } from '../project/font-file.ts';
import { rangeBeside } from '../project/letters.ts';
import type { Site } from '../project/model.ts';
import { packageRoot, packageVersion } from '../recall/package-root.ts';
import { bundledFile, templatesDigest } from '../recall/program.ts';
import { sha256 } from '../recall/sealed.ts';
import { wordsOfForms } from '../words/form-words.ts';
import type { Labels } from '../words/labels.ts';
import { ENGLISH } from '../words/languages.ts';
import { wordsOfOutlines } from '../words/outlines.ts';
import type { AllLabels } from './languages.ts';
import { NAMED_FAMILY } from './typeface.ts';

/** One file of the typeface, ready to be copied beside a page or set into a print as data. */
export type FontFile = {
  readonly name: string;
  readonly family: string;
  /** Of letters: `latin`, `latin-ext`. */
  readonly subset: string;
  readonly weight: number;
  readonly style: 'normal' | 'italic';
  /** As CSS calls it; WOFF2 where it is not said. */
  readonly format?: FontFormat;
  /** The CSS `unicode-range` this file covers. */
  readonly unicodeRange: string;
  readonly bytes: Uint8Array;
};

/** Everything of the program's own that pages are made from, read once. */
export type PackageFiles = {
  /** Tells apart all that can be in templates, styles, scripts and labels. */
  readonly digest: string;
  readonly version: string;
  readonly pages: ReadonlyMap<string, string>;
  readonly partials: ReadonlyMap<string, string>;
  /** CSS by file name without its ending. */
  readonly styles: ReadonlyMap<string, string>;
  /** Browser scripts by file name. */
  readonly scripts: ReadonlyMap<string, string>;
  /** What arranges a handout in the browser that prints it. */
  readonly arrange: string;
  /** The library that searches, as a plain script. */
  readonly search: string;
  /** The service worker of the site. */
  readonly offline: string;
  readonly labels: ReadonlyMap<string, Labels>;
  readonly fonts: readonly FontFile[];
};

/** A font is served by what it is: a page that begins like a font is none. */
const ENDINGS: Readonly<Record<FontFormat, string>> = { truetype: '.ttf', opentype: '.otf', woff: '.woff' };

/** Public Sans covers the languages we label in with two files a weight. */
const SUBSETS = ['latin', 'latin-ext'];
const FACES: readonly { weight: number; style: 'normal' | 'italic' }[] = [
  { weight: 400, style: 'normal' },
  { weight: 400, style: 'italic' },
  { weight: 700, style: 'normal' },
];

/** What was read last, as long as the templates are what they were. */
let latest:
  | { readonly templates: string; readonly files?: PackageFiles; readonly labels?: AllLabels }
  | undefined;

/** Templates, styles, scripts, labels and fonts of the installed package; the same as long as they do not change. */
export function readPackageFiles(): PackageFiles {
  const labels = readLabels();
  const templates = latest?.templates ?? templatesDigest();
  const files = latest?.files ?? readFiles(labels, templates);
  latest = { templates, labels, files };
  return files;
}

/** The same for a workspace, with the font that its settings name. */
export function filesFor({ font }: Site): PackageFiles {
  const files = readPackageFiles();
  if (!font || font.letters.length === 0) return files;
  const bytes = readFileSync(font.file);
  const format = formatOfFont(bytes) ?? 'truetype';
  const named: FontFile = {
    name: `named${ENDINGS[format]}`,
    family: NAMED_FAMILY,
    subset: 'named',
    weight: 400,
    style: 'normal',
    format,
    unicodeRange: rangeBeside(font.letters),
    bytes,
  };
  return { ...files, digest: `${files.digest} ${font.digest}`, fonts: [...files.fonts, named] };
}

function readFiles(labels: AllLabels, digest: string): PackageFiles {
  const templates = join(packageRoot(), 'templates');
  return {
    version: packageVersion(),
    digest,
    pages: textsOf(templates, '.hbs'),
    partials: textsOf(join(templates, 'partials'), '.hbs'),
    styles: textsOf(join(templates, 'css'), '.css'),
    scripts: textsOf(templates, '.js'),
    arrange: readArrangement(join(templates, 'print')),
    offline: readFileSync(join(templates, 'worker', 'offline.js'), 'utf8'),
    search: readSearchLibrary(),
    labels,
    fonts: FACES.flatMap(({ weight, style }) => SUBSETS.map((subset) => fontOf(subset, weight, style))),
  };
}

/** One block, so that a page that is arranged after another does not find the names of the first. */
function readArrangement(folder: string): string {
  const scripts = ['plan-pages.js', 'arrange.js'].map((name) => readFileSync(join(folder, name), 'utf8'));
  return `{\n${scripts.join('\n')}}\n`;
}

/** Its build for a page without modules, in one line less for each of its comments' maps. */
function readSearchLibrary(): string {
  const require = createRequire(import.meta.url);
  const main = require.resolve('minisearch');
  const text = readFileSync(join(dirname(main), '..', 'umd', 'index.js'), 'utf8');
  return text.replace(/^\/\/# sourceMappingURL=.*$/gmu, '');
}

function textsOf(folder: string, ending: string): ReadonlyMap<string, string> {
  const names = readdirSync(folder).filter((name) => name.endsWith(ending));
  return new Map(
    names.sort().map((name) => [name.slice(0, -ending.length), readFileSync(join(folder, name), 'utf8')]),
  );
}

/**
 * The words of every language there is, by its tag; the English ones with what forms and outlines say of themselves. A file is
 * understood when the first of its words is asked for.
 */
export function readLabels(): AllLabels {
  const templates = templatesDigest();
  if (latest?.templates !== templates) latest = { templates };
  const labels = latest.labels ?? readLabelFiles();
  latest = { ...latest, labels };
  return labels;
}

function readLabelFiles(): AllLabels {
  const texts = textsOf(join(packageRoot(), 'templates', 'labels'), '.yaml');
  return new Map([...texts].map(([language, text]) => [language, labelsOf(language, text)]));
}

function labelsOf(language: string, text: string): Labels {
  let texts: ReadonlyMap<string, string> | undefined;
  return {
    language,
    get texts() {
      texts ??= new Map([
        ...entriesOf(text),
        ...(language === ENGLISH ? [...wordsOfForms(), ...wordsOfOutlines()] : []),
      ]);
      return texts;
    },
  };
}

/** A key with nothing behind it is a word that is still missing. */
function entriesOf(text: string): ReadonlyMap<string, string> {
  const entries = Object.entries(parsedBefore(text) ?? (parse(text) as Record<string, unknown>));
  return new Map(entries.flatMap(([key, value]) => (value === null ? [] : [[key, String(value)]])));
}

/** What the bundler has parsed, which takes longer than a page takes to be drawn; undefined for any other text. */
function parsedBefore(text: string): Record<string, unknown> | undefined {
  const path = bundledFile(`labels/${sha256(text)}.json`);
  return path !== undefined && existsSync(path) ? JSON.parse(readFileSync(path, 'utf8')) : undefined;
}

function fontOf(subset: string, weight: number, style: 'normal' | 'italic'): FontFile {
  const require = createRequire(import.meta.url);
  const ranges = require('@fontsource/public-sans/unicode.json') as Readonly<Record<string, string>>;
  const name = `public-sans-${subset}-${weight}-${style}.woff2`;
  const bytes = readFileSync(require.resolve(`@fontsource/public-sans/files/${name}`));
  const { [subset]: unicodeRange } = ranges;
  if (unicodeRange === undefined) throw new Error(`no unicode range for ${name} in the font package`);
  return { name, family: 'Public Sans', subset, weight, style, unicodeRange, bytes };
}
