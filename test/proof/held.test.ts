import { describe, expect, it } from 'vitest';
import { sheetOf } from '../shape/boxes.ts';
import { boxWith, trayWith, tuckBoxWith } from './box-with.ts';
import { blamed, findingsOf } from './workspace.ts';

const said = (sheet: string): string[] =>
  findingsOf(sheet)
    .filter(({ rule, severity }) => severity !== 'note' && rule !== 'score-off-groove')
    .map((each) => `${each.severity} ${each.rule} at "${blamed(each)}": ${each.message}; ${each.remedy}`);

const held = (sheet: string): string[] => said(sheet).filter((each) => each.includes(' not-held '));

/** A tube of six walls 2 in wide, a tab, and flaps `deep` under them. */
function sixSided(glue: string, deep = '1 3/4'): string {
  const folds = ['A|B', 'B|C', 'C|D', 'D|E', 'E|F', 'F|G'].map((line) => `${line}: mountain 60`).join(', ');
  return sheetOf(`
  cut: 12 3/4 x 5
  score: [{ from: left, at: [2, 4, 6, 8, 10, 12] }, { from: bottom, at: [${deep}] }]
  trim: [G2]
  slit: [A|B 2, B|C 2, C|D 2, D|E 2, E|F 2, F|G 2]
  taper: [G1]
  folds: { ${folds} }${glue && `\n  glue: { ${glue} }`}`).replace('sheet: 12 x 12', 'sheet: 12 x 18');
}

const SIX = 'G1: A1, A2: B2, B2: C2, D2: C2, E2: D2, F2: E2';

