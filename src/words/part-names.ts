import { parseCell } from '../shape/cells.ts';
import type { Net, Panel } from '../shape/net.ts';
import type { Say } from './labels.ts';
import { partNamed } from './names.ts';
import { html, type SafeHtml } from './safe-html.ts';
import type { Voice } from './voice.ts';

/** A panel as a person finds it on the paper: by its name, by the named panel it hangs on, else by row and column. */
export function partName(net: Net, id: string, voice: Voice): SafeHtml {
  const part = findPart(net, id, voice.say);
  if (part.kind === 'named') return strong(part.name);
  if (part.kind === 'cell') return voice.phrase('cell', { row: part.row, column: part.column });
  return voice.phrase(`flap-${part.side}`, { panel: strong(part.of) });
}

/** The same as plain text, for what is heard and not set. */
export function partWords(net: Net, id: string, voice: Voice): string {
  const part = findPart(net, id, voice.say);
  if (part.kind === 'named') return part.name;
  if (part.kind === 'cell') return voice.say('cell', { row: part.row, column: part.column });
  return voice.say(`flap-${part.side}`, { panel: part.of });
}

type Part =
  | { readonly kind: 'named'; readonly name: string }
  | { readonly kind: 'flap'; readonly side: Side; readonly of: string }
  | { readonly kind: 'cell'; readonly row: number; readonly column: number };

function findPart(net: Net, id: string, say: Say): Part {
  const panel = net.panels.find((each) => each.id === id || each.name === id);
  if (panel?.name !== undefined) return { kind: 'named', name: partNamed(panel.name, say) };
  const bearer = panel && namedNeighbour(net, panel);
  if (panel && bearer?.name !== undefined) {
    return { kind: 'flap', side: sideOf(panel, bearer), of: partNamed(bearer.name, say) };
  }
  const cell = parseCell(id);
  if (!cell) return { kind: 'named', name: partNamed(id, say) };
  return { kind: 'cell', row: cell.row + 1, column: cell.column + 1 };
}

function strong(name: string): SafeHtml {
  return html`<b class="piece">${name}</b>`;
}

function namedNeighbour({ panels, folds }: Net, panel: Panel): Panel | undefined {
  const beside = folds.flatMap(({ panels: [one, other] }) =>
    one === panel.id ? [other] : other === panel.id ? [one] : [],
  );
  return panels.find(({ id, name }) => name !== undefined && beside.includes(id));
}

type Side = 'left' | 'right' | 'above' | 'below';

function sideOf({ box }: Panel, { box: bearer }: Panel): Side {
  if (!bearer.right.greaterThan(box.left)) return 'right';
  if (!box.right.greaterThan(bearer.left)) return 'left';
  return bearer.bottom.greaterThan(box.top) ? 'above' : 'below';
}
