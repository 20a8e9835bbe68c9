import { XMLParser } from 'fast-xml-parser';

/** An element of a parsed page. */
export type Node = {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly (Node | string)[];
};

const ATTRIBUTES = ':@';
const TEXT = '#text';

/** Reads a page as an independent parser sees it. Ours are well formed but for HTML's elements without an end. */
export function parseMarkup(html: string): Node {
  const parser = new XMLParser({
    preserveOrder: true,
    ignoreAttributes: false,
    attributeNamePrefix: '',
    allowBooleanAttributes: true,
    parseAttributeValue: false,
    parseTagValue: false,
    trimValues: false,
    htmlEntities: true,
    unpairedTags: ['meta', 'link', 'img', 'input', 'br', 'hr', 'source'],
    stopNodes: ['*.style', '*.script'],
  });
  const [root] = parser.parse(`<all>${html.replace(/^<!doctype html>/iu, '')}</all>`) as Raw[];
  const node = nodeOf(root ?? {});
  if (typeof node === 'string') throw new Error('the markup has no element');
  return node;
}

type Raw = Record<string, unknown>;

function nodeOf(raw: Raw): Node | string {
  if (TEXT in raw) return String(raw[TEXT]);
  const name = Object.keys(raw).find((key) => key !== ATTRIBUTES) ?? '';
  const attributes = Object.fromEntries(
    Object.entries((raw[ATTRIBUTES] ?? {}) as Record<string, unknown>).map(([key, value]) => [
      key,
      value === true ? '' : String(value),
    ]),
  );
  return { name, attributes, children: ((raw[name] ?? []) as Raw[]).map(nodeOf) };
}

/** Every element within, in document order. */
export function elements(node: Node): Node[] {
  return node.children.flatMap((child) => (typeof child === 'string' ? [] : [child, ...elements(child)]));
}

/** The elements of a name, or of a class given as `.name`. */
export function all(node: Node, selector: string): Node[] {
  const wanted = selector.replace(/^\./u, '');
  return elements(node).filter(({ name, attributes }) =>
    selector.startsWith('.') ? (attributes.class ?? '').split(' ').includes(wanted) : name === wanted,
  );
}

export function one(node: Node, selector: string): Node {
  const [first] = all(node, selector);
  if (!first) throw new Error(`there is no ${selector}`);
  return first;
}

/** What is read of an element, blanks drawn together; without what is only heard. */
export function textOf(node: Node | string): string {
  return rawText(node).replace(/\s+/gu, ' ').trim();
}

function rawText(node: Node | string): string {
  if (typeof node === 'string') return node;
  if ((node.attributes.class ?? '') === 'spoken') return '';
  return node.children.map(rawText).join('');
}
