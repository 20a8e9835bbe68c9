import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import {
  fontOfWoff,
  formatOfFont,
  type Letters,
  lettersOf,
  unpackFont,
} from '../../src/project/font-file.ts';
import { findLacking, rangeBeside } from '../../src/project/letters.ts';
import { mergeFindings } from '../../src/proof/tell.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';
import { isFromRight } from '../../src/words/direction.ts';

const require = createRequire(import.meta.url);

function woff(name: string): Buffer {
  return readFileSync(require.resolve(`@fontsource/public-sans/files/public-sans-${name}.woff`));
}

function codesOf(letters: Letters = []): number[] {
  return letters.flatMap(([first, last]) => Array.from({ length: last - first + 1 }, (_, at) => first + at));
}

/** A font of one table, as OpenType 1.9.1 lays it out: a `cmap` of format 12 with these groups. */
function fontWith(groups: readonly (readonly [first: number, last: number])[]): Buffer {
  const table = Buffer.alloc(12 + 16 + groups.length * 12);
  table.writeUInt16BE(1, 2);
  table.writeUInt16BE(3, 4);
  table.writeUInt16BE(10, 6);
  table.writeUInt32BE(12, 8);
  table.writeUInt16BE(12, 12);
  table.writeUInt32BE(groups.length, 24);
  groups.forEach(([first, last], index) => {
    table.writeUInt32BE(first, 28 + index * 12);
    table.writeUInt32BE(last, 32 + index * 12);
    table.writeUInt32BE(1, 36 + index * 12);
  });
  const head = Buffer.alloc(28);
  head.writeUInt32BE(0x00010000, 0);
  head.writeUInt16BE(1, 4);
  head.write('cmap', 12, 'latin1');
  head.writeUInt32BE(28, 20);
  head.writeUInt32BE(table.length, 24);
  return Buffer.concat([head, table]);
}

describe('the letters of a font', () => {
  it.each(['400-normal', '400-italic', '700-normal'])('are ours in each face of the typeface: %s', (face) => {
    const files = ['latin', 'latin-ext'].map((subset) =>
      codesOf(lettersOf(fontOfWoff(woff(`${subset}-${face}`)))),
    );
    const printed = new Set(files.flat());
    const lacks = (code: number): boolean =>
      findLacking({ path: 'card/sheet.md', text: String.fromCodePoint(code) }, undefined, 0) !== undefined;
    const all = Array.from({ length: 0x3000 }, (_, code) => code);
    expect(all.filter((code) => printed.has(code) && lacks(code))).toEqual([]);
    // What needs no shape: blanks and marks; and fractions and primes, which are set as measurements.
    const setAnew = /[\s\p{Cc}\p{Cf}\u2000-\u200f⅓⅔⅕-⅞′″]/u;
    const more = all.filter(
      (code) => !(printed.has(code) || lacks(code) || setAnew.test(String.fromCodePoint(code))),
    );
    expect(more).toEqual([]);
  });

  it('are read of a large font too', () => {
    const groups = [
      [0x3041, 0x3096],
      [0x4e00, 0x9fff],
      [0x20000, 0x20010],
    ] as const;
    expect(lettersOf(fontWith(groups))).toEqual(groups);
    expect(rangeBeside([[0xa0, 0x17f], ...groups])).toBe(
      'U+132-133, U+149, U+17F, U+3041-3096, U+4E00-9FFF, U+20000-20010',
    );
  });

  it('are none of what is no font, cut short or packed otherwise', () => {
    expect(unpackFont(Buffer.from('wOF2 and more'))).toBeUndefined();
    expect(unpackFont(Buffer.from(''))).toBeUndefined();
    expect(unpackFont(woff('latin-400-normal').subarray(0, 300))).toBeUndefined();
    expect(lettersOf(fontWith([[0x3041, 0x3096]]).subarray(0, 40))).toBeUndefined();
  });

  it('are read once where a table says them again, and are none where they have no end', () => {
    const again = Array.from({ length: 20_000 }, () => [0x100, 0x10ffff] as const);
    expect(lettersOf(fontWith(again))).toEqual([[0x100, 0x10ffff]]);
    const odd = Array.from({ length: 30_000 }, (_, index) => [2 * index, 2 * index] as const);
    expect(lettersOf(fontWith(odd))).toBeUndefined();
  });

  it('are none of what unpacks to more than any font', () => {
    const packed = woff('latin-400-normal');
    packed.writeUInt32BE(0xf0000000, 44 + 12);
    expect(() => fontOfWoff(packed)).toThrow('large');
    expect(unpackFont(packed)).toBeUndefined();
  });

  it('are of a kind that the bytes tell, not the name', () => {
    expect(formatOfFont(woff('latin-400-normal'))).toBe('woff');
    expect(formatOfFont(fontOfWoff(woff('latin-400-normal')))).toBe('truetype');
    expect(formatOfFont(Buffer.from('<!doctype html>'))).toBeUndefined();
    expect(formatOfFont(Buffer.from('OT'))).toBeUndefined();
  });
});

