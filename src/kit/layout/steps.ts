import type { Length } from '../../measure/length.ts';
import { type Size, sameSize } from '../../measure/size.ts';
import type { Box, Cut, Step, Yield } from '../plan.ts';
import type { Laid } from './lay-out.ts';
import { type Task, tasksOf } from './tasks.ts';

export type Cutting = { readonly steps: readonly Step[]; readonly cuts: readonly Cut[] };

/**
 * The cuts of a sheet in order: equal parts are cut together, and what can be cut at the setting the trimmer has is
 * cut before it is set anew.
 * @param longest the longest cut the trimmer makes.
 */
export function cuttingOf(sheet: Laid, longest: Length): Cutting {
  const ordered = inOrder(tasksOf(sheet));
  return {
    steps: ordered.map((task, index) => stepOf(task, index + 1, longest)),
    cuts: ordered.flatMap((task, index) => cutsOf(task, index + 1)),
  };
}

function inOrder(tasks: readonly Task[]): readonly Task[] {
  const done: Task[] = [];
  while (done.length < tasks.length) {
    const ready = tasks.filter(
      (task) => !done.includes(task) && task.after.every((each) => done.includes(each)),
    );
    const next = nextOf(ready, done.at(-1));
    if (!next) throw new Error('cuts that wait for one another');
    done.push(next);
  }
  return done;
}

/** One at the same setting if there is one; else one of the setting that most are waiting for. */
function nextOf(ready: readonly Task[], last: Task | undefined): Task | undefined {
  const alike = (task: Task): number => ready.filter(({ setting }) => setting.equals(task.setting)).length;
  const same = last && ready.find(({ setting }) => setting.equals(last.setting));
  return same ?? ready.toSorted((a, b) => alike(b) - alike(a))[0];
}

function stepOf(task: Task, number: number, longest: Length): Step {
  const { from, setting, isSheet, yields, rests, cuts } = task;
  const part = cuts[0]?.[0];
  if (!part) throw new Error('a step without a cut');
  const length = from === 'left' ? part.height : part.width;
  return {
    number,
    from,
    setting,
    part: { width: part.width, height: part.height, count: cuts.length, isSheet },
    cutsEach: cuts[0]?.length ?? 0,
    length,
    tooLong: length.greaterThan(longest),
    yields: together([...yields.flatMap(yieldOf), ...rests.map(restOf)]),
  };
}

function cutsOf({ from, setting, cuts }: Task, step: number): readonly Cut[] {
  return cuts.flat().map((part) => ({
    step,
    part,
    from,
    setting,
    length: from === 'left' ? part.height : part.width,
  }));
}

function together(parts: readonly Yield[]): readonly Yield[] {
  const yields: Yield[] = [];
  for (const part of parts) {
    const index = yields.findIndex((each) => isSame(each, part));
    const before = yields[index];
    if (before) yields[index] = { ...before, count: before.count + 1 };
    else yields.push(part);
  }
  return yields;
}

/** Nothing where the blade took all that was left. */
function yieldOf({ box, content }: Laid): readonly Yield[] {
  const size: Size = { width: box.width, height: box.height };
  if (content.kind === 'piece') return [{ kind: 'piece', piece: content.blank, count: 1 }];
  if (content.kind === 'strips') return [{ kind: 'strip', size, count: 1 }];
  return size.width.sign > 0 && size.height.sign > 0 ? [{ kind: 'off-cut', size, count: 1 }] : [];
}

function restOf({ width, height }: Box): Yield {
  return { kind: 'strip', size: { width, height }, count: 1 };
}

function isSame(one: Yield, other: Yield): boolean {
  if (one.kind === 'piece') return other.kind === 'piece' && one.piece === other.piece;
  return other.kind !== 'piece' && one.kind === other.kind && sameSize(one.size, other.size);
}
