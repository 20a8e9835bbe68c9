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

/**
 * The cuts of a sheet in order: equal parts are cut together, and what can be cut at the setting the trimmer has is
 * cut before it is set anew.
 * @param longest the longest cut the trimmer makes.
 */
export function stepsOf(sheet: SheetTree, longest: Length): readonly CuttingStep[] {
  const done: CuttingStep[] = [];
  const there = new Set([sheet]);
  let waiting = alikeIn(sheet).flatMap((parts) => stepsFor(parts, longest));
  while (waiting.length > 0) {
    const ready = waiting.filter(({ cuts }) => cuts.every(([part]) => part && there.has(part)));
    const next = nextOf(ready, done.at(-1));
    if (!next) throw new Error('cuts that wait for one another');
    for (const part of next.yields) there.add(part);
    waiting = waiting.filter((step) => step !== next);
    done.push(next);
  }
  return done;
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

/** A step for each run of strips of one length; the strip that the last cut leaves needs none of its own. */
function stepsFor(parts: readonly Cuttable[], longest: Length): readonly CuttingStep[] {
  const [first] = parts;
  if (!first) return [];
  const { from, parts: strips } = first;
  const length = across(first, from);
  const rests = parts.map((part) => strips.map((_, start) => restOf(part, start)));
  return runsOf(first).flatMap(({ start, end, setting }) => {
    const lastCut = Math.min(end, strips.length - 1);
    if (lastCut === start) return [];
    const cuts = rests.map((each) => each.slice(start, lastCut));
    const isLast = lastCut === strips.length - 1;
    const off = parts.flatMap((part) => part.parts.slice(start, isLast ? strips.length : end));
    const left = isLast ? [] : rests.flatMap((each) => each[end] ?? []);
    return [{ from, setting, cuts, length, tooLong: length.greaterThan(longest), yields: [...off, ...left] }];
  });
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
  if (start === 0) return part;
  const parts = part.parts.slice(start);
  const { left = part.left, top = part.top } = parts[0] ?? {};
  return part.from === 'left'
    ? { ...part, parts, left, width: part.width.minus(left.minus(part.left)) }
    : { ...part, parts, top, height: part.height.minus(top.minus(part.top)) };
}

/** One at the same setting if there is one; else one of the setting that most are waiting for. */
function nextOf(ready: readonly CuttingStep[], last: CuttingStep | undefined): CuttingStep | undefined {
  const alike = (step: CuttingStep): number =>
    ready.filter(({ setting }) => setting.equals(step.setting)).length;
  const same = last && ready.find(({ setting }) => setting.equals(last.setting));
  return same ?? ready.toSorted((a, b) => alike(b) - alike(a))[0];
}
