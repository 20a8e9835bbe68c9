import { Length } from '../measure/length.ts';
import { caliperOf } from '../shape/caliper.ts';
import type { Kit } from './plan.ts';

/** What so many kits weigh in grams, and how thick they lie, all pieces flat in one pile: what a parcel comes to at most. */
export function parcelOf(
  { stocks, weight, attendees, spares }: Pick<Kit, 'stocks' | 'weight' | 'attendees' | 'spares'>,
  kits: number,
): { readonly grams: number; readonly thickness: Length } {
  const all = attendees + spares;
  const each = stocks.flatMap(({ stock, kinds }) =>
    kinds.flatMap(({ pieces }) =>
      pieces.map((piece) => caliperOf(stock).thickness.times(piece.perKit * piece.kits, all)),
    ),
  );
  const thickness = each.reduce((sum, length) => sum.plus(length), Length.zero).times(kits);
  return { grams: weight.gramsPerKit * kits, thickness };
}
