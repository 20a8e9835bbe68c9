import type * as Pdfjs from 'pdfjs-dist/legacy/build/pdf.mjs';

/**
 * pdf.js, which reads PDFs back. For old engines it puts functions of its own in the place of some that are there, for
 * whatever runs after it in the same process: an array then takes five times as long to add to, JSON four times to
 * write. The engine's are put back.
 */
const { push } = Array.prototype;
const { parse, stringify } = JSON;
const { toString: source } = Function.prototype;
const pdfjs = await import('pdfjs-dist/legacy/build/pdf.mjs');
// It would be loaded with the first document, and do the same.
await import('pdfjs-dist/legacy/build/pdf.worker.mjs' as string);
Object.defineProperty(Array.prototype, 'push', { value: push });
Object.defineProperty(Function.prototype, 'toString', { value: source });
Object.assign(JSON, { parse, stringify });

export const getDocument: typeof Pdfjs.getDocument = pdfjs.getDocument;
export const OPS: typeof Pdfjs.OPS = pdfjs.OPS;
export type { PDFDocumentProxy, PDFPageProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';
