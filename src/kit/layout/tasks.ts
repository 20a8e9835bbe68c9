import type { Length } from '../../measure/length.ts';
import type { CutEdge } from '../guillotine/blank.ts';
import type { Box } from '../plan.ts';
import { type Laid, stretch } from './lay-out.ts';

/** Strips of one length cut off parts that are all alike, at one setting: a step that has no number yet. */
export type Task = {
  readonly from: CutEdge;
  readonly setting: Length;
  /** Each of the parts as it is before the first of these cuts, and before each that follows. */
  readonly cuts: readonly (readonly Box[])[];
  /** What comes off, and what is left where these are the last cuts of their parts. */
  readonly yields: readonly Laid[];
  /** What is still to be cut of each part, at another setting. */
  readonly rests: readonly Box[];
  readonly isSheet: boolean;
  /** What must be done before. */
  readonly after: readonly Task[];
};

type Strips = Extract<Laid['content'], { kind: 'strips' }>;

/** A part that is cut, and the part it is a strip of. */
type Member = { readonly part: Laid; readonly content: Strips; readonly parent?: Laid };

/** Everything that is to be done to a sheet: larger parts before what is cut from them. */
export function tasksOf(sheet: Laid): readonly Task[] {
  const alike = new Map<string, Member[]>();
  collect(sheet, undefined, alike);
  const freedBy = new Map<Laid, Task>();
  const tasks: Task[] = [];
  for (const members of [...alike.values()].sort(byArea)) {
    const own = tasksOfMembers(members, sheet, freedBy);
    for (const task of own) for (const part of task.yields) freedBy.set(part, task);
    tasks.push(...own);
  }
  return tasks;
}

function collect(part: Laid, parent: Laid | undefined, alike: Map<string, Member[]>): void {
  if (part.content.kind !== 'strips') return;
  const key = shapeOf(part);
  const member: Member = { part, content: part.content, ...(parent ? { parent } : {}) };
  alike.set(key, [...(alike.get(key) ?? []), member]);
  for (const each of part.content.parts) collect(each, part, alike);
}

function shapeOf({ box: { width, height }, content }: Laid): string {
  const size = `${width} x ${height}`;
  if (content.kind === 'piece') return `${size} piece ${content.blank}`;
  if (content.kind === 'waste') return size;
  return `${size} ${content.from} [${content.parts.map(shapeOf).join(', ')}]`;
}

/** A part is larger than every part of it, so that this order never puts a part before what it is cut from. */
function byArea([one]: readonly Member[], [other]: readonly Member[]): number {
  const area = (member: Member | undefined): number =>
    member ? member.part.box.width.mm * member.part.box.height.mm : 0;
  return area(other) - area(one);
}

function tasksOfMembers(members: readonly Member[], sheet: Laid, freedBy: Map<Laid, Task>): readonly Task[] {
  const [first] = members;
  if (!first) return [];
  const { from, parts } = first.content;
  const before = [...new Set(members.flatMap(({ part }) => freedBy.get(part) ?? []))];
  const tasks: Task[] = [];
  for (const [start, end] of runsOf(parts, from)) {
    const setting = lengthOf(parts[start], from);
    const last = end === parts.length ? end - 1 : end;
    if (!setting || last === start) continue;
    // The strip left by the last cut needs none of its own.
    const yielded = last === parts.length - 1 ? parts.length : end;
    tasks.push({
      from,
      setting,
      cuts: members.map(({ part, content }) =>
        content.parts.slice(start, last).map((strip) => restFrom(part, strip, from)),
      ),
      yields: members.flatMap(({ content }) => content.parts.slice(start, yielded)),
      rests: members.flatMap(({ part, content }) => {
        const next = content.parts[yielded];
        return next ? [restFrom(part, next, from)] : [];
      }),
      isSheet: first.part === sheet && start === 0,
      after: [...before, ...tasks.slice(-1)],
    });
  }
  return tasks;
}

/** Stretches of strips of the same length: from, and up to but without. */
function runsOf(parts: readonly Laid[], from: CutEdge): readonly (readonly [number, number])[] {
  const starts = parts.flatMap((part, index) => {
    const [here, before] = [lengthOf(part, from), lengthOf(parts[index - 1], from)];
    return here && before?.equals(here) ? [] : [index];
  });
  return starts.map((start, index) => [start, starts[index + 1] ?? parts.length]);
}

function lengthOf(part: Laid | undefined, from: CutEdge): Length | undefined {
  return from === 'left' ? part?.box.width : part?.box.height;
}

/** What is still one piece of a part when a strip is next to be cut off. */
function restFrom({ box }: Laid, strip: Laid, from: CutEdge): Box {
  const [start, length] =
    from === 'left'
      ? [strip.box.left.minus(box.left), box.width]
      : [strip.box.top.minus(box.top), box.height];
  return stretch(box, from, start, length.minus(start));
}
