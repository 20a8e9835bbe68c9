import { union } from 'polyclip-ts';
import { describe, expect, it } from 'vitest';
import { examine, findingsOf } from '../../src/examine/examine.ts';
import { mergeFindings } from '../../src/proof/tell.ts';
import type { Told } from '../../src/proof/told.ts';
import { foldNet } from '../../src/shape/fold.ts';
import type { FlatPoint, Net } from '../../src/shape/net.ts';
import { unionOutlines } from '../../src/shape/union-outline.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';
import { FOLDED_CORNERS, netOf, projectOf, shapesOf, sheetOf, wrongIn } from './boxes.ts';
import { areaOf, blamed, exact, inches } from './forms/building.ts';
import { foldedByThree, greatestDifference } from './three-fold.ts';

/** A card with a step that stands in its fold: cut at both sides, folded three times, the card's fold left out of it. */
const STEP = `
  cut: 4 x 8
  score:
    - { from: left, at: [1, 3] }
    - { from: top, at: [3, 4, 5] }
  panels: { back: A1, front: A4, riser: B2, tread: B3 }
  slit: [A|B 2-3, B|C 2-3]
  folds: { 2|3: valley 90, 1|2: none, 3|4: none, A|B 1: none, A|B 4: none, B|C 1: none, B|C 4: none,
    B1|B2: valley 90, riser|tread: mountain 90, B3|B4: valley 90 }`;

/** All that is found in a sheet of one box, in both its editions. */
const foundIn = (box: string): string[] => {
  const knife = 'supplies: [{ item: Craft knife, kind: tool }]';
  const sheet = sheetOf(box).replace('measurements:', `${knife}\nmeasurements:`);
  const workspace = readWorkspaceFromTexts({ 'box/sheet.md': sheet });
  return mergeFindings(findingsOf(workspace, examine(workspace))).map(({ message }) => message);
};

const said = (points: readonly FlatPoint[]): string[] =>
  points.map(({ x, y }) => `${x} ${y}`.replaceAll(' in', ''));
const panelOf = (net: Net, id: string): readonly FlatPoint[] =>
  net.panels.find((each) => each.id === id)?.outline ?? [];
const used = (net: Net): boolean => {
  const parts = [...net.panels.map(({ outline }) => outline), ...net.waste];
  const total = parts.map(areaOf).reduce((sum, area) => sum.add(area));
  return total.equals(exact(net.size.width).mul(exact(net.size.height)));
};

describe('a line that is there in part', () => {
  const net = netOf(STEP);

  it('leaves the cells beside it one panel, round its corners', () => {
    expect(net.panels.map(({ id }) => id)).toEqual(['back', 'riser', 'front', 'tread']);
    expect(said(panelOf(net, 'back'))).toEqual(['0 0', '4 0', '4 4', '3 4', '3 3', '1 3', '1 4', '0 4']);
    expect(used(net)).toBe(true);
  });

  it('is folded as is said of each stretch, and cut where it is slit', () => {
    const folds = net.folds.map(
      ({ panels, direction, from, to }) => `${panels.join('|')} ${direction} ${said([from, to])}`,
    );
    expect(folds).toEqual([
      'back|riser valley 1 3,3 3',
      'back|front valley 0 4,1 4',
      'riser|tread mountain 1 4,3 4',
      'back|front valley 3 4,4 4',
      'tread|front valley 1 5,3 5',
    ]);
    expect(net.slits.map(({ from, to }) => said([from, to]))).toEqual([
      ['1 3', '1 5'],
      ['3 3', '3 5'],
    ]);
  });

  it('is said at the board with where it begins and ends', () => {
    const rows = net.scores.map(({ from, at, run }) => [
      from,
      at.join(),
      run ? `${run.from} to ${run.to}` : 'whole',
    ]);
    expect(rows).toEqual([
      ['top', '4 in', 'whole'],
      ['top', '3 in,5 in', '1 in to 3 in'],
      ['left', '1 in,3 in', '3 in to 5 in'],
    ]);
    expect(net.scores.map(({ isCut = false }) => isCut)).toEqual([false, false, true]);
  });

  it('is measured from the edge that lies along the top: of lines from the right from the bottom, from the top from the right', () => {
    const narrow = netOf(
      STEP.replace('from: left, at: [1, 3]', 'from: right, at: [1, 2]').replace('cut: 4 x 8', 'cut: 4 x 9'),
    );
    expect(narrow.scores.map(({ run }) => run && [`${run.from}`, `${run.to}`])).toEqual([
      undefined,
      ['1 in', '2 in'],
      ['4 in', '6 in'],
    ]);
  });

  it('proofs clean in both editions: the step closes with the card', () => {
    expect(foundIn(STEP)).toEqual([]);
  });

  it('is found where the step is not as deep as it is high', () => {
    expect(foundIn(STEP.replace('[3, 4, 5]', '[3, 4, 5 1/4]'))).toEqual([
      expect.stringMatching(/^riser of box is 1 in deep, and front opposite it 1 1\/4 in from fold to fold/u),
    ]);
  });

  it('is found where an end of the step is folded the wrong way', () => {
    expect(foundIn(STEP.replace('B1|B2: valley', 'B1|B2: mountain'))).toEqual([
      expect.stringMatching(/^riser, tread, back and front of box are torn apart/u),
    ]);
  });

  it('is told of a slit forgotten, and not to cut the strip off', () => {
    const forgotten = STEP.replace('[A|B 2-3, B|C 2-3]', '[A|B 2-3]');
    expect(foundIn(forgotten)).toEqual([expect.stringMatching(/riser and back; tread and front$/u)]);
  });

  it('folds as three.js folds it', () => {
    const shape = foldNet(net, { base: 'back' });
    expect(greatestDifference(shape, foldedByThree(net, 'back'))).toBeLessThan(1e-9);
  });
});

