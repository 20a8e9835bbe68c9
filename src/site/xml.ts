/** An XML element; its texts are escaped, elements within it stand as they are. */
export type XmlElement = {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly content: readonly (XmlElement | string)[];
};

export function xml(
  name: string,
  attributes: XmlElement['attributes'] = {},
  ...content: XmlElement['content']
): XmlElement {
  return { name, attributes, content };
}

/** A document in UTF-8, one element a line where elements hold elements. */
export function xmlDocument(root: XmlElement): string {
  return `<?xml version="1.0" encoding="UTF-8"?>\n${elementText(root)}\n`;
}

function elementText({ name, attributes, content }: XmlElement): string {
  const opening = [
    name,
    ...Object.entries(attributes).map(([key, value]) => `${key}="${xmlText(value)}"`),
  ].join(' ');
  if (content.length === 0) return `<${opening}/>`;
  const within = content.map((part) => (typeof part === 'string' ? xmlText(part) : `\n${elementText(part)}`));
  const ending = typeof content.at(-1) === 'string' ? '' : '\n';
  return `<${opening}>${within.join('')}${ending}</${name}>`;
}

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** Characters that XML 1.0 cannot hold at all are left out. */
function xmlText(text: string): string {
  return text
    .replace(/[^\P{Cc}\t\n\r]|[\p{Cs}\ufffe\uffff]/gu, '')
    .replace(/[&<>"]/gu, (character) => ESCAPES[character] ?? character);
}
