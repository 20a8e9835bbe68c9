import type { Length } from '../measure/length.ts';
import type { SheetTree } from './sheet-tree.ts';
import { across, along, type CutEdge, shapeOf } from './solver/cut-tree.ts';

type Cuttable = Extract<SheetTree, { kind: 'strips' }>;

/** Strips of one length cut off parts that are all alike, without setting the trimmer anew. */
export type CuttingStep = {
  readonly from: CutEdge;
  /** The distance from that edge: what the trimmer is set to. */
  readonly setting: Length;
  /** Each of the parts as it is before the first of these cuts, and before each that follows. */
  readonly cuts: readonly (readonly SheetTree[])[];
  /** Of each of the cuts. */
  readonly length: Length;
  /** Longer than the trimmer's longest cut. */
  readonly tooLong: boolean;
  /** What comes off, and what is left. */
  readonly yields: readonly SheetTree[];
};

/** A step, and those that must be done before it. */
type Task = CuttingStep & { readonly after: readonly Task[] };

/**
 * The cuts of a sheet in order: equal parts are cut together, and what can be cut at the setting the trimmer has is
 * cut before it is set anew.
 * @param longest the longest cut the trimmer makes.
 */
export function stepsOf(sheet: SheetTree, longest: Length): readonly CuttingStep[] {
  const tasks: Task[] = [];
  const freedBy = new Map<SheetTree, Task>();
  for (const parts of alikeIn(sheet)) {
    const before = [...new Set(parts.flatMap((part) => freedBy.get(part) ?? []))];
    for (const task of tasksOf(parts, before, longest)) {
      for (const freed of task.yields) freedBy.set(freed, task);
      tasks.push(task);
    }
  }
  return inOrder(tasks);
}

/** Everything that is cut, equal parts together; a part is larger than every part of it, so the largest come first. */
function alikeIn(sheet: SheetTree): readonly (readonly Cuttable[])[] {
  const alike = new Map<string, Cuttable[]>();
  const collect = (part: SheetTree): void => {
    if (part.kind !== 'strips') return;
    const shape = shapeOf(part);
    alike.set(shape, [...(alike.get(shape) ?? []), part]);
    part.parts.forEach(collect);
  };
  collect(sheet);
  const area = ([part]: readonly Cuttable[]): number => (part ? part.width.mm * part.height.mm : 0);
  return [...alike.values()].sort((one, other) => area(other) - area(one));
}

function tasksOf(parts: readonly Cuttable[], before: readonly Task[], longest: Length): readonly Task[] {
  const [first] = parts;
  if (!first) return [];
  const tasks: Task[] = [];
  const { from, parts: strips } = first;
  for (const { start, end, setting } of runsOf(first)) {
    // The strip that the last cut leaves needs none of its own.
    const lastCut = Math.min(end, strips.length - 1);
    if (lastCut === start) continue;
    const freed = lastCut === strips.length - 1 ? strips.length : end;
    const length = across(first, from);
    tasks.push({
      from,
      setting,
      cuts: parts.map((part) => strips.slice(start, lastCut).map((_, index) => restOf(part, start + index))),
      length,
      tooLong: length.greaterThan(longest),
      yields: [
        ...parts.flatMap((part) => part.parts.slice(start, freed)),
        ...(freed < strips.length ? parts.map((part) => restOf(part, freed)) : []),
      ],
      after: [...before, ...tasks.slice(-1)],
    });
  }
  return tasks;
}

/** Neighboring strips of the same length: from `start` up to `end`, that one left out. */
function runsOf({ parts, from }: Cuttable): readonly { start: number; end: number; setting: Length }[] {
  const runs: { start: number; end: number; setting: Length }[] = [];
  for (const [index, part] of parts.entries()) {
    const [setting, run] = [along(part, from), runs.at(-1)];
    if (run?.setting.equals(setting)) run.end = index + 1;
    else runs.push({ start: index, end: index + 1, setting });
  }
  return runs;
}

/** What is still one piece of a part when all strips before this one are cut off. */
function restOf(part: Cuttable, start: number): Cuttable {
  const parts = part.parts.slice(start);
  const { left = part.left, top = part.top } = parts[0] ?? {};
  return part.from === 'left'
    ? { ...part, parts, left, width: part.width.minus(left.minus(part.left)) }
    : { ...part, parts, top, height: part.height.minus(top.minus(part.top)) };
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