describe('a box that is not glued', () => {
  it.each([
    [
      'at all',
      boxWith().replace(/ {2}glue:.*\n/u, '\n'),
      'the walls of box go all the way around, but box.tab is stuck to nothing where it lies on box.A3; add "glue: { tab: A3, A4: D4, B4: D4, C4: D4 }"',
    ],
    [
      'but at its tab',
      boxWith({ glue: 'tab: A3' }),
      'box.A4, box.B4, box.C4 and box.D4 close an end of box and are stuck to nothing: that end falls open; add "glue: { A4: D4, B4: D4, C4: D4 }", or "opens: [A4, B4, C4, D4]" where that is meant to open',
    ],
    [
      'at its tab',
      boxWith({ glue: 'A4: D4, C4: D4, B4: D4' }),
      'the walls of box go all the way around, but box.tab is stuck to nothing where it lies on box.A3; add "glue: { tab: A3 }"',
    ],
    [
      'at any flap of a floor of six',
      sixSided('G1: A1'),
      'box.A2, box.B2, box.C2, box.D2, box.E2 and box.F2 close an end of box and are stuck to nothing: that end falls open; add "glue: { A2: B2, B2: C2, C2: D2, D2: E2, E2: F2 }", or "opens: [A2, B2, C2, D2, E2, F2]" where that is meant to open',
    ],
    [
      'at the seam of six walls',
      sixSided(SIX.replace('G1: A1, ', '')),
      'the walls of box go all the way around, but box.G1 is stuck to nothing where it lies on box.A1; add "glue: { G1: A1 }"',
    ],
  ])('%s is found once', (_, sheet, expected) => {
    expect(held(sheet)).toEqual([expect.stringContaining(`error not-held at "box": ${expected}`)]);
  });

  it('but for one flap that the others cover is only warned of', () => {
    expect(held(boxWith({ glue: 'tab: A3, A4: D4, B4: D4' }))).toEqual([
      'warning not-held at "box": box.C4 is stuck to nothing, unlike the rest of that end; add "glue: { C4: D4 }", or "opens: [C4]" where that is meant to open',
    ]);
  });

  it('at a floor of two flaps that meet edge to edge is only warned of, for nothing there takes glue', () => {
    const sheet = sheetOf(`
  cut: 8 1/2 x 5
  score: [{ from: left, at: [2, 4, 6, 8] }, { from: top, at: [4] }]
  trim: [B2, D2, E2]
  slit: [A|B 2, B|C 2, C|D 2]
  glue: { E1: A1 }`);
    expect(held(sheet)).toEqual([
      'warning not-held at "box": box.A2 and box.C2 close an end of box and are stuck to nothing: that end falls open; leave glue tabs where they meet, or "opens: [A2, C2]" where that is meant to open',
    ]);
  });

  it('at the one flap of a floor is warned of in the same way', () => {
    const sheet = sheetOf(`
  cut: 8 1/2 x 6
  score: [{ from: left, at: [2, 4, 6, 8] }, { from: top, at: [4] }]
  trim: [B2, C2, D2, E2]
  slit: [A|B 2]
  glue: { E1: A1 }`);
    const warning =
      'warning not-held at "box": box.A2 closes an end of box and is stuck to nothing: that end falls open; leave a glue tab on A2, or "opens: [A2]" where that is meant to open';
    expect(held(sheet)).toEqual([warning]);
    expect(held(sheet.replace('slit: [A|B 2]', 'slit: [A|B 2]\n      opens: [A2]'))).toEqual([]);
  });

  it.each([
    [
      'a pocket with two tabs',
      'cut: 5 x 8\n  score: [{ from: left, at: [1/2, 4 1/2] }, { from: bottom, at: [3 1/2] }]\n  trim: [A1, C1]\n  folds: { A|B: mountain 180, B|C: mountain 180, 1|2: mountain 180 }',
      'box.A2 and box.C2 are folded in as the sides of a pocket are, and stuck to nothing: what is put in falls out; add "glue: { A2: B1, C2: B1 }"',
    ],
    [
      'an envelope whose sides overlap, and not its foot or its flap',
      'cut: 5 1/2 x 4 3/4\n  score: [{ from: left, at: [1 1/2, 4] }, { from: top, at: [3/4, 4 1/4] }]\n  trim: [A1, C1, A3, C3]\n  folds: { A|B: mountain 180, B|C: mountain 180, 1|2: mountain 180, 2|3: mountain 180 }',
      'box.A2 and box.C2 are folded in as the sides of a pocket are, and stuck to nothing: what is put in falls out; add "glue: { A2: C2 }"',
    ],
  ])('at all, flat, is only warned of: %s', (_, pocket, expected) => {
    expect(held(sheetOf(`\n  ${pocket}`))).toEqual([
      expect.stringContaining(`warning not-held at "box": ${expected}`),
    ]);
  });

  it('says of each mark of its glue that it is needed', () => {
    const marks = ['tab: A3', 'A4: D4', 'C4: D4', 'B4: D4'];
    for (const mark of marks) {
      const others = marks.filter((each) => each !== mark).join(', ');
      expect(held(boxWith({ glue: others }))).toEqual([expect.stringContaining(`add "glue: { ${mark} }"`)]);
    }
  });

  it('has no tab to glue', () => {
    const sheet = boxWith({
      cut: '7 1/2 x 6 3/4',
      left: '1 1/4, 3 3/4, 5',
      trim: 'A1, C1',
      glue: 'A4: D4, C4: D4, B4: D4',
    })
      .replace(', tab: E3', '')
      .replace(', tab]', ']');
    expect(said(sheet)).toEqual([
      'error not-held at "box": box.A3 and box.back meet edge to edge, and no tab joins them; leave a glue tab on A3 and stick it inside back, or say under "folds:" that they fold less far',
    ]);
  });
});

describe('what is glued', () => {
  it('sticks out of its wall where it is wider', () => {
    expect(said(boxWith({ cut: '10 x 6 3/4' }))).toEqual([
      'error glue-sticks-out at "tab: A3": box.tab sticks out 1 1/4 in past box.A3, which it is stuck to; make tab at least 1 1/4 in smaller',
    ]);
    expect(said(boxWith({ cut: '8 3/4 x 6 3/4' }))).toEqual([]);
  });

  it('may reach past its mate on a floor and on a band, between the walls', () => {
    const band = sheetOf(
      '\n  cut: 11 x 2\n  score: [{ from: left, at: [4 1/2, 4 3/4, 9 1/4, 9 1/2] }]\n  panels: { tab: E1 }\n  glue: { tab: A1 }',
    );
    expect(said(band)).toEqual([]);
    expect(
      said(boxWith({ glue: 'tab: A3, A4: D4, C4: B4, B4: D4' })).filter((each) =>
        each.includes('sticks-out'),
      ),
    ).toEqual([]);
  });
});

