/** How every remedy ends that cannot make the browser at hand work. */
export const NAME_ANOTHER = 'or name another browser with --browser PATH';

/** No browser could be started. The message is one line: what is wrong, then what to do. Exit code 2. */
export class BrowserMissing extends Error {
  override readonly name = 'BrowserMissing';
  readonly fact: string;
  readonly remedy: string;

  constructor(fact: string, remedy: string) {
    super(`${fact}; ${remedy}`);
    this.fact = fact;
    this.remedy = remedy;
  }
}

/** A browser that was killed as it started, as a machine short of memory does: it may start the next time. */
export class BrowserKilled extends BrowserMissing {}

/** A folder that every browser needs cannot be written. */
export class NoRoom extends BrowserMissing {}

/** A page that could not be printed. The message is one line and names the page. */
export class PrintFault extends Error {
  override readonly name = 'PrintFault';
}

/** A font that letters cannot be printed or painted with. */
export class UnreadableFont extends PrintFault {
  /** As pages call it. */
  readonly family: string;

  constructor(message: string, family: string) {
    super(message);
    this.family = family;
  }
}

/** A fault of printing as plain data, for another thread. */
export type FaultData =
  | { readonly kind: 'browser'; readonly fact: string; readonly remedy: string }
  | { readonly kind: 'page'; readonly message: string; readonly family?: string };

/** An error of any other kind counts as one of the page. */
export function faultData(error: unknown): FaultData {
  if (error instanceof BrowserMissing) return { kind: 'browser', fact: error.fact, remedy: error.remedy };
  const message = error instanceof Error ? error.message : String(error);
  return { kind: 'page', message, ...(error instanceof UnreadableFont && { family: error.family }) };
}

export function faultFrom(data: FaultData): BrowserMissing | PrintFault {
  if (data.kind === 'browser') return new BrowserMissing(data.fact, data.remedy);
  const { message, family } = data;
  return family === undefined ? new PrintFault(message) : new UnreadableFont(message, family);
}

const CODES = new Set(['EACCES', 'EPERM', 'EROFS', 'ENOSPC', 'EDQUOT', 'ENOTDIR', 'EEXIST']);

function codeOf(error: unknown): string | undefined {
  return error instanceof Error && 'code' in error ? String(error.code) : undefined;
}

/** Whether an error of the file system says that a folder cannot be written. */
export function isUnwritable(error: unknown): boolean {
  return CODES.has(codeOf(error) ?? '');
}

/** A cache folder that cannot be written, and the variable that moves it elsewhere. */
export function unwritable(folder: string, variable: string, error: unknown): NoRoom {
  const code = codeOf(error) ?? '';
  const full = code === 'ENOSPC' || code === 'EDQUOT';
  return new NoRoom(
    full ? `the disk of ${folder} is full` : `the folder ${folder} cannot be written (${code})`,
    full
      ? `free some 300 MB there, or set ${variable} to a folder on another disk`
      : `make it writable, or set ${variable} to a folder that is`,
  );
}