describe('what a text lacks', () => {
  const lackedIn = (text: string, letters?: Letters): readonly string[] | undefined => {
    const font = letters && { path: 'any.ttf', file: 'any.ttf', digest: '', letters };
    const found = findLacking({ path: 'card/sheet.md', text }, font, 0);
    return found && [text.slice(found.at.start, found.at.end), found.facts.characters.join('')];
  };

  it.each([
    ['Zażółć gęślą jaźń, «œuvre», „Größe“ – 2⅛″ × 4½', undefined],
    ['## 折り紙 の 箱 and more', ['折り紙 の 箱', '折り紙の箱']],
    ['קופסה of two words', ['קופסה', 'קופסה']],
    ['Привет', ['Привет', 'Привет']],
  ])('%s', (text, lacked) => {
    expect(lackedIn(text)).toEqual(lacked);
  });

  it('is less with a font', () => {
    expect(lackedIn('折り紙', [[0x3041, 0x3096]])).toEqual(['折', '折紙']);
  });
});

/** Unicode CLDR 46, likely scripts: what `maximize` adds. */
it.each([
  ['he', true],
  ['ar-EG', true],
  ['fa', true],
  ['yi', true],
  ['ja', false],
  ['de-AT', false],
  ['az-Arab', true],
  ['az', false],
])('%s is written from right to left: %s', (language, isSo) => {
  expect(isFromRight(language)).toBe(isSo);
});

describe('a workspace whose letters nobody has', () => {
  const sheet =
    '---\ntitle: Card\nmeasurements:\n  pieces: { card: { cut: 4 x 5 } }\n---\n## Cut\nThe :piece[card].\n';
  const found = (texts: Readonly<Record<string, string>>): string[] =>
    mergeFindings(readWorkspaceFromTexts({ 'card/sheet.md': sheet, ...texts }).findings)
      .filter(({ rule }) => rule === 'missing-letters')
      .map(({ at }) => `${at?.file.path} ${at?.file.text.slice(at.start, at.end)}`);

  it('hears of it once for the settings and each shared file, at the very characters, and of no comment', () => {
    const texts = {
      'site.yaml': 'title: 折り bench # 紙\n',
      'shared/stock.yaml': '# 紙\nstock: { moss: { name: "苔 moss", sheet: A4 } }\n',
      'shared/tools.yaml': 'supplies: { bone: { item: Bone folder, kind: tool } }\n',
    };
    expect(found(texts)).toEqual(['shared/stock.yaml 苔', 'site.yaml 折り']);
    expect(
      found({ ...texts, 'site.yaml': `${texts['site.yaml']}font: fonts/any.ttf\n`, 'fonts/any.ttf': '' }),
    ).toEqual([]);
  });

  // Each of them was once looked for in the whole line before it: half a minute, and then more than any test may take.
  it('hears of sixty thousand in one line at once', () => {
    const title = `title: "${'я,'.repeat(60_000)}" # ж\n`;
    expect(found({ 'site.yaml': title })).toEqual(['site.yaml я']);
  });

  it.each([
    ['title: "# 紙" # 苔', '紙'],
    ["title: '# 紙' # 苔", '紙'],
    ['title: a#紙 # 苔', '紙'],
    ['# 苔\ntitle: 紙', '紙'],
    ['title: Bench # 苔', undefined],
    ['title: Bench\n  # 苔 # 紙', undefined],
  ])('knows where a comment begins: %s', (text, run) => {
    expect(found({ 'site.yaml': `${text}\n` })).toEqual(run === undefined ? [] : [`site.yaml ${run}`]);
  });
});
