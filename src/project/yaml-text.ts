import type { Scalar } from 'yaml';
import { placeInYaml, type YamlSource } from './frontmatter.ts';
import type { Place } from './source.ts';
import type { YamlText } from './yaml-node.ts';

/** Reads a scalar's text and the offsets of its characters. */
export function yamlText(scalar: Scalar, yaml: YamlSource): YamlText {
  const text = typeof scalar.value === 'string' ? scalar.value : (scalar.source ?? '');
  const [start, end] = scalar.range ?? [0, 0];
  const raw = yaml.text.slice(start, end);
  const spans = spansOf(text, raw, quoteOf(scalar, raw));
  const place = (from: number, to: number): Place => {
    const first = spans[from]?.start ?? spans.at(-1)?.end ?? 0;
    const last = to > from ? (spans[to - 1]?.end ?? first) : first;
    return placeInYaml(yaml, start + first, start + last);
  };
  const lead = text.length - text.trimStart().length;
  return { kind: 'text', text, at: place(lead % text.length || 0, text.trimEnd().length), place };
}

/** How many characters of `raw` stand before the text itself, and whether a backslash escapes there. */
type Quote = { readonly lead: number; readonly escapes: 'backslash' | 'doubled quote' | 'none' };

function quoteOf(scalar: Scalar, raw: string): Quote {
  if (scalar.type === 'QUOTE_DOUBLE') return { lead: 1, escapes: 'backslash' };
  if (scalar.type === 'QUOTE_SINGLE') return { lead: 1, escapes: 'doubled quote' };
  if (scalar.type === 'BLOCK_LITERAL' || scalar.type === 'BLOCK_FOLDED') {
    return { lead: raw.search(/[\r\n]|$/u), escapes: 'none' };
  }
  return { lead: 0, escapes: 'none' };
}

type Span = { readonly start: number; readonly end: number };

/**
 * The stretch of `raw` that spells each UTF-16 unit of `text`. YAML only ever escapes characters and takes white
 * space away (folding, indentation), so the two can be walked side by side.
 */
function spansOf(text: string, raw: string, { lead, escapes }: Quote): Span[] {
  const spans: Span[] = [];
  let start = lead;
  for (const character of text) {
    if (/\S/u.test(character)) start = afterBlank(raw, start, escapes);
    const end = Math.min(start + lengthIn(raw, start, character, escapes), raw.length);
    for (let unit = 0; unit < character.length; unit += 1) spans.push({ start, end });
    start = end;
  }
  return spans;
}

/** Past white space, and past a backslash that joins two lines. */
function afterBlank(raw: string, from: number, escapes: Quote['escapes']): number {
  const blank = escapes === 'backslash' ? /(?:\s|\\\r?\n)*/uy : /\s*/uy;
  blank.lastIndex = from;
  blank.exec(raw);
  return Math.max(blank.lastIndex, from);
}

/** How many characters of `raw` spell the one character read at `at`. */
function lengthIn(raw: string, at: number, character: string, escapes: Quote['escapes']): number {
  if (escapes === 'backslash' && raw[at] === '\\') return escapeLength(raw, at);
  if (escapes === 'doubled quote' && character === "'") return 2;
  if (raw.startsWith(character, at)) return character.length;
  return /\s/u.test(raw[at] ?? '') ? 1 : 0;
}

/** `\x41`, `\u00bd` and `\U0001f600` have 2, 4 and 8 digits; every other escape is one character. */
function escapeLength(raw: string, at: number): number {
  const digits = { x: 2, u: 4, U: 8 }[raw[at + 1] ?? ''] ?? 0;
  return 2 + digits;
}
