import type { Edge, Grade, SupplyKind } from './model.ts';

/** The maps a person may write. */
export type KeyedMap =
  | 'sheet'
  | 'measurements'
  | 'stock'
  | 'stockSheet'
  | 'piece'
  | 'flat'
  | 'placement'
  | 'score'
  | 'holds'
  | 'supply'
  | 'step'
  | 'drawing'
  | 'site'
  | 'bench'
  | 'sessions'
  | 'shared';

/** Every key a person may write, by the map it stands in: for messages, docs and tests. */
export const KNOWN_KEYS: Readonly<Record<KeyedMap, readonly string[]>> = {
  sheet: [
    'title',
    'summary',
    'session',
    'level',
    'minutes',
    'tags',
    'occasion',
    'lang',
    'measurements',
    'supplies',
  ],
  measurements: ['unit', 'metric', 'stock', 'pieces', 'holds'],
  stock: [
    'use',
    'name',
    'sheet',
    'sheets',
    'weight',
    'caliper',
    'color',
    'price',
    'print',
    'grain',
    'pack',
    'on hand',
  ],
  stockSheet: ['size', 'price'],
  /** Keys of every piece; those of a form are the form's own besides. */
  piece: ['use', 'stock', 'on', 'at', 'turn', 'overhang', 'corners', 'count'],
  flat: ['cut', 'form', 'score', 'panels', 'trim', 'slit', 'taper', 'folds', 'glue'],
  placement: ['left', 'right', 'top', 'bottom', 'turn'],
  score: ['from', 'at'],
  holds: ['item', 'size', 'count', 'food', 'allergens'],
  supply: ['use', 'item', 'kind', 'instead', 'link', 'paid', 'each', 'pack', 'on hand', 'price', 'share'],
  step: ['minutes', 'ahead', 'dry'],
  drawing: ['of', 'view'],
  site: ['title', 'url', 'language', 'paper', 'currency', 'bench', 'sessions'],
  bench: ['board', 'metric board', 'trimmer', 'printer margin'],
  sessions: ['every', 'on', 'at', 'zone', 'from', 'except'],
  shared: ['unit', 'stock', 'supplies', 'pieces'],
};

export const SUPPLY_KINDS: readonly SupplyKind[] = [
  'tool',
  'adhesive',
  'ink',
  'stamp',
  'die',
  'punch',
  'embellishment',
  'filling',
  'other',
];

/** What a basis weight may be stated for. */
export const GRADES: readonly Grade[] = ['cover', 'text', 'index', 'bristol', 'tag', 'bond'];

export const EDGES: readonly Edge[] = ['left', 'right', 'top', 'bottom'];
