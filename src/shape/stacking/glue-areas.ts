import { foldedLength } from '../../measure/round.ts';
import type { Face } from '../../project/ref.ts';
import { LEAST_GLUE } from '../closure/glue.ts';
import { sideGluedAt } from '../closure/pocket.ts';
import { shared } from '../common-parts.ts';
import { areaOf, type Point2 } from '../flat-polygon.ts';
import { foldedPanelOf, offPanel, onPanel, outlineOn } from '../folded-shape.ts';
import { boxSize, type FlatPoint, type Mate, type Net, type Panel } from '../net.ts';
import { withoutDoubles } from '../outline.ts';
import { panelOf } from '../panel-tree.ts';
import { perNet } from '../per-net.ts';
import { lineOf } from '../tube.ts';
import { stackOf } from './folding.ts';
import type { GluedFace } from './glued-face.ts';
import { type Meeting, meetingOf, stuckThrough } from './meeting.ts';
import type { Side } from './sides.ts';
import { type Stack, TOUCHING } from './stack.ts';

/** Which faces of the paper a glue mark brings together, and what lies between them somewhere else. */
export type GlueArea = {
  readonly mate: Mate;
  readonly from: GluedFace;
  readonly to: GluedFace;
  readonly between: readonly string[];
};

/**
 * Every glue mark of a net that brings two panels together once all is folded, by faces. `caliper` is the paper's
 * thickness in millimeters. A bent wall is stuck before it is bent.
 */
export const glueAreas: (net: Net, caliper: number) => readonly GlueArea[] = perNet(
  (net, caliper: number) => {
    const stack = stackOf(net, caliper);
    return net.glue.flatMap((mate) => glueArea(stack, mate) ?? []);
  },
);

function glueArea(stack: Stack, mate: Mate): GlueArea | undefined {
  const [onFrom, onTo] = [stack.sides.of(mate.from, mate.to), stack.sides.of(mate.to, mate.from)];
  if (onFrom === undefined || onTo === undefined) return undefined;
  const meeting = meetingOf(stack, mate.from, mate.to);
  const { between } = meeting;
  const strips = sideStrips(stack.shape.net, mate);
  const parts =
    strips?.flatMap((strip) => meeting.parts.map((part) => shared(part, strip)).filter(hasArea)) ??
    wholeOutline(stack, mate, meeting) ??
    meeting.parts;
  // What lies between and sticks to the same panel takes its glue instead.
  const taken = meetingOf(stack, mate.from, mate.to, stuckThrough(stack, mate));
  return {
    mate,
    from: {
      panel: mate.from,
      face: faceOn(onFrom),
      areas: flatAreas(stack, mate.from, mate.from, between.length > 0 ? taken.parts : parts),
    },
    to: { panel: mate.to, face: faceOn(onTo), areas: flatAreas(stack, mate.from, mate.to, parts) },
    between,
  };
}

/** Along both sides of a pocket that is folded up, on its own axes; undefined of what is glued all over. */
function sideStrips(net: Net, mate: Mate): readonly (readonly Point2[])[] | undefined {
  const fold = sideGluedAt(net, mate);
  if (!fold) return undefined;
  const { width, height } = boxSize(panelOf(net, mate.from).box);
  const [wide, high, strip] = [width.mm, height.mm, LEAST_GLUE.mm];
  return lineOf(fold) === 'across'
    ? [rectangle(0, 0, strip, high), rectangle(wide - strip, 0, wide, high)]
    : [rectangle(0, 0, wide, strip), rectangle(0, high - strip, wide, high)];
}

function hasArea(part: readonly Point2[]): boolean {
  return areaOf(part) > TOUCHING;
}

function rectangle(left: number, top: number, right: number, bottom: number): readonly Point2[] {
  return [
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: bottom },
    { x: left, y: bottom },
  ];
}

/** The outline of a panel that meets its mate with all of its face: a bent edge stays whole. */
function wholeOutline(
  { shape }: Stack,
  { from, to }: Mate,
  { between, shared }: Meeting,
): readonly (readonly Point2[])[] | undefined {
  const panel = foldedPanelOf(shape, from);
  if (between.length > 0) return undefined;
  const outlines = [panel, foldedPanelOf(shape, to)].map((each) => outlineOn(panel, each));
  const whole = outlines.find((outline) => areaOf(outline) - shared.area < TOUCHING / 10);
  return whole && [whole];
}

export function faceOn(side: Side): Face {
  return side === 1 ? 'outside' : 'inside';
}

/** Parts that are given from the top left of one panel's box, on the flat net where they lie on another. */
export function flatAreas(
  { shape }: Stack,
  given: string,
  wanted: string,
  parts: readonly (readonly Point2[])[],
): readonly (readonly FlatPoint[])[] {
  const [own, panel] = [foldedPanelOf(shape, given), foldedPanelOf(shape, wanted)];
  const moved =
    own === panel ? parts : parts.map((part) => part.map((p) => onPanel(panel, offPanel(own, p))));
  return moved.map((part) => withoutDoubles(part.map((point) => onSheet(panel.panel, point))));
}

function onSheet({ box }: Panel, { x, y }: Point2): FlatPoint {
  return { x: box.left.plus(foldedLength(x)), y: box.top.plus(foldedLength(y)) };
}
