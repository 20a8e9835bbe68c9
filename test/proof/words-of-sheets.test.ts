import { Length } from '../../src/measure/length.ts';
import { type Cases, expectWords, inches, placed } from './cases.ts';

const BOX = { piece: 'box', unit: 'in' } as const;
const GRID = { piece: 'box', last: { column: 4, row: 3 } } as const;

const MAT = { on: 'mat', unit: 'in', side: 'left' } as const;
const LEAF = { on: 'mat', unit: 'in', stamp: 'Leaf stamp' } as const;

const CASES: Cases = {
  'edge-pitch': [
    [
      { ...MAT, pitch: inches(17, 4), hole: inches(1, 8), room: inches(4), misfit: 'pitch' },
      'the pitch is 4 1/4 in, but the left edge of mat is 4 in long',
      'write a pitch shorter than 4 in, or leave the edge plain',
    ],
    [
      { ...MAT, pitch: inches(1, 4), hole: inches(3, 8), room: inches(4), misfit: 'hole' },
      'a motif of 3/8 in leaves no paper before the next, 1/4 in on',
      '"pitch:" is from the middle of one motif to the middle of the next, "hole:" is one motif alone',
    ],
    [
      { ...MAT, pitch: inches(1), hole: inches(3, 4), room: inches(1, 2), misfit: 'room' },
      'the left edge of mat has 1/2 in between its corners, too little for a motif of 3/4 in',
      'leave this edge plain, or round its corners less',
    ],
  ],
  'edge-unlike': [
    [
      { ...MAT, ends: [inches(1, 4), inches(0)], better: inches(1, 8) },
      'the left edge of mat comes out unlike: 1/4 in of paper at one end, no paper at the other',
      'start 1/8 in in, or leave "start:" out',
    ],
  ],
  'edge-covered': [
    [
      { ...MAT, layer: 'photo', depth: inches(1, 2), covered: inches(1, 4) },
      'the motifs along the left edge of mat reach 1/2 in into the paper, and photo covers 1/4 in of that',
      'leave 1/2 in free there: cut photo smaller or move it; or correct "depth:"',
    ],
  ],
  'impression-off-paper': [
    [
      { ...LEAF, size: { width: inches(2), height: inches(1) }, off: [{ side: 'left', by: inches(1, 4) }] },
      'the Leaf stamp, 2 × 1 in, runs 1/4 in off the left edge of mat',
      'move it onto the paper, or write "runs off: yes" if it is meant to',
    ],
  ],
  'impression-covered': [
    [
      { on: 'mat', stamp: 'Leaf stamp', layers: ['label', 'photo'], hidden: 40 },
      'label and photo hide 40 % of the Leaf stamp on mat',
      'move one of them, or write "covered: yes" if a layer is meant to lie on it',
    ],
  ],
  'cannot-be-kitted': [
    [
      { lack: 'stock', piece: 'mat' },
      'mat names no stock, so it cannot be planned',
      'say what it is cut from, such as stock: cream',
    ],
    [{ lack: 'known stock', stock: 'moos' }, 'there is no stock "moos"', 'name one that is there'],
    [{ lack: 'size', piece: 'mat' }, 'the size of mat is not known', 'run proof to see why'],
    [
      { lack: 'sheet', stock: 'cream' },
      'cream has no sheet size, so nothing can be planned on it',
      'give it one, such as sheet: 8 1/2 x 11',
    ],
    [
      { lack: 'room', name: 'box.lid', stock: 'cream' },
      'box.lid is larger than every sheet of cream',
      'cut it smaller, or from a larger stock',
    ],
    [
      { lack: 'room once trimmed', name: 'mat', stock: 'cream' },
      'mat is larger than what is left of a sheet of cream when its edges are trimmed',
      'trim less',
    ],
  ],
  'edition-strained': [
    [
      { piece: 'strip', own: [inches(1), 'in'], other: [Length.of(27, 1, 'mm'), 'mm'], faulty: false },
      'in the metric edition, 1 in of strip becomes 27 mm, 1.6 mm off: with closer whole numbers strip would no longer fold and fit',
      'leave it if the size does not matter, or choose another length',
    ],
    [
      { piece: 'box', own: [Length.of(30, 1, 'mm'), 'mm'], other: [inches(5, 4), 'in'], faulty: true },
      'the inch edition has no numbers close enough for box to fold and fit: 30 mm of box becomes 1 1/4 in',
      'try it before you hand it out, or leave that edition out with "units: metric"',
    ],
  ],
  'hollow-reference': [
    [
      { kind: 'reveal', name: 'box.front', piece: 'box', lack: 'panel', isForm: false },
      'box.front is a panel of box, and :reveal is said of a whole piece',
      'name a piece, such as :reveal[box]',
    ],
    [
      { kind: 'count', name: 'box.lid', piece: 'box', lack: 'sheet', isForm: false },
      'box.lid is a sheet of box, and :count is said of a whole piece',
      'name a piece, such as :count[box]',
    ],
    [
      { kind: 'reveal', name: 'mat', piece: 'mat', lack: 'base', isForm: false },
      'mat is not layered on anything, so it has no reveal',
      'name the layer, or say with "on:" what mat is on',
    ],
    [
      { kind: 'scores', name: 'mat', piece: 'mat', lack: 'scores', isForm: false },
      'mat has no score lines, so :scores has nothing to print',
      'name a piece that is scored, or give mat its "score:"',
    ],
    [
      { kind: 'trims', name: 'box.lid', piece: 'box', lack: 'trims', isForm: false },
      'box.lid has nothing to cut once it is scored, so :trims has nothing to print',
      'name a piece that has, or give box its "trim:" or "slit:"',
    ],
    [
      { kind: 'trims', name: 'tag', piece: 'tag', lack: 'trims', isForm: true },
      'tag has nothing to cut once it is scored, so :trims has nothing to print',
      'name a piece that has, or leave it out',
    ],
  ],
  'score-off-groove': [
    [
      { ...BOX, from: 'left', positions: [inches(1, 16)], pitch: inches(1, 8), isWritten: true },
      'box is scored at 1/16 in from the left, between two grooves of the board (one every 1/8 in)',
      'score at 1/8 in, or say in the step that this line is ruled by hand',
      'warning',
    ],
    [
      { ...BOX, from: 'top', positions: [inches(17, 16)], pitch: inches(1, 8), isWritten: false },
      'box is scored at 1 1/16 in from the top, between two grooves of the board (one every 1/8 in)',
      'score at 1 in or 1 1/8 in, or say in the step that this line is ruled by hand',
      'note',
    ],
    [
      {
        ...BOX,
        from: 'left',
        positions: [inches(17, 16), inches(35, 16)],
        pitch: inches(1, 8),
        isWritten: false,
      },
      'box is scored at 1 1/16 in and 2 3/16 in from the left, between two grooves of the board (one every 1/8 in)',
      'change a measurement of its form by a little, or say in the step that these lines are ruled by hand',
      'note',
    ],
  ],
  'session-off-schedule': [
    [
      { date: '2026-12-24', why: { kind: 'left out' }, schedule: placed(0).at },
      '2026-12-24 is not on the schedule: it leaves that day out',
      'fix the date, or leave it if this is an extra session',
    ],
    [
      { date: '2026-12-02', why: { kind: 'another day' }, schedule: placed(0).at },
      '2026-12-02 is not on the schedule: that day is a Wednesday',
      'fix the date, or leave it if this is an extra session',
    ],
    [
      { date: '2026-12-17', why: { kind: 'another day', nth: 2 }, schedule: placed(0).at },
      '2026-12-17 is not on the schedule: that day is the third Thursday',
      'fix the date, or leave it if this is an extra session',
    ],
    [
      { date: '2026-09-24', why: { kind: 'too early', first: '2026-10-01' }, schedule: placed(0).at },
      '2026-09-24 is not on the schedule: it does not begin until 2026-10-01',
      'fix the date, or leave it if this is an extra session',
    ],
    [
      {
        date: '2026-10-08',
        why: { kind: 'between', every: '2 weeks', first: '2026-10-01' },
        schedule: placed(0).at,
      },
      '2026-10-08 is not on the schedule: it is every 2 weeks from 2026-10-01',
      'fix the date, or leave it if this is an extra session',
    ],
  ],
  'unknown-reference': [
    [{ what: 'stock', name: 'mos', among: ['moss'] }, 'there is no stock "mos"', 'write "moss"'],
    [{ what: 'panel', name: 'lid', of: 'box', among: [] }, 'box has no panel "lid"', 'take it out'],
    [
      { what: 'panel', name: 'frond', of: 'box', layer: 'mat', among: ['front', 'back'] },
      'mat lies on box.frond, but box has no panel "frond"',
      'write "box.front"',
    ],
    [
      { ...GRID, wrong: { kind: 'no line', key: 'slit', between: 'columns', line: 5, isShort: false } },
      'slit: box has no score line between F and G',
      'name one of the columns A to E and the rows 1 to 4, which its score lines make',
    ],
    [
      { ...GRID, wrong: { kind: 'no line', key: 'slit', between: 'rows', line: 0, isShort: true } },
      'slit: the line 1|2 of box runs through 5 columns only',
      'name one of the columns A to E and the rows 1 to 4, which its score lines make',
    ],
    [
      { ...GRID, wrong: { kind: 'trimmed off', key: 'glue', name: 'tab' } },
      'glue names tab of box, which is trimmed off',
      'take tab out of trim, or out of glue',
    ],
  ],
  'circular-base': [
    [{ circle: [placed('a')] }, 'a is its own base', 'name another piece after "on:", or delete one "on:"'],
    [
      { circle: [placed('a'), placed('b')] },
      'a is on b, and b is on a: one of them needs another base',
      'name another piece after "on:", or delete one "on:"',
    ],
  ],
  'score-doubled': [
    [
      { ...BOX, from: 'left', position: inches(4), first: { from: 'left', position: placed(inches(4)) } },
      'box is scored twice at 4 in from the left',
      'delete one of them',
    ],
    [
      { ...BOX, from: 'right', position: inches(4), first: { from: 'left', position: placed(inches(5)) } },
      'box has the same score line twice: 4 in from the right is also 5 in from the left',
      'delete one of them',
    ],
  ],
};

expectWords(CASES);
