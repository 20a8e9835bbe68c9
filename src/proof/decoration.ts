import type { Unit } from '../measure/length.ts';
import type { Edge } from '../project/net-as-written.ts';
import { commonParts, uncovered } from '../shape/common-parts.ts';
import { breadthOf, distanceOutside, type Point2 } from '../shape/flat-polygon.ts';
import { upright } from '../shape/fold.ts';
import { groundOf } from '../shape/ground.ts';
import type { EdgeRow, Impression, Net } from '../shape/net.ts';
import { gapOf } from '../shape/openings/gap.ts';
import type { Layer } from '../shape/shapes.ts';
import { sheetsOf } from '../shape/sheets.ts';
import type { ProofContext } from './rule.ts';

/** What every finding on a decoration tells: what it is on, such as `mat` or `card.front`, and the unit of its lengths. */
export type OnPaper = { readonly on: string; readonly unit: Unit };

/** A row of motifs, or a stamped image, and the sheet it is on. */
export type Placed<T> = { readonly it: T; readonly net: Net; readonly facts: OnPaper };

/** Every row of motifs of a project. */
export function rowsIn(context: ProofContext): readonly Placed<EdgeRow>[] {
  return placedIn(context, ({ rows = [] }) => rows);
}

/** One row of each entry of `edge:`: what is wrong with one of its sides is mostly wrong with all of them. */
export function* eachEntry(
  context: ProofContext,
  isWrong: (row: EdgeRow) => boolean,
): Generator<Placed<EdgeRow>> {
  const told = new Set<object>();
  for (const placed of rowsIn(context)) {
    const { written } = placed.it;
    if (told.has(written) || !isWrong(placed.it)) continue;
    told.add(written);
    yield placed;
  }
}

/** Every stamped image of a project. */
export function imagesIn(context: ProofContext): readonly Placed<Impression>[] {
  return placedIn(context, ({ impressions = [] }) => impressions);
}

function placedIn<T extends { readonly panel?: Net['panels'][number] }>(
  { project, shapes }: ProofContext,
  pick: (net: Net) => readonly T[],
): readonly Placed<T>[] {
  return [...project.pieces.keys()].flatMap((id) =>
    sheetsOf(shapes.nets, id).flatMap(({ net }) =>
      pick(net).map((it) => {
        const on = it.panel ? `${id}.${it.panel.name ?? it.panel.id}` : id;
        return { it, net, facts: { on, unit: project.unit } };
      }),
    ),
  );
}

/** `the left edge of mat`. */
export function sayEdge(side: Edge, on: string): string {
  return `the ${side} edge of ${on}`;
}

/** The outline of a stamped image on its sheet, in millimeters with y up. */
export function imageOutline({ corners }: Impression): readonly Point2[] {
  return corners.map(upright);
}

/** What of a stamped image is missing, as convex parts: where its paper is cut away, or an opening is cut into it. */
export function missingOf({ it, net }: Placed<Impression>, least: number): readonly (readonly Point2[])[] {
  const [outline, oval] = [imageOutline(it), ovalIn(it)];
  const papers = (it.panel ? [it.panel] : net.panels).map((panel) => panel.outline.map(upright));
  const holes = (net.openings ?? []).filter(({ how }) => how !== 'slit').map(gapOf);
  const isFramed = (hole: readonly Point2[]): boolean =>
    hole.every((point) => distanceOutside(point, outline) <= least);
  const cutOut = holes.filter((hole) => !isFramed(hole)).flatMap((hole) => commonParts(oval, hole));
  return [...uncovered(oval, papers, least), ...cutOut.filter((part) => breadthOf(part) > least)];
}

/** The oval within an image's outline: a round image has nothing in its corners. */
export function ovalIn({ corners }: Impression): readonly Point2[] {
  const [a, b, c, d] = corners.map(upright);
  if (!a || !b || !c || !d) return [];
  const middle = { x: (a.x + c.x) / 2, y: (a.y + c.y) / 2 };
  return Array.from({ length: 48 }, (_, step) => {
    const angle = (Math.PI * step) / 24;
    const [across, down] = [Math.cos(angle) / 2, Math.sin(angle) / 2];
    return {
      x: middle.x + (b.x - a.x) * across + (d.x - a.x) * down,
      y: middle.y + (b.y - a.y) * across + (d.y - a.y) * down,
    };
  });
}

/** The layers on the outside of a sheet, and what of the sheet they lie on. */
export function layersOver(
  net: Net,
  { shapes }: ProofContext,
): readonly (readonly [Layer, readonly Point2[]])[] {
  return shapes.layers
    .filter(({ under, on }) => under.net === net && on.face === 'outside')
    .map((layer) => [layer, groundOf(layer, shapes).outline] as const);
}
