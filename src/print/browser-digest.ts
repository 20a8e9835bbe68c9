import { execFile } from 'node:child_process';
import { open } from 'node:fs/promises';
import { promisify } from 'node:util';
import { BrowserMissing } from './fault.ts';
import { sources } from './find-browser.ts';
import { realSurroundings } from './surroundings.ts';

/**
 * Tells the browser that would print from any other, without starting it: by its program's content, or, where that is a
 * script that starts another program, by the version it says. Empty where none is found.
 * @param request The program, if one is named. @param digestFile The digest of a file's content.
 */
export async function browserDigest(
  request: { readonly browser?: string | undefined },
  digestFile: (path: string) => string | undefined,
): Promise<string> {
  const path = await firstProgram(request.browser);
  if (path === undefined) return '';
  return (await isScript(path)) ? versionSaid(path) : (digestFile(path) ?? '');
}

async function firstProgram(browser: string | undefined): Promise<string | undefined> {
  const request = { browser, download: false, onDownload: () => {} };
  try {
    for (const place of sources(request, realSurroundings())) {
      const [found] = await place();
      if (found) return found.path;
    }
  } catch (error) {
    // Whoever prints says what is wrong with it.
    if (!(error instanceof BrowserMissing)) throw error;
  }
  return undefined;
}

async function isScript(path: string): Promise<boolean> {
  const file = await open(path);
  try {
    const { buffer } = await file.read(Buffer.alloc(2), 0, 2, 0);
    return buffer.toString() === '#!';
  } finally {
    await file.close();
  }
}

async function versionSaid(path: string): Promise<string> {
  return promisify(execFile)(path, ['--version'], { timeout: 10_000 }).then(
    ({ stdout }) => stdout.trim(),
    () => '',
  );
}
