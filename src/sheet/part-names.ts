import { parseCell } from '../shape/cells.ts';
import type { Net, Panel } from '../shape/net.ts';
import { nameOf } from './names.ts';
import { html, type SafeHtml } from './safe-html.ts';
import type { Voice } from './voice.ts';

/** A panel as a person finds it on the paper: by its name, by the named panel it hangs on, else by row and column. */
export function partName(net: Net, id: string, voice: Voice): SafeHtml {
  const panel = net.panels.find((each) => each.id === id || each.name === id);
  if (!panel) return cellWords(id, voice);
  if (panel.name !== undefined) return strong(panel.name);
  const bearer = namedNeighbour(net, panel);
  if (bearer?.name === undefined) return cellWords(id, voice);
  return voice.phrase(`flap-${sideOf(panel, bearer)}`, { panel: strong(bearer.name) });
}

function strong(name: string): SafeHtml {
  return html`<b class="piece">${nameOf(name)}</b>`;
}

function cellWords(id: string, voice: Voice): SafeHtml {
  const cell = parseCell(id);
  if (!cell) return strong(id);
  return voice.phrase('cell', { row: cell.row + 1, column: cell.column + 1 });
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
