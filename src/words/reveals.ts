import type { Editions, Twin } from '../edition/editions.ts';
import type { Layer } from '../shape/shapes.ts';
import type { Measures } from './measures.ts';
import type { SafeHtml } from './safe-html.ts';
import type { Voice } from './voice.ts';

const SIDES = ['left', 'right', 'top', 'bottom'] as const;
type Side = (typeof SIDES)[number];

/** What shows of a base round one layer, side by side in both editions. */
export type RevealTwins = { readonly [S in Side]: Twin };

/** The reveals of a layer; undefined where the piece lies on nothing. */
export function revealTwins(editions: Editions, pieceId: string): RevealTwins | undefined {
  const [inch, metric] = [editions.inch, editions.metric].map(({ shapes }) =>
    shapes.layers.find(({ piece }) => piece.id.value === pieceId),
  );
  if (!inch || !metric) return undefined;
  const side = (name: Side): Twin => ({ inch: inch.reveals[name], metric: metric.reveals[name] });
  return { left: side('left'), right: side('right'), top: side('top'), bottom: side('bottom') };
}

/** `1/8 in (3 mm) all round`, or side by side: `1/4 in (6 mm) left and flush top and bottom`. */
export function revealPhrase(reveals: RevealTwins, measures: Measures, voice: Voice): SafeHtml {
  const groups = new Map<string, { twin: Twin; sides: Side[] }>();
  for (const side of SIDES) {
    const twin = reveals[side];
    const key = `${twin.inch} ${twin.metric}`;
    const group = groups.get(key) ?? { twin, sides: [] };
    group.sides.push(side);
    groups.set(key, group);
  }
  return voice.list([...groups.values()].map(({ twin, sides }) => groupPhrase(twin, sides, measures, voice)));
}

/**
 * The border as a length, for a sentence that says itself where it shows: that of all sides, or of all sides but one.
 * Where there is no such border, side by side.
 */
export function revealLength(reveals: RevealTwins, measures: Measures, voice: Voice): SafeHtml {
  const twins = SIDES.map((side) => reveals[side]);
  const usual = twins.find((twin) => twins.filter((each) => sameTwin(each, twin)).length >= MOST_SIDES);
  return usual ? measures.both([usual]) : revealPhrase(reveals, measures, voice);
}

const MOST_SIDES = 3;

function sameTwin(one: Twin, other: Twin): boolean {
  return one.inch.equals(other.inch) && one.metric.equals(other.metric);
}

function groupPhrase(twin: Twin, sides: readonly Side[], measures: Measures, voice: Voice): SafeHtml {
  const where =
    sides.length === SIDES.length
      ? voice.phrase('all-round', {})
      : voice.list(sides.map((side) => voice.say(`side-${side}`)));
  const sign = twin.inch.sign;
  if (sign === 0) return voice.phrase('reveal-flush', { sides: where });
  const size = measures.both([{ inch: twin.inch.abs(), metric: twin.metric.abs() }]);
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
