import type { CellName, NetAsWritten, Piece, Slit } from '../project/model.ts';
import { parseCell } from '../shape/cells.ts';
import type { Net } from '../shape/net.ts';
import { nameOf } from './names.ts';
import { html, SafeHtml } from './safe-html.ts';
import type { Voice } from './voice.ts';

/** What is cut once a piece is scored, as a list: cells cut away, slits, tapers. Undefined when nothing is. */
export function cuttingWords({ body }: Piece, net: Net, voice: Voice): SafeHtml | undefined {
  if (net.waste.length + net.slits.length === 0) return undefined;
  const lines = body.kind === 'net' ? linesOf(body, voice) : [voice.phrase('cut-as-drawn', {})];
  const [only] = lines;
  if (only && lines.length === 1) return html`<p>${only}</p>`;
  return html`<ul class="said">${SafeHtml.join(lines.map((line) => html`<li>${line}</li>`))}</ul>`;
}

function linesOf({ trim, slit, taper }: NetAsWritten, voice: Voice): SafeHtml[] {
  return [
    voice.phrase('cut-count', {}),
    ...(trim.length > 0 ? [voice.phrase('cut-away', { cells: cellsByRow(trim, voice) })] : []),
    ...slitLines(slit, voice),
    ...(taper.length > 0 ? [voice.phrase('cut-taper', { cells: cellsByRow(taper, voice) })] : []),
  ];
}

/** `row 1, columns 1, 3 and 5; row 2, column 5; tab`. */
function cellsByRow(cells: readonly CellName[], voice: Voice): SafeHtml {
  const rows = new Map<number, number[]>();
  const named: SafeHtml[] = [];
  for (const { value } of cells) {
    const cell = parseCell(value);
    if (!cell) named.push(html`<b class="piece">${nameOf(value)}</b>`);
    else rows.set(cell.row, [...(rows.get(cell.row) ?? []), cell.column + 1]);
  }
  const inRows = [...rows].map(([row, columns]) =>
    voice.phrase(columns.length === 1 ? 'cells-one' : 'cells-other', {
      row: row + 1,
      columns: voice.list(columns),
    }),
  );
  return SafeHtml.join([...inRows, ...named], '; ');
}

/** Slits through the same rows are said together. */
function slitLines(slits: readonly Slit[], voice: Voice): SafeHtml[] {
  const groups = new Map<string, Slit[]>();
  for (const slit of slits) {
    const key = `${slit.between} ${slit.from} ${slit.to}`;
    groups.set(key, [...(groups.get(key) ?? []), slit]);
  }
  return [...groups.values()].flatMap((group) => {
    const [first] = group;
    if (!first) return [];
    const { between, from, to } = first;
    const pairs = group.map(({ line }) => voice.phrase('slit-pair', { one: line + 1, other: line + 2 }));
    const through = from === to ? 'slit-one' : 'slit-other';
    const rest = { from: from + 1, to: to + 1, pairs: voice.list(pairs) };
    return [voice.phrase(`${through}-${between}`, rest)];
  });
}
