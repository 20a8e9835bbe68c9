import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';

/** A face of Public Sans as an `@font-face` rule that holds the font itself. */
export function face(family: string, weight: 400 | 600 | 700 | 800, style: 'normal' | 'italic'): string {
  const name = `@fontsource/public-sans/files/public-sans-latin-${weight}-${style}.woff2`;
  const path = fileURLToPath(new URL(`../../node_modules/${name}`, import.meta.url));
  const source = `data:font/woff2;base64,${readFileSync(path).toString('base64')}`;
  return `@font-face { font-family: ${family}; font-weight: ${weight}; font-style: ${style}; src: url(${source}) }`;
}

/** A whole document. */
export function documentOf(css: string, body: string, lang = 'en'): string {
  return `<!doctype html><html lang="${lang}"><head><meta charset="utf-8"><title>a title</title><style>${css}</style></head><body>${body}</body></html>`;
}

/** The date that test documents are pinned to. */
export const DAY = '2026-12-10';

/** A picture of one pixel. */
export const DOT: string = `data:image/png;base64,${(
  await sharp({ create: { width: 1, height: 1, channels: 3, background: '#888' } })
    .png()
    .toBuffer()
).toString('base64')}`;

/** What a promise is rejected with. */
export function failure(promise: Promise<unknown>): Promise<unknown> {
  return promise.then(
    () => undefined,
    (error: unknown) => error,
  );
}
