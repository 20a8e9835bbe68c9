import { describe, expect, it } from 'vitest';
import { examine } from '../../src/examine/examine.ts';
import { Length } from '../../src/measure/length.ts';
import type { PieceChange, PublishedState, Revision } from '../../src/project/ledger/ledger.ts';
import { ledgerText } from '../../src/project/ledger/ledger-format.ts';
import { readLedger } from '../../src/project/ledger/read-ledger.ts';
import { changesBetween } from '../../src/publish/changes.ts';
import { stateOf } from '../../src/publish/state.ts';
import { ownNet } from '../../src/shape/sheets.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';
import { revisionWords } from '../../src/words/changes.ts';
import { speaker } from '../../src/words/labels.ts';
import { labels } from '../handout/sample.ts';

const say = speaker(labels);

const SHEET = `---
title: Keeper
measurements:
  unit: in
  stock: { moss: { name: Moss, sheet: 8 1/2 x 11 }, cream: { name: Cream, sheet: 8 1/2 x 11 } }
  pieces:
    box: { stock: moss, cut: 8 x 6, score: [{ from: left, at: [2, 4] }], panels: { front: B1 } }
    front: { stock: cream, cut: 1 3/4 x 5 3/4, on: box.front }
---
Hello.

## Score the box :step{minutes=5}
Score it.

## Stick the front
Stick :piece[front] on.

:::host
Breathe.
:::
`;

function state(edit: (text: string) => string = (text) => text): PublishedState {
  const [study] = examine(readWorkspaceFromTexts({ 'keeper/sheet.md': edit(SHEET) }));
  if (!study) throw new Error('no project');
  return stateOf(study.editions);
}

type Changes = Revision['changes'];

const tell = (changes: Changes, leading?: 'inch' | 'metric'): ReturnType<typeof revisionWords> =>
  revisionWords(
    { number: 2, date: '2026-12-10', own: 'inch', changes },
    say,
    leading && (leading === 'inch' ? ['inch', 'metric'] : ['metric', 'inch']),
  );

describe('a turn', () => {
  const turned = (turn: number) => (text: string) =>
    text.replace('on: box.front', `on: box.front, turn: ${turn}`);

  it('is told as it was written', () => {
    const { changes } = tell(changesBetween(state(turned(7.3)), state(turned(7.4))));
    expect(JSON.stringify(changes)).toMatch(/turned 7\.3°.*turned 7\.4°/u);
  });

  it('is no other where a ledger has what floating point added', () => {
    const ledger = ledgerText({ revisions: [], state: state(turned(7.3)) });
    const astray = ledger.replace('turn: 7.3', 'turn: 7.300000000000011');
    expect(astray).not.toBe(ledger);
    const read = readLedger({ path: '', text: astray }, () => {}).state;
    expect(read && changesBetween(read, state(turned(7.3)))).toEqual([]);
  });
});

describe('the numbers of the edition that was published', () => {
  const published = ledgerText({
    revisions: [{ number: 1, date: '2026-12-01', own: 'inch', changes: [] }],
    state: state(),
  });
  /** How wide the box is in millimeters where 2 inches were published as something else than 51 mm. */
  const wideWith = (text: string): number | undefined => {
    const ledger = published.replaceAll('51 mm, 102 mm, 152 mm', text);
    const files = { 'keeper/sheet.md': SHEET, 'keeper/revisions.yaml': ledger };
    const [study] = examine(readWorkspaceFromTexts(files));
    return study && ownNet(study.editions.metric.shapes.nets, 'box')?.size.width.mm;
  };

  it('stay where a search would choose others, as long as they are sound', () => {
    // 2, 2 and 4 in: to the nearest millimeter 51 + 51 + 102.
    expect(published).toContain('metric: [ 51 mm, 102 mm, 152 mm ]');
    expect(wideWith('51 mm, 102 mm, 152 mm')).toBe(204);
    expect(wideWith('50 mm, 102 mm, 152 mm')).toBe(202);
  });

  it('move where they have to', () => {
    // No ruler shows it.
    expect(wideWith('503/10 mm, 102 mm, 152 mm')).toBe(204);
  });

  it('are chosen anew where the length is another', () => {
    const ledger = published.replaceAll('51 mm, 102 mm, 152 mm', '50 mm, 102 mm, 152 mm');
    const sheet = SHEET.replace('[2, 4]', '[2 1/4, 4 1/4]');
    const [study] = examine(
      readWorkspaceFromTexts({ 'keeper/sheet.md': sheet, 'keeper/revisions.yaml': ledger }),
    );
    // 57 for what is new; 50 for the 2 in that were published; 3 3/4 in are 95.
    expect(study && ownNet(study.editions.metric.shapes.nets, 'box')?.size.width.mm).toBe(57 + 50 + 95);
  });
});

