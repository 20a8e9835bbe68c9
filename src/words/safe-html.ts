/** What may be set into a piece of markup: text is escaped, markup of ours is not. */
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

/**
 * Markup that is our own through and through, never a person's words. Templates print it as it is (Handlebars asks
 * for `toHTML`) and escape everything else, so that no template ever needs to switch escaping off.
 */
export class SafeHtml {
  static readonly empty: SafeHtml = new SafeHtml('');
  readonly #markup: string;

  private constructor(markup: string) {
    this.#markup = markup;
  }

  /** Takes markup on trust: only from the sanitiser, from our drawings and from the `html` tag below. */
  static vouched(markup: string): SafeHtml {
    return new SafeHtml(markup);
  }

  static join(parts: readonly SafeHtml[], between: HtmlValue = ''): SafeHtml {
    return new SafeHtml(parts.map((part) => part.#markup).join(markupOf(between)));
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
  return SafeHtml.vouched(String.raw({ raw: strings }, ...values.map(markupOf)));
}

function markupOf(value: HtmlValue): string {
  return value instanceof SafeHtml ? value.toHTML() : escapeHtml(String(value));
}

/** A tag of ours, whatever its attributes hold. */
const TAG = /<\/?[a-z](?:"[^"]*"|'[^']*'|[^"'>])*>/giu;

const NAMED: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"' };

/** What a reader reads of markup of ours, on one line. */
export function plainText(markup: SafeHtml): string {
  return markup
    .toHTML()
    .replace(/<(?:br|\/?(?:p|li|h\d|t[dhr]|div|dt|dd|aside))\b/giu, ' $&')
    .replace(TAG, '')
    .replace(/&(?:#x([0-9a-f]+)|#(\d+)|(\w+));/giu, (whole, hex, decimal, name) =>
      name === undefined
        ? String.fromCodePoint(hex === undefined ? Number(decimal) : Number.parseInt(hex, 16))
        : (NAMED[name] ?? whole),
    )
    .replace(/\s+/gu, ' ')
    .trim();
}
