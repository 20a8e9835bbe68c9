import { type Edition, type Editions, pairs, sidesOf, type Twin } from '../edition/editions.ts';
import type { Length, Unit } from '../measure/length.ts';
import type { Piece } from '../project/model.ts';
import { boxSize } from '../shape/net.ts';
import { type Layer, sheetsOf } from '../shape/shapes.ts';

/** Finds what a project's own measurements are in its other edition. */
export type TwinFinder = {
  /**
   * The lengths of a measurement as both editions have them: those the project measures from its editions, any other
   * converted plainly.
   */
  readonly find: (lengths: readonly Length[], unit: Unit) => readonly Twin[];
};

export function twinFinder(editions: Editions): TwinFinder {
  const inch = lengthsOf(editions.inch);
  const metric = lengthsOf(editions.metric);
  const groups = inch.flatMap((group, index) => {
    const other = metric[index];
    return other?.length === group.length ? [pairs({ inch: group, metric: other })] : [];
  });
  const byInch = indexBy(groups, ({ inch: own }) => own);
  const byMetric = indexBy(groups, ({ metric: own }) => own);
  return {
    find: (lengths, unit) => {
      const index = unit === 'in' ? byInch : byMetric;
      const whole = index.get(keyOf(lengths));
      if (whole) return whole;
      return lengths.map((length) => index.get(keyOf([length]))?.[0] ?? { inch: length, metric: length });
    },
  };
}

/** Whole sizes and, behind them, their single lengths; the first of equals wins, so the order is by importance. */
function indexBy(
  groups: readonly (readonly Twin[])[],
  own: (twin: Twin) => Length,
): ReadonlyMap<string, readonly Twin[]> {
  const index = new Map<string, readonly Twin[]>();
  const add = (group: readonly Twin[]): void => {
    const key = keyOf(group.map(own));
    if (!index.has(key)) index.set(key, group);
  };
  for (const group of groups) add(group);
  for (const group of groups) for (const twin of group) add([twin]);
  return index;
}

function keyOf(lengths: readonly Length[]): string {
  return lengths.map(String).join(' × ');
}

/** Every length of an edition in groups that belong together, in an order both editions share. */
function lengthsOf({ project, shapes }: Edition): (readonly Length[])[] {
  const pieces = [...project.pieces.values()];
  const nets = pieces.flatMap((piece) => sheetsOf(shapes.nets, piece.id.value).map(({ net }) => net));
  return [
    ...nets.map(({ size }) => sidesOf(size)),
    ...nets.flatMap(({ panels }) => panels.map(({ box }) => sidesOf(boxSize(box)))),
    ...shapes.layers.map(revealLengths),
    ...nets.flatMap(({ scores }) => scores.map(({ at }) => at)),
    ...pieces.map((piece) => (piece.corners ? [piece.corners.value] : [])),
    ...pieces.flatMap(formLengths),
    project.holds?.size?.map(({ value }) => value) ?? [],
  ];
}

function revealLengths({ reveals: { left, right, top, bottom } }: Layer): Length[] {
  return [left, right, top, bottom].map((reveal) => reveal.abs());
}

function formLengths({ body }: Piece): (readonly Length[])[] {
  if (body.kind !== 'form') return [];
  return [...body.settings.values()].flatMap((setting) =>
    setting.kind === 'lengths' ? [setting.lengths.map(({ value }) => value)] : [],
  );
}
