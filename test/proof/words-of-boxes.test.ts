import { Length } from '../../src/measure/length.ts';
import { type Cases, expectWords, inches } from './cases.ts';

const BOX = { piece: 'box', unit: 'in' } as const;
const RULER = { unit: 'in', step: inches(1, 16), groove: inches(1, 8) } as const;

const CASES: Cases = {
  'bottom-gap': [
    [
      { ...BOX, flaps: [{ panel: 'lid', depth: inches(1) }], across: inches(3, 2), gap: inches(1, 2) },
      'box.lid (1 in) leaves a gap of 1/2 in across 1 1/2 in',
      'make lid 1/2 in longer',
    ],
    [
      {
        ...BOX,
        flaps: [
          { panel: 'A4', depth: inches(1, 2) },
          { panel: 'C4', depth: inches(1, 2) },
        ],
        across: inches(3, 2),
        gap: inches(1, 2),
      },
      'box.A4 (1/2 in) and box.C4 (1/2 in) leave a gap of 1/2 in across 1 1/2 in',
      'make A4 and C4 each 1/4 in longer, or one of them 1/2 in',
    ],
  ],
  'does-not-close': [
    [
      { piece: 'box', tab: 'tab', wall: 'A3', wrong: { degrees: 330 }, unit: 'in' },
      'the folds from box.A3 around to box.tab turn by 330°, not by a full circle of 360°',
      'change the angles under "folds:" so that they add up to 360°',
    ],
    [
      { piece: 'box', tab: 'tab', wall: 'a', wrong: { degrees: 180, better: { each: 120 } }, unit: 'in' },
      'the folds from box.a around to box.tab turn by 180°, not by a full circle of 360°',
      'change the angles under "folds:" so that they add up to 360°: 120° each',
    ],
    [
      { piece: 'box', tab: 'tab', wall: 'A3', wrong: { by: Length.of(5, 2, 'mm') }, unit: 'mm' },
      'box.tab lands 2.5 mm from the edge of box.A3 that it closes on',
      'move the score lines so that the walls reach that edge',
    ],
  ],
  'form-limit': [
    [
      {
        measure: 'the tab of box',
        length: inches(1, 8),
        bound: 'least',
        limit: Length.of(5, 1, 'mm'),
        ruler: RULER,
        why: 'glue would not hold',
      },
      'the tab of box is 1/8 in, less than ≈3/16 in: glue would not hold',
      'make it at least 1/4 in',
    ],
    [
      {
        measure: 'the tab of box',
        length: inches(1),
        bound: 'most',
        limit: Length.of(20, 1, 'mm'),
        ruler: RULER,
        why: 'it would show',
      },
      'the tab of box is 1 in, more than ≈13/16 in: it would show',
      'make it at most 3/4 in',
    ],
    [
      {
        measure: 'the tab of box',
        length: inches(1),
        bound: 'most',
        limit: inches(1, 32),
        ruler: RULER,
        why: 'it would show',
      },
      'the tab of box is 1 in, more than 1/32 in: it would show',
      'make it at most 1/32 in',
    ],
  ],
  'glue-misses': [
    [
      { ...BOX, from: 'tab', to: 'A3', verdict: 'askew', distance: Length.zero },
      'box.tab is to stick to box.A3, but once folded the two stand at an angle',
      'name the panel it lies on, or change how tab folds',
    ],
    [
      { ...BOX, from: 'tab', to: 'A3', verdict: 'apart', distance: inches(1, 2) },
      'box.tab is to stick to box.A3, but once folded it lies 1/2 in away from it',
      'name the panel it lies on, or change how tab folds',
    ],
    [
      { ...BOX, from: 'tab', to: 'A3', verdict: 'beside', distance: Length.zero },
      'box.tab is to stick to box.A3, but once folded it lies beside it',
      'name the panel it lies on, or change how tab folds',
    ],
  ],
  'loose-part': [
    [
      { sheet: 'box', panels: ['A4'] },
      'A4 of box is cut off from the rest by slits and trims',
      'leave one edge of it uncut, or trim it off',
    ],
    [
      { sheet: 'box.lid', panels: ['A4', 'B4'] },
      'A4 and B4 of box.lid are cut off from the rest by slits and trims',
      'leave one edge of them uncut, or trim them off',
    ],
  ],
  'missing-slit': [
    [
      { sheet: 'box', pairs: [['A4', 'B4']], slits: ['A|B 4'], flat: [] },
      'A4 and B4 of box are still joined, so the panels around that corner cannot fold',
      'add "A|B 4" under "slit:", or trim off what is waste',
    ],
    [
      { sheet: 'box.lid', pairs: [['A1', 'B1']], slits: [], flat: [] },
      'A1 and B1 of box.lid are still joined, so the panels around that corner cannot fold',
      'slit the line between them, or trim off what is waste',
    ],
    [
      { sheet: 'tray', pairs: [['A1 left', 'A1 right']], slits: [], flat: ['back|A1 right: mountain 180'] },
      'A1 left and A1 right of tray are still joined, so the panels around that corner cannot fold',
      'say "back|A1 right: mountain 180" under "folds:", so that the paper folds in around the corner',
    ],
  ],
  'tuck-does-not-fit': [
    [
      { ...BOX, lid: 'lid', tuck: 'flap', depth: inches(5, 4), room: inches(1) },
      'box.lid is 1 1/4 in deep, 1/4 in more than the 1 in to the facing wall, so flap ends up outside the wall',
      'make lid 1 in deep: move the score line of flap',
    ],
    [
      { ...BOX, lid: 'lid', tuck: 'flap', depth: inches(7, 8), room: inches(1) },
      'box.lid is 7/8 in deep, 1/8 in less than the 1 in to the facing wall, so flap goes down in front of the wall, not behind it',
      'make lid 1 in deep: move the score line of flap',
    ],
    [
      { ...BOX, tuck: 'flap', depth: inches(4), room: inches(3) },
      'box.flap is 4 in long and the box only 3 in high',
      'trim flap to less than 3 in',
    ],
  ],
  'uneven-fold': [
    [
      { ...BOX, kind: 'leaves', panels: ['front', 'back'], by: inches(1, 4) },
      'when folded, box.front is 1/4 in shorter than box.back',
      'move the score line by 1/8 in, unless you want it that way',
    ],
    [
      { ...BOX, kind: 'gates', panels: ['left', 'right'], by: inches(1, 4) },
      'folded in, box.left and box.right leave a gap of 1/4 in',
      'move the score line by 1/8 in, unless you want it that way',
    ],
    [
      { ...BOX, kind: 'gates', panels: ['left', 'right'], by: inches(-1, 4) },
      'folded in, box.left and box.right lie over each other by 1/4 in',
      'move the score line by 1/8 in, unless you want it that way',
    ],
  ],
  'walls-unequal': [
    [
      {
        ...BOX,
        pairs: [{ first: ['A3'], second: ['front', 'tab'], widths: [inches(3), inches(5, 2)] }],
        wallsAre: 'wide',
        moves: [
          { from: 'left', now: inches(3), better: inches(7, 2) },
          { from: 'left', now: inches(5), better: inches(9, 2) },
        ],
      },
      'box.A3 is 3 in wide, but the facing box.front and box.tab are 2 1/2 in: a difference of 1/2 in',
      'score from the left at 3 1/2 in instead of 3 in or score from the left at 4 1/2 in instead of 5 in',
    ],
    [
      {
        ...BOX,
        pairs: [{ first: ['A3', 'B3'], second: ['C3'], widths: [inches(3), inches(5, 2)] }],
        wallsAre: 'high',
        moves: [],
      },
      'box.A3 and box.B3 are 3 in high, but the facing box.C3 is 2 1/2 in: a difference of 1/2 in',
      'move the score lines so that facing walls are equal: both 3 in or both 2 1/2 in',
    ],
    [
      {
        ...BOX,
        wall: 'front',
        others: ['left'],
        heights: [inches(1), inches(9, 8)],
        sticksOut: true,
        mayBeMeant: false,
      },
      'box.front is 1 in high and box.left, which it meets at a corner, 1 1/8 in: a difference of 1/8 in',
      'move the score line of front so that it is 1 1/8 in high, or those of the others',
    ],
    [
      {
        ...BOX,
        wall: 'front',
        others: ['left', 'right'],
        heights: [inches(1), inches(9, 8)],
        sticksOut: false,
        mayBeMeant: false,
      },
      'box.front is 1 in high and box.left and box.right, which it meets at its corners, 1 1/8 in: a difference of 1/8 in',
      'move the score line of front so that it is 1 1/8 in high, or those of the others; leave it if one wall is meant to be lower',
      'warning',
    ],
    [
      {
        ...BOX,
        wall: 'front',
        others: ['left'],
        heights: [inches(1), inches(2)],
        sticksOut: false,
        mayBeMeant: true,
      },
      'box.front is 1 in high and box.left, which it meets at a corner, 2 in: a difference of 1 in',
      'move the score line of front so that it is 2 in high, or those of the others; leave it if one wall is meant to be lower',
      'note',
    ],
  ],
  'holds-too-big': [
    [
      {
        item: 'packet',
        count: 6,
        sheet: 'box',
        takes: [inches(3), inches(4), inches(1)],
        room: [inches(3), inches(5), inches(2)],
        direction: 0,
        left: Length.zero,
        spare: inches(-1, 64),
        unit: 'in',
      },
      '6 × packet takes 3 × 4 × 1 in (width × height × depth), and box has 3 × 5 × 2 in inside: too tight for the thickness of the paper',
      'make box 1/16 in wider',
      'warning',
    ],
    [
      {
        item: 'scarf',
        count: 1,
        sheet: 'band',
        takes: [inches(3), inches(9), inches(1)],
        room: [inches(4), inches(2), inches(1, 2)],
        open: 'height',
        direction: 2,
        left: inches(-1, 2),
        spare: inches(-33, 64),
        unit: 'in',
      },
      '1 × scarf takes 3 × 9 × 1 in (width × height × depth), and band has 4 × 2 × 1/2 in inside, its height open at both ends: 1/2 in too small',
      'make band 9/16 in deeper',
      'error',
    ],
    [
      {
        item: 'card',
        count: 1,
        sheet: 'tray',
        takes: [inches(257, 64), inches(1), inches(3)],
        room: [inches(4), inches(1), inches(3)],
        direction: 0,
        left: inches(-1, 64),
        spare: inches(-1, 32),
        unit: 'in',
      },
      '1 × card takes 4 1/64 × 1 × 3 in (width × height × depth), and tray has 4 × 1 × 3 in inside: 1/64 in too small',
      'make tray 1/16 in wider',
      'error',
    ],
  ],
};

expectWords(CASES);
