import type { SafeHtml } from '../words/safe-html.ts';

/** A document in UTF-8 of one element; characters that XML 1.0 cannot hold at all are left out. */
export function xmlDocument(root: SafeHtml): string {
  const text = root.toHTML().replace(/[^\P{Cc}\t\n\r]|[\p{Cs}\ufffe\uffff]/gu, '');
  return `<?xml version="1.0" encoding="UTF-8"?>\n${text}\n`;
}
