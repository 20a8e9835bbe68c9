import type { Length } from '../../measure/length.ts';

/** A point of an arc: how far along the chord, and how far from it. */
export type ArcPoint = { readonly along: Length; readonly rise: Length };

/**
 * Points of the circular arc over a chord, `rise` high in its middle, from one end of the chord to the other. The
 * arc's points at the slopes t = p/q through its top, (2t/(1 + t²), 2t²/(1 + t²)) times its radius, are rational,
 * so every point is exact.
 */
export function arcPoints(chord: Length, rise: Length, stretches: number): ArcPoint[] {
  // The slope from the arc's top to the chord's end, u = rise / (chord / 2); the radius is chord (1 + u²) / 4u.
  const { numerator: top, denominator: bottom } = rise.over(chord.half());
  const radius = chord.times(bottom ** 2n + top ** 2n, 4n * top * bottom);
  return Array.from({ length: stretches + 1 }, (_, index) => {
    const p = top * BigInt(2 * index - stretches);
    const q = bottom * BigInt(stretches);
    const across = radius.times(2n * p * q, p ** 2n + q ** 2n);
    const drop = radius.times(2n * p ** 2n, p ** 2n + q ** 2n);
    return { along: chord.half().plus(across), rise: rise.minus(drop) };
  });
}
