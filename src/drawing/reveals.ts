import type { Twin } from '../edition/editions.ts';
import type { Length } from '../measure/length.ts';
import { EDGES } from '../project/net-as-written.ts';
import type { Layer, Reveals } from '../shape/shapes.ts';
import { magnitudeOf, revealOn } from '../words/reveals.ts';
import type { DrawingStyle } from './style.ts';
import { listed, spokenLength } from './words.ts';

/** What shows all round when it is the same on every side, in both editions. */
export function allRound(layer: Twin<Layer>): Twin | undefined {
  return isEven(layer.inch.reveals) && isEven(layer.metric.reveals) ? revealOn(layer, 'left') : undefined;
}

/** `with ⅛ inch (3 millimetres) showing all round`, or side by side; sides on which the layer passes its base are said so. */
export function spokenReveals(layer: Twin<Layer>, style: DrawingStyle): string {
  const { say } = style;
  const even = allRound(layer);
  if (even && even.inch.sign === 0) return say('drawing-flush');
  if (even && even.inch.sign > 0) return say('drawing-all-round', { length: spokenLength(even, style) });
  const sides = EDGES.map((side) => {
    const reveal = revealOn(layer, side);
    if (reveal.inch.sign === 0) return say(`drawing-flush-${side}`);
    const key = reveal.inch.sign < 0 ? `drawing-past-${side}` : `drawing-shows-${side}`;
    return say(key, { length: spokenLength(magnitudeOf(reveal), style) });
  });
  return say('drawing-uneven', { sides: listed(sides, say) });
}

function isEven({ left, right, top, bottom }: Reveals): boolean {
  return [right, top, bottom].every((each: Length) => each.equals(left));
}
