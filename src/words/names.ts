import { type Ref, readRef } from '../project/ref.ts';
import type { Net } from '../shape/net.ts';
import type { Say } from './labels.ts';
import { html, type SafeHtml } from './safe-html.ts';
import type { Voice } from './voice.ts';

/** An id as a person reads it: `side-panel` is `side panel`. */
export function nameOf(id: string): string {
  return id.replace(/[-_]+/gu, ' ');
}

/** A piece as it is called on paper: by the name it was given, else by its id. */
export function pieceNamed(id: string, { pieces }: Say): string {
  return pieces.get(id) ?? nameOf(id);
}

/**
 * A panel or a further sheet as a person reads it. The names that the ready-made forms give are said in the sheet's
 * language, numbered ones too (`page-2`); any other is the demonstrator's own.
 */
export function partNamed(id: string, say: Say): string {
  if (say.has(`part-${id}`)) return say(`part-${id}`);
  const [, whole, number] = /^(.+)-(\d+)$/u.exec(id) ?? [];
  const isOurs = whole !== undefined && say.has(`part-${whole}`);
  return isOurs ? `${say(`part-${whole}`)} ${number}` : nameOf(id);
}

/** A sheet of a piece as a person says it: `box lid`, or `box` for a piece's own. */
export function pieceSheetNamed(piece: string, sheet: string | undefined, say: Say): string {
  return sheetOfPiece(pieceNamed(piece, say), sheet, say);
}

/** The same of a piece that is called so. */
export function sheetOfPiece(piece: string, sheet: string | undefined, say: Say): string {
  return sheet === undefined ? piece : say('drawing-part', { piece, part: partNamed(sheet, say) });
}

/** A piece, sheet or panel of a piece as a name: `seed-box.lid` is `seed box lid`. */
export function sheetNamed(name: string, say: Say): string {
  return refNamed(readRef(name), say);
}

/** The same of the face that a layer is on. */
export function refNamed({ piece, part, face }: Ref, say: Say): string {
  const name = pieceSheetNamed(piece, part, say);
  return face === 'outside' ? name : say(`drawing-${face}`, { name });
}

/** `front`, or `front of the box` for a panel, and `pot, wall 5` for a numbered one; never `tag of the tag`. */
export function baseName({ piece, part, face }: Ref, voice: Voice): SafeHtml {
  const isWhole = part === undefined || partNamed(part, voice.say) === pieceNamed(piece, voice.say);
  const base = isWhole
    ? voice.phrase('whole-piece', { piece: pieceNamed(piece, voice.say) })
    : panelOfPiece(partNamed(part, voice.say), pieceNamed(piece, voice.say), voice);
  return face === 'outside' ? base : voice.phrase(`base-${face}`, { base });
}

function panelOfPiece(panel: string, piece: string, { phrase }: Voice): SafeHtml {
  return phrase(/\d$/u.test(panel) ? 'numbered-panel-of-piece' : 'panel-of-piece', { panel, piece });
}

/** A panel as the drawings have it: by its name, else by its row and column. */
export function partName(net: Net, id: string, voice: Voice): SafeHtml {
  const panel = net.panels.find((each) => each.id === id || each.name === id);
  return strong(panel?.name ?? id, voice);
}

function strong(part: string, { say }: Voice): SafeHtml {
  return html`<b class="piece">${partNamed(part, say)}</b>`;
}