/** The middle of a hexagon 2 in a side is √3 in from each: flaps of 1 1/4 in leave one of 2 (√3 − 1 1/4) in across. */
describe('the end of a box of six sides', () => {
  it('is covered by flaps that reach its middle', () => {
    expect(said(sixSided(SIX))).toEqual([]);
  });

  it('has a hole where they do not', () => {
    expect(said(sixSided(SIX, '1 1/4'))).toEqual([
      'error bottom-gap at "1 1/4": box.A2, box.B2, box.C2, box.D2, box.E2 and box.F2 leave a hole of 1 1/8 × 1 in in the end they close; make A2, B2, C2, D2, E2 and F2 at least 1/2 in longer',
    ]);
  });

  it('has flaps that are too long, and of their glue nothing is said', () => {
    expect(said(sixSided(SIX, '3 3/4').replace('12 3/4 x 5', '12 3/4 x 8'))).toEqual([
      'error flap-too-long at "3 3/4": box.A2, box.B2, box.C2, box.D2, box.E2 and box.F2 stick out ≈5/16 in past the walls of the end; trim A2, B2, C2, D2, E2 and F2 until they lie inside the walls, or taper them',
    ]);
  });

  it('is meant to be open where flaps that are not stuck cover less than half of it', () => {
    expect(said(sixSided('G1: A1', '1/4'))).toEqual([]);
  });

  it('has no room for flaps as long as it is wide', () => {
    const [first] = said(sixSided(SIX, '3 3/4').replace('cut: 12 3/4 x 5', 'cut: 12 3/4 x 7'));
    expect(first).toBe(
      'error flap-too-long at "3 3/4": box.A2, box.B2, box.C2, box.D2, box.E2 and box.F2 stick out ≈5/16 in past the walls of the end; trim A2, B2, C2, D2, E2 and F2 until they lie inside the walls, or taper them',
    );
  });
});

/** One score line folded otherwise, and the one finding it makes. */
describe('a line folded by the wrong angle', () => {
  it.each([
    [
      'under flaps that are glued',
      boxWith({ folds: '1|2: valley 90, 3|4: mountain 120' }),
      'glue-misses at "3|4: mountain 120": as 3|4 is folded, box.A4, box.C4 and box.B4 do not land on box.D4; say "3|4: mountain 90" under "folds:"',
    ],
    [
      'between two walls',
      boxWith({ folds: '1|2: valley 90, A|B: valley 90' }),
      'glue-misses at "A|B: valley 90": as A|B is folded, box.tab does not land on box.A3 and box.A4 does not land on box.D4; say "A|B: mountain 90" under "folds:"',
    ],
    [
      'over flaps that are not',
      boxWith({ folds: '1|2: valley 90, 2|3: mountain 120' }),
      'panels-collide at "2|3: mountain 120": box.B1, box.D1, box.A2, box.C2, box.B2 and box.D2 would pass through one another by up to ≈1/4 in; say "2|3: mountain 90" under "folds:"',
    ],
    [
      // Slopes of 1 1/2 in over a depth of 2: the sine of the angle is 1 to 1 1/2, and 41.8 degrees has that.
      'of a roof that leans too far',
      sheetOf(
        '\n  cut: 10 1/2 x 7 1/2\n  score: [{ from: left, at: [3, 5, 8, 10] }, { from: bottom, at: [2, 5, 6 1/2] }]\n  panels: { tab: E3 }\n  trim: [B1, D1, B2, D2, E1, E2, E4]\n  slit: [A|B 4, B|C 4, C|D 4]\n  taper: [B4, D4, tab]\n  folds: { 2|3: mountain 48.2, 1|2: valley 48.2 }\n  glue: { tab: A3, B4: A4, D4: A4, C4: A4 }',
      ),
      'panels-collide at "2|3: mountain 48.2": box.A2 and box.C2 would pass through each other by ≈3/16 in; say "2|3: mountain 41.8" under "folds:", and fold 1|2 back as far',
    ],
    [
      'at the foot of a wall of a tray',
      trayWith().replace('  glue:', '  folds: { 1|2: mountain 120 }\n      glue:'),
      'glue-misses at "1|2: mountain 120": as 1|2 is folded, tray.A1 and tray.C1 do not land on tray.back; say "1|2: mountain 90" under "folds:"',
    ],
  ])('%s', (_, sheet, expected) => {
    expect(said(sheet)).toEqual([`error ${expected}`]);
  });
});

