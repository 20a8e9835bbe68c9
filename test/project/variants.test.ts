import { describe, expect, it } from 'vitest';
import { examine } from '../../src/examine/examine.ts';
import type { Project } from '../../src/project/model.ts';
import { ownNet } from '../../src/shape/sheets.ts';
import { findingsOf as toldOf, workspaceOf } from '../proof/workspace.ts';
import { blamed, cutOf, faultsOf, from, pieceOf, readSheet, sheetOf } from './reading.ts';

const BLOCK = `stock:
  cream: { sheet: 8 1/2 x 11 }
  moss: { sheet: 12 x 12 }
pieces:
  card: { stock: cream, cut: 4 x 5, count: 2 }
  front: { stock: moss, cut: 3 x 4, on: card, at: { left: 1/2 } }
  box: { stock: moss, form: tray, inside: 3 x 4 x 1 }
holds: { item: card, size: 2 x 3 x 1/16 }
`;

function read(variants: string, head = ''): readonly Project[] {
  const text = sheetOf(BLOCK + variants, '## Make it\nTake :piece[card], :piece[front], :piece[box].');
  const project = readSheet(head === '' ? text : text.replace('measurements:', `${head}\nmeasurements:`));
  return [project, ...project.others];
}

describe('a variant', () => {
  it.each([
    ['by its path', 'card.cut: 2 x 3'],
    ['as a map', 'card: { cut: 2 x 3 }'],
    ['from the block down', 'pieces: { card: { cut: 2 x 3 } }'],
    ['by its whole path', 'pieces.card.cut: 2 x 3'],
  ])('has a value of its own %s', (_, value) => {
    const [small, large] = read(`variants: { small: { ${value} }, large: {} }`);
    expect(small?.findings).toEqual([]);
    expect(small && cutOf(small, 'card')).toEqual(['2 in from 2', '3 in from 3']);
    expect(large && cutOf(large, 'card')).toEqual(['4 in from 4', '5 in from 5']);
    expect([small, large].map((each) => each?.variant?.id.value)).toEqual(['small', 'large']);
  });

  it('is written in the block or above it, under a name for the paper', () => {
    const [one] = read('', 'variants: { s: { name: Small ones, card.cut: 2 x 3 }, l: }');
    expect(one?.findings).toEqual([]);
    expect(one?.variant?.name).toBe('Small ones');
    expect(one && cutOf(one, 'card')).toEqual(['2 in from 2', '3 in from 3']);
  });

  it('reaches everything that is measured', () => {
    const [one] = read(
      'variants:\n  a: { front.at.left: 1/4, card: { count: 3, stock: moss }, holds.size: 1 x 1 x 1, stock.moss.sheet: 6 x 6, box.outside: 5 x 6 x 1 }\n  b:',
    );
    if (!one) throw new Error('no variant');
    expect(faultsOf(one)).toEqual([]);
    expect(from(pieceOf(one, 'front').placement.left)).toBe('1/4 in from 1/4');
    expect(from(pieceOf(one, 'card').count)).toBe('3 from 3');
    expect(from(pieceOf(one, 'card').stock)).toBe('moss from moss');
    expect(from(one.holds?.size?.[0])).toBe('1 in from 1');
    expect(from(one.stock.get('moss')?.sheets[0]?.size.width)).toBe('6 in from 6');
    const { body } = pieceOf(one, 'box');
    expect(body.kind === 'form' && [...body.settings.keys()]).toEqual(['outside']);
  });

  it('may have all of a value that common words leave out', () => {
    const text = sheetOf(
      'stock: { c: { sheet: 9 x 9 } }\npieces: { card: { stock: c } }\nvariants: { s: { card.cut: 2 x 3 }, l: { card.cut: 4 x 5 } }',
    );
    expect(readSheet(text).findings).toEqual([]);
  });
});

describe('the file name of a variant', () => {
  it.each([
    ['日本, 中国', ['variant', 'variant-2']],
    ['малый, большой', ['variant', 'variant-2']],
    ['S, s, s-2', ['s', 's-2', 's-2-2']],
    ['größe, Grosse', ['grosse', 'grosse-2']],
  ])('of %s is its own', (names, slugs) => {
    const [one = '', ...others] = names.split(', ');
    const variants = [
      `${one}: { card.cut: 1 x 1 }`,
      ...others.map((name, i) => `${name}: { card.cut: 2 x ${i + 1} }`),
    ];
    const all = read(`variants: { ${variants.join(', ')} }`);
    expect(all.flatMap(faultsOf)).toEqual([]);
    expect(all.map(({ variant }) => variant?.slug)).toEqual(slugs);
  });
});

