/** A node of a PDF's tree of pages (ISO 32000-1, 7.7.3.2), and how many pages hang on it. */
const NODE = /\/Type \/Pages\b[^>]*?\/Count (\d+)|\/Count (\d+)[^>]*?\/Type \/Pages\b/gu;

/** How many pages a PDF of our printer has: the count of the topmost node, which is the greatest. */
export function pageCount(pdf: Uint8Array): number {
  const text = Buffer.from(pdf.buffer, pdf.byteOffset, pdf.byteLength).toString('latin1');
  const counts = [...text.matchAll(NODE)].map(([, after, before]) => Number(after ?? before));
  if (counts.length === 0) throw new Error('the browser wrote a PDF without a tree of pages');
  return Math.max(...counts);
}
