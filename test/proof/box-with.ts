import { sheetWith } from './sheet-with.ts';

/** What differs from one example box to the next. */
type BoxParts = {
  readonly cut?: string;
  readonly left?: string;
  readonly bottom?: string;
  readonly trim?: string;
  readonly slit?: string;
  readonly folds?: string;
  readonly glue?: string;
  /** Further lines under `measurements:`. */
  readonly more?: string;
};

/** A sheet with one box by its score lines, 2 1/2 × 1 1/4 × 4 1/4 in, whose front and back fold over to meet. */
export function boxWith(parts: BoxParts = {}): string {
  const lines = [
    'box:',
    '  stock: cream',
    `  cut: ${parts.cut ?? '8 x 6 3/4'}`,
    '  score:',
    `    - { from: left, at: [${parts.left ?? '1 1/4, 3 3/4, 5, 7 1/2'}] }`,
    `    - { from: bottom, at: [${parts.bottom ?? '1 1/4, 5 1/2, 6 1/8'}] }`,
    '  panels: { front: B3, back: D3, tab: E3 }',
    `  trim: [${parts.trim ?? 'A1, C1, E1, E2, E4'}]`,
    `  slit: [${parts.slit ?? 'A|B 1-2, B|C 1-2, C|D 1-2, A|B 4, B|C 4, C|D 4'}]`,
    '  taper: [A2, C2, A4, C4, tab]',
    `  folds: { ${parts.folds ?? '1|2: valley 90'} }`,
    `  glue: { ${parts.glue ?? 'tab: A3, A4: D4, C4: D4, B4: D4'} }`,
  ];
  return sheetWith({ pieces: lines.join('\n'), more: parts.more ?? '' });
}

/** A sheet with a box closed above by a lid that is tucked in behind the front, 2 × 1 1/2 × 3 in. */
export function tuckBoxWith({ bottom = '1 1/2, 4 1/2, 6', cut = '7 1/2 x 6 1/2' }: BoxParts = {}): string {
  const lines = [
    'box:',
    '  stock: cream',
    `  cut: ${cut}`,
    '  score:',
    '    - { from: left, at: [1 1/2, 3 1/2, 5, 7] }',
    `    - { from: bottom, at: [${bottom}] }`,
    '  panels: { back: B3, front: D3, tab: E3, lid: B2, tuck: B1 }',
    '  trim: [A1, C1, D1, D2, E1, E2, E4]',
    '  slit: [A|B 2, B|C 2, A|B 4, B|C 4, C|D 4]',
    '  taper: [A2, C2, A4, C4, tab, tuck]',
    '  glue: { tab: A3, A4: D4, C4: D4, B4: D4 }',
  ];
  return sheetWith({ pieces: lines.join('\n') });
}

/** A sheet with an open tray, 5 × 3 in, its corners closed by tabs on the side walls. */
export function trayWith(left = '1 1/2, 6 1/2', glue = 'A1: back, C1: back, A3: front, C3: front'): string {
  const lines = [
    'tray:',
    '  stock: cream',
    '  cut: 8 x 6',
    '  score:',
    `    - { from: left, at: [${left}] }`,
    '    - { from: top, at: [1 1/2, 4 1/2] }',
    '  panels: { base: B2, back: B1, front: B3 }',
    '  slit: [A|B 1, B|C 1, A|B 3, B|C 3]',
    '  taper: [A1, C1, A3, C3]',
    `  glue: { ${glue} }`,
  ];
  return sheetWith({ pieces: lines.join('\n') });
}
