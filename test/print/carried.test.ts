import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { unpackCarried } from '../../src/print/carried.ts';
import { launch } from '../../src/print/launch.ts';
import { ownMark } from '../../src/recall/process-mark.ts';

const folder = mkdtempSync(join(tmpdir(), 'carried-test-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

// The package is optional and its browser runs only here; elsewhere npm does install it, but nothing asks for it.
describe.runIf(process.platform === 'linux' && process.arch === 'x64')('the carried browser', () => {
  const cache = join(folder, 'cache', 'sheetwright');
  const ofVersion = /^browser-\d+\.\d+\.\d+$/u;

  it('is unpacked once, whole, when two ask at the same time, and starts', async () => {
    const [first, second] = await Promise.all([unpackCarried(cache), unpackCarried(cache)]);
    expect(first).toEqual(second);
    if (!first) throw new Error('the optional package is not installed');
    expect(readdirSync(cache)).toEqual([expect.stringMatching(ofVersion)]);
    expect(statSync(cache).mode & 0o777).toBe(0o700);

    const running = await launch(
      { ...first, found: 'unpacked for a test' },
      { surroundings: { env: process.env, root: process.getuid?.() === 0 }, timeout: 30_000 },
    );
    await running.stop();
    expect(running.name).toMatch(/^HeadlessChrome\//u);
  });

  it('is not unpacked again, belongs to who unpacked it, and may be changed by nobody else', async () => {
    const carried = await unpackCarried(cache);
    const path = carried?.path ?? '';
    const before = statSync(path);
    await unpackCarried(cache);
    expect(statSync(path).ino).toBe(before.ino);
    const everything = readdirSync(dirname(path), { recursive: true, encoding: 'utf8' });
    expect(everything).toContain(join('libraries', 'lib', 'libnss3.so'));
    for (const name of everything) {
      const { uid, mode } = statSync(join(dirname(path), name));
      expect([name, uid, mode & 0o022]).toEqual([name, process.getuid?.(), 0]);
    }
  });

  it('is made whole again when its program is gone, and clears away what a killed unpacking left', async () => {
    const path = (await unpackCarried(cache))?.path ?? '';
    rmSync(path);
    const dead = spawnSync(process.execPath, ['--version']).pid;
    for (const mark of [`${dead}-0`, ownMark()]) mkdirSync(`${dirname(path)}-${mark}-x`);
    expect((await unpackCarried(cache))?.path).toBe(path);
    expect(statSync(path).mode & 0o111).toBe(0o111);
    expect(readdirSync(cache).sort()).toEqual([
      expect.stringMatching(ofVersion),
      expect.stringMatching(new RegExp(`-${ownMark()}-x$`, 'u')),
    ]);
  });

  it('says where it cannot be written, and how to move it', async () => {
    const file = join(folder, 'a-file');
    writeFileSync(file, '');
    await expect(unpackCarried(join(file, 'sheetwright'))).rejects.toMatchObject({
      name: 'BrowserMissing',

      message: `the folder ${file}/sheetwright cannot be written (ENOTDIR); make it writable, or set XDG_CACHE_HOME to a folder that is`,
    });
  });
});
