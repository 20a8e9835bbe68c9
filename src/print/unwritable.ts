import { BrowserMissing } from './fault.ts';

const CODES = new Set(['EACCES', 'EPERM', 'EROFS', 'ENOSPC', 'EDQUOT', 'ENOTDIR', 'EEXIST']);

function codeOf(error: unknown): string | undefined {
  return error instanceof Error && 'code' in error ? String(error.code) : undefined;
}

/** Whether an error of the file system says that a folder cannot be written. */
export function isUnwritable(error: unknown): boolean {
  return CODES.has(codeOf(error) ?? '');
}

/** A cache folder that cannot be written, and the variable that moves it elsewhere. */
export function unwritable(folder: string, variable: string, error: unknown): BrowserMissing {
  const code = codeOf(error) ?? '';
  const full = code === 'ENOSPC' || code === 'EDQUOT';
  return new BrowserMissing(
    'unwritable',
    full ? `the disk of ${folder} is full` : `the folder ${folder} cannot be written (${code})`,
    full
      ? `free some 300 MB there, or set ${variable} to a folder on another disk`
      : `make it writable, or set ${variable} to a folder that is`,
  );
}
