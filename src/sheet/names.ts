import type { BaseReference } from '../project/model.ts';
import type { SafeHtml } from './safe-html.ts';
import type { Voice } from './voice.ts';

/** An id as a person reads it: `side-panel` is `side panel`. */
export function nameOf(id: string): string {
  return id.replace(/[-_]+/gu, ' ');
}

/** `front`, or `front of the box` for a panel. */
export function baseName({ piece, panel }: BaseReference, voice: Voice): SafeHtml {
  return panel === undefined
    ? voice.phrase('whole-piece', { piece: nameOf(piece) })
    : voice.phrase('panel-of-piece', { panel: nameOf(panel), piece: nameOf(piece) });
}

/** Splits `box.front` as a person writes it. */
export function referenceOf(name: string): BaseReference {
  const [piece = '', ...panel] = name.split('.');
  return panel.length === 0 ? { piece } : { piece, panel: panel.join('.') };
}
