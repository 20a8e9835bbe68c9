import { hash, randomBytes } from 'node:crypto';
import {
  closeSync,
  constants,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';

/** How one of our files is opened to be read: a pipe that took its place is empty, and not waited for. */
export const AT_ONCE: number = constants.O_RDONLY | (constants.O_NONBLOCK ?? 0);

/** The text of one of our files. @throws As `node:fs` does. */
export function readOwn(path: string): string {
  return readOwnBytes(path).toString('utf8');
}

/** @throws As `readOwn` does. */
export function readOwnBytes(path: string): Buffer {
  const file = openSync(path, AT_ONCE);
  try {
    return readFileSync(file);
  } finally {
    closeSync(file);
  }
}

/** The SHA-256 of a text or of bytes, in hexadecimal. */
export function sha256(content: string | Uint8Array): string {
  return hash('sha256', content);
}

/** Data as a text that tells whose it is and whether it is whole: a first line with both, then JSON. */
export function seal(data: unknown, whose: string): string {
  const text = JSON.stringify(data);
  return `${sha256(`${whose}\n${text}`)}\n${text}\n`;
}

/** What was sealed; undefined where it was by somebody else, or is damaged. */
export function unseal(sealed: string, whose: string): unknown {
  const end = sealed.indexOf('\n');
  const text = sealed.slice(end + 1, -1);
  return sealed.slice(0, end) === sha256(`${whose}\n${text}`) ? JSON.parse(text) : undefined;
}

/** How long the digest is that stands before sealed bytes. */
const SEAL = sha256('').length;

/** Bytes behind a digest that tells whose they are and whether they are whole. */
export function sealBytes(bytes: Uint8Array, whose: string): Buffer {
  return Buffer.concat([Buffer.from(digestOfBytes(bytes, whose), 'latin1'), bytes]);
}

/** What was sealed; undefined where it was by somebody else, or is damaged. */
export function unsealBytes(sealed: Uint8Array, whose: string): Buffer | undefined {
  const all = Buffer.from(sealed.buffer, sealed.byteOffset, sealed.byteLength);
  const bytes = all.subarray(SEAL);
  return all.toString('latin1', 0, SEAL) === digestOfBytes(bytes, whose) ? bytes : undefined;
}

function digestOfBytes(bytes: Uint8Array, whose: string): string {
  return sha256(`${whose} ${sha256(bytes)}`);
}

/** What a file has sealed in it; undefined too where there is none. */
export function readSealed(path: string, whose: string): unknown {
  try {
    return unseal(readOwn(path), whose);
  } catch {
    return undefined;
  }
}

/** Writes a file beside its place and renames it, so that whoever reads it has the whole of it. @throws As `node:fs` does. */
export function writeWhole(path: string, content: string | Uint8Array): void {
  mkdirSync(dirname(path), { recursive: true });
  const beside = `${path}.making-${randomBytes(4).toString('hex')}`;
  try {
    writeFileSync(beside, content);
    renameSync(beside, path);
  } catch (error) {
    rmSync(beside, { force: true });
    throw error;
  }
}

/** Leaves so many files in a folder of ours, those written last. @throws As `node:fs` does. */
export function keepNewest(folder: string, most: number): void {
  const paths = readdirSync(folder).map((name) => join(folder, name));
  if (paths.length <= most) return;
  const written = paths.map((path) => ({ path, at: statSync(path).mtimeMs })).sort((a, b) => b.at - a.at);
  for (const { path } of written.slice(most)) rmSync(path, { force: true });
}
