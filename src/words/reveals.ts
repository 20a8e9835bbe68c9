import { type Editions, type Twin, twin } from '../edition/editions.ts';
import { EDGES, type Edge } from '../project/net-as-written.ts';
import type { Border, Layer } from '../shape/shapes.ts';
import type { Measures } from './measures.ts';
import type { SafeHtml } from './safe-html.ts';
import { onRulers } from './twins.ts';
import type { Voice } from './voice.ts';

/** A piece as the layer it is; undefined where it lies on nothing. */
export function layerTwin(editions: Editions, id: string): Twin<Layer> | undefined {
  return twin(editions, ({ shapes }) => shapes.layers.find(({ piece }) => piece.id.value === id));
}

/** What shows on one side, or all round where outlines say; of a layer that lies askew about how far its outermost corner is from the edge. */
export function revealOn({ inch, metric }: Twin<Layer>, side: Edge): Twin {
  const reveal = { inch: inch.reveals[side], metric: metric.reveals[side] };
  const border = borderIn({ inch, metric });
  if (border?.inch.isEven) return onRulers({ inch: border.inch.least, metric: border.metric.least });
  return isAskew(inch) ? onRulers(reveal) : reveal;
}

/** What shows of a base round a layer, on its left, right, top and bottom. */
export function revealsOf(layer: Twin<Layer>): readonly Twin[] {
  return EDGES.map((side) => revealOn(layer, side));
}

/** `1/8 in (3 mm) all round`, or side by side: `1/4 in (6 mm) left and flush top and bottom`. */
export function revealPhrase(layer: Twin<Layer>, measures: Measures, voice: Voice): SafeHtml {
  const groups = new Map<string, { size: Twin; sides: Edge[] }>();
  for (const side of EDGES) {
    const size = revealOn(layer, side);
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
export function revealLength(layer: Twin<Layer>, measures: Measures, voice: Voice): SafeHtml {
  const all = revealsOf(layer);
  const usual = all.find((one) => all.filter((each) => sameTwin(each, one)).length >= MOST_SIDES);
  return usual ? measures.both([usual]) : revealPhrase(layer, measures, voice);
}

const MOST_SIDES = 3;

function sameTwin(one: Twin, other: Twin): boolean {
  return one.inch.equals(other.inch) && one.metric.equals(other.metric);
}

function groupPhrase(reveal: Twin, sides: readonly Edge[], measures: Measures, voice: Voice): SafeHtml {
  const where =
    sides.length === EDGES.length
      ? voice.phrase('all-round', {})
      : voice.list(sides.map((side) => voice.say(`side-${side}`)));
  const { sign } = reveal.inch;
  if (sign === 0) return voice.phrase('reveal-flush', { sides: where });
  const size = measures.both([magnitudeOf(reveal)]);
  return voice.phrase(sign < 0 ? 'reveal-over' : 'reveal', { size, sides: where });
}

/** What shows between two outlines, in both editions. */
function borderIn({ inch, metric }: Twin<Layer>): Twin<Border> | undefined {
  return inch.border && metric.border && { inch: inch.border, metric: metric.border };
}

/** The least that shows of the base of a layer whose sides have no single border. */
export function leastReveal(layer: Twin<Layer>): Twin {
  const border = borderIn(layer);
  if (border) return onRulers({ inch: border.inch.least, metric: border.metric.least });
  return revealsOf(layer).reduce((least, each) => (each.inch.lessThan(least.inch) ? each : least));
}

export function magnitudeOf({ inch, metric }: Twin): Twin {
  return { inch: inch.abs(), metric: metric.abs() };
}

/** Whether a layer's border isn't the same along a side, since it lies at an angle or its outline is another than its base's. */
export function isAskew({ turn, border }: Layer): boolean {
  return border ? !border.isEven : turn % 90 !== 0;
}
