import { chmodSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import type { Candidate } from '../../src/print/candidate.ts';
import { firstThatStarts, sources } from '../../src/print/find-browser.ts';
import { type LaunchOptions, launch } from '../../src/print/launch.ts';
import { realSurroundings } from '../../src/print/surroundings.ts';

const surroundings = realSurroundings();
const folder = mkdtempSync(join(tmpdir(), 'launch-test-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

let made = 0;

/** A program that behaves as told, found as browsers are. */
function program(text: string, mode = 0o755): Candidate {
  made += 1;
  const path = join(folder, `program-${made}`);
  writeFileSync(path, text);
  chmodSync(path, mode);
  return { path, kind: 'shell', found: 'made for a test' };
}

const script = (lines: string): Candidate => program(`#!/bin/sh\n${lines}\n`);

function options(more: Partial<LaunchOptions> = {}): LaunchOptions {
  return { surroundings, timeout: 10_000, ...more };
}

function message(path: string, text: string): string {
  return `${path} (made for a test) ${text}`;
}

const ANOTHER = 'or name another browser with --browser PATH';
const NAME_ONE = 'name the program of Chromium, Chrome or Edge with --browser PATH';

describe.runIf(process.platform !== 'win32')(
  'a program that does not serve says in one line what to do',
  () => {
    it.each([
      ['exit 0', `quit before it could be used as a browser (exit code 0); ${NAME_ONE}`],
      [
        'echo usage: tool FILE >&2; exit 2',
        `quit before it could be used as a browser (exit code 2): usage: tool FILE; ${NAME_ONE}`,
      ],
      ['kill -SEGV $$', `crashed as it started (SIGSEGV); install it again, ${ANOTHER}`],
      [
        'echo out of luck >&2; kill -ABRT $$',
        `crashed as it started (SIGABRT): out of luck; install it again, ${ANOTHER}`,
      ],
      ['exit 139', `crashed as it started (139); install it again, ${ANOTHER}`],
      [
        // As ld.so of the GNU C library says it.
        'echo "$0: error while loading shared libraries: libnss3.so: cannot open shared object file: No such file or directory" >&2; exit 127',
        `needs libnss3.so, which this system lacks; install it with the system’s package manager, ${ANOTHER}`,
      ],
      [
        'echo "$0: /lib/x86_64-linux-gnu/libc.so.6: version \\`GLIBC_2.38\' not found (required by $0)" >&2; exit 1',
        `needs GLIBC_2.38, which this system lacks; install it with the system’s package manager, ${ANOTHER}`,
      ],
    ])('%s', async (lines, text) => {
      const candidate = script(lines);
      await expect(launch(candidate, options())).rejects.toMatchObject({
        name: 'BrowserMissing',
        message: message(candidate.path, text),
      });
    });

    it('one that never answers', async () => {
      const candidate = script('exec sleep 600');
      await expect(launch(candidate, options({ timeout: 300 }))).rejects.toMatchObject({
        message: message(
          candidate.path,
          `did not answer within 0.3 s; try again when the machine is less busy, ${ANOTHER}`,
        ),
      });
    });

    it('one that hangs up and lives on', async () => {
      const candidate = script('exec 3<&- 4>&-; exec sleep 600');
      await expect(launch(candidate, options())).rejects.toThrow(
        message(candidate.path, `quit before it could be used as a browser; ${NAME_ONE}`),
      );
    });

    it('one that may not be run', async () => {
      const candidate = program('#!/bin/sh\n', 0o644);
      await expect(launch(candidate, options())).rejects.toMatchObject({
        message: message(
          candidate.path,
          `is not executable; allow it with chmod +x, on a disk that lets programs run, ${ANOTHER}`,
        ),
      });
    });

    it('one whose interpreter is missing', async () => {
      const candidate = program('#!/no/such/interpreter\n');
      await expect(launch(candidate, options())).rejects.toMatchObject({
        message: message(candidate.path, `is no program for this machine (ENOENT); ${NAME_ONE}`),
      });
    });

    it('where nothing temporary can be written', async () => {
      const file = join(folder, 'a-file');
      writeFileSync(file, '');
      vi.stubEnv('TMPDIR', file);
      await expect(
        launch(script('exit 0'), options()).finally(() => vi.unstubAllEnvs()),
      ).rejects.toMatchObject({
        message: `the folder ${file} cannot be written (ENOTDIR); make it writable, or set TMPDIR to a folder that is`,
      });
    });

    it('leaves no profile behind', async () => {
      const temporary = join(folder, 'temporary');
      mkdirSync(temporary);
      vi.stubEnv('TMPDIR', temporary);
      const failing = [script('exit 0'), script('exec sleep 600'), program('#!/no/such/interpreter\n')];
      for (const each of failing) await launch(each, options({ timeout: 300 })).catch(() => {});
      vi.unstubAllEnvs();
      expect(readdirSync(temporary)).toEqual([]);
    });
  },
);

describe('a browser', () => {
  let real: Candidate;

  beforeAll(async () => {
    const request = { download: false, onDownload: () => {} };
    real = await firstThatStarts(
      sources(request, surroundings),
      async (candidate) => candidate,
      surroundings,
    );
  });

  it('starts, says what it is, and is gone after it is stopped', async () => {
    const running = await launch(real, options({ timeout: 30_000 }));
    expect(running.name).toContain(`(${real.path}, ${real.found})`);
    expect(running.hasDied()).toBe(false);
    process.kill(running.pid, 0);
    await running.stop();
    expect(running.hasDied()).toBe(true);
    expect(() => process.kill(running.pid, 0)).toThrow('ESRCH');
  });

  it('may be stopped after it died', async () => {
    const running = await launch(real, options({ timeout: 30_000 }));
    process.kill(running.pid, 'SIGKILL');
    await running.stop();
    expect(running.hasDied()).toBe(true);
  });

  it.runIf(process.platform !== 'win32')('is started without a sandbox where none can be had', async () => {
    // A container that grants no user namespaces, to a user who is not root.
    const fussy = script(`case "$*" in *--no-sandbox*) exec "${real.path}" "$@" ;; esac
      echo "FATAL:content/browser/zygote_host/zygote_host_impl_linux.cc:128] No usable sandbox! If you are running on Ubuntu" >&2
      kill -TRAP $$`);
    const candidate = { ...real, path: fussy.path, found: fussy.found };
    const user = { env: surroundings.env, root: false };
    const running = await launch(candidate, { surroundings: user, timeout: 30_000 });
    await running.stop();
    expect(running.name).toContain(fussy.path);
  });

  it.runIf(process.platform !== 'win32')('has no sandbox for root and keeps it for others', async () => {
    const flags = async (root: boolean): Promise<string> => {
      const file = join(folder, `flags-${root}`);
      const telling = script(`printf '%s' "$*" > ${file}; exit 1`);
      await launch(telling, options({ surroundings: { env: {}, root } })).catch(() => {});
      return readFileSync(file, 'utf8');
    };
    expect(await flags(true)).toContain('--no-sandbox');
    expect(await flags(false)).not.toContain('--no-sandbox');
  });
});
