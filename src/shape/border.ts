import { foldedLength } from '../measure/round.ts';
import { faceOf } from '../project/ref.ts';
import { contains, distanceToEdges, edgesOf, type Point2 } from './flat-polygon.ts';
import { fromBox, ontoBase } from './layer-outline.ts';
import type { FlatPoint, Net } from './net.ts';
import { type Border, type Layer, onlyPanel } from './shapes.ts';

/** Millimeters by which what shows may differ along an outline: what stands for an arc misses it by less. */
const EVEN = 0.2;

/**
 * What shows between the outline of a layer and that of its base, which is no rectangle; undefined where that is what
 * shows at its sides, as round a circle on a circle, and where it passes its base, which is another matter.
 */
export function borderOf(layer: Layer, own: Net): Border | undefined {
  const { under, on, base, reveals } = layer;
  const [panel, ground] = [onlyPanel(own), under.panel];
  if (!panel || !ground) return undefined;
  const inner = fromBox(panel).map((point) => inMillimeters(ontoBase(layer, point)));
  const seen = fromBox(ground).map(inMillimeters);
  const outer = faceOf(on) === 'outside' ? seen : seen.map(({ x, y }) => ({ x: base.width.mm - x, y }));
  const along = edgesOf(inner).flatMap(([from, to]) => [
    from,
    { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 },
  ]);
  const shown = along.map((point) => distanceToEdges(point, outer));
  if (along.some((point, index) => (shown[index] ?? 0) > EVEN && !contains(outer, point))) return undefined;
  const [least, most] = [Math.min(...shown), Math.max(...shown)];
  const isEven = most - least < EVEN;
  if (isEven && Object.values(reveals).every((reveal) => Math.abs(reveal.mm - most) < EVEN)) return undefined;
  const nearest = isEven ? most : Math.min(least, ...outer.map((point) => distanceToEdges(point, inner)));
  return { least: foldedLength(nearest), isEven };
}

function inMillimeters({ x, y }: FlatPoint): Point2 {
  return { x: x.mm, y: y.mm };
}
