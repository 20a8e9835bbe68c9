import { Length } from '../measure/length.ts';
import { roundToStep } from '../measure/round.ts';
import type { Project } from '../project/model.ts';
import type { Primary } from './primaries.ts';

/** What is allowed of a candidate: every length a whole number of steps, and how far from the one as written. */
export type Rung = {
  readonly step: Length;
  /** What the ruler shows. A length between two marks counts as much worse: no more of them than need be. */
  readonly mark: Length;
  readonly reach: Length;
};

/** One way to choose all primary lengths of a piece, by their keys. */
export type Numbers = ReadonlyMap<string, Length>;

/** What one primary length may become, nearest first. */
export type Options = Primary & {
  readonly choices: readonly { readonly to: Length; readonly cost: number }[];
};

/** The choice made for each primary length, by its place among the options, and what all of it costs. */
type Choice = { readonly indices: readonly number[]; readonly last: number; readonly cost: number };

/** Whole steps first, then half ones, then farther. */
export function rungsOf(project: Project): readonly Rung[] {
  const { step, near, far } = reachesOf(project);
  return [near, far].flatMap((reach) => [
    { step, mark: step, reach },
    { step: step.half(), mark: step, reach },
  ]);
}

/**
 * The step of an edition, how far a length may be from the one as written, and how far before it is worth a note where it
 * is a cut that follows from its border: a border is looked at more than a size.
 */
export function reachesOf({ unit, metric }: Project): Record<'step' | 'near' | 'far', Length> {
  const step = unit === 'in' ? Length.of(1, 16, 'in') : Length.of(1, metric === 'half' ? 2 : 1, 'mm');
  const near = Length.max(Length.of(3, 2, 'mm'), step);
  return { step, near, far: near.times(2) };
}

/** What each primary length may become: rounded, and the next steps on both sides within reach. */
export function optionsOf(primaries: readonly Primary[], { step, mark, reach }: Rung): readonly Options[] {
  const options: Options[] = [];
  for (const { key, kind, own } of primaries) {
    const nearest = roundToStep(own, step);
    const costOf = (to: Length): number => to.minus(own).mm ** 2 + (to.isMultipleOf(mark) ? 0 : mark.mm ** 2);
    const choices = [{ to: nearest, cost: costOf(nearest) }];
    for (let away = step; !away.minus(step).greaterThan(reach); away = away.plus(step)) {
      for (const to of [nearest.plus(away), nearest.minus(away)]) {
        if (to.sign > 0 && !to.minus(own).abs().greaterThan(reach)) choices.push({ to, cost: costOf(to) });
      }
    }
    options.push({ key, kind, own, choices: choices.sort((a, b) => a.cost - b.cost) });
  }
  return options;
}

/**
 * Ways to choose the primary lengths of a piece, the nearest first and no more than `most`: in the order of the sum of
 * squared deviations. Of two as near, the one that changes later lengths.
 */
export function* candidatesOf(options: readonly Options[], most: number): Generator<Numbers> {
  const costAt = (indices: readonly number[]): number =>
    indices.reduce((sum, index, place) => sum + (options[place]?.choices[index]?.cost ?? 0), 0);
  const first = options.map(() => 0);
  const queue: Choice[] = [{ indices: first, last: 0, cost: costAt(first) }];
  let given = 0;
  for (let pick = queue.pop(); pick && given < most; pick = queue.pop()) {
    given += 1;
    yield new Map(
      options.flatMap(({ key, choices }, place) => {
        const choice = choices[pick.indices[place] ?? 0];
        return choice ? [[key, choice.to] as const] : [];
      }),
    );
    // Counting up at the last place changed or after it meets every combination once.
    for (let place = pick.last; place < options.length; place += 1) {
      const index = (pick.indices[place] ?? 0) + 1;
      if (index >= (options[place]?.choices.length ?? 0)) continue;
      const indices = pick.indices.with(place, index);
      enqueue(queue, { indices, last: place, cost: costAt(indices) });
    }
  }
}

/** The cheapest stands last. */
function enqueue(queue: Choice[], pick: Choice): void {
  let [low, high] = [0, queue.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((queue[middle]?.cost ?? 0) > pick.cost) low = middle + 1;
    else high = middle;
  }
  queue.splice(low, 0, pick);
}
