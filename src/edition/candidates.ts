import type { Length } from '../measure/length.ts';
import { roundToStep } from '../measure/round.ts';
import type { Primary } from './primaries.ts';

/** What a candidate may be made of: whole steps, none farther than `reach` from the length as written. */
export type Rung = { readonly step: Length; readonly reach: Length };

/** One way to choose all primary lengths, by their keys. */
export type Candidate = ReadonlyMap<string, Length>;

/** What one primary length may become, nearest first. */
type Options = {
  readonly key: string;
  readonly choices: readonly { readonly to: Length; readonly cost: number }[];
};

/** The choice made for each primary length, by its place among the options, and what all of it costs. */
type Pick = { readonly indices: readonly number[]; readonly last: number; readonly cost: number };

/**
 * Every way to choose the primary lengths of a piece, the nearest first: in the order of the sum of squared deviations.
 * Of two as near, the one that changes later lengths.
 */
export function* candidatesOf(primaries: readonly Primary[], rung: Rung): Generator<Candidate> {
  const options = primaries.map((primary) => optionsOf(primary, rung));
  const costOf = (indices: readonly number[]): number =>
    indices.reduce((sum, index, place) => sum + (options[place]?.choices[index]?.cost ?? 0), 0);
  const first = primaries.map(() => 0);
  const queue: Pick[] = [{ indices: first, last: 0, cost: costOf(first) }];
  for (let pick = queue.pop(); pick; pick = queue.pop()) {
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
      enqueue(queue, { indices, last: place, cost: costOf(indices) });
    }
  }
}

/** The cheapest stands last. */
function enqueue(queue: Pick[], pick: Pick): void {
  let [low, high] = [0, queue.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((queue[middle]?.cost ?? 0) > pick.cost) low = middle + 1;
    else high = middle;
  }
  queue.splice(low, 0, pick);
}

function optionsOf({ key, own }: Primary, { step, reach }: Rung): Options {
  const nearest = roundToStep(own, step);
  const choices = [{ to: nearest, cost: costOf(own, nearest) }];
  for (let steps = 1; !step.times(steps - 1).greaterThan(reach); steps += 1) {
    for (const to of [nearest.plus(step.times(steps)), nearest.minus(step.times(steps))]) {
      if (to.sign > 0 && !to.minus(own).abs().greaterThan(reach)) {
        choices.push({ to, cost: costOf(own, to) });
      }
    }
  }
  return { key, choices: choices.sort((a, b) => a.cost - b.cost) };
}

function costOf(own: Length, to: Length): number {
  return to.minus(own).mm ** 2;
}
