import { readdirSync, readFileSync } from 'node:fs';
import { dirname, extname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { packageRoot } from './package-root.ts';
import { sha256 } from './sealed.ts';

type Bundled = {
  /** Digests of the source of all and of what prints. */
  readonly program: string;
  readonly printing: string;
  /** The packages that are not in the bundle. */
  readonly outside: readonly string[];
};

/** Set in where the program is bundled, by `src/bundle.js`. */
declare const BUNDLED: Bundled | undefined;

const bundled = typeof BUNDLED === 'undefined' ? undefined : BUNDLED;

/** What our code ends with where it is not bundled: `.js`, or `.ts` where it runs uncompiled. */
const ENDING = extname(fileURLToPath(import.meta.url));

/** Where a file of the bundle is; undefined where the program is not bundled. */
export function bundledFile(name: string): string | undefined {
  return bundled && join(packageRoot(), 'dist', 'lib', name);
}

let program: string | undefined;
let printing: string | undefined;

/** Tells this program from any other that could make something else: its code and what it is built on. */
export function programDigest(): string {
  const code = (): string => bundled?.program ?? folderDigest(codeFolder(), ENDING);
  program ??= sha256([code(), ...dependencies(), ...wordsOfNode()].join('\n'));
  return program;
}

/** What Node knows of languages and time zones, by versions: another Node may write a day otherwise, or know one more zone. */
function wordsOfNode(): readonly string[] {
  const { icu = '', cldr = '', tz = '', unicode = '' } = process.versions;
  return [icu, cldr, tz, unicode];
}

/** Tells apart all that pages are made from besides: templates, styles, scripts, words. It may change while we run. */
export function templatesDigest(): string {
  return folderDigest(join(packageRoot(), 'templates'));
}

/** Tells apart what turns pages into PDFs. */
export function printingDigest(): string {
  printing ??= bundled?.printing ?? folderDigest(join(codeFolder(), 'print'), ENDING);
  return printing;
}

/** Where our modules are, if each is a file: `src`, or what it was compiled to. */
function codeFolder(): string {
  return dirname(dirname(fileURLToPath(import.meta.url)));
}

/** Of all files of a folder and those below, or of those with one ending: of what they are called, too. */
function folderDigest(folder: string, ending = ''): string {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith(ending))
    .map(({ parentPath, name }) => join(parentPath, name))
    .sort();
  return sha256(files.map((path) => `${relative(folder, path)} ${sha256(readFileSync(path))}`).join('\n'));
}

/** The packages it is built on that are not in the bundle, with the versions that are installed. */
function dependencies(): readonly string[] {
  const root = packageRoot();
  if (bundled) return bundled.outside.map((name) => `${name} ${versionOf(name, root)}`);
  const own = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
    readonly dependencies?: Readonly<Record<string, string>>;
  };
  return Object.keys(own.dependencies ?? {}).map((name) => `${name} ${versionOf(name, root)}`);
}

/** Of a package beside ours or in a folder round it; empty where it cannot be told. */
export function versionOf(name: string, from: string = packageRoot()): string {
  try {
    const text = readFileSync(join(from, 'node_modules', name, 'package.json'), 'utf8');
    return (JSON.parse(text) as { readonly version: string }).version;
  } catch {
    const parent = dirname(from);
    return parent === from ? '' : versionOf(name, parent);
  }
}
