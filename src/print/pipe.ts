import type { Readable, Writable } from 'node:stream';
import type { ConnectionTransport } from 'puppeteer-core';

/**
 * Talks to a browser through the two pipes it was started with, each message ended by a zero byte. No port is opened,
 * and a browser whose pipes close ends by itself, so that it cannot outlive us whatever happens to us.
 */
export function pipeTransport(toBrowser: Writable, fromBrowser: Readable): ConnectionTransport {
  let begun: string[] = [];
  const transport: ConnectionTransport = {
    send: (message) => {
      toBrowser.write(`${message}\0`);
    },
    close: () => {
      toBrowser.destroy();
      fromBrowser.destroy();
    },
  };
  fromBrowser.setEncoding('utf8');
  fromBrowser.on('data', (chunk: string) => {
    const [first = '', ...rest] = chunk.split('\0');
    begun.push(first);
    for (const next of rest) {
      transport.onmessage?.(begun.join(''));
      begun = [next];
    }
  });
  fromBrowser.on('close', () => transport.onclose?.());
  // A browser that died shows as a closed pipe on the reading side; the writing side has nothing to add.
  toBrowser.on('error', () => {});
  fromBrowser.on('error', () => {});
  return transport;
}