describe('a line at an angle', () => {
  const net = netOf(FOLDED_CORNERS);

  it('cuts its cells in a left and a right part', () => {
    expect(said(panelOf(net, 'A1 left'))).toEqual(['0 0', '1 1', '0 1']);
    expect(said(panelOf(net, 'A1 right'))).toEqual(['0 0', '1 0', '1 1']);
    expect(used(net)).toBe(true);
    expect(net.slants?.map(({ from, to }) => said([from, to]))[1]).toEqual(['7 0', '6 1']);
  });

  it('folds five panels round a corner of the floor, and they meet again', () => {
    expect(foundIn(FOLDED_CORNERS)).toEqual([]);
    const shape = foldNet(net, { base: 'left' });
    expect(greatestDifference(shape, foldedByThree(net, 'left'))).toBeLessThan(1e-9);
  });

  it('is found where a line goes the other way than those round it take it', () => {
    const diagonal = 'A1 left|A1 right: valley 180';
    expect(foundIn(FOLDED_CORNERS.replace(diagonal, diagonal.replace('valley', 'mountain')))).toEqual([
      'the line between box.A1 left and box.A1 right is a mountain fold, but the other folds around the corner make it a valley',
    ]);
  });

  // By hand: a right triangle, turned about its long side by 90° from the corner cell's plane, stands upright on it.
  it('is found where what it folds does not meet again', () => {
    expect(foundIn(FOLDED_CORNERS.replace('7 x 6', '7 x 6 1/4')).join()).toMatch(/A3 left and A3 right/u);
  });

  it('turns what lies beside it about itself', () => {
    const flap = netOf(`
  cut: 2 x 2
  score: [{ from: corner A1 top right, to: corner A1 bottom left }]
  panels: { low: A1 right }`);
    const shape = foldNet(flap, { base: 'low' });
    const tip = shape.panels.get('A1 left')?.corners[0];
    expect(tip?.z).toBeCloseTo(-Math.SQRT2 * 25.4, 9);
    expect(tip && [tip.x, tip.y]).toEqual([expect.closeTo(25.4, 9), expect.closeTo(-25.4, 9)]);
  });

  it('may cross other score lines between its ends, and cuts up every cell on its way', () => {
    const crossing = netOf(`
  cut: 6 x 4
  score: [{ from: left, at: [1, 4] }, { from: corner A1, to: corner C1 bottom left }]
  folds: { A1 left|A1 right: none, B1 left|B1 right: none, A|B: none }`);
    expect(crossing.panels.map(({ id }) => id)).toEqual(['A1 left', 'C1']);
    expect(used(crossing)).toBe(true);
  });
});

/** polyclip-ts joins polygons of floating-point numbers, none of it ours. */
describe('the outline of cells that are one panel', () => {
  it.each([
    [
      'a row',
      [
        [0, 0],
        [1, 0],
        [2, 0],
      ],
    ],
    [
      'a corner',
      [
        [0, 0],
        [0, 1],
        [1, 1],
      ],
    ],
    [
      'a tee',
      [
        [0, 0],
        [1, 0],
        [2, 0],
        [1, 1],
        [1, 2],
      ],
    ],
    [
      'a gate',
      [
        [0, 0],
        [0, 1],
        [0, 2],
        [1, 0],
        [2, 0],
        [2, 1],
        [2, 2],
      ],
    ],
  ])('has the area that polyclip-ts joins of %s', (_, cells) => {
    const squares = cells.map(([column = 0, row = 0]) =>
      (
        [
          [0, 0],
          [1, 0],
          [1, 1],
          [0, 1],
        ] as const
      ).map(([x, y]) => ({ x: inches(column + x), y: inches(row + y) })),
    );
    const [outline = [], ...others] = unionOutlines(squares);
    expect(others).toEqual([]);
    const [first = [], ...more] = squares.map((square) => [
      square.map(({ x, y }) => [x.mm, y.mm] as [number, number]),
    ]);
    const [joined] = union(first, ...more);
    // The library repeats the first corner.
    expect(outline).toHaveLength((joined?.[0]?.length ?? 0) - 1);
    expect(areaOf(outline).valueOf()).toBeCloseTo(cells.length * 25.4 ** 2, 9);
  });

  it('is two where cells go all round others', () => {
    const ring = [0, 1, 2]
      .flatMap((x) => [0, 1, 2].map((y) => [x, y] as const))
      .filter(([x, y]) => x !== 1 || y !== 1);
    const squares = ring.map(([column, row]) =>
      (
        [
          [0, 0],
          [1, 0],
          [1, 1],
          [0, 1],
        ] as const
      ).map(([x, y]) => ({ x: inches(column + x), y: inches(row + y) })),
    );
    expect(unionOutlines(squares)).toHaveLength(2);
  });
});

