import { describe, expect, it } from 'vitest';
import { isUnwritable, unwritable } from '../../src/print/fault.ts';

/** An error as Node's file system throws it. */
const failed = (code: string): Error => Object.assign(new Error(`${code}: it failed`), { code });

describe('a folder that cannot be written', () => {
  it.each(['EACCES', 'EPERM', 'EROFS', 'ENOSPC', 'ENOTDIR'])('shows as %s', (code) => {
    expect(isUnwritable(failed(code))).toBe(true);
  });

  it('is no other error', () => {
    expect([failed('ENOENT'), new Error('EACCES'), 'EACCES'].map(isUnwritable)).toEqual([
      false,
      false,
      false,
    ]);
  });

  it('is told with the variable that moves it', () => {
    expect(unwritable('/c', 'XDG_CACHE_HOME', failed('EROFS')).message).toBe(
      'the folder /c cannot be written (EROFS); make it writable, or set XDG_CACHE_HOME to a folder that is',
    );
    expect(unwritable('/c', 'TMPDIR', failed('ENOSPC')).message).toBe(
      'the disk of /c is full; free some 300 MB there, or set TMPDIR to a folder on another disk',
    );
  });
});
