import type { Editions, Twin } from '../edition/editions.ts';
import { twinsOf } from '../edition/lengths.ts';
import type { Length, Unit } from '../measure/length.ts';

/**
 * The lengths of a measurement as both editions have them: those the project measures from its editions, any other
 * converted plainly.
 */
export type TwinFinder = (lengths: readonly Length[], unit: Unit) => readonly Twin[];

export function twinFinder(editions: Editions): TwinFinder {
  const groups = twinsOf(editions);
  const byInch = indexBy(groups, ({ inch: own }) => own);
  const byMetric = indexBy(groups, ({ metric: own }) => own);
  return (lengths, unit) => {
    const index = unit === 'in' ? byInch : byMetric;
    const whole = index.get(keyOf(lengths));
    if (whole) return whole;
    return lengths.map((length) => index.get(keyOf([length]))?.[0] ?? { inch: length, metric: length });
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
