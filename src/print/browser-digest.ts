import { execFile } from 'node:child_process';
import { open } from 'node:fs/promises';
import { promisify } from 'node:util';
import { BrowserMissing } from './fault.ts';
import { sources } from './find-browser.ts';
import type { PrinterOptions } from './owner.ts';
import { realSurroundings } from './surroundings.ts';

/**
 * Tells the browser that would print from any other, without starting it: by its program's content, or, where that is a
 * script that starts another program or it runs elsewhere, by the version it says. Empty where none is found.
 * @param request The program, if one is named, or where it runs. @param digestFile The digest of a file's content.
 * @throws BrowserMissing where a program is named that cannot be one: nothing need be looked at to say so.
 */
export async function browserDigest(
  { browser, endpoints = [] }: Pick<PrinterOptions, 'browser' | 'endpoints'>,
  digestFile: (path: string) => string | undefined,
): Promise<string> {
  if (endpoints.length > 0) return versionAt(endpoints);
  const path = await firstProgram(browser);
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
    // One that nobody asked for now may not be needed: whoever prints says what is wrong with it.
    if (browser !== undefined || !(error instanceof BrowserMissing)) throw error;
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

/** @throws BrowserMissing where several browsers are not alike: which one prints a page must not show. */
async function versionAt(endpoints: readonly string[]): Promise<string> {
  const versions = new Set(await Promise.all(endpoints.map(versionSaidAt)));
  if (versions.size === 1) return [...versions].join();
  const fact = `the browsers are of several versions (${[...versions].join(', ')})`;
  throw new BrowserMissing(fact, 'start the same at every --browser-endpoint');
}

/** A browser that is debugged answers to HTTP too (Chrome DevTools Protocol, `/json/version`). */
async function versionSaidAt(endpoint: string): Promise<string> {
  try {
    const address = new URL('/json/version', endpoint.replace(/^ws/u, 'http'));
    const reply = await fetch(address, { signal: AbortSignal.timeout(10_000) });
    return ((await reply.json()) as { readonly Browser?: string }).Browser ?? '';
  } catch {
    return '';
  }
}
