import type { Font, Letters } from './font-file.ts';
import type { Place, SourceFile } from './source.ts';

/** The characters of our typeface, Public Sans as it is printed and shown: a test reads them from its files again. */
const TYPEFACE =
  '20-7e a0-131 134-148 14a-17e 18f 192 1a0-1a1 1af-1b0 1d4 1ea-1eb 1fa-21b 237 259 2bb-2bc 2c6-2c7 2da 2dc-2dd 300-301 303-304 308-309 323 1e0c-1e0d 1e24-1e25 1e44-1e45 1e5a-1e5b 1e62-1e63 1e6c-1e6d 1e80-1e85 1e92-1e93 1ef2-1ef9 2013-2014 2018-201a 201c-201e 2020 2022 2026 2039-203a 2044 20a1 20a3-20a4 20a6 20a9 20ab-20ac 20b9-20ba 2113 2122 2212 2215';

/** Characters that need no shape (blanks, marks for the text's direction), and those of measurements, which are set anew. */
const UNPRINTED = String.raw`\s\p{Cc}\p{Cf}\u00ad\u2000-\u200f⅓⅔⅕-⅞′″`;

/** Our typeface's own characters. */
const OWN_LETTERS: Letters = TYPEFACE.split(' ').map((stretch) => {
  const [first = '', last = first] = stretch.split('-');
  return [Number.parseInt(first, 16), Number.parseInt(last, 16)];
});

const NO_LETTERS: Letters = [];
const finders = new WeakMap<Letters, RegExp>();

/** Finds runs of characters that neither our typeface nor another font has: blanks between them belong to a run. */
function lackingLetters(font: Letters = NO_LETTERS): RegExp {
  const finder = finders.get(font) ?? finderOf(font);
  finders.set(font, finder);
  return finder;
}

function finderOf(font: Letters): RegExp {
  const had = [...OWN_LETTERS, ...font].map((stretch) => stretch.map(escaped).join('-')).join('');
  const lacking = `[^${UNPRINTED}${had}]`;
  return new RegExp(`${lacking}+(?:[ \u3000]+${lacking}+)*`, 'gu');
}

function escaped(code: number): string {
  return `\\u{${code.toString(16)}}`;
}

/** The CSS `unicode-range` of what a font has beside our typeface. */
export function rangeBeside(font: Letters): string {
  const hexadecimal = (code: number): string => code.toString(16).toUpperCase();
  return withoutOwn(font)
    .map(([first, last]) => `U+${hexadecimal(first)}${last > first ? `-${hexadecimal(last)}` : ''}`)
    .join(', ');
}

function withoutOwn(font: Letters): Letters {
  return OWN_LETTERS.reduce<Letters>(
    (left, [first, last]) =>
      left.flatMap(([from, to]): Letters => {
        if (last < from || first > to) return [[from, to]];
        const parts: Letters = [
          [from, first - 1],
          [last + 1, to],
        ];
        return parts.filter(([start, end]) => start <= end);
      }),
    font.filter(([first]) => first > 0x20),
  );
}

/** Characters that nobody has a shape for: where the first of them are, and each of them once. */
type Lacking = {
  readonly at: Place;
  readonly facts: { readonly characters: readonly string[]; readonly hasFont: boolean };
};

/**
 * What of a file's characters neither our typeface nor the font of the settings has. A comment is never printed; of a font
 * that can't be read it is told already.
 * @param settings how much of the text, from its beginning, is YAML
 */
export function findLacking(
  file: SourceFile,
  font: Font | undefined,
  settings: number = file.text.length,
): Lacking | undefined {
  if (font?.letters.length === 0) return undefined;
  const printed = `${withoutComments(file.text.slice(0, settings))}${file.text.slice(settings)}`;
  const runs = [...printed.matchAll(lackingLetters(font?.letters))];
  const [first] = runs;
  if (!first) return undefined;
  const at = { file, start: first.index, end: first.index + first[0].length };
  const characters = new Set(runs.flatMap(([run]) => [...run.replace(/\s/gu, '')]));
  return { at, facts: { characters: [...characters], hasFont: font !== undefined } };
}

/** How much of a sheet is its settings. */
export function frontmatterIn(text: string): number {
  return /^---\r?\n[\s\S]*?\n---/u.exec(text)?.[0].length ?? 0;
}

/** The first `#` of a line that is in no quotes and follows no letter, and all after it. */
const COMMENT = /^((?:[^"'#\n]|"[^"\n]*"|'[^'\n]*'|\S#)*?(?:^|[^\S\n]))(#.*)/gmu;

/** YAML with blanks in the place of its comments. */
function withoutComments(yaml: string): string {
  return yaml.replace(COMMENT, (_, kept: string, comment: string) => kept + ' '.repeat(comment.length));
}
