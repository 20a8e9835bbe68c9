import { Length } from '../../measure/length.ts';
import { rulerUnit } from '../../measure/ruler-unit.ts';
import type { Finding } from '../../project/finding.ts';
import type { OutlineAsWritten, ReadyOutline } from '../../project/grammar/outline-grammar.ts';
import type { Project } from '../../project/model.ts';
import type { AtSize } from '../../project/sizes-as-written.ts';
import { Settings } from '../forming/settings.ts';
import { boundsOf, type FlatBox, type FlatPoint, type NamedOutline } from '../net.ts';
import { withoutDoubles } from '../outline.ts';
import { outlines } from '../outlines/index.ts';
import type { Outline } from './outline.ts';

/** An outline to be traced: what it is of, and the size that holds it. */
type TraceRequest = {
  /** What messages call it: a piece's id, or an opening's. */
  readonly name: string;
  readonly outline: OutlineAsWritten;
  readonly size: AtSize;
};

/** Points from the left and top of the size that holds them, clockwise, and the box that they fill. */
type Traced = { readonly points: readonly FlatPoint[]; readonly box: FlatBox; readonly shape: NamedOutline };

/** Traces the outline of a flat piece or an opening; undefined, with findings, where it cannot be. */
export function traceOutline(request: TraceRequest, project: Project): Tracing {
  const { name, outline, size } = request;
  if (outline.kind === 'ready') return traceReady({ name, outline, size }, project);
  const { points } = outline;
  return { traced: { points, box: boundsOf(points), shape: DRAWN }, findings: [] };
}

type Tracing = { readonly traced?: Traced; readonly findings: readonly Finding[] };

/** An outline of the project's own, which its drawing alone describes. */
const DRAWN: NamedOutline = { name: 'drawn', lengths: {}, counts: {} };

function traceReady(
  { name, outline: { shape, settings: written }, size }: TraceRequest & { readonly outline: ReadyOutline },
  { unit, metric }: Project,
): Tracing {
  const outline = outlines.find((each) => each.name === shape.value);
  if (!outline) throw new Error(`the reader let a shape pass that isn't there: ${shape.value}`);
  const ruler = rulerUnit(size.unit ?? unit);
  const asked = { name, at: shape.at, settings: written, ruler, metric, caliper: Length.zero };
  const settings = new Settings(outline.parameters, asked);
  const held = { width: size.width.value, height: size.height.value };
  const points = withoutDoubles(outline.trace(held, settings, size));
  const { findings } = settings;
  if (findings.length > 0) return { findings };
  return { traced: { points, box: boundsOf(points), shape: shapeOf(outline, settings) }, findings };
}

function shapeOf({ name, across, round }: Outline, { lengthsTaken, countsTaken }: Settings): NamedOutline {
  const nature = { ...(across && { across }), ...(round && { round }) };
  return { name, ...nature, lengths: lengthsTaken, counts: countsTaken };
}
