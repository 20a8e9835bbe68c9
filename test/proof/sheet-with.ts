/** What differs from one example to the next; everything is written as it would stand in a sheet. */
export type SheetParts = {
  /** Lines for the head of the sheet, beside its title. */
  readonly head?: string;
  readonly unit?: string;
  /** Lines under `stock:`; a cream cardstock in letter size when absent. */
  readonly stock?: string;
  /** Lines under `pieces:`, each piece beginning at the start of its line. */
  readonly pieces?: string;
  /** Further lines under `measurements:`. */
  readonly more?: string;
  /** The Markdown below; one step that names every piece when absent. */
  readonly body?: string;
};

const CREAM = 'cream: { name: Cream cardstock, sheet: 8 1/2 x 11 }';

/** A complete, small sheet round what matters of an example. */
export function sheetWith({
  head = '',
  unit = 'in',
  stock = CREAM,
  pieces = '',
  more = '',
  body,
}: SheetParts): string {
  const lines = [
    '---',
    'title: A card to try',
    ...indented(head, ''),
    'measurements:',
    `  unit: ${unit}`,
    '  stock:',
    ...indented(stock, '    '),
    ...(pieces === '' ? [] : ['  pieces:', ...indented(pieces, '    ')]),
    ...indented(more, '  '),
    '---',
    body ?? `## Put it together\nTake ${namesOf(pieces)}.`,
    '',
  ];
  return lines.join('\n');
}

function indented(text: string, indent: string): string[] {
  return text === '' ? [] : text.split('\n').map((line) => `${indent}${line}`);
}

function namesOf(pieces: string): string {
  const names = [...pieces.matchAll(/^[\w-]+(?=:)/gmu)].map(([name]) => `:piece[${name}]`);
  return names.length === 0 ? 'a sheet of paper' : names.join(', ');
}
