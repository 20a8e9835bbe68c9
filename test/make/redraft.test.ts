import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Order, type Redrafted, redraft } from '../../src/make/redraft/redraft.ts';
import { Length } from '../../src/measure/length.ts';
import type { Project, Workspace } from '../../src/project/model.ts';
import { proofProject } from '../../src/proof/proof.ts';
import { mergeFindings } from '../../src/proof/tell.ts';
import { buildShapes } from '../../src/shape/build.ts';
import { boxSize } from '../../src/shape/net.ts';
import type { Shapes } from '../../src/shape/shapes.ts';
import { ownNet } from '../../src/shape/sheets.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';

const root = fileURLToPath(new URL('../../projects/', import.meta.url));
const read = (path: string): string => readFileSync(`${root}${path}`, 'utf8');
const shared = Object.fromEntries(
  readdirSync(`${root}shared`).map((file) => [`shared/${file}`, read(`shared/${file}`)]),
);

function photosOf(slug: string, to: string): Record<string, string> {
  const names = readdirSync(`${root}${slug}`).includes('photos') ? readdirSync(`${root}${slug}/photos`) : [];
  return Object.fromEntries(names.map((name) => [`${to}/photos/${name}`, '']));
}

type Opened = { readonly workspace: Workspace; readonly project: Project };

function open(slug: string, text: string, photos: string): Opened {
  const workspace = readWorkspaceFromTexts({
    ...shared,
    ...photosOf(photos, slug),
    [`${slug}/sheet.md`]: text,
  });
  const [project] = workspace.projects;
  if (!project) throw new Error('no project');
  return { workspace, project };
}

type Sides = readonly [number, number, number];

/** Sixteenths of an inch, or millimeters. */
function wishOf(sides: Sides, count: number, unit: 'in' | 'mm'): Order['wish'] {
  const length = (side: number): Length => Length.of(side, unit === 'in' ? 16 : 1, unit);
  return { item: [length(sides[0]), length(sides[1]), length(sides[2])], count };
}

function remade(
  { workspace, project }: Opened,
  sides: Sides,
  count: number,
): Pick<Redrafted, 'text'> & Redrafted['remade'][number] {
  const wish = wishOf(sides, count, project.unit === 'in' ? 'in' : 'mm');
  const made = redraft(workspace, project, { wish, title: 'Another box' });
  if ('why' in made) throw new Error(made.why);
  const [one] = made.remade;
  if (!one) throw new Error('nothing was remade');
  return { text: made.text, ...one };
}

function proofed(slug: string, text: string): { readonly told: string[]; readonly shapes: Shapes } {
  const { workspace, project } = open('another', text, slug);
  const shapes = buildShapes(project);
  const told = mergeFindings(proofProject(workspace, project, shapes));
  return {
    told: told
      .filter(({ severity }) => severity !== 'note')
      .map(({ rule, message }) => `${rule}: ${message}`),
    shapes,
  };
}

/** How many blocks go into a room one way round, counted one by one along each side: no formula of ours. */
function packed(room: Sides, block: Sides): number {
  const along = (length: number, side: number): number => {
    let number = 0;
    while ((number + 1) * side <= length) number += 1;
    return number;
  };
  const ways: readonly Sides[] = [
    [0, 1, 2],
    [0, 2, 1],
    [1, 0, 2],
    [1, 2, 0],
    [2, 0, 1],
    [2, 1, 0],
  ];
  const counts = ways.map(
    ([a, b, c]) =>
      along(room[0], block[a as 0] ?? 0) *
      along(room[1], block[b as 1] ?? 0) *
      along(room[2], block[c as 2] ?? 0),
  );
  return Math.max(...counts);
}

function linesChanged(slug: string, text: string): string[] {
  const before = read(`${slug}/sheet.md`).split('\n');
  return text
    .split('\n')
    .flatMap((line, index) => (line === before[index] ? [] : [line.trim().replace(/ {2,}/gu, ' ')]));
}