describe('the numbers of a shared piece', () => {
  const sheet = SHEET.replace('box: { stock: moss, cut: 8 x 6', 'box: { use: shared.tray, stock: moss');
  const shared = 'unit: in\npieces: { tray: { cut: 8 x 6 } }\n';
  const files = { 'shared/all.yaml': shared, 'keeper/sheet.md': sheet };
  const widthOf = (texts: Readonly<Record<string, string>>): number | undefined => {
    const [study] = examine(readWorkspaceFromTexts({ ...files, ...texts }));
    return study && ownNet(study.editions.metric.shapes.nets, 'box')?.size.width.mm;
  };
  const [study] = examine(readWorkspaceFromTexts(files));
  const ledgerOf = (date: string, numbers: string): string =>
    ledgerText({
      revisions: [{ number: 1, date, own: 'inch', changes: [] }],
      state: study && stateOf(study.editions),
    }).replaceAll('51 mm, 102 mm, 152 mm', numbers);

  it('are those of the project that was published first, for all that have not published it', () => {
    expect(widthOf({})).toBe(204);
    const first = { 'old/revisions.yaml': ledgerOf('2026-10-01', '50 mm, 102 mm, 152 mm') };
    expect(widthOf(first)).toBe(202);
    expect(widthOf({ 'newer/revisions.yaml': ledgerOf('2026-11-01', '52 mm, 102 mm, 152 mm') })).toBe(206);
    expect(
      widthOf({ 'newer/revisions.yaml': ledgerOf('2026-11-01', '52 mm, 102 mm, 152 mm'), ...first }),
    ).toBe(202);
    // Its own, once it is published.
    expect(
      widthOf({ ...first, 'keeper/revisions.yaml': ledgerOf('2026-12-01', '51 mm, 102 mm, 152 mm') }),
    ).toBe(204);
  });

  it('go by the piece, not by the size, and are left where they do not fit', () => {
    const first = ledgerOf('2026-10-01', '50 mm, 102 mm, 152 mm');
    expect(widthOf({ 'old/revisions.yaml': first.replaceAll('shared.tray', 'shared.try') })).toBe(204);
    expect(widthOf({ 'old/revisions.yaml': ledgerOf('2026-10-01', '503/10 mm, 102 mm, 152 mm') })).toBe(204);
  });
});

