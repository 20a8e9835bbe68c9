import { Length } from '../../measure/length.ts';
import type { Size } from '../../measure/size.ts';
import { ENVELOPES, type Envelope, type Series } from './envelopes.ts';

/** Something flat that goes into an envelope. */
export type FlatThing = { readonly size: Size; readonly thickness: Length };

/** How a thing lies in an envelope: what is left of it along its longer and its shorter side. */
export type Fit = {
  readonly envelope: Envelope;
  readonly spare: Size;
  /** `snug` goes in, but has less room than is usual. */
  readonly ease: 'easy' | 'snug';
};

/**
 * Room on both sides together: the quarter inch that trade pages agree on, as the 6 mm of a metric ruler; and the
 * eighth of a 4 1/4 in card in a 4 3/8 in envelope, for which it is sold. No standard fixes either.
 */
const USUAL: Length = Length.of(6, 1, 'mm');
const LEAST: Length = Length.of(3, 1, 'mm');

/** How a thing fits, its longer side along the envelope's; undefined when it does not go in. */
export function fitIn(thing: FlatThing, envelope: Envelope): Fit | undefined {
  const [long, short] = sides(thing.size);
  const [width, height] = sides(envelope.size);
  const spare = { width: width.minus(long), height: height.minus(short) };
  const least = Length.min(spare.width, spare.height);
  // A thing as thick as this bends the envelope round its edges, and takes that much of its width and height.
  if (least.lessThan(LEAST) || !least.greaterThan(thing.thickness)) return undefined;
  return { envelope, spare, ease: least.lessThan(USUAL) ? 'snug' : 'easy' };
}

/** With more room than this the thing slides about. */
const LOOSE: Length = Length.of(1, 1, 'in');

/** The envelopes of a series that a thing fits: the smallest, and any other in which it does not slide about. */
export function closestFits(thing: FlatThing, series: Series): readonly Fit[] {
  const fits = ENVELOPES[series].flatMap((envelope) => fitIn(thing, envelope) ?? []);
  const [first, ...others] = fits;
  const close = others.filter(
    ({ spare }) => !spare.width.greaterThan(LOOSE) && !spare.height.greaterThan(LOOSE),
  );
  return first ? [first, ...close] : [];
}

function sides({ width, height }: Size): readonly [Length, Length] {
  return [Length.max(width, height), Length.min(width, height)];
}
