import { sideOf } from './exact.ts';
import { edgesOf, type Point2 } from './flat-polygon.ts';
import type { FlatPoint, FlatSegment, Net, Panel } from './net.ts';
import { perNet } from './per-net.ts';
import { slitsWithin } from './slits-within.ts';

/** The panels that cuts between score lines part, by their ids. */
type PanelsBesideCuts = {
  /** Neighbors that are cut apart, each straight up to the line; three in a row as one. */
  readonly apart: readonly (readonly string[])[];
  /** Those that keep their straight edge while the neighbor behind the cut is cut at a slant. */
  readonly straight: readonly string[];
};

/** What the slits from an open edge part, read from the edges that its panels have left. */
export const besideSlits: (net: Net) => PanelsBesideCuts = perNet((net) => {
  const apart: string[][] = [];
  const straight = new Set<string>();
  const within = slitsWithin(net);
  for (const slit of net.slits.filter((each) => !within.includes(each))) {
    const edges = net.panels.flatMap((panel) => edgesAlong(panel, slit));
    for (const [index, edge] of edges.entries()) {
      const isBeside = (other: EdgeAlong): boolean => edge.side !== other.side && overlap(edge, other);
      if (!edges.some(isBeside)) straight.add(edge.panel);
      for (const other of edges.slice(index + 1).filter(isBeside)) addPair(apart, edge.panel, other.panel);
    }
  }
  return { apart, straight: [...straight] };
});

/** A pair that goes on where the last one ended makes a longer row of it. */
function addPair(rows: string[][], first: string, second: string): void {
  const row = rows.find((each) => each.at(-1) === first);
  if (row) row.push(second);
  else rows.push([first, second]);
}

/** A stretch of a panel's edge on a slit, from where to where along it, and on which side of it the panel lies. */
type EdgeAlong = {
  readonly panel: string;
  readonly side: number;
  readonly from: number;
  readonly to: number;
};

function edgesAlong(panel: Panel, slit: FlatSegment): EdgeAlong[] {
  const isAlong = ({ from, to }: FlatSegment): boolean =>
    sideOf(slit, from).sign === 0 && sideOf(slit, to).sign === 0;
  const own = edgesOf(panel.outline)
    .map(([from, to]): FlatSegment => ({ from, to }))
    .filter(isAlong);
  const side = panel.outline.reduce((sum, point) => sum + sideOf(slit, point).sign, 0);
  const end = along(slit, slit.to);
  return own
    .map(({ from, to }) => [along(slit, from), along(slit, to)].toSorted((a, b) => a - b))
    .map(([from = 0, to = 0]) => ({ panel: panel.id, side, from: Math.max(from, 0), to: Math.min(to, end) }))
    .filter(({ from, to }) => to - from > NEAR);
}

/** Millimeters. */
const NEAR = 1e-6;

function along({ from, to }: FlatSegment, point: FlatPoint): number {
  const [across, down] = [to.x.minus(from.x).mm, to.y.minus(from.y).mm];
  return (point.x.minus(from.x).mm * across + point.y.minus(from.y).mm * down) / Math.hypot(across, down);
}

function overlap(one: EdgeAlong, other: EdgeAlong): boolean {
  return Math.min(one.to, other.to) - Math.max(one.from, other.from) > NEAR;
}

/** The panels with an edge that is cut at a slant, between two corners and not along a curve. */
export const slantedPanels: (net: Net) => readonly string[] = perNet(({ panels, folds }) => {
  const isFolded = (edge: FlatSegment): boolean =>
    folds.some((fold) => sideOf(fold, edge.from).sign === 0 && sideOf(fold, edge.to).sign === 0);
  return panels.filter((panel) => slantsOf(panel).some((edge) => !isFolded(edge))).map(({ id }) => id);
});

/** Turning by less than this (in degrees) an outline runs on along a curve. */
const CURVE = 15;

function slantsOf({ outline }: Panel): FlatSegment[] {
  const points = outline.map(({ x, y }): Point2 => ({ x: x.mm, y: y.mm }));
  const way = (index: number): number => {
    const [from, to] = [points.at(index % points.length), points.at((index + 1) % points.length)];
    return from && to ? (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI : 0;
  };
  const isCorner = (index: number): boolean =>
    Math.abs(((way(index) - way(index - 1) + 540) % 360) - 180) > CURVE;
  return edgesOf(outline)
    .map(([from, to]): FlatSegment => ({ from, to }))
    .filter(
      ({ from, to }, index) =>
        !from.x.equals(to.x) && !from.y.equals(to.y) && isCorner(index) && isCorner(index + 1),
    );
}
