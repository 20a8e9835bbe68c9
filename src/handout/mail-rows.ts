import type { Editions, Twin } from '../edition/editions.ts';
import { Length } from '../measure/length.ts';
import type { Size } from '../measure/size.ts';
import { nameOf } from '../words/names.ts';
import type { SafeHtml } from '../words/safe-html.ts';
import type { Series } from './mail/envelopes.ts';
import { closestFits, type Fit, fitIn } from './mail/fit.ts';
import type { Mailed } from './mail/mailed.ts';
import { type LetterVerdict, letterVerdict } from './mail/us-letter.ts';
import type { Setting } from './setting.ts';

/** An envelope that a thing goes in, and what the two then count as. */
export type EnvelopeRow = {
  readonly name: string;
  readonly size: SafeHtml;
  /** `3/8 × 1/8 in (9 × 3 mm) to spare: snug`. */
  readonly spare: SafeHtml;
  readonly letter: string;
};

/** Something in both editions. */
type Both<T> = { readonly [E in Editions['own']]: T };
export type MailedTwin = Both<Mailed>;

/** An envelope, made or bought. */
type Outside = {
  readonly name: string;
  readonly size: Both<Size>;
  /** About what its own paper adds to the thickness, and to the weight where that is known. */
  readonly paper: Length;
  readonly grams: number;
};

/** About what the two sides of a bought envelope add; their few grams are not reckoned. Common practice, no source. */
const BOUGHT: Length = Length.of(1, 4, 'mm');
/** The avoirdupois ounce: 1/16 of 453.59237 g (NIST SP 811, B.8). */
const GRAMS_OF_OUNCE = 28.349523125;

const SERIES: readonly Series[] = ['iso', 'north-america'];

const SAID: Readonly<Record<LetterVerdict, string>> = {
  letter: 'mail-letter',
  'too-small': 'mail-too-small',
  'too-large': 'mail-too-large',
  'too-thick': 'mail-too-thick',
  'too-heavy': 'mail-too-heavy',
  'nonmachinable-square': 'mail-nonmachinable-square',
  'nonmachinable-long': 'mail-nonmachinable-long',
};

/** The project's own envelopes that a thing goes in, then the common ones nearest to its size. */
export function rowsFor(
  setting: Setting,
  thing: MailedTwin,
  own: readonly MailedTwin[],
): readonly EnvelopeRow[] {
  const made = own.map((envelope) => madeEnvelope(setting, envelope));
  const near = SERIES.flatMap((series) => closestFits(thing[setting.editions.own], series));
  const bought = near.map(({ envelope: { name, size } }) => ({
    name,
    size: { inch: size, metric: size },
    paper: BOUGHT,
    grams: 0,
  }));
  return [...made, ...bought].flatMap((outside) => rowOf(setting, thing, outside) ?? []);
}

/** What an envelope of the project counts as with nothing in it that is known of. */
export function emptyVerdict({ voice }: Setting, { size, thickness, grams }: Mailed): string {
  return voice.say(SAID[verdictOf(size, thickness, grams)]);
}

function madeEnvelope({ editions, voice }: Setting, envelope: MailedTwin): Outside {
  const { piece, thickness, grams = 0 } = envelope[editions.own];
  return {
    name: voice.say('mail-own', { piece: nameOf(piece.id.value) }),
    size: { inch: envelope.inch.size, metric: envelope.metric.size },
    paper: thickness,
    grams,
  };
}

/** Undefined where the thing does not go in, in either edition. */
function rowOf(setting: Setting, thing: MailedTwin, outside: Outside): EnvelopeRow | undefined {
  const { editions, measures, voice } = setting;
  const { name, size, paper } = outside;
  const inch = fitIn(thing.inch, { name, size: size.inch });
  const metric = fitIn(thing.metric, { name, size: size.metric });
  if (!inch || !metric) return undefined;
  const isSnug = [inch, metric].some(({ ease }) => ease === 'snug');
  const own = thing[editions.own];
  const grams = own.grams === undefined ? undefined : own.grams + outside.grams;
  const verdict = verdictOf(size[editions.own], own.thickness.plus(paper), grams);
  return {
    name,
    size: measures.both(longFirst(size)),
    spare: voice.phrase(isSnug ? 'mail-snug' : 'mail-spare', { spare: measures.both(spareOf(inch, metric)) }),
    letter: voice.say(SAID[verdict]),
  };
}

function spareOf({ spare: inch }: Fit, { spare: metric }: Fit): readonly Twin[] {
  return [
    { inch: inch.width, metric: metric.width },
    { inch: inch.height, metric: metric.height },
  ];
}

/** The address is taken to run along the longer side. */
function verdictOf({ width, height }: Size, thickness: Length, grams: number | undefined): LetterVerdict {
  const ounces = grams === undefined ? undefined : grams / GRAMS_OF_OUNCE;
  return letterVerdict({
    length: Length.max(width, height),
    height: Length.min(width, height),
    thickness,
    ounces,
  });
}

/** A size as envelopes are named: the longer side first, whichever way the thing is drawn. */
export function longFirst({ inch, metric }: Both<Size>): readonly Twin[] {
  const width = { inch: inch.width, metric: metric.width };
  const height = { inch: inch.height, metric: metric.height };
  return inch.width.lessThan(inch.height) ? [height, width] : [width, height];
}