/** A tray 2 × 2 × 1 in whose corners are folded in on slanted lines and lie on its back and front. */
describe('a tray with corners folded in', () => {
  const corners = ['A1 right: back', 'C1 left: back', 'A3 right: front', 'C3 left: front'];
  const tray = (glue: readonly string[]): string[] =>
    said(
      sheetOf(`
  cut: 4 x 4
  score:
    - { from: left, at: [1, 3] }
    - { from: top, at: [1, 3] }
    - { from: corner A1, to: corner B2 }
    - { from: corner C1 top right, to: corner C2 }
    - { from: corner A3 bottom left, to: corner B3 }
    - { from: corner C3, to: corner C3 bottom right }
  panels: { back: B1, floor: B2, front: B3 }
  folds: { B1|A1 right: mountain 180, A1 left|A1 right: valley 180, B1|C1 left: mountain 180, C1 left|C1 right: valley 180, B3|A3 right: mountain 180, A3 left|A3 right: valley 180, B3|C3 left: mountain 180, C3 left|C3 right: valley 180 }${glue.length > 0 ? `\n  glue: { ${glue.join(', ')} }` : ''}`),
    );

  it('is held by them, and told of those that are not stuck', () => {
    expect(tray(corners)).toEqual([]);
    expect(tray(corners.slice(1))).toEqual([
      'warning flap-left-out at "box": box.A1 right is stuck to nothing, and C1 left, which is like it, to back; stick A1 right too, or say "opens: [A1 right]" where it is meant to hang loose',
    ]);
    expect(tray(corners.slice(3))).toEqual([
      'warning flap-left-out at "box": box.A1 right, box.C1 left and box.A3 right are stuck to nothing, and C3 left, which is like them, to front; stick A1 right, C1 left and A3 right too, or say "opens: [A1 right, C1 left, A3 right]" where they are meant to hang loose',
    ]);
    expect(tray([])).toEqual([
      `error not-held at "box": box.A1 right, box.C1 left, box.A3 right and box.C3 left meet, and nothing holds them together; add "glue: { ${corners.join(', ')} }", or "opens: [A1 right, C1 left, A3 right, C3 left]" where that is meant to open`,
    ]);
  });
});

describe('a tray that is not glued', () => {
  const BARE = trayWith().replace(/ {2}glue:.*\n/u, '\n');

  it.each([
    [
      'anywhere',
      BARE,
      'tray.back, tray.A2, tray.front and tray.C2 meet, and nothing holds them together; add "glue: { A1: back, A3: front, C1: back, C3: front }", or "opens: [back, A2, front, C2]" where that is meant to open',
    ],
    [
      'at one corner',
      trayWith(undefined, 'A1: back, C1: back, A3: front'),
      'tray.C3 lies where it could be stuck, and nothing holds it; add "glue: { C3: front }", or "opens: [C3]" where that is meant to open',
    ],
    [
      'and has no tabs',
      BARE.replace(/slit:.*/u, 'trim: [A1, C1, A3, C3]').replace(/ {2}taper:.*\n/u, '\n'),
      'tray.back, tray.A2, tray.C2 and tray.front meet, and nothing holds them together; leave glue tabs where they meet, or "opens: [back, A2, C2, front]" where that is meant to open',
    ],
  ])('%s is found once', (_, sheet, expected) => {
    expect(held(sheet)).toEqual([`error not-held at "tray": ${expected}`]);
  });
});

describe('what the remedy says', () => {
  const marks = (sheet: string): string[] =>
    held(sheet).flatMap((each) => /add "glue: \{ (.*?) \}"/u.exec(each)?.[1] ?? []);

  it.each([
    ['tab alone', (glue: string) => boxWith({ glue }), 'tab: A3'],
    ['one flap of four', (glue: string) => boxWith({ glue }), 'tab: A3, A4: D4'],
    ['floor alone', (glue: string) => boxWith({ glue }), 'A4: D4, C4: D4, B4: D4'],
    ['two corners of a tray', (glue: string) => trayWith(undefined, glue), 'A1: back, C3: front'],
    ['seam of six sides', (glue: string) => sixSided(glue), 'G1: A1'],
  ])('holds a thing of which the glue was its %s', (_, sheet, glue) => {
    const missing = marks(sheet(glue)).join(', ');
    expect(missing).not.toBe('');
    expect(said(sheet(`${glue}, ${missing}`))).toEqual([]);
  });
});