describe('what changed since a revision', () => {
  it.each<[string, (text: string) => string, readonly string[], readonly string[]]>([
    ['nothing', (text) => text, [], []],
    ['the host note alone', (text) => text.replace('Breathe', 'Smile'), [], []],
    ['spelling of a length', (text) => text.replace('8 x 6', '8.0 × 6 in'), [], []],
    [
      'a layer that stays centered, which nobody sticks on otherwise',
      (text) => text.replace('1 3/4 x 5 3/4', '1 3/4 x 5 1/2'),
      ['front was 1¾ × 5¾ in (45 × 146 mm), is 1¾ × 5½ in (45 × 140 mm)'],
      ['front'],
    ],
    [
      'a layer that is no longer centered',
      (text) => text.replace('on: box.front }', 'on: box.front, at: { top: 1/16 } }'),
      [
        'front was 45 × 146 mm, is 45 × 145 mm',
        'the place of front was on box front, ⅛ in (3 mm) from the left and ⅛ in (3 mm) from the top, is on box front, ⅛ in (3 mm) from the left and 1⁄16 in (2 mm) from the top',
      ],
      ['front (mm)'],
    ],
    [
      'a score line',
      (text) => text.replace('[2, 4]', '[2, 4 1/16]').replace('1 3/4 x', '1 13/16 x'),
      [
        'box was 204 × 152 mm, is 203 × 152 mm',
        'the scores from the left of box were 2 in (51 mm), 4 in (102 mm), are 2 in (51 mm), 4 1⁄16 in (103 mm)',
        'front was 1¾ × 5¾ in (45 × 146 mm), is 1 13⁄16 × 5¾ in (46 × 146 mm)',
      ],
      ['box', 'front'],
    ],
    [
      'lines on one edge of which one is there in part',
      (text) =>
        text.replace(
          '[{ from: left, at: [2, 4] }]',
          '[{ from: left, at: [2, 4] }, { from: top, at: 3 }], folds: { 1|2: flat, B1|B2: none }',
        ),
      [
        'the scores from the top of box are new: 3 in (76 mm)',
        'Some lines of box are scored from or to a different point.',
      ],
      ['box'],
    ],
    [
      'a line at an angle',
      (text) =>
        text.replace(
          '[{ from: left, at: [2, 4] }]',
          '[{ from: left, at: [2, 4] }, { from: corner A1, to: corner B1 bottom left }]',
        ),
      ['The angled lines of box run differently.'],
      ['box'],
    ],
    [
      'the paper',
      (text) => text.replace('stock: cream, cut', 'stock: moss, cut'),
      ['the paper of front was Cream, is Moss'],
      ['front'],
    ],
    [
      'a radius of all corners that is of some',
      (text) => text.replace('on: box.front }', 'on: box.front, corners: { left: 1/4, top right: 1/8 } }'),
      [
        'the corners of front are new: left corners rounded to ¼ in (6 mm); upper right corner rounded to ⅛ in (3 mm)',
      ],
      ['front'],
    ],
    [
      'an outline',
      (text) => text.replace('on: box.front }', 'on: box.front, shape: banner }'),
      ['the outline of front is new: banner with a notch ⅞ in (22 mm) deep'],
      ['front'],
    ],
    [
      'a piece taken out',
      (text) => text.replace(/ {4}front:.*\n/u, '').replace('Stick :piece[front] on.', 'Rub it.'),
      ['front is gone: it was 1¾ × 5¾ in (45 × 146 mm)', 'step “Stick the front” is reworded'],
      [],
    ],
    [
      'words of a step',
      (text) => text.replace('Score it.', 'Score it twice.'),
      ['step “Score the box” is reworded'],
      [],
    ],
    [
      'minutes of a step',
      (text) => text.replace('minutes=5', 'minutes=6'),
      ['step “Score the box” is reworded'],
      [],
    ],
    [
      'a step’s name',
      (text) => text.replace('## Stick the front', '## Add the front'),
      ['step “Stick the front” is now called “Add the front”'],
      [],
    ],
    ['a new step', (text) => `${text}\n## Fill it\nFill it.\n`, ['step “Fill it” is new'], []],
  ])('%s', (_, edit, changes, recut) => {
    expect(tell(changesBetween(state(), state(edit)))).toEqual({ changes, recut });
  });

  it.each<[string, string, readonly string[]]>([
    [
      'shape: banner, notch: 1/2',
      'shape: banner, notch: 3/4',
      [
        'the outline of front was banner with a notch ½ in (13 mm) deep, is banner with a notch ¾ in (19 mm) deep',
      ],
    ],
    [
      'shape: polygon',
      'shape: polygon, sides: 8',
      ['the outline of front was polygon with 6 equal sides, is polygon with 8 equal sides'],
    ],
    ['shape: arch', 'shape: oval', ['the outline of front was arch with a round top ⅞ in high, is oval']],
    [
      'shape: tag, clip: 1/4',
      'corners: 1/4',
      [
        'the corners of front are new: ¼ in (6 mm)',
        'the outline of front is gone: it was tag with ¼ in (6 mm) cut off each upper corner',
      ],
    ],
    ['corners: 1/8', 'corners: 1/4', ['the corners of front were ⅛ in (3 mm), are ¼ in (6 mm)']],
    [
      'corners: { top: 1/8 }',
      'corners: { top: 1/4 }',
      [
        'the corners of front were upper corners rounded to ⅛ in (3 mm), are upper corners rounded to ¼ in (6 mm)',
      ],
    ],
    [
      'corners: { top: 1/4 }',
      'corners: 1/4',
      ['the corners of front were upper corners rounded to ¼ in, are ¼ in'],
    ],
    ['corners: { top: 1/4, bottom: 1/4 }', 'corners: 1/4', []],
  ])('tells from %s to %s', (one, other, expected) => {
    const [before, after] = [one, other].map((outline) =>
      state((text) => text.replace('on: box.front }', `on: box.front, ${outline} }`)),
    );
    const changes = before && after ? changesBetween(before, after) : [];
    expect(tell(changes).changes.filter((each) => /^the (?:corners|outline)/u.test(each))).toEqual(expected);
    const text = ledgerText({ revisions: [{ number: 2, date: '2026-12-10', changes }], state: after });
    expect(ledgerText(readLedger({ path: '', text }, () => expect.unreachable()))).toBe(text);
  });

  it('tells an opening of another outline, though it is as large as it was', () => {
    const [arch, oval] = ['arch', 'oval'].map((shape) =>
      state((text) =>
        text.replace(
          'on: box.front }',
          `on: box.front, openings: { w: { shape: ${shape}, size: 1 x 1 1/2 } } }`,
        ),
      ),
    );
    const [change, ...others] = arch && oval ? changesBetween(arch, oval) : [];
    expect(others).toEqual([]);
    expect(change).toMatchObject({
      what: 'openings',
      before: { word: 'w front arch' },
      after: { word: 'w front oval' },
    });
  });

  it('says that steps have been put in another order', () => {
    const { pieces, steps } = state();
    const changes = changesBetween({ pieces, steps }, { pieces, steps: steps.toReversed() });
    expect(changes).toEqual([{ steps: 'reordered' }]);
    expect(tell(changes)).toEqual({ changes: ['the steps are in a different order'], recut: [] });
  });

  it('is data, exact in each edition', () => {
    const [size] = changesBetween(
      state(),
      state((text) => text.replace('8 x 6', '8 x 6 1/16')),
    );
    const inches = (...sixteenths: number[]): Length[] => sixteenths.map((each) => Length.of(each, 16, 'in'));
    expect(size).toMatchObject({ piece: 'box', what: 'size' });
    const { before, after } = size as PieceChange;
    expect([before?.inch, after?.inch]).toEqual([inches(128, 96), inches(128, 97)]);
    expect(after?.metric?.map((length) => length.mm % 1)).toEqual([0, 0]);
  });

  it.each([
    ['inch', 'metric'],
    ['metric', 'inch'],
  ] as const)(
    'knows only %s where only that is printed, and tells no change when %s is too',
    (one, other) => {
      const alone = state((text) => text.replace('title: Keeper', `title: Keeper\nunits: ${one}`));
      expect(alone.pieces.filter((fact) => fact[one]).length).toBeGreaterThan(3);
      expect(alone.pieces.filter((fact) => fact[other])).toEqual([]);
      expect(changesBetween(alone, state())).toEqual([]);
      expect(changesBetween(state(), alone)).toEqual([]);
    },
  );

  it('leads with the unit of the sheet it stands on', () => {
    const changes = changesBetween(
      state(),
      state((text) => text.replace('1 3/4 x 5 3/4', '1 3/4 x 5 1/2')),
    );
    expect(tell(changes, 'inch').changes[0]).toBe(
      'front was 1¾ × 5¾ in (45 × 146 mm), is 1¾ × 5½ in (45 × 140 mm)',
    );
    expect(tell(changes, 'metric').changes[0]).toMatch(
      /^front was 45 × 146 mm \(1¾ × 5¾ in\), is \d+ × \d+ mm \(/u,
    );
  });

  it('tells a base that moved in the other edition alone, and has it cut again', () => {
    const moved = (from: number, to: number): Changes => [
      {
        piece: 'box',
        what: 'scores',
        from: 'left',
        before: { inch: [Length.of(2, 1, 'in')], metric: [Length.of(from, 1, 'mm')] },
        after: { inch: [Length.of(2, 1, 'in')], metric: [Length.of(to, 1, 'mm')] },
      },
    ];
    const words = 'the scores from the left of box were 50 mm, are 51 mm';
    expect(tell(moved(50, 51), 'inch')).toEqual({ changes: [words], recut: ['box (mm)'] });
    expect(tell(moved(50, 51), 'metric')).toEqual({ changes: [words], recut: ['box (mm)'] });
  });

  it('has a piece cut again that is trimmed otherwise', () => {
    const cut = (keys: string) => (text: string) =>
      text.replace('panels: { front: B1 }', `panels: { front: B1 }${keys}`);
    const changes = changesBetween(state(), state(cut(', trim: [C1]')));
    expect(changes).toContainEqual(expect.objectContaining({ piece: 'box', what: 'cuts' }));
    expect(tell(changes)).toEqual({
      changes: ['box is trimmed, slit or tapered differently'],
      recut: ['box'],
    });
    expect(changesBetween(state(cut(', trim: [C1]')), state(cut(', trim: [ c1 ]')))).toEqual([]);
  });

  it('has a piece cut again that is no longer scored, but not one that is gone', () => {
    const value = { inch: [Length.of(2, 1, 'in')] };
    const gone = (what: 'size' | 'scores'): Changes => [{ piece: 'box', what, from: 'left', before: value }];
    expect(tell(gone('scores')).recut).toEqual(['box']);
    expect(tell(gone('size')).recut).toEqual([]);
  });
});

describe('what changed in a project with variants', () => {
  const SIZES = SHEET.replace(
    '---\nHello',
    '  variants: { small: { box.cut: 8 x 5, front.cut: 1 3/4 x 4 3/4 }, large: }\n---\nHello',
  );
  const changesOf = (before: string, after: string): readonly string[] =>
    tell(
      changesBetween(
        state(() => before),
        state(() => after),
      ),
    ).changes;

  it('names the variant that changed, and no other', () => {
    expect(changesOf(SIZES, SIZES.replace('1 3/4 x 4 3/4', '1 3/4 x 4 1/2'))).toEqual([
      'front (small) was 1¾ × 4¾ in (45 × 121 mm), is 1¾ × 4½ in (45 × 115 mm)',
    ]);
  });

  it('says once what changed for all', () => {
    const changes = changesOf(SIZES, SIZES.replace('at: [2, 4]', 'at: [2, 4 1/4]'));
    expect(changes.filter((change) => change.includes('scores'))).toEqual([
      'the scores from the left of box were 2 in (51 mm), 4 in (102 mm), are 2 in (51 mm), 4¼ in (108 mm)',
    ]);
  });

  it('tells of a variant that is new what is its own, and nothing of one that is as it was', () => {
    const changes = changesOf(SHEET, SIZES);
    expect(changes).toContain('box (small) was 8 × 6 in (204 × 152 mm), is 8 × 5 in (204 × 127 mm)');
    expect(changes.filter((change) => change.includes('large'))).toEqual([]);
    expect(changesOf(SIZES, SHEET)).toContain(
      'box (small) was 8 × 5 in (204 × 127 mm), is 8 × 6 in (204 × 152 mm)',
    );
  });
});

describe('the openings of a piece', () => {
  const opened = (words: string) => (text: string) =>
    text.replace('on: box.front }', `on: box.front, openings: { window: { size: 1 x 1, ${words} } } }`);

  it.each([
    ['shape: circle', 'shape: circle', false],
    ['shape: circle', 'shape: polygon', true],
    ['shape: polygon', 'shape: polygon, sides: 8', true],
    ['shape: arch', 'shape: arch, rise: 1/4', true],
    ['corners: 1/8', 'corners: 1/4', true],
    ['corners: 1/8', 'corners: { top: 1/8 }', true],
  ])('are cut differently with %s and with %s: %s', (before, after, isChanged) => {
    const told = tell(changesBetween(state(opened(before)), state(opened(after))));
    expect(told.changes).toEqual(isChanged ? ['The openings of front are cut differently.'] : []);
  });
});

describe('a punched edge and a stamped image', () => {
  /** On 5 3/4 in, motifs of 1/8 in: 23 every 1/4 in leave 1/16 in and 22 leave 3/16 in; 15 every 3/8 in leave 3/16 in. */
  const decorated = (edge: string, left: string) => (text: string) =>
    text
      .replace(
        'on: box.front }',
        `on: box.front, edge: { along: ${edge}, hole: 1/8 }, impressions: { stamp: leaf, size: 1 x 1, at: { left: ${left} } } }`,
      )
      .replace('measurements:', 'supplies: [{ item: Leaf stamp, kind: stamp }]\nmeasurements:');
  const before = state(decorated('left, pitch: 1/4', '1/4'));

  it.each([
    ['the same', 'left, pitch: 1/4', '1/4', []],
    [
      'another pitch',
      'left, pitch: 3/8',
      '1/4',
      [
        'the punched edges of front were left edge: 3⁄16 in (4.7375 mm), ¼ in (6.35 mm), ⅛ in (3.175 mm), are left edge: 3⁄16 in (4.7375 mm), ⅜ in (9.525 mm), ⅛ in (3.175 mm)',
      ],
    ],
    [
      'another edge',
      'right, pitch: 1/4',
      '1/4',
      ['the punched edges of front were left edge: 3⁄16 in, ¼ in, ⅛ in, are right edge: 3⁄16 in, ¼ in, ⅛ in'],
    ],
    [
      'another place',
      'left, pitch: 1/4',
      '1/2',
      [
        'the stamped images on front were Leaf stamp: ¼ in (6 mm), 2⅜ in (60.3 mm), are Leaf stamp: ½ in (13 mm), 2⅜ in (60.3 mm)',
      ],
    ],
  ])('%s', (_, edge, left, expected) => {
    const told = tell(changesBetween(before, state(decorated(edge, left))));
    expect(told.changes).toEqual(expected);
  });
});
