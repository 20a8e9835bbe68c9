import type { Scalar } from 'yaml';
import { placeInYaml, type YamlSource } from './frontmatter.ts';
import type { Place } from './source.ts';

/** A scalar as written, with where each of its characters stands: inside the quotes, not around them. */
export type YamlText = {
  readonly kind: 'text';
  readonly text: string;
  /** The text without its quotes or block header. */
  readonly at: Place;
  /** Where a stretch of `text` stands. */
  readonly place: (start: number, end: number) => Place;
};

/** Reads a scalar's text and the offsets of its characters. */
export function yamlText(scalar: Scalar, yaml: YamlSource): YamlText {
  const text = typeof scalar.value === 'string' ? scalar.value : (scalar.source ?? '');
  const [start, end] = scalar.range ?? [0, 0];
  const raw = yaml.text.slice(start, end);
  const offsets = offsetsOf(text, raw, quoteOf(scalar, raw)).map((offset) => offset + start);
  const place = (from: number, to: number): Place => {
    const first = offsets[from] ?? offsets.at(-1) ?? start;
    const last = to > from ? (offsets[to - 1] ?? first) : first - 1;
    return placeInYaml(yaml, first, Math.min(last + 1, end));
  };
  return { kind: 'text', text, at: place(0, text.trimEnd().length), place };
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

/**
 * The offset in `raw` of every UTF-16 unit of `text`. YAML only ever escapes characters and takes white space
 * away (folding, indentation), so the two can be walked side by side.
 */
function offsetsOf(text: string, raw: string, { lead, escapes }: Quote): number[] {
  const offsets: number[] = [];
  let at = lead;
  for (const character of text) {
    const blank = /\s/u.test(character);
    while (at < raw.length && !blank && /\s/u.test(raw[at] ?? '')) at += 1;
    for (let unit = 0; unit < character.length; unit += 1) offsets.push(at);
    at += lengthIn(raw, at, character, escapes);
  }
  return offsets;
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
