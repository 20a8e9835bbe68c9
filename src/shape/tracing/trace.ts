import { Length } from '../../measure/length.ts';
import { rulerUnit } from '../../measure/ruler-unit.ts';
import type { Finding } from '../../project/finding.ts';
import type { Project } from '../../project/model.ts';
import type { OutlineAsWritten } from '../../project/outline-grammar.ts';
import type { AtSize } from '../../project/sizes-as-written.ts';
import { Settings } from '../forming/settings.ts';
import type { FlatBox, FlatPoint, Shape } from '../net.ts';
import { withoutDoubles } from '../outline.ts';
import { outlines } from '../outlines/index.ts';

/** An outline to be traced: what it is of, and the size that holds it. */
type TraceRequest = {
  /** What messages call it: a piece's id, or an opening's. */
  readonly name: string;
  readonly outline: OutlineAsWritten;
  readonly size: AtSize;
};

/** Points from the left and top of the size that holds them, clockwise, and the box that they fill. */
type Traced = { readonly points: readonly FlatPoint[]; readonly box: FlatBox; readonly shape: Shape };

/** Traces the outline of a flat piece or an opening; undefined, with findings, where it cannot be. */
export function traceOutline(
  { name, outline: { shape, settings: written }, size }: TraceRequest,
  { unit, metric }: Project,
): { readonly traced?: Traced; readonly findings: readonly Finding[] } {
  const outline = outlines.find((each) => each.name === shape.value);
  if (!outline) throw new Error(`the reader let a shape pass that isn't there: ${shape.value}`);
  const ruler = rulerUnit(size.unit ?? unit);
  const asked = { name, at: shape.at, settings: written, ruler, metric, caliper: Length.zero };
  const settings = new Settings(outline.parameters, asked);
  const held = { width: size.width.value, height: size.height.value };
  const points = withoutDoubles(outline.trace(held, settings, size));
  const { findings, lengthsTaken: lengths, countsTaken: counts } = settings;
  if (findings.length > 0) return { findings };
  return {
    traced: { points, box: boxRound(points), shape: { name: outline.name, lengths, counts } },
    findings,
  };
}

/** The least box round some points. */
function boxRound(points: readonly FlatPoint[]): FlatBox {
  const [first, ...rest] = points;
  if (!first) throw new Error('an outline without points');
  const [xs, ys] = [rest.map(({ x }) => x), rest.map(({ y }) => y)];
  return {
    left: Length.min(first.x, ...xs),
    top: Length.min(first.y, ...ys),
    right: Length.max(first.x, ...xs),
    bottom: Length.max(first.y, ...ys),
  };
}
