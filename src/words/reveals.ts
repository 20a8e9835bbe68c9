import { type Editions, type Twin, twin } from '../edition/editions.ts';
import type { Layer, Reveals } from '../shape/shapes.ts';
import type { Measures } from './measures.ts';
import type { SafeHtml } from './safe-html.ts';
import { onRulers } from './twins.ts';
import type { Voice } from './voice.ts';

const SIDES = ['left', 'right', 'top', 'bottom'] as const satisfies readonly (keyof Reveals)[];

/** What shows of a base round one layer, side by side in both editions. */
export type RevealTwins = { readonly [Side in keyof Reveals]: Twin };

/** The reveals of a layer; undefined where the piece lies on nothing. */
export function revealTwins(editions: Editions, pieceId: string): RevealTwins | undefined {
  const layers = twin(editions, ({ shapes }) =>
    shapes.layers.find(({ piece }) => piece.id.value === pieceId),
  );
  if (!layers) return undefined;
  const side = (name: keyof Reveals): Twin => revealOn(layers, name);
  return { left: side('left'), right: side('right'), top: side('top'), bottom: side('bottom') };
}

/** What shows on one side; of a layer that lies askew about how far its outermost corner is from the edge. */
export function revealOn({ inch, metric }: Twin<Layer>, side: keyof Reveals): Twin {
  const reveal = { inch: inch.reveals[side], metric: metric.reveals[side] };
  return isAskew(inch) ? onRulers(reveal) : reveal;
}

/** `1/8 in (3 mm) all round`, or side by side: `1/4 in (6 mm) left and flush top and bottom`. */
export function revealPhrase(reveals: RevealTwins, measures: Measures, voice: Voice): SafeHtml {
  const groups = new Map<string, { size: Twin; sides: (keyof Reveals)[] }>();
  for (const side of SIDES) {
    const size = reveals[side];
    const key = `${size.inch} ${size.metric}`;
    const group = groups.get(key) ?? { size, sides: [] };
    group.sides.push(side);
    groups.set(key, group);
  }
  return voice.list([...groups.values()].map(({ size, sides }) => groupPhrase(size, sides, measures, voice)));
}

/**
 * The border as a length, for a sentence that says itself where it shows: that of all sides, or of all sides but one.
 * Where there is no such border, side by side.
 */
export function revealLength(reveals: RevealTwins, measures: Measures, voice: Voice): SafeHtml {
  const all = SIDES.map((side) => reveals[side]);
  const usual = all.find((one) => all.filter((each) => sameTwin(each, one)).length >= MOST_SIDES);
  return usual ? measures.both([usual]) : revealPhrase(reveals, measures, voice);
}

const MOST_SIDES = 3;

function sameTwin(one: Twin, other: Twin): boolean {
  return one.inch.equals(other.inch) && one.metric.equals(other.metric);
}

function groupPhrase(
  { inch, metric }: Twin,
  sides: readonly (keyof Reveals)[],
  measures: Measures,
  voice: Voice,
): SafeHtml {
  const where =
    sides.length === SIDES.length
      ? voice.phrase('all-round', {})
      : voice.list(sides.map((side) => voice.say(`side-${side}`)));
  const { sign } = inch;
  if (sign === 0) return voice.phrase('reveal-flush', { sides: where });
  const size = measures.both([{ inch: inch.abs(), metric: metric.abs() }]);
  return voice.phrase(sign < 0 ? 'reveal-over' : 'reveal', { size, sides: where });
}

/** The least of a layer's four reveals, for a turned layer whose sides have no single border. */
export function leastReveal(reveals: RevealTwins): Twin {
  return SIDES.map((side) => reveals[side]).reduce((least, each) =>
    each.inch.lessThan(least.inch) ? each : least,
  );
}

/** Whether the layer lies at an angle, so that its border isn't the same along a side. */
export function isAskew(layer: Layer): boolean {
  return layer.turn % 90 !== 0;
}
