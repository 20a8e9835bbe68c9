/** Why no browser serves. Each has its own remedy in the message. */
export type BrowserReason =
  | 'none'
  | 'not-found'
  | 'a-folder'
  | 'not-executable'
  | 'not-a-browser'
  | 'crashed'
  | 'libraries'
  | 'unwritable'
  | 'damaged'
  | 'timeout'
  | 'download';

/** How every remedy ends that cannot make the browser at hand work. */
export const NAME_ANOTHER = 'or name another browser with --browser PATH';

/** No browser could be started. The message is one line: what is wrong, then what to do. Exit code 2. */
export class BrowserMissing extends Error {
  override readonly name = 'BrowserMissing';
  readonly reason: BrowserReason;
  readonly fact: string;
  readonly remedy: string;

  constructor(reason: BrowserReason, fact: string, remedy: string) {
    super(`${fact}; ${remedy}`);
    this.reason = reason;
    this.fact = fact;
    this.remedy = remedy;
  }
}

/** Why one page could not be printed though a browser serves. */
export type PrintReason = 'request' | 'unreadable' | 'died' | 'timeout' | 'closed' | 'failed';

/** A page that could not be printed. The message is one line and names the page. */
export class PrintFault extends Error {
  override readonly name = 'PrintFault';
  readonly reason: PrintReason;

  constructor(reason: PrintReason, message: string) {
    super(message);
    this.reason = reason;
  }
}
