import { Length } from '../../measure/length.ts';
import type { Size } from '../../measure/size.ts';

/** An envelope as it is sold, by its outside; its longer side is its width. */
export type Envelope = { readonly name: string; readonly size: Size };

/** Envelopes of one part of the world. */
export type Series = 'iso' | 'north-america';

/**
 * The envelopes in common use, the smallest first.
 * ISO: the C series of ISO 216 (formerly ISO 269, DIN 678-1), DL of ISO 269, C6/C5 of DIN 678-1.
 * North America: announcement envelopes as two trade pages list them alike; no standard fixes them. An A6 of this
 * list is no A6 of ISO 216.
 */
export const ENVELOPES: Readonly<Record<Series, readonly Envelope[]>> = {
  iso: [
    metric('C7', 114, 81),
    metric('C6', 162, 114),
    metric('DL', 220, 110),
    metric('C6/C5', 229, 114),
    metric('C5', 229, 162),
    metric('C4', 324, 229),
  ],
  'north-america': [
    inch('A1 (4-bar)', 41, 29),
    inch('A2', 46, 35),
    inch('A6', 52, 38),
    inch('Slimline', 71, 31),
    inch('A7', 58, 42),
    inch('#10', 76, 33),
    inch('A8', 65, 44),
    inch('A9', 70, 46),
    inch('A10', 76, 48),
  ],
};

function metric(name: string, width: number, height: number): Envelope {
  return { name, size: { width: Length.of(width, 1, 'mm'), height: Length.of(height, 1, 'mm') } };
}

/** Both sides in eighths of an inch. */
function inch(name: string, width: number, height: number): Envelope {
  return { name, size: { width: Length.of(width, 8, 'in'), height: Length.of(height, 8, 'in') } };
}
