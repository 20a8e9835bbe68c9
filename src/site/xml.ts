import { type SafeHtml, withoutForbidden } from '../words/safe-html.ts';

/** A document in UTF-8 of one element; characters that XML 1.0 cannot hold at all are left out. */
export function xmlDocument(root: SafeHtml): string {
  return `<?xml version="1.0" encoding="UTF-8"?>\n${withoutForbidden(root.toHTML())}\n`;
}