describe('an envelope by its score lines', () => {
  const envelope = (glue: string): string =>
    sheetOf(`
  cut: 8 x 10
  score: [{ from: left, at: [3/4, 7 1/4] }, { from: top, at: [2 1/4, 6 1/2] }]
  panels: { flap: B1, front: B2, back: B3 }
  trim: [A1, C1, A3, C3]
  taper: [flap, A2, C2]
  folds: { A|B: mountain 180, B|C: mountain 180, 1|2: mountain 180, 2|3: mountain 180 }
  glue: { ${glue} }`);

  it('may open at its flap, and at one side only', () => {
    expect(held(envelope('A2: back, C2: back'))).toEqual([]);
    expect(held(envelope('A2: back'))).toEqual([
      'error not-held at "box": box.C2 lies where it could be stuck, and nothing holds it; add "glue: { C2: back }", or "opens: [C2]" where that is meant to open',
    ]);
  });
});

describe('nothing is said', () => {
  /** A tray 4 × 3 × 1 in, its back with a lid; and with a further score line, a flap at the lid's edge. */
  const lidded = (cut: string, further: string): string =>
    sheetOf(`
  cut: ${cut}
  score: [{ from: left, at: [1, 5] }, { from: top, at: [1, 4, 5${further}] }]
  panels: { front: B1, floor: B2, back: B3, lid: B4 }
  trim: [A4, C4${further && ', A5, C5'}]
  slit: [A|B 1, B|C 1, A|B 3, B|C 3]
  glue: { A1: front, C1: front, A3: back, C3: back }`);

  it.each([
    ['of a box whose upper end may open', boxWith()],
    ['of one that is tucked in', tuckBoxWith()],
    ['of a tray', trayWith()],
    ['of a box of six sides', sixSided(SIX)],
    [
      'of a card folded flat',
      sheetOf('\n  cut: 8 x 5\n  score: [{ from: left, at: [4] }]\n  folds: { A|B: mountain 180 }'),
    ],
    ['of a card that stands', sheetOf('\n  cut: 8 x 5\n  score: [{ from: left, at: [4] }]')],
    ['of a stand whose edges meet nothing', sheetOf('\n  cut: 9 x 4\n  score: [{ from: left, at: [3, 6] }]')],
    ['of a tray with a lid that hangs on its back', lidded('6 x 8', '')],
    ['of one whose lid is tucked in', lidded('6 x 9', ', 8')],
    [
      'of a sleeve with a flap to close one of its ends',
      sheetOf(
        '\n  cut: 10 1/2 x 5\n  score: [{ from: left, at: [4, 5, 9, 10] }, { from: bottom, at: [4] }]\n  panels: { tab: E2 }\n  trim: [A1, B1, D1, E1]\n  glue: { tab: A2 }',
      ),
    ],
    [
      'where the project says it opens',
      trayWith().replace(/ {2}glue:.*\n/u, '  opens: [back, front, A2, C2]\n'),
    ],
    [
      'of what is glued to the wrong panel, which another rule says',
      boxWith({ glue: 'tab: A3, A4: D4, C4: D4, B4: C3' }),
    ],
  ])('%s', (_, sheet) => {
    expect(held(sheet)).toEqual([]);
  });

  it('of a flat tube with a flap at its end, in which there is nothing to cover', () => {
    const pouch = sheetOf(
      '\n  cut: 8 1/2 x 5\n  score: [{ from: left, at: [4, 8] }, { from: bottom, at: [1] }]\n  panels: { tab: C1 }\n  trim: [B2, C2]\n  folds: { A|B: mountain 180, B|C: mountain 180 }\n  glue: { tab: A1 }',
    );
    expect(findingsOf(pouch).map(({ rule }) => rule)).not.toContain('internal');
    expect(held(pouch)).toEqual([]);
  });

  it('of anything else about a sheet with `opens:`, but that it names a panel that is not there', () => {
    expect(said(boxWith().replace('  glue:', '  opens: [lid]\n      glue:'))).toEqual([
      expect.stringContaining('unknown-reference'),
    ]);
  });
});
