import type { BaseReference } from '../project/model.ts';
import type { Say } from './labels.ts';
import type { SafeHtml } from './safe-html.ts';
import type { Voice } from './voice.ts';

/** An id as a person reads it: `side-panel` is `side panel`. */
export function nameOf(id: string): string {
  return id.replace(/[-_]+/gu, ' ');
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

/** A piece, sheet or panel of a piece as a name: `seed-box.lid` is `seed box lid`. */
export function sheetNamed(name: string, say: Say): string {
  const { piece, panel } = referenceOf(name);
  if (panel === undefined) return nameOf(piece);
  return say('drawing-part', { piece: nameOf(piece), part: partNamed(panel, say) });
}

/** `front`, or `front of the box` for a panel. */
export function baseName({ piece, panel }: BaseReference, voice: Voice): SafeHtml {
  return panel === undefined
    ? voice.phrase('whole-piece', { piece: nameOf(piece) })
    : voice.phrase('panel-of-piece', { panel: partNamed(panel, voice.say), piece: nameOf(piece) });
}

/** Splits `box.front` as a person writes it. */
export function referenceOf(name: string): BaseReference {
  const [piece = '', ...panel] = name.split('.');
  return panel.length === 0 ? { piece } : { piece, panel: panel.join('.') };
}
