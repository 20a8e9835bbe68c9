import { once } from 'node:events';
import { stat } from 'node:fs/promises';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { dirname, extname, join, posix } from 'node:path';
import { readIfThere } from '../make/files.ts';
import { Door, isHere, isWelcome } from './door.ts';
import { toldPage } from './told-page.ts';

/** What the server shows: files of a folder, and the state that its pages follow. */
type Showing = {
  readonly folder: string;
  /** Rises with every change. */
  readonly version: () => number;
  /** What pages are told, as JSON. */
  readonly state: (reader: { readonly isHere: boolean }) => string;
  /** Called before a file is sent, to make it if it is made only when asked for; gives what kept it from being made. */
  readonly prepare: (path: string) => Promise<string | undefined>;
  /** Why there is no file at a path. */
  readonly missing: (path: string) => string;
  /** The script and style that every page of a preview has besides its own. */
  readonly live: { readonly script: string; readonly style: string };
};

type ServerOptions = {
  /** The port that is wanted. */
  readonly port: number;
  /** Whether other devices of the network may come in, with a key. */
  readonly host: boolean;
  /** Told the next key when one was used. */
  readonly entered: (key: string) => void;
};

type LiveServer = {
  readonly port: number;
  readonly address: string;
  /** What opens to other devices next. */
  readonly key: string;
  /** Tells every open page that there is a new state. */
  readonly announce: () => void;
  readonly close: () => Promise<void>;
};

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.webp': 'image/webp',
  '.avif': 'image/avif',
  '.pdf': 'application/pdf',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
  '.ttf': 'font/ttf',
  '.otf': 'font/otf',
  '.xml': 'application/xml; charset=utf-8',
  '.ics': 'text/calendar; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
};

/** What a browser is told of everything that is sent: it comes from here alone, and no other page may hold it. */
const GUARDS = {
  'Content-Security-Policy':
    "default-src 'self'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; font-src 'self' data:; object-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Referrer-Policy': 'no-referrer',
} as const;

const LOOPBACK = '127.0.0.1';
const EVERYWHERE = '0.0.0.0';
/** How many ports after the wanted one are tried before any free one is taken. */
const TRIES = 20;
/** Our own addresses, which no project can have. */
const OWN = '/-preview/';

/** Serves on loopback, and to the network where it is asked to. A port that is taken is passed over for the next. */
export async function openServer(
  showing: Showing,
  { port: wanted, host, entered }: ServerOptions,
): Promise<LiveServer> {
  const listeners = new Set<ServerResponse>();
  const door: Door = new Door(host, () => entered(door.key));
  const server = createServer((request, response) => {
    answer(request, response, { showing, listeners, door }).catch((error: unknown) => {
      const why = error instanceof Error ? error.message : String(error);
      send(response, 500, '.html', toldPage('This can’t be shown', why));
    });
  });
  const port = await listen(server, wanted, host ? EVERYWHERE : LOOPBACK);
  return {
    port,
    address: `http://${LOOPBACK}:${port}/`,
    key: door.key,
    announce: () => {
      for (const listener of listeners) listener.write(`data: ${showing.version()}\n\n`);
    },
    close: () => {
      for (const listener of listeners) listener.end();
      server.closeAllConnections();
      return new Promise((resolve) => server.close(() => resolve()));
    },
  };
}

async function listen(server: Server, wanted: number, host: string): Promise<number> {
  const ports = wanted === 0 ? [0] : [...Array.from({ length: TRIES }, (_, index) => wanted + index), 0];
  for (const port of ports.filter((each) => each < 65_536)) {
    try {
      await once(server.listen(port, host), 'listening');
      return (server.address() as AddressInfo).port;
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      if (code !== 'EADDRINUSE' && code !== 'EACCES') throw error;
    }
  }
  throw new Error('no free port was found for the preview');
}

type House = { readonly showing: Showing; readonly listeners: Set<ServerResponse>; readonly door: Door };