describe('what is wrong with variants', () => {
  it.each([
    ['s: { crd.cut: 2 x 3 }, l:', ['unknown-reference: crd']],
    ['s: { stock.mos.price: 2 }, l:', ['unknown-reference: mos']],
    ['s: { card.cu: 2 x 3 }, l:', ['unknown-key: cu']],
    ['s: { card.cut: 2 x }, l:', ['unreadable-length: 2 x']],
    ['s: { card.cut: 4x5in }, l:', ['variant-says-common: cut', 'variants-alike: l']],
    ['s: { card.cut: 2 x 3 }, l: { card: { cut: 2 in x 3 in } }', ['variants-alike: l']],
    ['s: { name: Set, card.cut: 2 x 3 }, l: { name: Set, card.cut: 2 x 4 }', ['same-name: l']],
    ['s: { card.cut: 2 x 3 }', ['lone-variant: s']],
    ['s: { card.cut: 2 x 3 }, s: { card.cut: 2 x 4 }, l:', ['repeated-key: s']],
    ['s: 3 x 4, l:', ['unexpected-value: 3 x 4', 'lone-variant: l']],
  ])('{ %s }', (variants, faults) => {
    const all = read(`variants: { ${variants} }`);
    expect(all[0] && faultsOf(all[0])).toEqual(faults);
  });

  it('a list of them', () => {
    expect(faultsOf(readSheet(sheetOf(`${BLOCK}variants: [small, large]`)))).toEqual([
      'unexpected-value: [small, large]',
    ]);
  });

  it('variants of a shared piece', () => {
    const sheet = sheetOf('pieces: { box: { use: shared.box } }', 'Take :piece[box].');
    const shared =
      'stock: { c: { sheet: 9 x 9 } }\npieces:\n  box: { stock: shared.c, cut: 2 x 3, variants: { s: { cut: 1 x 1 } } }\n';
    expect(faultsOf(readSheet(sheet, { 'shared/a.yaml': shared }))).toContain('unknown-key: variants');
  });
});

describe('what is found in variants', () => {
  const told = (variants: string): string[] =>
    toldOf(
      sheetOf(
        BLOCK + variants,
        '## Make it\nTake :piece[card], :piece[front], :piece[box]. Trim it at 2 1/4 x 3 in.',
      ),
    ).map((each) => `${each.message} @ ${blamed(each.at)}`);

  it('is told once where all have it, at the common words', () => {
    const found = told(
      'variants: { s: { box.inside: 2 x 3 x 1, front.cut: 5 x 3 }, l: { front.cut: 5 x 3 } }',
    );
    const overhangs = found.filter((each) => each.includes('front is 5 in wide'));
    expect(overhangs).toHaveLength(2);
    const common = told(
      'variants: { s: { card.cut: 2 x 5 }, l: { card.cut: 2 x 5, box.inside: 2 x 3 x 1 } }',
    );
    expect(common.filter((each) => each.includes('front is 3 in wide'))).toEqual([
      expect.stringMatching(/^front is 3 in wide, 1 in more than card \(2 in\) @ 3$/u),
    ]);
  });

  it('names the variant where one alone has it', () => {
    expect(told('variants: { s: { card.cut: 2 x 5 }, l: }')).toContainEqual(
      expect.stringMatching(/^in the variant "s", front is 3 in wide, 1 in more than card \(2 in\) @ 3$/u),
    );
  });

  it('lets a number in the text be that of one variant', () => {
    const doubted = (variants: string): boolean =>
      told(variants).some((each) => each.includes('nothing in this project measures'));
    expect(doubted('variants: { s: { card.cut: 3 x 5 }, l: }')).toBe(true);
    expect(doubted('variants: { s: { front.cut: 2 1/4 x 3 }, l: }')).toBe(false);
  });

  it('both editions are made of each variant', () => {
    const text = sheetOf(
      `${BLOCK}variants: { s: { card.cut: 4 x 4 1/2 }, l: }`,
      '## Make it\nTake :piece[card].',
    );
    const [study] = examine(workspaceOf(text));
    // 114 mm and 127 mm
    const variants = study ? [study.editions, ...study.editions.others] : [];
    const heights = variants.map(({ metric }) => String(ownNet(metric.shapes.nets, 'card')?.size.height));
    expect(heights).toEqual(['570/127 in', '5 in']);
  });
});