describe('what cannot be of them', () => {
  const grid = (lines: string, score = '{ from: left, at: [2, 4] }, { from: top, at: 2 }'): readonly Told[] =>
    wrongIn(sheetOf(`\n  cut: 6 x 4\n  score: [${score}]\n${lines}`));
  const angled = (slants: string, lines = ''): readonly Told[] =>
    grid(lines, `{ from: left, at: [2, 4] }, { from: top, at: 2 }, ${slants}`);

  it.each([
    [
      'a corner that is not there',
      angled('{ from: corner B1, to: corner F2 }'),
      'unknown-reference',
      'corner F2',
      /score names F2, but box has no such cell/u,
    ],
    [
      'a line along the others',
      angled('{ from: corner B1, to: corner B2 }'),
      'angled-score',
      'corner B2',
      /runs straight along the sheet/u,
    ],
    [
      'a line without a length',
      angled('{ from: corner B2, to: corner A1 bottom right }'),
      'angled-score',
      'corner A1 bottom right',
      /ends where it begins/u,
    ],
    [
      'lines that cross',
      angled('{ from: corner B1, to: corner C2 }, { from: corner C1, to: corner B2 }'),
      'angled-score',
      'corner B2',
      /corner C1 to corner B2 crosses that from corner B1 to corner C2/u,
    ],
    [
      'one line twice',
      angled('{ from: corner B1, to: corner C2 }, { from: corner C2, to: corner B1 }'),
      'angled-score',
      'corner B1',
      /scored twice/u,
    ],
    [
      'a cell in parts',
      angled('{ from: corner B1, to: corner C2 }', '  taper: [B1]'),
      'unknown-reference',
      'B1',
      /cuts up/u,
    ],
    [
      'a joint into what is trimmed',
      grid('  trim: [A1]\n  folds: { A1|A2: none }'),
      'unknown-reference',
      'A1|A2: none',
      /would go on into A1, which is trimmed off/u,
    ],
    [
      'cells that are not neighbors',
      grid('  folds: { A1|C1: flat }'),
      'unknown-reference',
      'A1|C1: flat',
      /A1 and C1 of box have no line between them/u,
    ],
    ['a cell that is not there', grid('  folds: { A1|A7: flat }'), 'unknown-reference', 'A1|A7: flat', /A7/u],
    [
      'a panel with two names',
      grid('  panels: { one: A1, other: A2 }\n  folds: { one|other: none }'),
      'unknown-reference',
      'other',
      /named one already/u,
    ],
    [
      'a line within a panel',
      grid('  folds: { A1|A2: none, A1|B1: none, B1|B2: none }'),
      'joined-panel',
      'B1|B2: none',
      /A2\|B2 of box would be folded within A1/u,
    ],
  ])('is said: %s', (_, found, rule, blames, message) => {
    expect(found.map((each) => [each.rule, blamed(each)])).toEqual([[rule, blames]]);
    expect(found[0]?.message).toMatch(message);
    expect(found[0]?.remedy).toBeTruthy();
  });

  it('is said: a panel that goes all round another', () => {
    const ring =
      'A1|B1: none, B1|C1: none, C1|C2: none, C2|C3: none, B3|C3: none, A3|B3: none, A2|A3: none, A1|A2: none';
    const score = '{ from: left, at: [2, 4] }, { from: top, at: [1, 2] }';
    const found = grid(`  folds: { ${ring} }`, score);
    expect(found.map(({ message }) => message)).toEqual(['A1 of box goes all the way around other panels']);
  });

  it.each([
    ['{ from: left, to: corner A1 }', 'unexpected-value', 'corner A1'],
    ['{ from: corner A1 }', 'missing-value', '{ from: corner A1 }'],
    ['{ from: corner A1, at: 2, to: corner B2 }', 'unexpected-value', '2'],
  ])('is said when it is read: %s', (score, rule, blames) => {
    const { findings } = projectOf(sheetOf(`\n  cut: 6 x 4\n  score: [${score}]`));
    expect(findings.map((each) => [each.rule, blamed(each)])).toEqual([[rule, blames]]);
  });

  it('leaves whole what is right', () => {
    expect(shapesOf(sheetOf(STEP)).findings).toEqual([]);
  });
});
