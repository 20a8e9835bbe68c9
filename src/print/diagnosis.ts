import type { Candidate } from './candidate.ts';
import { BrowserKilled, BrowserMissing, NAME_ANOTHER } from './fault.ts';

/** How a browser that never answered came to its end. */
export type Ending = {
  /** The error of the operating system when the program could not be run at all: `EACCES`, `ENOEXEC`. */
  readonly refused?: string | undefined;
  readonly code: number | null;
  readonly signal: string | null;
  /** What it wrote while starting. */
  readonly log: readonly string[];
};

/** The messages of the loaders of Linux and macOS about a library that is not there, or not in the version needed. */
const LIBRARY = [
  /error while loading shared libraries: ([^:\s]+)/u,
  /Library not loaded: (\S+)/u,
  /version `([^']+)' not found/u,
];

/** From this exit code on a shell, and Windows, report a crash. */
const CRASHED = 128;

const NAME_ONE = 'name the program of Chromium, Chrome or Edge with --browser PATH';

/** Whether it gave up because this machine grants it no sandbox (a container, or a kernel that forbids user namespaces). */
export function wantsNoSandbox({ log }: Ending): boolean {
  return log.some((line) =>
    /no usable sandbox|running as root without --no-sandbox|setuid sandbox/iu.test(line),
  );
}

/** A program's last words, shortened to what fits a line. */
function lastWords(log: readonly string[]): string {
  const line = log.at(-1)?.trim() ?? '';
  return line === '' ? '' : `: ${line.length > 160 ? `${line.slice(0, 159)}…` : line}`;
}

/** Says why a browser did not start, and what to do about it. */
export function diagnose({ path, found }: Candidate, ending: Ending): BrowserMissing {
  const { refused, code, signal, log } = ending;
  const name = `${path} (${found})`;
  const library = log.flatMap((line) => LIBRARY.map((pattern) => pattern.exec(line)?.[1])).find(Boolean);
  if (library) {
    const remedy = `install it with the system’s package manager, ${NAME_ANOTHER}`;
    return new BrowserMissing(`${name} needs ${library}, which this system lacks`, remedy);
  }
  if (refused === 'EACCES') {
    const remedy = `allow it with chmod +x, on a disk that lets programs run, ${NAME_ANOTHER}`;
    return new BrowserMissing(`${name} is not executable`, remedy);
  }
  if (refused) return new BrowserMissing(`${name} is no program for this machine (${refused})`, NAME_ONE);
  if (signal === 'SIGKILL') {
    const remedy = `close other programs if memory is short, ${NAME_ANOTHER}`;
    return new BrowserKilled(`${name} was killed as it started`, remedy);
  }
  if (signal || (code ?? 0) >= CRASHED) {
    const fact = `${name} crashed as it started (${signal ?? code})${lastWords(log)}`;
    return new BrowserMissing(fact, `install it again, ${NAME_ANOTHER}`);
  }
  const exit = code === null ? '' : ` (exit code ${code})`;
  return new BrowserMissing(
    `${name} quit before it could be used as a browser${exit}${lastWords(log)}`,
    NAME_ONE,
  );
}
