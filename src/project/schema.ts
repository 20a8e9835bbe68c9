/** A JSON Schema (draft 2020-12), in whatever words of it. */
export type Schema = {
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly [word: string]: unknown;
};

/** What YAML makes of a text, a number or a yes typed without quotes. */
const SCALAR: readonly string[] = ['string', 'number', 'boolean'];

/** A text, or one that a pattern reads whole. JSON Schema has no flags, and white space round a text is nothing. */
export function textSchema(pattern?: RegExp): Schema {
  if (!pattern) return { type: SCALAR };
  const source = pattern.ignoreCase ? inAnyCase(pattern.source) : pattern.source;
  return {
    type: SCALAR,
    pattern: source.replace(/^\^/u, String.raw`^\s*`).replace(/\$$/u, String.raw`\s*$`),
  };
}

/** The source of a pattern that ignores case, without the flag. Groups with names are not provided for. */
function inAnyCase(source: string): string {
  return source.replace(/\\p\{\w+\}|\\.|\[[^\]]*\]|[a-z]/giu, (part) => {
    if (part.startsWith('\\')) return part;
    if (part.startsWith('[')) return part.replace(/[a-z]-[a-z]/gu, (range) => range + range.toUpperCase());
    return `[${part.toLowerCase()}${part.toUpperCase()}]`;
  });
}

/** One value or a list of them, or nothing, which is an empty one. */
export function listSchema(items: Schema): Schema {
  return { anyOf: [items, { type: 'array', items }, { type: 'null' }] };
}

/** One schema where a condition holds, another where it does not. */
export function choiceSchema(condition: Schema, holds: Schema, otherwise: Schema): Schema {
  // biome-ignore lint/suspicious/noThenProperty: it is a word of JSON Schema
  return { if: condition, then: holds, else: otherwise };
}
