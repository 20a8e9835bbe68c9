import { describe, expect, it } from 'vitest';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';
import { blamed, cutOf, faultsOf, from, pieceOf, readSheet } from './reading.ts';

const KEEPER = `---
title: Seed packet keeper
summary: A slim box with a clip-top that holds six seed packets.
session: 2026-12-10
level: beginner
minutes: 45
measurements:
  unit: in
  stock:
    moss:  { name: Moss cardstock,  sheet: 8 1/2 x 11, weight: 80 lb cover, color: "#6b7f5b", price: 0.45 }
    cream: { name: Cream cardstock, sheet: 8 1/2 x 11, weight: 80 lb cover }
    fern:  { name: Fern print,      sheet: 12 x 12,    weight: 65 lb text, print: upright }
  pieces:
    box:   { stock: moss,  form: clip-top box, inside: 3 1/2 x 1 x 4 3/4, tab: 1/2 }
    front: { stock: cream, cut: 3 1/4 x 4 1/2, on: box.front }
    strip: { stock: fern,  cut: 3/4 x 4 1/2, on: front, at: { left: 1/4 } }
    label: { stock: cream, cut: 2 x 3/4, on: front, at: { left: 1, top: 1 1/2 }, corners: 1/8 }
  holds: { item: seed packet, size: 3 1/4 x 4 1/2 x 1/16, count: 6 }
supplies:
  - { item: Bone folder, kind: tool }
  - { item: Strong double-sided tape, kind: adhesive, instead: "wet glue, held for half a minute" }
  - { item: Wheat stamp, kind: stamp, link: "https://example.org/wheat", paid: true, instead: any small grass stamp }
---
A short introduction.

## Score and fold the box :step{minutes=10 ahead}
Score :piece[box] as the template shows, then work every line with the bone folder.

:::tip
Burnish from the inside so that no shine shows.
:::

![The box flat, flaps tapered](photos/flat.jpg)

## Add the layers
Stick :piece[front] to the front, leaving :reveal[front] all round.

:::host
Have the second box ready: the glue needs a minute.
:::
`;

const keeper = readSheet(KEEPER, { 'box/photos/flat.jpg': '' });

describe('a whole sheet', () => {
  it('reads without a fault', () => {
    expect(faultsOf(keeper)).toEqual([]);
    expect(keeper.readable).toBe(true);
  });

  it('has its head, each value at its own characters', () => {
    expect(from(keeper.title)).toBe('Seed packet keeper from Seed packet keeper');
    expect(from(keeper.session)).toBe('2026-12-10 from 2026-12-10');
    expect(from(keeper.level)).toBe('beginner from beginner');
    expect(from(keeper.minutes)).toBe('45 from 45');
    expect(keeper.unit).toBe('in');
    expect(keeper.metric).toBe('whole');
  });

  it('has its stock', () => {
    const moss = keeper.stock.get('moss');
    expect(moss).toMatchObject({
      name: 'Moss cardstock',
      weight: { value: { kind: 'basis', pounds: 80, grade: 'cover' } },
      color: { value: '#6b7f5b' },
      sheets: [{ price: { value: { minor: 45n } } }],
    });
    expect(moss?.color && blamed(moss.color.at)).toBe('#6b7f5b');
    expect(keeper.stock.get('fern')?.print?.value).toBe('upright');
    expect(keeper.stock.get('cream')?.sheets[0]?.price).toBeUndefined();
  });

  it('has its pieces', () => {
    expect([...keeper.pieces.keys()]).toEqual(['box', 'front', 'strip', 'label']);
    const { body } = pieceOf(keeper, 'box');
    const settings = body.kind === 'form' ? [...body.settings] : [];
    const lengths = settings.map(([key, setting]) => [
      key,
      ...(setting.kind === 'lengths' ? setting.lengths.map((length) => from(length)) : []),
    ]);
    expect(lengths).toEqual([
      ['inside', '7/2 in from 3 1/2', '1 in from 1', '19/4 in from 4 3/4'],
      ['tab', '1/2 in from 1/2'],
    ]);
    expect(cutOf(keeper, 'front')).toEqual(['13/4 in from 3 1/4', '9/2 in from 4 1/2']);
    expect(pieceOf(keeper, 'front').on?.value).toEqual({ piece: 'box', part: 'front', face: 'outside' });
    expect(pieceOf(keeper, 'strip').on?.value).toEqual({ piece: 'front', face: 'outside' });
    const { placement, corners } = pieceOf(keeper, 'label');
    expect([
      from(placement.left),
      from(placement.top),
      from(placement.right),
      from(corners?.[0]?.radius),
    ]).toEqual(['1 in from 1', '3/2 in from 1 1/2', 'nothing', '1/8 in from 1/8']);
  });

  it('has what it holds and its supplies', () => {
    expect(keeper.holds?.size?.map(from)).toEqual([
      '13/4 in from 3 1/4',
      '9/2 in from 4 1/2',
      '1/16 in from 1/16',
    ]);
    expect(keeper.holds?.count.value).toBe(6);
    expect(keeper.supplies.map(({ item, kind, paid }) => [item.value, kind.value, paid])).toEqual([
      ['Bone folder', 'tool', false],
      ['Strong double-sided tape', 'adhesive', false],
      ['Wheat stamp', 'stamp', true],
    ]);
    expect(from(keeper.supplies[2]?.link)).toBe('https://example.org/wheat from https://example.org/wheat');
    expect(from(keeper.supplies[1]?.instead)).toBe(
      'wet glue, held for half a minute from wet glue, held for half a minute',
    );
  });

  it('has its introduction and steps', () => {
    expect(keeper.introduction.texts.map(from)).toEqual(['A short introduction. from A short introduction.']);
    expect(keeper.steps.map(({ title, minutes, ahead }) => [title.value, minutes?.value, ahead])).toEqual([
      ['Score and fold the box', 10, true],
      ['Add the layers', undefined, false],
    ]);
    expect(keeper.steps[0]?.prose.references.map(({ kind, of }) => [kind, from(of)])).toEqual([
      ['piece', 'box from box'],
    ]);
    expect(keeper.steps[1]?.prose.references.map(({ kind, of }) => [kind, from(of)])).toEqual([
      ['piece', 'front from front'],
      ['reveal', 'front from front'],
    ]);
    expect(keeper.steps[0]?.prose.pictures.map(({ path, alternative }) => [from(path), alternative])).toEqual(
      [['photos/flat.jpg from photos/flat.jpg', 'The box flat, flaps tapered']],
    );
  });
});

