import { capital } from './typographic.ts';

/** What may be set into a piece of markup: text is escaped, our own markup is not. */
export type HtmlValue = string | number | SafeHtml;

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** A text that stays text wherever in a page it is set, within attributes too. */
export function escapeHtml(text: string): string {
  return text.replace(/[&<>"']/gu, (character) => ESCAPES[character] ?? character);
}

/** A text without what XML 1.0 allows in no form, not even escaped: control characters and halves of characters. */
export function withoutForbidden(text: string): string {
  return text.replace(/(?![\t\n\r])\p{Cc}|[\p{Cs}\ufffe\uffff]/gu, '');
}

/** A document in UTF-8 of one element; characters that XML cannot hold at all are left out. */
export function xmlDocument(root: SafeHtml | string): string {
  return `<?xml version="1.0" encoding="UTF-8"?>\n${withoutForbidden(String(root))}\n`;
}

/**
 * Markup that is our own through and through, never a person's words. Templates print it as it is (Handlebars asks
 * for `toHTML`) and escape everything else, so that no template ever needs to switch escaping off.
 */
export class SafeHtml {
  static readonly empty: SafeHtml = new SafeHtml('', '');
  readonly #markup: string;
  /** What a reader reads of it, in one run; nothing of a drawing. */
  readonly text: string;

  private constructor(markup: string, text: string) {
    this.#markup = markup;
    this.text = text;
  }

  /** Takes markup on trust: only from the sanitiser, from our drawings and from the `html` tag below. */
  static vouched(markup: string, text = ''): SafeHtml {
    return new SafeHtml(markup, text);
  }

  static join(parts: readonly SafeHtml[], between: HtmlValue = ''): SafeHtml {
    const texts = parts.map(({ text }) => text);
    return new SafeHtml(parts.map(String).join(markupOf(between)), texts.join(textOf(between)));
  }

  /** The same with a capital, to begin a sentence. */
  capitalized(): SafeHtml {
    const markup = this.#markup.replace(/^((?:<[^<>]*>)*)(\p{Ll})/u, (_, tags: string, letter: string) => {
      return tags + letter.toUpperCase();
    });
    return new SafeHtml(markup, capital(this.text));
  }

  toHTML(): string {
    return this.#markup;
  }

  toString(): string {
    return this.#markup;
  }
}

/** Markup written in our own source, with values set into it: html`<td>${name}</td>`. */
export function html(strings: TemplateStringsArray, ...values: readonly HtmlValue[]): SafeHtml {
  const read = readings.get(strings) ?? readingOf(strings);
  readings.set(strings, read);
  let markup = strings[0] ?? '';
  for (const [index, value] of values.entries()) markup += markupOf(value) + (strings[index + 1] ?? '');
  let text = '';
  for (const part of read) text += typeof part === 'string' ? part : textOf(values[part] ?? '');
  return SafeHtml.vouched(markup, text);
}

/** What is read of a piece of markup in our source: its own words and the numbers of the values between them. */
type MarkupReading = readonly (string | number)[];

/** Each piece is taken apart once, however often it is set. */
const readings = new WeakMap<TemplateStringsArray, MarkupReading>();

/** Where a value is set into markup of our own source; a value within a tag is nothing to be read. */
const PLACE = '\0';
const PART = /<[^>]*>|\0|[^<\0]+|</gu;
const ENDS_LINE = /^<(?:br|\/?(?:p|li|h\d|t[dhr]|div|dt|dd|aside))\b/u;

function readingOf(strings: TemplateStringsArray): MarkupReading {
  let place = 0;
  return (strings.join(PLACE).match(PART) ?? []).flatMap((part): MarkupReading => {
    const first = place;
    place += part.split(PLACE).length - 1;
    if (part === PLACE) return [first];
    if (!/^<[^>]*>$/u.test(part)) return [part];
    return ENDS_LINE.test(part) ? [' '] : [];
  });
}

function markupOf(value: HtmlValue): string {
  return value instanceof SafeHtml ? value.toHTML() : escapeHtml(String(value));
}

/** What a reader reads of a value. */
export function textOf(value: HtmlValue): string {
  return value instanceof SafeHtml ? value.text : String(value);
}
