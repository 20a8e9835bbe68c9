import { describe, expect, it } from 'vitest';
import { findingJson } from '../../src/proof/print.ts';
import { findingsOf } from './workspace.ts';

/** A sheet of one piece, whose line is the eighth, with a base that is the ninth. */
function sheetOf(piece: string, head = 'title: Card'): string {
  return [
    '---',
    head,
    'measurements:',
    '  unit: in',
    '  stock:',
    '    cream: { name: Cream, sheet: 8 1/2 x 11 }',
    '  pieces:',
    `    front: ${piece}`,
    '    card: { stock: cream, cut: 4 x 5 }',
    '---',
    '## Stick',
    'Stick :piece[front] on :piece[card].',
    '',
  ].join('\n');
}

/** `8:33-38 rule: text` of each error. */
function errorsIn(sheet: string, files: Readonly<Record<string, string>> = {}): string[] {
  return findingsOf(sheet, files)
    .filter(({ severity }) => severity === 'error')
    .map((finding) => {
      const { line, column, endColumn, rule } = findingJson(finding);
      const place = line === null ? 'nowhere' : `${line}:${column}-${endColumn}`;
      return `${place} ${rule}: ${finding.message}`;
    });
}

describe('what people may type', () => {
  it.each<[string, string]>([
    ['2 1/0 x 4', '8:33-38 unreadable-length: cut: "2 1/0" divides by zero'],
    ['1/4/2 x 4', '8:33-38 unreadable-length: cut: "1/4/2" is no measurement'],
    ['-3 x 4', '8:33-35 unreadable-length: cut: "-3" is less than zero'],
    ['4 x -3', '8:37-39 unreadable-length: cut: "-3" is less than zero'],
    ['99999 x 4', '8:33-38 unreadable-length: cut: "99999" is longer than 1 m (39 3/8 in)'],
    ['3 x 0', '8:37-38 unreadable-length: cut: "0" measures nothing'],
    ['two inches', '8:33-43 unreadable-length: cut: "two inches" is no measurement'],
    ['two inches x 3', '8:33-43 unreadable-length: cut: "two inches" is no measurement'],
    ['3', '8:33-34 unreadable-length: cut: "3" has fewer measurements than belong here'],
    ['3 x 4 x 5', '8:33-42 unreadable-length: cut: "3 x 4 x 5" has more measurements than belong here'],
    ['"3 x 1/0"', '8:38-41 unreadable-length: cut: "1/0" divides by zero'],
  ])('cut: %s', (cut, expected) => {
    expect(errorsIn(sheetOf(`{ stock: cream, cut: ${cut} }`))).toEqual([expected]);
  });

  it.each<[string, string, string[]]>([
    ['a layer on itself', 'on: front', ['8:44-49 circular-base: front is its own base']],
    ['a base that is not there', 'on: cart', ['8:44-48 unknown-reference: there is no piece "cart"']],
    [
      'a panel that is not there',
      'on: card.lid',
      ['8:44-52 unknown-reference: front lies on card.lid, but card has no panel "lid"'],
    ],
    ['a key that is not known', 'om: card', ['8:40-42 unknown-key: "om" is not a setting of front']],
    [
      'a text that a comma cuts',
      'on: card, the cream one',
      ['8:50-63 unknown-key: a comma cuts "the cream one" off from the words before it'],
    ],
    ['a distance beside "on:"', 'left: 1/2', ['8:40-44 unknown-key: "left" is not a setting of front']],
    [
      'a key twice',
      'cut: 3 x 4',
      ['8:40-43 repeated-key: "cut" is written twice here; only the first is read'],
    ],
    ['a key with nothing behind it', 'on: ', ['8:40-42 missing-value: there is no value after "on:"']],
    ['a merge of keys', '<<: card', ['8:40-42 unexpected-value: "<<" is not read in a sheet']],
    [
      'an alias of nothing',
      'turn: *d',
      ['8:46-48 unexpected-value: "*d" leads nowhere: no value above that has ended is marked &d'],
    ],
    ['no word before a colon', '"": 3', ['8:40-42 unexpected-value: there is no word before this colon']],
    [
      'a word for a number',
      'count: two',
      ['8:47-50 unexpected-value: "two" is not a valid value for "count"'],
    ],
  ])('%s', (_, entry, expected) => {
    expect(errorsIn(sheetOf(`{ stock: cream, cut: 3 x 4, ${entry} }`))).toEqual(expected);
  });

  it.each<[string, string, string]>([
    ['cut:3 x 4', 'there is no space after the colon in "cut:3 x 4"', 'write "cut: 3 x 4"'],
    ['cut 3 x 4', 'there is no colon in "cut 3 x 4"', 'write "cut: 3 x 4"'],
    [
      'form: tray, inside:3 x 4 x 1',
      'there is no space after the colon in "inside:3 x 4 x 1"',
      'write "inside: 3 x 4 x 1"',
    ],
    [
      'form: envelope, card:3 x 4',
      'there is no space after the colon in "card:3 x 4"',
      'write "card: 3 x 4"',
    ],
  ])('a slip on the way from a key to its value, and nothing else: %s', (entry, message, remedy) => {
    const sheet = sheetOf(`{ stock: cream, ${entry} }`);
    const found = findingsOf(sheet).filter(({ severity }) => severity === 'error');
    expect(found.map((each) => [each.message, each.remedy])).toEqual([[message, remedy]]);
  });

  it.each<[string, string]>([
    ['cut: 3 x 4, left: 1/2', 'write "at: { left: 1/2 }"'],
    ['cut: 3 x 4, on: box.floo', 'write "box.floor"'],
    ['cut: 3 x 4, on: box, that way round', 'put the whole value in quotes: "box, that way round"'],
  ])('and what to write instead of %s', (entry, remedy) => {
    const box = 'pieces:\n    box: { stock: cream, form: tray, inside: 5 x 6 x 1 }';
    const sheet = sheetOf(`{ stock: cream, ${entry} }`).replace('pieces:', box);
    expect(findingsOf(sheet).flatMap((each) => each.remedy ?? [])).toContain(remedy);
  });

  it('says once that bases run in a circle', () => {
    const sheet = sheetOf('{ stock: cream, cut: 3 x 4, on: card }').replace(
      'cut: 4 x 5 }',
      'cut: 4 x 5, on: front }',
    );
    expect(errorsIn(sheet).map((error) => error.split(' ').slice(0, 2).join(' '))).toEqual([
      '8:44-48 circular-base:',
    ]);
  });

  it.each<[string, string, string[]]>([
    ['an empty file', '', ['nowhere empty-file: the file is empty']],
    ['a file of blanks', ' \n\n', ['nowhere empty-file: the file is empty']],
    [
      'Markdown without a head',
      '# A card\nCut it.\n',
      ['1:1-9 no-frontmatter: the sheet does not begin with a block between two lines of ---'],
    ],
    [
      'a head that never ends',
      '---\ntitle: Card\n',
      [
        '1:1-4 broken-yaml: the settings block cannot be read: the block that begins with --- has no second --- to end it',
      ],
    ],
    [
      'a head that a comment keeps open',
      '---\ntitle: Card\n--- # end\nHello.\n\n---\n## Stick\n',
      [
        '3:1-10 broken-yaml: the settings block cannot be read: a second part begins here, and nothing from here on is read',
      ],
    ],
    [
      'a tab for an indent',
      '---\ntitle: Card\nmeasurements:\n\tunit: in\n---\n',
      [
        '4:1-2 broken-yaml: the settings block cannot be read: there is a tab at the beginning of this line; indent with spaces',
      ],
    ],
  ])('%s', (_, sheet, expected) => {
    expect(errorsIn(sheet)).toEqual(expected);
  });

  it('of a file of shared/ says that it is the file', () => {
    const files = { 'shared/paper.yaml': 'stock: { moss: "A }\n' };
    expect(errorsIn(sheetOf('{ stock: cream, cut: 3 x 4 }'), files)).toEqual([
      '1:16-17 broken-yaml: the file cannot be read: a quotation mark is opened and never closed',
    ]);
  });

  it('finds a picture that leaves the folder, and one that is not there', () => {
    const sheet = `${sheetOf('{ stock: cream, cut: 3 x 4 }')}\n![The card](../../secret.jpg)\n\n![The card](photos/card.jpg)\n`;
    expect(errorsIn(sheet)).toEqual([
      '14:13-29 outside-picture: the picture "../../secret.jpg" is not in this project\'s folder',
      '16:13-28 missing-picture: there is no picture "photos/card.jpg" in this project\'s folder',
    ]);
  });

  it('finds dates that do not exist', () => {
    expect(errorsIn(sheetOf('{ stock: cream, cut: 3 x 4 }', 'title: Card\nsession: 2027-02-29'))).toEqual([
      '3:10-20 no-such-date: 2027-02-29 is not a real date: that month has 28 days',
    ]);
    expect(errorsIn(sheetOf('{ stock: cream, cut: 3 x 4 }', 'title: Card\nsession: 2028-02-29'))).toEqual([]);
    expect(errorsIn(sheetOf('{ stock: cream, cut: 3 x 4 }', 'title: Card\nsession: 2027-13-01'))).toEqual([
      '3:10-20 no-such-date: 2027-13-01 is not a real date: there is no month 13',
    ]);
  });

  it('counts lines as an editor does, whatever ends them', () => {
    const sheet = sheetOf('{ stock: cream, cut: 2 1/0 x 4 }');
    for (const end of ['\r\n', '\n']) {
      expect(errorsIn(sheet.replaceAll('\n', end))[0]).toMatch(/^8:33-38 /u);
    }
    expect(errorsIn(`\uFEFF${sheet}`)[0]).toMatch(/^8:33-38 /u);
  });

  it('reports unsafe content as a warning at its place', () => {
    const sheet = `${sheetOf('{ stock: cream, cut: 3 x 4 }')}\n<script>alert(1)</script>\n\n[here](javascript:alert(1))\n`;
    const found = findingsOf(sheet).filter(({ rule }) => rule === 'unsafe-content');
    expect(found.map((finding) => [finding.severity, findingJson(finding).line, finding.message])).toEqual([
      ['warning', 14, 'HTML is not allowed in a sheet and is shown as plain text'],
      ['warning', 16, 'only http, https and mailto links work in a sheet'],
    ]);
  });

  it('that names a panel on paper is told nothing of it where the piece that has it could not be read', () => {
    const boxOf = (form: string): string[] =>
      errorsIn(
        sheetOf(`{ stock: cream, form: ${form}, inside: 3 x 1 x 4 }`).replace(
          '    card: { stock: cream, cut: 4 x 5 }',
          '    card: { stock: cream, cut: 4 x 5 }\n  names: { front-bottom: base flap, bakc: wall }',
        ),
      );
    expect(boxOf('clip-top bux')).toEqual(['8:34-46 unknown-reference: there is no form "clip-top bux"']);
    expect(boxOf('clip-top box')).toEqual(['10:37-41 unknown-part: there is no panel "bakc"']);
  });

  it('that names a panel on paper is told of it where no variant has it, and once', () => {
    const called = (name: string): string[] =>
      errorsIn(
        sheetOf('{ stock: cream, form: single-fold card, size: 5 1/2 x 4 1/4 }').replace(
          '    card: { stock: cream, cut: 4 x 5 }',
          `    card: { stock: cream, cut: 4 x 5 }\n  names: { ${name}: cover }\n  variants:\n    one: {}\n    gates: { front.form: gate-fold card }`,
        ),
      );
    expect([called('front'), called('left')]).toEqual([[], []]);
    expect(called('frnt')).toEqual(['10:12-16 unknown-part: there is no panel "frnt"']);
  });

  it('for a caliper is no thickness of paper where it is in points', () => {
    const withCaliper = (caliper: string): string[] =>
      errorsIn(
        sheetOf('{ stock: cream, cut: 3 x 4, on: card }').replace('11 }', `11, caliper: ${caliper} }`),
      );
    expect(withCaliper('12')).toEqual(['6:55-57 unexpected-value: "12" is not a valid value for "caliper"']);
    expect(['0.012', '1/8', '3 mm'].flatMap(withCaliper)).toEqual([]);
  });
});
