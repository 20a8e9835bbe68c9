import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename, dirname, join } from 'node:path';
import { argv } from 'node:process';
import { fileURLToPath } from 'node:url';
import { cachedDataVersionTag, setFlagsFromString } from 'node:v8';
import { constants, Script } from 'node:vm';
import { cacheFolder, homeFolder } from './cache-folder.ts';
import { flagsOf } from './engine.ts';
import { keepNewest, readOwnBytes, sealBytes, sha256, unsealBytes, writeWhole } from './sealed.ts';

/** Of so many files of the bundle, those written last, compiled code is kept: some versions of the program. */
const MOST_KEPT = 400;

const BUNDLE = dirname(fileURLToPath(import.meta.url));
const KEPT = join(cacheFolder({ env: process.env, home: homeFolder() }), 'code');

type Module = { exports: unknown };
type Wrapped = (
  exports: unknown,
  require: NodeRequire,
  module: Module,
  __filename: string,
  __dirname: string,
) => void;

/** The commands that draw what may be a lot. */
const DRAWING = ['make', 'publish', 'preview'];

const modules = new Map<string, Module>();
/** The files that were compiled, by where their code is kept. */
const scripts = new Map<string, Script>();
let isAnyNew = false;

/**
 * Loads a file of the bundle and what it requires, with what the engine made of them the last time: it starts without
 * compiling again, functions that ran included. Code is kept by the text it is of, and by the engine with its flags.
 */
export function loadCode(name: string): unknown {
  if (name === 'bin') setFlags();
  process.once('exit', keepCode);
  return load(join(BUNDLE, `${name}.cjs`));
}

/** Before anything is loaded: code that is kept serves only with the flags it was compiled with. */
function setFlags(): void {
  const flags = flagsOf();
  if (!flags) return;
  const { tidy, ...usual } = flags;
  for (const flag of Object.values(usual)) setFlagsFromString(flag);
  if (DRAWING.includes(argv[2] ?? '')) setFlagsFromString(tidy);
}

function load(path: string): unknown {
  const known = modules.get(path);
  if (known) return known.exports;
  const module: Module = { exports: {} };
  modules.set(path, module);
  const outside = createRequire(path);
  const require = (id: string): unknown => (id.startsWith('.') ? load(join(dirname(path), id)) : outside(id));
  const run = compile(path).runInThisContext() as Wrapped;
  run(module.exports, Object.assign(require, outside), module, path, dirname(path));
  return module.exports;
}

function compile(filename: string): Script {
  const text = readFileSync(filename);
  const wrapped = `(function (exports, require, module, __filename, __dirname) { 'use strict'; ${text}\n})`;
  const kept = join(KEPT, `${sha256(wrapped)}-${cachedDataVersionTag()}`);
  const cachedData = readKept(kept);
  const importModuleDynamically = constants.USE_MAIN_CONTEXT_DEFAULT_LOADER;
  const script = new Script(wrapped, { filename, cachedData, importModuleDynamically });
  isAnyNew ||= !cachedData || script.cachedDataRejected === true;
  scripts.set(kept, script);
  return script;
}

/** Sealed by its name: what the engine checks by itself is little more than how long the text was. */
function readKept(path: string): Buffer | undefined {
  try {
    return unsealBytes(readOwnBytes(path), basename(path));
  } catch {
    return undefined;
  }
}

/** Keeps the code of all that was loaded, where that of anything was not: what ran besides has been compiled, too. */
function keepCode(): void {
  if (!isAnyNew) return;
  try {
    for (const [path, script] of scripts)
      writeWhole(path, sealBytes(script.createCachedData(), basename(path)));
    keepNewest(KEPT, MOST_KEPT);
  } catch {
    // Without it, the next start takes longer.
  }
}
