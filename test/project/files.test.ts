import { describe, expect, it } from 'vitest';
import { blamed, faultsOf, readSheet } from './reading.ts';

describe('a file that is no sheet', () => {
  it.each<[string, string, string[]]>([
    ['empty', '', ['empty-file: ']],
    ['blank', ' \n\t\n', ['empty-file: ']],
    ['a lone byte order mark', '\uFEFF', ['empty-file: ']],
    ['plain Markdown', '\nSome notes.\n\n## A step\n', ['no-frontmatter: Some notes.']],
    ['a table of settings without its lines', 'title: A\n', ['no-frontmatter: title: A']],
    ['opened and never closed', '---\ntitle: A\n', ['broken-yaml: ---']],
    ['closed with too many dashes', '---\ntitle: A\n-----\n', ['broken-yaml: ---']],
    [
      'a head that a comment keeps open',
      '---\ntitle: A\nmeasurements: {}\n--- # end\nHello.\n\n## One\n\n---\n\n## Two\n',
      ['broken-yaml: --- # end'],
    ],
    [
      'a part of a head that nothing would read',
      '---\ntitle: A\nmeasurements: {}\n--- # money\nunits: metric\n---\n',
      ['broken-yaml: --- # money'],
    ],
    [
      'measurements with nothing under them',
      '---\ntitle: box\nmeasurements:\n---\n',
      ['missing-value: measurements'],
    ],
    ['a list', '---\n- a\n---\n', ['unexpected-value: - a\n', 'missing-value: ---', 'missing-value: ---']],
    [
      'a sentence',
      '---\njust words\n---\n',
      ['unexpected-value: just words', 'missing-value: ---', 'missing-value: ---'],
    ],
  ])('%s', (_, text, faults) => {
    const project = readSheet(text);
    expect(faultsOf(project)).toEqual(faults);
    expect(project.title.value).toBe('box');
    expect(project.pieces.size).toBe(0);
  });

  it('still has its steps when only the head is missing', () => {
    expect(readSheet('Hello.\n\n## Fold it\n').steps.map(({ title }) => title.value)).toEqual(['Fold it']);
  });

  it('says that nothing is known of a head that could not be read', () => {
    const project = readSheet('---\ntitle: "A\n---\n## Cut\nTake :piece[box].\n');
    expect(project.readable).toBe(false);
    expect(faultsOf(project)).toEqual(['broken-yaml: "']);
  });
});

describe('broken YAML is put in plain words at its place', () => {
  it.each<[string, string, string]>([
    ['title: Boxes: big and small', 'second colon', 'B'],
    ['title: "A', 'quotation mark is opened', '"'],
    ["title: 'A", 'quotation mark is opened', "'"],
    ['title: A\n\tsummary: B', 'tab', '\t'],
    ['title: A\nfoo\nlevel: b', 'no key', 'f'],
    ['title: @home', 'cannot begin with this character', '@'],
    ['title: `A`', 'cannot begin with this character', '`'],
    ['title: "A" B', 'does not belong here', 'B'],
    ['tags: [a, b', 'bracket', 'b'],
    ['tags: [a, b\nlevel: x', 'bracket', 'l'],
    ['tags: [a, b]]', 'does not belong here', ']'],
    ['title: "a\\q"', 'backslash', '\\'],
    ['measurements:\n  unit: in\n pieces: {}', 'indent', ' '],
    ['stock: { m: { color: #fff } }\nlevel: x', '# without quotes', '#fff'],
    ['stock: { m: { color: #6b7f5b, name: M }\n  }\nlevel: x', '# without quotes', '#6b7f5b'],
    ['stock:\n  m: { color: #6b7f5b }\n  n: { color: #fff }', '# without quotes', '#6b7f5b'],
    [`deep: ${'['.repeat(3000)}`, 'without end', '['],
  ])('%s', (yaml, words, characters) => {
    const { findings } = readSheet(`---\n${yaml}\n---\n`);
    expect(findings).toHaveLength(1);
    const [fault] = findings;
    expect(fault?.rule === 'broken-yaml' && fault.facts.problem).toContain(words);
    expect(fault && blamed(fault.at)).toBe(characters);
  });

  it.each<[string, string, RegExp]>([
    ['title: "A card\nsummary: B', '"A', /put a second one after/u],
    ['title: "A card\nsummary: "B"\nlevel: "C"', '"A', /put a second one after/u],
    ["title: A\nsummary: 'B\nlevel: 'C'", "'B", /put a second one after/u],
    ['stock: { m: { name: "M, sheet: 8 x 11 } }\nlevel: "x"', '"M', /put a second one after/u],
    ['title: A\ntags:\n  - "b\n  - c', '"b', /put a second one after/u],
    ["title: 'It's a card'\nlevel: x", "'It", /in double quotes/u],
    ['title: "A "fine" card', '"A', /in single quotes/u],
    ['stock: { m: { color: #6b7f5b } }', '#6b7f5b', /put the color in quotes: "#6b7f5b"/u],
  ])('at what opens it: %s', (yaml, opening, remedy) => {
    const text = `---\n${yaml}\n---\n`;
    const [fault] = readSheet(text).findings;
    expect(fault?.at.start).toBe(text.indexOf(opening));
    expect(fault?.rule === 'broken-yaml' && fault.facts.remedy).toMatch(remedy);
  });

  it('does not blame a value that runs over two lines for a slip elsewhere', () => {
    const [fault] = readSheet('---\ntitle: "A card\n  of two lines"\nsummary: @home\n---\n').findings;
    expect(fault && blamed(fault.at)).toBe('@');
  });
});

