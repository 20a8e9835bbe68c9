import { Length } from '../../measure/length.ts';
import type { Size } from '../../measure/size.ts';

/** An envelope as it is sold, by its outside; its longer side is its width. */
type Envelope = { readonly name: string; readonly size: Size };

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

/** Something flat that goes into an envelope. */
export type FlatThing = { readonly size: Size; readonly thickness: Length };

/** How a thing lies in an envelope: what is left of it along its longer and its shorter side. */
type EnvelopeFit = {
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
export function fitIn(thing: FlatThing, envelope: Envelope): EnvelopeFit | undefined {
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
export function closestFits(thing: FlatThing, series: Series): readonly EnvelopeFit[] {
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
