import { describe, expect, it } from 'vitest';
import { restOf } from '../../../src/shape/base-panel.ts';
import type { Net } from '../../../src/shape/net.ts';
import { KEEPER, netOf } from '../boxes.ts';
import { netsOf } from './building.ts';

/**
 * The same shapes given by their score lines, as a demonstrator would write them: they must become the very same
 * nets. A pillow box (curves), a tag (corners cut at 45°) and flaps cut shorter than the grid have no such twin.
 */
const TWINS: readonly (readonly [string, string, Readonly<Record<string, string>>, readonly string[]])[] = [
  [
    'clip-top box',
    'on its usual measurements',
    { inside: '3 1/2 x 1 x 4 3/4', tab: '1/2' },
    [
      `
  cut: 9 1/2 x 6 3/4
  score:
    - { from: left,   at: [1, 4 1/2, 5 1/2, 9] }
    - { from: bottom, at: [1, 5 3/4, 6 1/4] }
  panels: { front-flange: B1, back-flange: D1, left-dust: A2, front-top: B2, right-dust: C2, back-top: D2,
            left: A3, front: B3, right: C3, back: D3, tab: E3,
            left-bottom: A4, front-bottom: B4, right-bottom: C4, back-bottom: D4 }
  trim:   [A1, C1, E1, E2, E4]
  slit:   [A|B 1-2, B|C 1-2, C|D 1-2, A|B 4, B|C 4, C|D 4]
  taper:  [left-dust, right-dust, left-bottom, right-bottom, tab]
  folds:  { 1|2: valley 90 }
  glue:   { tab: left, left-bottom: back-bottom, right-bottom: back-bottom, front-bottom: back-bottom }`,
    ],
  ],
  [
    'tuck-end box',
    'with both lids on the back',
    { inside: '2 x 1 x 3 1/2' },
    [
      `
  cut: 6 1/2 x 7
  score:
    - { from: left,   at: [1, 3, 4, 6] }
    - { from: bottom, at: [3/4, 1 3/4, 5 1/4, 6 1/4] }
  panels: { lid-tuck: D1, left-dust: A2, right-dust: C2, lid: D2, left: A3, front: B3, right: C3, back: D3, tab: E3,
            left-bottom-dust: A4, right-bottom-dust: C4, bottom: D4, bottom-tuck: D5 }
  trim:   [A1, B1, C1, E1, B2, E2, B4, E4, A5, B5, C5, E5]
  slit:   [C|D 2, C|D 4]
  taper:  [lid-tuck, left-dust, right-dust, tab, left-bottom-dust, right-bottom-dust, bottom-tuck]
  glue:   { tab: left }`,
    ],
  ],
  [
    'tuck-end box',
    'with its bottom on the front',
    { outside: '2 x 1 x 3 1/2', ends: 'reverse' },
    [
      `
  cut: 6 1/2 x 7
  score:
    - { from: left,   at: [1, 3, 4, 6] }
    - { from: bottom, at: [3/4, 1 3/4, 5 1/4, 6 1/4] }
  panels: { lid-tuck: D1, left-dust: A2, right-dust: C2, lid: D2, left: A3, front: B3, right: C3, back: D3, tab: E3,
            left-bottom-dust: A4, bottom: B4, right-bottom-dust: C4, bottom-tuck: B5 }
  trim:   [A1, B1, C1, E1, B2, E2, D4, E4, A5, C5, D5, E5]
  slit:   [C|D 2, A|B 4, B|C 4]
  taper:  [lid-tuck, left-dust, right-dust, tab, left-bottom-dust, right-bottom-dust, bottom-tuck]
  glue:   { tab: left }`,
    ],
  ],
  [
    'tray',
    'with whole corner squares',
    { inside: '4 x 3 x 1' },
    [
      `
  cut: 6 x 5
  score:
    - { from: left,   at: [1, 5] }
    - { from: bottom, at: [1, 4] }
  panels: { front-left-tab: A1, front: B1, front-right-tab: C1, left: A2, floor: B2, right: C2,
            back-left-tab: A3, back: B3, back-right-tab: C3 }
  slit:   [A|B 1, B|C 1, A|B 3, B|C 3]
  taper:  [front-left-tab, front-right-tab, back-left-tab, back-right-tab]
  glue:   { front-left-tab: front, front-right-tab: front, back-left-tab: back, back-right-tab: back }`,
    ],
  ],
  [
    'lidded tray',
    'with a lid 1/8 in larger each way',
    { inside: '4 x 3 x 2', lid: '1' },
    [
      `
  cut: 8 x 7
  score:
    - { from: left,   at: [2, 6] }
    - { from: bottom, at: [2, 5] }
  panels: { front-left-tab: A1, front: B1, front-right-tab: C1, left: A2, floor: B2, right: C2,
            back-left-tab: A3, back: B3, back-right-tab: C3 }
  slit:   [A|B 1, B|C 1, A|B 3, B|C 3]
  taper:  [front-left-tab, front-right-tab, back-left-tab, back-right-tab]
  glue:   { front-left-tab: front, front-right-tab: front, back-left-tab: back, back-right-tab: back }`,
      `
  cut: 6 1/8 x 5 1/8
  score:
    - { from: left,   at: [1, 5 1/8] }
    - { from: bottom, at: [1, 4 1/8] }
  panels: { lid-back-left-tab: A1, lid-back: B1, lid-back-right-tab: C1, lid-left: A2, top: B2, lid-right: C2,
            lid-front-left-tab: A3, lid-front: B3, lid-front-right-tab: C3 }
  slit:   [A|B 1, B|C 1, A|B 3, B|C 3]
  taper:  [lid-back-left-tab, lid-back-right-tab, lid-front-left-tab, lid-front-right-tab]
  glue:   { lid-back-left-tab: lid-back, lid-back-right-tab: lid-back,
            lid-front-left-tab: lid-front, lid-front-right-tab: lid-front }`,
    ],
  ],
  [
    'slide box',
    'with a sleeve 1/8 in larger each way',
    { inside: '3 x 4 x 1' },
    [
      `
  cut: 5 x 6
  score:
    - { from: left,   at: [1, 4] }
    - { from: bottom, at: [1, 5] }
  panels: { front-left-tab: A1, front: B1, front-right-tab: C1, drawer-left: A2, drawer-floor: B2, drawer-right: C2,
            back-left-tab: A3, back: B3, back-right-tab: C3 }
  slit:   [A|B 1, B|C 1, A|B 3, B|C 3]
  taper:  [front-left-tab, front-right-tab, back-left-tab, back-right-tab]
  glue:   { front-left-tab: front, front-right-tab: front, back-left-tab: back, back-right-tab: back }`,
      `
  cut: 9 x 4
  score:  [{ from: left, at: [3 1/8, 4 1/4, 7 3/8, 8 1/2] }]
  panels: { bottom: A1, left: B1, top: C1, right: D1, tab: E1 }
  taper:  [tab]
  glue:   { tab: bottom }`,
    ],
  ],
  [
    'gusseted bag',
    'standing open',
    { inside: '3 x 2 x 5' },
    [
      `
  cut: 10 1/2 x 6 1/2
  score:
    - { from: left,   at: [3, 4, 5, 8, 9, 10] }
    - { from: bottom, at: [1 1/2] }
  panels: { back: A1, left-back: B1, left-front: C1, front: D1, right-front: E1, right-back: F1, tab: G1,
            back-bottom: A2, left-back-bottom: B2, left-front-bottom: C2, front-bottom: D2, right-front-bottom: E2,
            right-back-bottom: F2 }
  trim:   [G2]
  slit:   [A|B 2, C|D 2, D|E 2]
  taper:  [tab]
  folds:  { B|C: flat, E|F: flat }
  glue:   { tab: back, left-back-bottom: back-bottom, right-back-bottom: back-bottom, front-bottom: back-bottom }`,
    ],
  ],
  [
    'envelope',
    'for an A2 card',
    { card: '5 1/2 x 4 1/4' },
    [
      `
  cut: 7 1/4 x 10 3/4
  score:
    - { from: left,   at: [3/4, 6 1/2] }
    - { from: bottom, at: [4, 8 1/2] }
  panels: { flap: B1, left-flap: A2, front: B2, right-flap: C2, back: B3 }
  trim:   [A1, C1, A3, C3]
  taper:  [flap, left-flap, right-flap]
  folds:  { A|B: mountain 180, B|C: mountain 180, 1|2: mountain 180, 2|3: mountain 180 }
  glue:   { left-flap: back, right-flap: back }
  opens:  [flap]`,
    ],
  ],
  [
    'belly band',
    'about a card',
    { around: '4 1/4 x 1/16', height: '1 1/2' },
    [
      `
  cut: 9 1/2 x 1 1/2
  score:  [{ from: left, at: [4 1/2, 9] }]
  panels: { back: A1, front: B1, tab: C1 }
  taper:  [tab]
  folds:  { A|B: mountain 180, B|C: mountain 180 }
  glue:   { tab: back }`,
    ],
  ],
  [
    'belly band',
    'about a box',
    { around: '3 1/2 x 1', height: '2' },
    [
      `
  cut: 10 x 2
  score:  [{ from: left, at: [3 5/8, 4 3/4, 8 3/8, 9 1/2] }]
  panels: { back: A1, left: B1, front: C1, right: D1, tab: E1 }
  taper:  [tab]
  glue:   { tab: back }`,
    ],
  ],
  [
    'single-fold card',
    'folded at the left',
    { size: '4 1/4 x 5 1/2' },
    [
      `
  cut: 8 1/2 x 5 1/2
  score:  [{ from: left, at: [4 1/4] }]
  panels: { back: A1, front: B1 }
  folds:  { A|B: mountain 180 }`,
    ],
  ],
  [
    'single-fold card',
    'folded at the top',
    { size: '5 1/2 x 4 1/4', fold: 'top' },
    [
      `
  cut: 5 1/2 x 8 1/2
  score:  [{ from: bottom, at: [4 1/4] }]
  panels: { back: A1, front: A2 }
  folds:  { 1|2: mountain 180 }`,
    ],
  ],
  [
    'gate-fold card',
    'with gates of half the width',
    { size: '5 1/2 x 4 1/4' },
    [
      `
  cut: 11 x 4 1/4
  score:  [{ from: left, at: [2 3/4, 8 1/4] }]
  panels: { right: A1, back: B1, left: C1 }
  folds:  { A|B: mountain 180, B|C: mountain 180 }`,
    ],
  ],
  [
    'accordion card',
    'of four pages',
    { size: '2 3/4 x 4 1/4', pages: '4' },
    [
      `
  cut: 11 x 4 1/4
  score:  [{ from: left, at: [2 3/4, 5 1/2, 8 1/4] }]
  panels: { page-1: A1, page-2: B1, page-3: C1, page-4: D1 }
  folds:  { A|B: mountain 180, B|C: valley 180, C|D: mountain 180 }`,
    ],
  ],
];

