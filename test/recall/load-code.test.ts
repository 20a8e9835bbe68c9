import { execFileSync } from 'node:child_process';
import { cpSync, readdirSync, readFileSync, rmSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { sha256 } from '../../src/recall/sealed.ts';
import { builtPackage } from '../built.ts';
import { emptyFolder } from '../cli/terminal.ts';

/** The program as people have it, in a folder where it may be changed, and a cache of its own. */
async function installed(): Promise<{ readonly program: string; readonly cache: string }> {
  const built = await builtPackage();
  const folder = emptyFolder();
  for (const name of ['dist', 'package.json', 'templates'])
    cpSync(join(built, name), join(folder, name), { recursive: true });
  symlinkSync(join(built, 'node_modules'), join(folder, 'node_modules'), 'junction');
  return { program: join(folder, 'dist', 'lib'), cache: emptyFolder() };
}

function say(program: string, cache: string, argument: string, ...flags: readonly string[]): string {
  const env = { ...process.env, XDG_CACHE_HOME: cache };
  const bin = join(program, 'bin.js');
  return execFileSync(process.execPath, [...flags, bin, argument], { env, encoding: 'utf8' });
}

/** The files of compiled code: their names, and which files they are. */
function keptIn(cache: string): readonly string[] {
  const folder = join(cache, 'sheetwright', 'code');
  return readdirSync(folder).map((name) => `${name} ${statSync(join(folder, name)).ino}`);
}

describe('the code of the bundle', () => {
  it('is kept once for each file that was loaded, and written no more while nothing new is loaded', async () => {
    const { program, cache } = await installed();
    const said = say(program, cache, '--help');
    const kept = keptIn(cache);
    expect(kept.length).toBeGreaterThan(1);
    expect(kept.length).toBeLessThan(readdirSync(join(program, 'chunks')).length);
    expect(say(program, cache, '--help')).toBe(said);
    expect(keptIn(cache)).toEqual(kept);
  });

  it('is never that of another text, be it as long', async () => {
    const { program, cache } = await installed();
    expect(say(program, cache, '--help')).toContain('print this help');
    const path = join(program, 'bin.cjs');
    const text = readFileSync(path, 'utf8');
    writeFileSync(path, text.replace('print this help', 'PRINT THIS HELP'));
    expect(say(program, cache, '--help')).toContain('PRINT THIS HELP');
  });

  it('is never that of another text in its place', async () => {
    const { program, cache } = await installed();
    const [path, folder] = [join(program, 'bin.cjs'), join(cache, 'sheetwright', 'code')];
    const text = readFileSync(path, 'utf8');
    say(program, cache, '--help');
    const sound = new Map(readdirSync(folder).map((name) => [name, readFileSync(join(folder, name))]));
    writeFileSync(path, text.replace('print this help', 'PRINT THIS HELP'));
    say(program, cache, '--help');
    const [added = ''] = readdirSync(folder).filter((name) => !sound.has(name));
    const largest = [...sound.values()].reduce((one, other) => (other.length > one.length ? other : one));
    const { length } = readFileSync(join(folder, added));
    const near = (code: Buffer): number => Math.abs(code.length - length);
    const [before = largest] = [...sound.values()].sort((one, other) => near(one) - near(other));
    writeFileSync(join(folder, added), before);
    expect(say(program, cache, '--help')).toContain('PRINT THIS HELP');
  });

  it('is not waited for where a pipe is in its place', async () => {
    const { program, cache } = await installed();
    say(program, cache, '--help');
    for (const name of readdirSync(join(cache, 'sheetwright', 'code'))) {
      const path = join(cache, 'sheetwright', 'code', name);
      rmSync(path);
      execFileSync('mkfifo', [path]);
    }
    expect(say(program, cache, '--help')).toContain('print this help');
  });

  it('is kept apart for an engine with other flags', async () => {
    const { program, cache } = await installed();
    say(program, cache, '--help');
    const kept = keptIn(cache);
    say(program, cache, '--help', '--no-opt');
    expect(keptIn(cache)).toHaveLength(2 * kept.length);
    expect(keptIn(cache)).toEqual(expect.arrayContaining([...kept]));
  });

  it('is passed over where it is damaged, and kept anew', async () => {
    const { program, cache } = await installed();
    const said = say(program, cache, '--help');
    const folder = join(cache, 'sheetwright', 'code');
    const paths = readdirSync(folder).map((name) => join(folder, name));
    const isSound = (path: string): boolean => {
      const bytes = readFileSync(path);
      return bytes.toString('latin1', 0, 64) === sha256(`${basename(path)} ${sha256(bytes.subarray(64))}`);
    };
    for (const path of paths) {
      const bytes = readFileSync(path);
      bytes.writeUInt8(bytes.readUInt8(bytes.length - 9) ^ 1, bytes.length - 9);
      writeFileSync(path, bytes);
      expect(isSound(path)).toBe(false);
    }
    expect(say(program, cache, '--help')).toBe(said);
    expect(paths.filter((path) => !isSound(path))).toEqual([]);
  });

  it('is done without where the user has no home, as in some containers', async () => {
    const { program, cache } = await installed();
    const homeless = `import os from 'node:os';
      os.homedir = () => { throw new Error('nobody knows'); };
      process.getBuiltinModule('node:module').syncBuiltinESMExports();`;
    const flag = `--import=data:text/javascript,${encodeURIComponent(homeless)}`;
    expect(say(program, cache, '--help', flag)).toContain('print this help');
  });

  it('is done without where nothing can be kept', async () => {
    const { program } = await installed();
    const file = join(emptyFolder(), 'file');
    writeFileSync(file, '');
    expect(say(program, file, '--help')).toContain('print this help');
  });
});
