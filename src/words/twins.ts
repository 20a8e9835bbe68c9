import type { Editions, Twin } from '../edition/editions.ts';
import { twinsOf } from '../edition/lengths.ts';
import type { Length, Unit } from '../measure/length.ts';
import { rulerMark } from '../measure/round.ts';
import type { EditionName } from '../measure/ruler-unit.ts';
import { variantsOf } from './variants.ts';

/**
 * The lengths of a measurement as both editions have them: those the project measures from its editions, any other
 * converted plainly.
 */
export type TwinFinder = (lengths: readonly Length[], unit: Unit) => readonly Twin[];

/** Always the same for the same editions: all that is set of a project asks for it. */
export function twinFinder(editions: Editions): TwinFinder {
  const finder = finders.get(editions) ?? newFinder(editions);
  finders.set(editions, finder);
  return finder;
}

const finders = new WeakMap<Editions, TwinFinder>();

function newFinder(editions: Editions): TwinFinder {
  const groups = variantsOf(editions).flatMap(twinsOf);
  const byInch = indexBy(groups, ({ inch: own }) => own);
  const byMetric = indexBy(groups, ({ metric: own }) => own);
  return (lengths, unit) => {
    const [index, given] = unit === 'in' ? ([byInch, 'inch'] as const) : ([byMetric, 'metric'] as const);
    // What a project holds, say, is one thing in both its editions.
    const known = (own: readonly Length[]): readonly Twin[] | undefined =>
      index.get(keyOf(own))?.map((twin) => asConverted(twin, editions.own));
    const convert = (length: Length): Twin => asConverted({ inch: length, metric: length }, given);
    return known(lengths) ?? lengths.flatMap((length) => known([length]) ?? [convert(length)]);
  };
}

/**
 * A length of something that is not made here, as a person takes it: as given in one edition, and where a ruler has it
 * in the other. Nobody cuts by that, so it needs no sign that it was rounded.
 */
export function asConverted(twin: Twin, given: EditionName): Twin {
  return { ...onRulers(twin), [given]: twin[given] };
}

/** A length that is good to know and that nobody measures: where the rulers have it. */
export function onRulers({ inch, metric }: Twin): Twin {
  return { inch: rulerMark(inch, 'in'), metric: rulerMark(metric, 'mm') };
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