/**
 * A net as plain text, without what only one of the twins can say: when it is folded, where its glue is written, its
 * cuts in words (a twin has them as written), what its panels are for, and what goes into it.
 */
function plain({ cuts, takes, ...net }: Net): unknown {
  return JSON.parse(
    JSON.stringify(
      {
        ...net,
        panels: net.panels.map(({ role, ...panel }) => panel),
        folds: net.folds.map(({ stage, ...fold }) => fold),
        glue: net.glue.map(({ from, to }) => ({ from, to })),
      },
      (_, value: unknown) =>
        value !== null && typeof value === 'object' && 'mm' in value ? String(value) : value,
    ),
  );
}

describe('a form and its twin by score lines', () => {
  it.each(TWINS)('make one net of a %s %s', (name, _, settings, twins) => {
    const nets = netsOf(name, { settings });
    expect(nets.map(plain)).toEqual(twins.map((twin) => plain(netOf(twin))));
    expect(nets.map(restOf)).toEqual(twins.map((twin) => restOf(netOf(twin))));
  });

  it('makes the net of the published example of a clip-top box, which names three panels only', () => {
    const [net] = netsOf('clip-top box', { settings: { inside: '3 1/2 x 1 x 4 3/4', tab: '1/2' } });
    const written = netOf(KEEPER);
    const ids = new Map(written.panels.map(({ id }, index) => [id, net.panels[index]?.id ?? '']));
    expect(plain(called(ids, written))).toEqual(plain(net));
  });
});

/** A net with its panels called something else. */
function called(ids: ReadonlyMap<string, string>, net: Net): Net {
  const idOf = (id: string): string => ids.get(id) ?? id;
  return {
    ...net,
    panels: net.panels.map((panel) => ({ ...panel, id: idOf(panel.id), name: idOf(panel.id) })),
    folds: net.folds.map((fold) => ({ ...fold, panels: [idOf(fold.panels[0]), idOf(fold.panels[1])] })),
    glue: net.glue.map(({ from, to }) => ({ from: idOf(from), to: idOf(to) })),
  };
}