async function answer(
  request: IncomingMessage,
  response: ServerResponse,
  { showing, listeners, door }: House,
): Promise<void> {
  const url = new URL(`http://preview${request.url?.startsWith('/') ? request.url : '/'}`);
  const entry = door.enter(request, url);
  // Who has no key learns nothing, not even what this is.
  if (entry.kind === 'out') return send(response, 403, '.txt', '');
  if (entry.kind === 'sent on') {
    response.writeHead(302, { ...GUARDS, ...entry.headers, 'Cache-Control': 'no-store' }).end();
    return;
  }
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    return send(response, 405, '.txt', 'a preview can only be looked at');
  }
  const [pathname = '/'] = (request.url ?? '/').split(/[?#]/u, 1);
  if (!isWelcome(request, pathOf(pathname) ?? ''))
    return send(response, 403, '.txt', 'this preview answers its own pages only');
  switch (pathname) {
    case `${OWN}events`:
      response.writeHead(200, {
        ...GUARDS,
        'Content-Type': 'text/event-stream',
        'Cache-Control': 'no-store',
      });
      response.write(`data: ${showing.version()}\n\n`);
      listeners.add(response);
      response.on('close', () => listeners.delete(response));
      return;
    case `${OWN}state.json`:
      return send(response, 200, '.json', showing.state({ isHere: isHere(request) }));
    case `${OWN}live.js`:
      return send(response, 200, '.js', showing.live.script);
    case `${OWN}live.css`:
      return send(response, 200, '.css', showing.live.style);
    default:
      return sendFile(pathname, response, showing);
  }
}

async function sendFile(pathname: string, response: ServerResponse, showing: Showing): Promise<void> {
  const path = pathOf(pathname);
  if (path === undefined) return send(response, 404, '.txt', 'not found');
  const hindrance = await showing.prepare(path);
  const named = join(showing.folder, path);
  const isFolder = (await stat(named).catch(() => undefined))?.isDirectory() === true;
  if (isFolder && !pathname.endsWith('/')) {
    response.writeHead(302, {
      ...GUARDS,
      Location: `/${path.split('/').map(encodeURIComponent).join('/')}/`,
    });
    response.end();
    return;
  }
  const file = isFolder ? join(named, 'index.html') : named;
  const ending = extname(file).toLowerCase();
  const version = showing.version();
  const bytes = hindrance === undefined ? await readIfThere(file) : undefined;
  if (bytes && ending === '.html') {
    const page = await withTimes(`${bytes}`, file, showing.folder);
    return send(response, 200, ending, withLive(page, version));
  }
  if (bytes) return send(response, 200, ending, bytes);
  const told =
    hindrance === undefined
      ? toldPage('Nothing is here', showing.missing(path))
      : toldPage('This can’t be printed', hindrance);
  send(response, hindrance === undefined ? 404 : 500, '.html', withLive(told, version));
}

/** The path of an address below the folder; undefined for one that leads out of it. */
function pathOf(pathname: string): string | undefined {
  try {
    const path = posix.normalize(decodeURIComponent(pathname).replaceAll('\\', '/')).replace(/^\/+/u, '');
    return path.includes('\0') || path.split('/').includes('..') ? undefined : path;
  } catch {
    return undefined;
  }
}

/** A page with the live script before its own: it knows which make the page is of, and the page as it was sent. */
function withLive(html: string, version: number): string {
  const tags = `<link rel="stylesheet" href="${OWN}live.css"><script src="${OWN}live.js" data-version="${version}" defer></script>`;
  return html.includes('<head>') ? html.replace('<head>', `<head>${tags}`) : `${tags}${html}`;
}

const PICTURE = /(<img [^>]*?src=")([^":?#]+)(?=")/gu;

/**
 * A page that says of each of its pictures when it was written: a page that is open then asks for one again that is another
 * under the same name, or that was not there yet.
 */
async function withTimes(html: string, file: string, folder: string): Promise<string> {
  const paths = new Set(Array.from(html.matchAll(PICTURE), ([, , path = '']) => path));
  const times = new Map<string, string>();
  const note = async (path: string): Promise<void> => {
    const at = join(dirname(file), decodeURIComponent(path));
    const found = at.startsWith(folder) ? await stat(at).catch(() => undefined) : undefined;
    times.set(path, found ? `?${found.mtimeMs}` : '');
  };
  await Promise.all(Array.from(paths, note));
  return html.replace(PICTURE, (_, before: string, path: string) => `${before}${path}${times.get(path)}`);
}

/** @param ending What a file of such content ends with, `.html`. */
function send(response: ServerResponse, status: number, ending: string, body: string | Uint8Array): void {
  const type = TYPES[ending] ?? 'application/octet-stream';
  response.writeHead(status, { ...GUARDS, 'Content-Type': type, 'Cache-Control': 'no-store' });
  response.end(body);
}
