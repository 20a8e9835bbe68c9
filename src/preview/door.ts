import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import type { IncomingMessage } from 'node:http';

/** What comes of a request: it is let in, it is sent on with a cookie to show from then on, or it is told nothing. */
type Entry =
  | { readonly kind: 'in' }
  | { readonly kind: 'sent on'; readonly headers: Headers }
  | { readonly kind: 'out' };
type Headers = { readonly Location: string; readonly 'Set-Cookie': string };

const OUT: Entry = { kind: 'out' };
const IN: Entry = { kind: 'in' };

/**
 * Lets in whoever asks on this machine and by its own name, so that no page elsewhere reads a preview by a name that leads
 * here. Others only where the preview is open to the network, with a key that opens once; the cookie they are given for it
 * holds as long as the preview runs.
 */
export class Door {
  readonly #isOpen: boolean;
  readonly #used: () => void;
  readonly #cookie = secret();
  #key = secret();

  /** @param used Told when a key was used: there is another. */
  constructor(isOpen: boolean, used: () => void) {
    this.#isOpen = isOpen;
    this.#used = used;
  }

  /** The key that opens next. */
  get key(): string {
    return this.#key;
  }

  enter(request: IncomingMessage, url: URL): Entry {
    if (isHere(request)) return IN;
    if (!this.#isOpen) return OUT;
    const { cookie = '' } = request.headers;
    const shown = cookie.split(/; */u).filter((each) => each.startsWith(`${COOKIE}=`));
    if (shown.some((each) => isSame(each.slice(COOKIE.length + 1), this.#cookie))) return IN;
    if (!isSame(url.searchParams.get('key') ?? '', this.#key)) return OUT;
    this.#key = secret();
    this.#used();
    const headers = {
      Location: url.pathname.replace(/^[/\\]+/u, '/'),
      'Set-Cookie': `${COOKIE}=${this.#cookie}; Path=/; HttpOnly; SameSite=Lax`,
    };
    return { kind: 'sent on', headers };
  }
}

const COOKIE = 'sheetwright-preview';

function secret(): string {
  return randomBytes(16).toString('base64url');
}

/** Takes as long whatever is different. */
function isSame(given: string, secret: string): boolean {
  const [a, b] = [given, secret].map((text) => createHash('sha256').update(text).digest());
  return a !== undefined && b !== undefined && timingSafeEqual(a, b);
}

/** Whether a request is from this machine, and for it by a name of its own. */
export function isHere({ headers, socket }: IncomingMessage): boolean {
  const host = (headers.host ?? '').replace(/:\d+$/u, '');
  const isOwnName = host === '127.0.0.1' || host === 'localhost';
  return isOwnName && /^(?:::ffff:)?127\./u.test(socket.remoteAddress ?? '');
}

/**
 * Whether a request is of our own pages, or of a person who types or follows an address (W3C, Fetch Metadata). Another
 * site may lead to a page, and may not have a PDF printed. A browser too old to say is served.
 * @param path What is asked for, decoded: an address can be spelled in many ways.
 */
export function isWelcome({ headers }: IncomingMessage, path: string): boolean {
  const site = headers['sec-fetch-site'];
  if (site === undefined || site === 'same-origin' || site === 'none') return true;
  const isVisit = headers['sec-fetch-mode'] === 'navigate' && headers['sec-fetch-dest'] === 'document';
  return isVisit && !path.toLowerCase().endsWith('.pdf');
}