describe('a box made to hold something else', () => {
  const keeper = open('seed-packet-keeper', read('seed-packet-keeper/sheet.md'), 'seed-packet-keeper');

  it('has its layers after it, a number of its own beside what is shared, and every other word as it was', () => {
    const { text, changed, isCloser } = remade(keeper, [48, 64, 1], 6);
    expect(linesChanged('seed-packet-keeper', text)).toEqual([
      'title: Another box',
      '# session: 2026-12-10',
      'box: { use: shared.seed-box, inside: 3 1/4 x 1 x 4 1/4 }',
      'front: { stock: shared.cream, cut: 3 x 4, on: box.front }',
      'strip: { stock: shared.fern, cut: 3/4 x 4, on: front, at: { left: 1/4 } }',
      'label: { stock: shared.cream, cut: 1 3/4 x 3/4, on: front, at: { left: 1, top: 1 1/2 }, corners: 1/8 }',
      'back: { stock: shared.fern, cut: 3 x 4, on: box.back }',
      'holds: { item: seed packet, size: 3 x 4 x 1/16, count: 6 }',
    ]);
    expect(changed.map(([{ id }]) => id.value)).toEqual(['box', 'front', 'strip', 'label', 'back']);
    expect(isCloser).toBe(false);
  });

  it('has less to spare where it would be larger than its paper', () => {
    const { text, isCloser } = remade(keeper, [64, 80, 2], 6);
    expect(text).toContain('{ use: shared.seed-box, inside: 4 1/4 x 1 x 5 1/4 }');
    expect(isCloser).toBe(true);
    expect(proofed('seed-packet-keeper', text).told).toEqual([]);
  });

  it('moves the score lines of a net by the gaps they are apart', () => {
    const pencils = open('short-pencil-box', read('short-pencil-box/sheet.md'), 'short-pencil-box');
    const { text } = remade(pencils, [4, 64, 4], 36);
    expect(linesChanged('short-pencil-box', text).slice(2, 5)).toEqual([
      'cut: 8 1/2 x 6 7/8',
      '- { from: left, at: [1 1/4, 4, 5 1/4, 8] }',
      '- { from: bottom, at: [1 1/4, 5 5/8, 6 1/4] }',
    ]);
    expect(proofed('short-pencil-box', text).told).toEqual([]);
  });

  it.each<[string, Sides, number]>([
    ['soap-tuck-box', [32, 48, 12], 1],
    ['story-slide-box', [40, 56, 1], 20],
    ['shortbread-tray', [16, 48, 12], 6],
    ['paperback-bag', [64, 96, 12], 1],
  ])('of %s proofs clean', (slug, sides, count) => {
    const { text } = remade(open(slug, read(`${slug}/sheet.md`), slug), sides, count);
    expect(proofed(slug, text).told).toEqual([]);
  });

  it('says why where it is no box, or larger than anything may be', () => {
    const why = (pieces: string, count = 1): string => {
      const sheet = `---\ntitle: A\nmeasurements:\n  unit: in\n  pieces:\n    box: ${pieces}\n---\n`;
      const { workspace, project } = open('box', sheet, 'shared');
      const made = redraft(workspace, project, {
        wish: wishOf([32, 48, 8 * count], count, 'in'),
        title: 'B',
      });
      return 'why' in made ? made.why : made.text;
    };
    expect(why('{ form: single-fold card, size: 4 x 5 }')).toBe(
      'nothing in box makes a room: it has no box, bag, band or pocket',
    );
    expect(why('{ form: clip-top box, inside: 3 x 1 x 4, flange: 3/4 }')).toContain('title: B');
    expect(why('{ form: clip-top box, inside: 3 x 1 x 4, flange: 3/4 }', 1000)).toMatch(
      /^box would measure [0-9 /]+ in, and no length may be over 1 m$/u,
    );
  });

  it('says what it holds where it said nothing, beside its pieces', () => {
    const sheet =
      '---\ntitle: A\nmeasurements:\n  unit: mm\n  pieces:\n    box: { form: tray, inside: 80 x 100 x 30 mm }\n---\n';
    const opened = open('box', sheet, 'shared');
    expect(remade(opened, [90, 120, 9], 4).text.split('\n').slice(4, 7)).toEqual([
      '  holds: { item: treat, size: 90 x 120 x 9, count: 4 }',
      '  pieces:',
      '    box: { form: tray, inside: 94 x 124 x 40 mm }',
    ]);
  });

  it('adds its own numbers to maps that stand on several lines, and comments out the names it had', () => {
    const sheet = [
      '---',
      'title: "A: box"',
      'was: old-box',
      'measurements:',
      '  unit: in',
      '  pieces:',
      '    box:',
      '      use: shared.seed-box # of the spring',
      '      name: little box',
      '  holds:',
      '    item: packet',
      '    size: 3 1/4 x 4 1/2 x 1/16',
      '---',
      '',
    ].join('\n');
    const { text } = remade(open('box', sheet, 'shared'), [48, 64, 1], 2);
    expect(text.split('\n').slice(1, -2)).toEqual([
      'title: "Another box"',
      '# was: old-box',
      'measurements:',
      '  unit: in',
      '  pieces:',
      '    box:',
      '      inside: 3 1/4 x 1 1/4 x 4 1/4',
      '      use: shared.seed-box # of the spring',
      '      name: little box',
      '  holds:',
      '    count: 2',
      '    item: packet',
      '    size: 3 x 4 x 1/16',
    ]);
  });

  it.each<[string, string, Sides, number, string]>([
    // Worked out by hand: 1/8 in to spare in a box, 3/16 in in flat paper; a square of (3 - √3) sides lies in a hexagon.
    ['an envelope', 'form: envelope, card: 6 x 4', [112, 80, 1], 1, 'card: 7 x 5'],
    [
      'a pillow box',
      'form: pillow box, size: 3 x 4 1/2, depth: 1',
      [48, 64, 12],
      1,
      'size: 4 3/4 x 5 7/8, depth: 1 5/8',
    ],
    [
      'a pillow box of the usual depth',
      'form: pillow box, size: 3 x 4 1/2',
      [40, 64, 8],
      1,
      'size: 4 3/4 x 5 3/8',
    ],
    [
      'a polygon box',
      'form: polygon box, sides: 6, side: 1 1/2, height: 4',
      [40, 80, 40],
      1,
      'side: 2 1/8, height: 5 1/8',
    ],
    [
      'one with a lid',
      'form: polygon box, sides: 8, side: 1, height: 2, lid: 1',
      [24, 20, 24],
      1,
      'side: 1, height: 1 3/8, lid: 1',
    ],
    ['a flat band', 'form: belly band, inside: 4 1/4 x 1/16', [96, 128, 1], 1, 'inside: 6 1/8 x 1/16'],
    ['a band round a stack', 'form: belly band, inside: 4 1/4 x 1/2', [96, 128, 2], 10, 'inside: 6 x 1 1/4'],
    [
      'a pocket',
      'cut: 8 x 7, score: [{ from: left, at: [4] }, { from: bottom, at: [2] }], slit: [A|B 2], taper: [A2, B2], folds: { A|B: mountain 90, 1|2: mountain 180 }, glue: { A2: A1, B2: B1 }',
      [72, 96, 1],
      1,
      'cut: 9 1/2 x 7, score: [{ from: left, at: [4 3/4] }, { from: bottom, at: [2] }]',
    ],
    [
      'a box as wide as it is deep',
      'cut: 8 1/2 x 7, score: [{ from: left, at: [2, 4, 6, 8] }, { from: bottom, at: [2] }], slit: [A|B 2, B|C 2, C|D 2], trim: [E2], panels: { front: B1, tab: E1 }, glue: { tab: A1, A2: D2, B2: A2, C2: D2 }',
      [40, 56, 40],
      1,
      'at: [2 5/8, 5 1/4, 7 7/8, 10 1/2]',
    ],
  ])('of %s holds what it is to, and proofs clean', (_, piece, sides, count, said) => {
    const sheet = `---\ntitle: A\nmeasurements:\n  unit: in\n  stock: { card: { name: Card, sheet: 19 x 25 } }\n  pieces:\n    box: { stock: card, ${piece} }\n---\n`;
    const { text } = remade(open('box', sheet, 'shared'), sides, count);
    expect(text).toContain(said);
    expect(proofed('shared', text).told.filter((each) => !/score-off|loose-part/u.test(each))).toEqual([]);
  });

  describe('of a project with variants', () => {
    const sheet = [
      '---',
      'title: A',
      'measurements:',
      '  unit: in',
      '  pieces:',
      '    box: { form: tray, inside: 3 x 4 x 1 } # the box',
      '    mat: { cut: 2 3/4 x 3 3/4, on: box.floor }',
      '  holds: { item: nut, size: 1/2 x 1/2 x 1/2, count: 96 }',
      '  variants:',
      '    small: { box.inside: 2 x 3 x 1, mat.cut: 1 3/4 x 2 3/4, holds.count: 48 }',
      '    large: { mat: { corners: 1/8 } }',
      '---',
      '',
    ].join('\n');
    const made = (text: string, variant?: string): Redrafted => {
      const { workspace, project } = open('box', text, 'shared');
      const { item } = wishOf([12, 12, 12], 1, 'in');
      const result = redraft(workspace, project, { wish: { item }, title: 'B', ...(variant && { variant }) });
      if ('why' in result) throw new Error(result.why);
      return result;
    };

    it('keeps each of them, where they hold different numbers', () => {
      const { text, dropped, remade: all } = made(sheet);
      expect(dropped).toEqual([]);
      expect(all.map(({ project }) => project.variant?.id.value)).toEqual(['small', 'large']);
      expect(text.split('\n').slice(5, 11)).toEqual([
        '    box: { form: tray, inside: 4 1/2 x 6 x 1 1/2 } # the box',
        '    mat: { cut: 4 1/4 x 5 3/4, on: box.floor }',
        '  holds: { item: nut, size: 3/4 x 3/4 x 3/4, count: 96 }',
        '  variants:',
        '    small: { box.inside: 3 x 4 1/2 x 1 1/2, mat.cut: 2 3/4 x 4 1/4, holds.count: 48 }',
        '    large: { mat: { corners: 1/8 } }',
      ]);
    });

    it('keeps the one that is named, its values where the common ones stood', () => {
      const small = made(sheet, 'small');
      expect(small.dropped).toEqual(['large']);
      expect(small.text.split('\n').slice(5)).toEqual([
        '    box: { form: tray, inside: 3 x 4 1/2 x 1 1/2 } # the box',
        '    mat: { cut: 2 3/4 x 4 1/4, on: box.floor }',
        '  holds: { item: nut, size: 3/4 x 3/4 x 3/4, count: 48 }',
        '---',
        '',
      ]);
      const large = made(sheet, 'large');
      expect(large.dropped).toEqual(['small']);
      expect(large.text.split('\n').slice(5, 8)).toEqual([
        '    box: { form: tray, inside: 4 1/2 x 6 x 1 1/2 } # the box',
        '    mat: { cut: 4 1/4 x 5 3/4, on: box.floor, corners: 1/8 }',
        '  holds: { item: nut, size: 3/4 x 3/4 x 3/4, count: 96 }',
      ]);
    });

    it('keeps the first where one box would have to be of two sizes', () => {
      const one = sheet.replace(/small: .*/u, 'small: { holds.count: 48 }');
      const { text, dropped } = made(one);
      expect(dropped).toEqual(['large']);
      expect(text).not.toContain('variants');
      expect(text).toContain('count: 48 }');
    });
  });

  it('takes 50 treats, counted one by one, and proofs clean or is larger than its paper', () => {
    const side = (least: number, most: number): fc.Arbitrary<number> => fc.integer({ min: least, max: most });
    const treats = fc.tuple(side(24, 60), side(40, 76), side(1, 4), side(1, 9));
    let clean = 0;
    fc.assert(
      fc.property(treats, ([width, height, thick, count]) => {
        const { text } = remade(keeper, [width, height, thick], count);
        const { told, shapes } = proofed('seed-packet-keeper', text);
        expect(told.filter((each) => !each.startsWith('piece-exceeds-sheet: '))).toEqual([]);
        if (told.length === 0) clean += 1;
        const panel = (name: string): ReturnType<typeof boxSize> => {
          const found = ownNet(shapes.nets, 'box')?.panels.find(({ id }) => id === name);
          if (!found) throw new Error(`no ${name}`);
          return boxSize(found.box);
        };
        const sixteenths = (length: Length): number => (length.mm / 25.4) * 16;
        // The paper, 0.24 mm, takes its share of each way.
        const room = [panel('front').width, panel('front').height, panel('left').width] as const;
        const [w, h, d] = room.map((each) => sixteenths(each) - 0.2);
        expect(packed([w ?? 0, h ?? 0, d ?? 0], [width, height, thick])).toBeGreaterThanOrEqual(count);
      }),
      { seed: 20261127, numRuns: 50 },
    );
    expect(clean).toBeGreaterThan(35);
  });
});