const BY_SCORES = `---
title: Box by its score lines
measurements:
  stock: { moss: { sheet: 12 x 12 } }
  pieces:
    box:
      stock: moss
      cut: 9 1/2 x 6 3/4
      score:
        - { from: left,   at: [1, 4 1/2, 5 1/2, 9] }
        - { from: bottom, at: [1, 5 3/4, 6 1/4] }
      panels: { front: B3, back: D3, tab: E3 }   # columns A, B, … from the left, rows 1, 2, … from the top
      trim:   [A1, C1, E1, E2, E4]               # cells cut away
      slit:   [A|B 1-2, B|C 1-2, C|D 1-2, A|B 4, B|C 4, C|D 4]   # cuts along a score line
      taper:  [A2, C2, A4, C4, tab]              # cells whose free corners are cut at an angle
      folds:  { 1|2: valley 90 }                 # unnamed folds are mountain 90
      glue:   { tab: A3, A4: D4, C4: D4, B4: D4 }  # what sticks to what once folded
---
`;

describe('a box given by its score lines', () => {
  const project = readSheet(BY_SCORES);
  const { body } = pieceOf(project, 'box');
  if (body.kind !== 'net') throw new Error('the box is no net');

  it('reads without a fault', () => {
    expect(faultsOf(project)).toEqual([]);
  });

  it('has every score at its own number', () => {
    expect(body.score.map(({ from: edge, at }) => [edge.value, ...at.map(from)])).toEqual([
      ['left', '1 in from 1', '9/2 in from 4 1/2', '11/2 in from 5 1/2', '9 in from 9'],
      ['bottom', '1 in from 1', '23/4 in from 5 3/4', '25/4 in from 6 1/4'],
    ]);
  });

  it('has panels by cell: A is the leftmost column, 1 the top row', () => {
    expect(
      body.panels.map(({ name, cell }) => [name.value, cell.value.cell.column, cell.value.cell.row]),
    ).toEqual([
      ['front', 1, 2],
      ['back', 3, 2],
      ['tab', 4, 2],
    ]);
  });

  it('has slits between neighbors, through the cells named', () => {
    expect(body.slit[0]).toMatchObject({ between: 'columns', line: 0, from: 0, to: 1 });
    expect(body.slit[5]).toMatchObject({ between: 'columns', line: 2, from: 3, to: 3 });
    expect(body.slit.map(({ at }) => blamed(at))).toEqual([
      'A|B 1-2',
      'B|C 1-2',
      'C|D 1-2',
      'A|B 4',
      'B|C 4',
      'C|D 4',
    ]);
  });

  it('has trims, tapers, folds and glue as written', () => {
    expect(body.trim.map(from).at(-1)).toBe('E4 from E4');
    expect(body.taper.map(from).at(-1)).toBe('tab from tab');
    expect(body.folds).toMatchObject([
      { line: { between: 'rows', line: 0 }, direction: 'valley', angle: 90 },
    ]);
    expect(body.folds.map(({ at }) => blamed(at))).toEqual(['1|2: valley 90']);
    expect(body.glue.map(({ from: one, to }) => `${one.value} to ${to.value}`)).toEqual([
      'tab to A3',
      'A4 to D4',
      'C4 to D4',
      'B4 to D4',
    ]);
  });
});

describe('a workspace', () => {
  const sheet = (title: string): string => `---\ntitle: ${title}\nmeasurements: { unit: in }\n---\n`;

  it('keeps two projects whose folders make the same slug', () => {
    const { projects } = readWorkspaceFromTexts({
      'seed-keeper/sheet.md': sheet('Second'),
      'Seed Keeper/sheet.md': sheet('First'),
      'card/sheet.md': sheet('Card'),
    });
    expect(projects.map(({ slug, folder, title }) => [slug, folder, title.value])).toEqual([
      ['card', 'card', 'Card'],
      ['seed-keeper', 'Seed Keeper', 'First'],
      ['seed-keeper', 'seed-keeper', 'Second'],
    ]);
  });

  it('has none without a sheet in a folder of its own', () => {
    const { projects } = readWorkspaceFromTexts({
      'sheet.md': sheet('A'),
      'a/b/sheet.md': sheet('B'),
      'notes.md': '',
    });
    expect(projects).toEqual([]);
  });
});