describe('a key', () => {
  const inPieces = (entries: string): string =>
    `---\ntitle: A\nmeasurements:\n  pieces:\n    ${entries}\n---\n`;

  it.each<[string, string]>([
    ['{ "": { cut: 1 x 1 } }', '""'],
    ['{ " ": { cut: 1 x 1 } }', '" "'],
    ['{ : { cut: 1 x 1 } }', ':'],
    [': { cut: 1 x 1 }', ':'],
    ['{ ? [a] : { cut: 1 x 1 } }', '[a]'],
  ])('is a word or a name: %s', (entries, characters) => {
    const { pieces, findings } = readSheet(inPieces(entries));
    expect(pieces.size).toBe(0);
    expect(findings).toMatchObject([{ rule: 'unexpected-value', facts: { misfit: 'no key' } }]);
    expect(findings.map(({ at }) => blamed(at))).toEqual([characters]);
  });

  it('is the same with blanks round it', () => {
    const { pieces, findings } = readSheet(inPieces('{ a: { cut: 1 x 1 }, "a ": { cut: 2 x 2 } }'));
    expect([...pieces.keys()]).toEqual(['a']);
    expect(findings).toMatchObject([{ rule: 'repeated-key', facts: { key: 'a' } }]);
  });
});

describe('anchors and aliases', () => {
  const head = (lines: string): string => `---\ntitle: A\n${lines}\n---\n`;

  it('are followed, to the place of the value itself', () => {
    const project = readSheet(head('level: &l easy\noccasion: *l\nmeasurements: {}'));
    expect(project.findings).toEqual([]);
    expect(project.occasion && [project.occasion.value, blamed(project.occasion.at)]).toEqual([
      'easy',
      'easy',
    ]);
  });

  it.each<[string, string]>([
    ['tags: &t [a, *t]\nmeasurements: {}', 'unexpected-value: *t'],
    ['level: *nowhere\nmeasurements: {}', 'unexpected-value: *nowhere'],
    ['measurements: *nowhere', 'unexpected-value: *nowhere'],
    ['measurements: { pieces: { a: &a { cut: 1 x 1 }, b: { <<: *a, cut: 2 x 2 } } }', 'unexpected-value: <<'],
    ['measurements: { pieces: { a: &a { cut: 1 x 1 }, b: { <<: *a } } }', 'unexpected-value: <<'],
    ['measurements: { holds: &h { item: *h } }', 'unexpected-value: *h'],
  ])('are refused where they lead nowhere, which is all that is said: %s', (lines, fault) => {
    expect(faultsOf(readSheet(head(lines)))).toEqual([fault]);
  });

  it('cannot be piled up to fill the memory', () => {
    const lines = ['a0: &a0 [x, x, x, x, x, x, x, x, x, x]'];
    for (let depth = 1; depth < 12; depth += 1) {
      lines.push(`a${depth}: &a${depth} [${Array.from({ length: 10 }, () => `*a${depth - 1}`).join(', ')}]`);
    }
    expect(readSheet(head(lines.join('\n'))).findings.length).toBeGreaterThan(10);
  });
});
