import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import type { PageFont } from '../../src/print/printer.ts';

type Weight = 400 | 600 | 700 | 800;

/** A face of Public Sans that is given with a page. */
export function pageFont(family: string, weight: Weight, style: 'normal' | 'italic'): PageFont {
  const name = `@fontsource/public-sans/files/public-sans-latin-${weight}-${style}.woff2`;
  const path = fileURLToPath(new URL(`../../node_modules/${name}`, import.meta.url));
  const url = `data:font/woff2;base64,${readFileSync(path).toString('base64')}`;
  return { family, weight, style, unicodeRange: 'U+0-10FFFF', url };
}

/** A face of Public Sans as an `@font-face` rule that holds the font itself. */
export function face(family: string, weight: Weight, style: 'normal' | 'italic'): string {
  const { url } = pageFont(family, weight, style);
  return `@font-face { font-family: ${family}; font-weight: ${weight}; font-style: ${style}; src: url(${url}) }`;
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
