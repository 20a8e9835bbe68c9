import { type Line, readLines } from './pdf-lines.ts';
import { type Box, type Mark, MM_PER_POINT, type Operators, readMarks } from './pdf-marks.ts';
import { getDocument, type PDFDocumentProxy, type PDFPageProxy } from './pdfjs.ts';

/** A stretch of text and where its baseline begins, in millimeters from the page's top left corner. */
export type Words = { readonly text: string; readonly x: number; readonly y: number; readonly size: number };

export type PdfPage = {
  readonly widthMm: number;
  readonly heightMm: number;
  /** All text in reading order, lines ended by `\n`. */
  readonly text: string;
  readonly words: readonly Words[];
  /** Every outline drawn, in the order of drawing. */
  readonly marks: readonly Mark[];
  /** The straight lines among them, dashed ones joined. */
  readonly lines: readonly Line[];
  readonly pictures: readonly Box[];
  /** The text alternatives of figures, in reading order. */
  readonly alternatives: readonly string[];
  /** The roles of the structure tree, in reading order: `H1`, `P`, `Table`. */
  readonly roles: readonly string[];
  /** Addresses that the page links to. */
  readonly links: readonly string[];
};

export type Heading = { readonly title: string /** 0 for the topmost. */; readonly depth: number };

export type Pdf = {
  readonly pages: readonly PdfPage[];
  readonly title: string | undefined;
  readonly lang: string | undefined;
  /** As it stands in the file: `D:20261210000000+00'00'`. */
  readonly created: string | undefined;
  readonly modified: string | undefined;
  readonly creator: string | undefined;
  readonly producer: string | undefined;
  readonly tagged: boolean;
  readonly outline: readonly Heading[];
  /** Every font, named as in the file: `AAAAAA+PublicSansThin-Bold`. */
  readonly fonts: readonly { readonly name: string; readonly embedded: boolean }[];
};

type Node = { role?: string; alt?: string; children?: readonly Node[] };

type OutlineNode = { title: string; items: readonly OutlineNode[] };

function everyNode(node: Node | null): Node[] {
  return node ? [node, ...(node.children ?? []).flatMap((child) => everyNode(child))] : [];
}

function headings(nodes: readonly OutlineNode[] | null, depth = 0): Heading[] {
  return (nodes ?? []).flatMap(({ title, items }) => [{ title, depth }, ...headings(items, depth + 1)]);
}

/** The text of a page, and each stretch of it with its place. */
async function readText(page: PDFPageProxy): Promise<{ text: string; words: Words[] }> {
  const [left = 0, , , top = 0] = page.view;
  const { items } = await page.getTextContent();
  let text = '';
  const words: Words[] = [];
  for (const item of items) {
    if (!('str' in item)) continue;
    text += item.hasEOL ? `${item.str}\n` : item.str;
    const [a = 0, b = 0, , , x = 0, y = 0] = item.transform.map(Number);
    const size = Math.hypot(a, b) * MM_PER_POINT;
    if (item.str.trim()) {
      words.push({ text: item.str, x: (x - left) * MM_PER_POINT, y: (top - y) * MM_PER_POINT, size });
    }
  }
  return { text, words };
}

async function readPage(page: PDFPageProxy): Promise<PdfPage> {
  const [left = 0, bottom = 0, right = 0, top = 0] = page.view;
  const operators: Operators = await page.getOperatorList();
  const { marks, pictures } = readMarks(operators, page.view);
  let lines: readonly Line[] | undefined;
  const nodes = everyNode((await page.getStructTree()) as Node | null);
  const annotations = (await page.getAnnotations()) as { url?: string }[];
  return {
    widthMm: (right - left) * MM_PER_POINT,
    heightMm: (top - bottom) * MM_PER_POINT,
    ...(await readText(page)),
    marks,
    // Hardly any test asks for them.
    get lines() {
      lines ??= readLines(marks);
      return lines;
    },
    pictures,
    alternatives: nodes.flatMap(({ alt }) => (alt === undefined ? [] : [alt])),
    roles: nodes.flatMap(({ role }) => (role === undefined ? [] : [role])),
    links: annotations.flatMap(({ url }) => (url === undefined ? [] : [url])),
  };
}

/** The fonts that the pages read so far use. */
function fontsOf(page: PDFPageProxy): Map<string, boolean> {
  const fonts = new Map<string, boolean>();
  for (const [, object] of page.commonObjs as Iterable<[string, unknown]>) {
    const font = object as { name?: unknown; missingFile?: unknown } | null;
    if (font && typeof font.name === 'string') fonts.set(font.name, font.missingFile === false);
  }
  return fonts;
}

async function read(document: PDFDocumentProxy): Promise<Pdf> {
  const pages: PdfPage[] = [];
  let fonts = new Map<string, boolean>();
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    pages.push(await readPage(page));
    fonts = new Map([...fonts, ...fontsOf(page)]);
  }
  const info = (await document.getMetadata()).info as Record<string, unknown>;
  const text = (key: string): string | undefined => (typeof info[key] === 'string' ? info[key] : undefined);
  const marked = (await document.getMarkInfo()) as { Marked?: boolean } | null;
  return {
    pages,
    title: text('Title'),
    lang: text('Language'),
    created: text('CreationDate'),
    modified: text('ModDate'),
    creator: text('Creator'),
    producer: text('Producer'),
    tagged: marked?.Marked === true,
    outline: headings((await document.getOutline()) as OutlineNode[] | null),
    fonts: [...fonts].map(([name, embedded]) => ({ name, embedded })),
  };
}

/** Reads a PDF as far as a test may want to know it. Lengths are in millimeters from a page's top left corner. */
export function readPdf(bytes: Uint8Array): Promise<Pdf> {
  return opened(bytes, read);
}

/** The text of every page, as `PdfPage` has it: where no drawing matters, a fraction of the work. */
export function readPdfTexts(bytes: Uint8Array): Promise<readonly string[]> {
  return opened(bytes, async (document) => {
    const texts: string[] = [];
    for (let number = 1; number <= document.numPages; number++)
      texts.push((await readText(await document.getPage(number))).text);
    return texts;
  });
}

async function opened<T>(bytes: Uint8Array, work: (document: PDFDocumentProxy) => Promise<T>): Promise<T> {
  // pdf.js takes the bytes away from who gives them; it gets a copy. Warnings about fonts it need not draw are hidden.
  const task = getDocument({ data: withoutPhotos(bytes), verbosity: 0, useSystemFonts: false });
  try {
    return await work(await task.promise);
  } finally {
    await task.destroy();
  }
}

/** A copy in which photos are of no known kind: where they lie is still told, and nothing is unpacked. */
function withoutPhotos(bytes: Uint8Array): Uint8Array {
  const [known, unknown] = ['/DCTDecode', '/XXXDecode'];
  const copy = Uint8Array.from(bytes);
  const file = Buffer.from(copy.buffer);
  for (let at = file.indexOf(known); at >= 0; at = file.indexOf(known, at)) file.write(unknown, at, 'latin1');
  return copy;
}
