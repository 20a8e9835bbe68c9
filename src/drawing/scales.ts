import type { Say } from '../words/labels.ts';

/** A reduction between actual size and half size, as the number that each length is divided by. */
export const TWO_THIRDS = 1.5;

/** `1:2`, of a reduction. */
export function scaleName(reduction: number): string {
  return reduction === TWO_THIRDS ? '2:3' : `1:${reduction}`;
}

/** `Scale 1:2`; in words where it is an unusual one. */
export function scaleWords(reduction: number, say: Say): string {
  return reduction === TWO_THIRDS
    ? say('drawing-two-thirds')
    : say('drawing-scale', { scale: scaleName(reduction) });
}
