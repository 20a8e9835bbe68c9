import { Length } from '../../measure/length.ts';
import type { Piece, Project, Workspace } from '../../project/model.ts';
import { textAt } from '../../project/source.ts';
import { proofProject } from '../../proof/proof.ts';
import { mergeFindings } from '../../proof/tell.ts';
import { buildShapes } from '../../shape/build.ts';
import type { Made } from '../../shape/closed-size.ts';
import { choicesOf } from './choices.ts';
import { addBeside, applyEdits, type Edit, joinEdits, pieceEdits, renumber, sayNumber } from './edits.ts';
import { keepVariant } from './keep-variant.ts';
import { type Refused, remake } from './resize.ts';
import { countOf, goalFor, type Holder, holderOf, type Wish } from './room.ts';

/** A sheet made of another, so that its box holds something else. */
export type Redrafted = {
  readonly text: string;
  /** What became of each variant that is in it, or of the project. */
  readonly remade: readonly Remade[];
  /** The variants that are not in it any more. */
  readonly dropped: readonly string[];
};

/** A project with a box of another size. */
type Remade = {
  readonly project: Project;
  /** The pieces that became another size, the box first, as they were and as they are. */
  readonly changed: readonly (readonly [Piece, Piece])[];
  /** Whether there is less to spare than there was, so that the paper goes round. */
  readonly isCloser: boolean;
  readonly holder: readonly [Piece, Piece];
  /** What of the sheet is to say that, changed or not. */
  readonly edits: readonly Edit[];
};

/** With no more than this to spare each way a thing still goes in easily. Common practice, no source. */
const CLOSE: Length = Length.of(1, 4, 'in');

/** What is asked for: what goes in, the title, and the one variant that is to be kept, where one is named. */
export type Order = { readonly wish: Wish; readonly title: string; readonly variant?: string };

/**
 * Makes a sheet of another one: its box holds what is wished, the layers follow with the same borders, and every other
 * word stays. Of a project with variants all are kept if one sheet can say so, else the first; or the one that is named.
 *
 * @returns The sheet, or why there is none.
 */
export function redraft(workspace: Workspace, project: Project, order: Order): Redrafted | Refused {
  const { wish, title, variant } = order;
  const all = [project, ...project.others];
  const nameOf = (each: Project): string => each.variant?.id.value ?? '';
  const asked = variant === undefined ? all : all.filter((each) => nameOf(each) === variant);
  const remade: Remade[] = [];
  for (const each of asked) {
    const one = remakeOne(workspace, each, wish);
    if ('why' in one) return one;
    remade.push(one);
  }
  const head = headEdits(project, title);
  const [first] = remade;
  if (!first) return { why: `it has no variant "${variant}"` };
  const edits = joinEdits(remade.map((each) => each.edits));
  if (edits && asked === all && !areMerged(remade))
    return { text: applyEdits(project.file.text, [...head, ...edits]), remade, dropped: [] };
  const keep = keepVariant(project.file, nameOf(first.project));
  if ('why' in keep) return keep;
  const dropped = all.map(nameOf).filter((name) => name !== nameOf(first.project));
  return { text: keep([...head, ...first.edits]), remade: [first], dropped };
}

/** Whether variants that had boxes of several sizes have fewer now: they were told apart by what they held. */
function areMerged(remade: readonly Remade[]): boolean {
  const sizes = (which: 0 | 1): number =>
    new Set(remade.map(({ holder }) => choicesOf(holder[which]).join(' '))).size;
  return sizes(1) < sizes(0);
}

function remakeOne(workspace: Workspace, project: Project, wish: Wish): Remade | Refused {
  const made = { project, shapes: buildShapes(project) };
  const holder = holderOf(made);
  if (!holder) return { why: `nothing in ${project.slug} makes a room: it has no box, bag, band or pocket` };
  const best = bestOf(workspace, made, holder, wish);
  if ('why' in best) return best;
  const pairs = [...project.pieces.values()].map(
    (piece) => [piece, best.made.project.pieces.get(piece.id.value) ?? piece] as const,
  );
  const edits = pairs.flatMap(([piece, other]) => pieceEdits(project, piece, other));
  const isHolder = ([piece]: (typeof pairs)[number]): boolean => piece === holder.piece;
  const changed = pairs
    .filter(([piece, other]) => piece !== other)
    .toSorted((a, b) => Number(isHolder(b)) - Number(isHolder(a)));
  const now = best.made.project.pieces.get(holder.piece.id.value) ?? holder.piece;
  return {
    project,
    holder: [holder.piece, now],
    changed,
    isCloser: best.isCloser,
    edits: [...edits, ...holdsEdits(project, wish)],
  };
}

type Tried = { readonly made: Made; readonly isCloser: boolean; readonly faults: readonly number[] };

/**
 * The box in which least is found: as roomy as the other, else an eighth deeper, so that half of its depth is on a groove
 * of the board, else closer, so that it can be cut from its paper.
 */
function bestOf(workspace: Workspace, made: Made, holder: Holder, wish: Wish): Tried | Refused {
  const deeper = made.project.unit === 'in' ? Length.of(1, 8, 'in') : Length.of(1, 1, 'mm');
  const goals = [undefined, CLOSE].flatMap((most) => {
    const goal = goalFor(made, holder, wish, most);
    const [wide, high, deep] = goal.spare;
    return [deep, deep?.plus(deeper)].map((each) => ({
      most,
      goal: { ...goal, spare: [wide, high, each] as const },
    }));
  });
  const tried: Tried[] = [];
  let why = '';
  for (const { goal, most } of goals) {
    if (tried.at(-1)?.faults.every((each) => each === 0)) break;
    const remade = remake(made, holder, goal);
    if ('why' in remade) why ||= remade.why;
    else {
      const { project, shapes } = remade.made;
      const filled = { project: holding(project, wish), shapes };
      tried.push({ made: filled, isCloser: most !== undefined, faults: faultsIn(workspace, filled) });
    }
  }
  const [first, ...others] = tried;
  if (!first) return { why };
  return others.reduce((best, each) => (isLess(each.faults, best.faults) ? each : best), first);
}

/** A project that holds what is wished, where it said what it holds. */
function holding(project: Project, wish: Wish): Project {
  const { holds } = project;
  if (!holds?.size) return project;
  const [a, b, c] = holds.size;
  const { item } = wish;
  const size = [
    { ...a, value: item[0] },
    { ...b, value: item[1] },
    { ...c, value: item[2] },
  ] as const;
  return { ...project, holds: { ...holds, size, count: { ...holds.count, value: countOf(project, wish) } } };
}

/** How many errors, warnings and notes there are. */
function faultsIn(workspace: Workspace, { project, shapes }: Made): readonly number[] {
  const told = mergeFindings(proofProject(workspace, project, shapes));
  return (['error', 'warning', 'note'] as const).map(
    (each) => told.filter(({ severity }) => severity === each).length,
  );
}

function isLess(some: readonly number[], others: readonly number[]): boolean {
  const index = some.findIndex((each, place) => each !== others[place]);
  return index >= 0 && (some[index] ?? 0) < (others[index] ?? 0);
}

/** A title of its own; its session and the names it had are those of the other. */
function headEdits({ file, title }: Project, wished: string): readonly Edit[] {
  const quoted = /[:#'"{}[\],&*?|<>=!%@`-]/u.test(wished) ? JSON.stringify(wished) : wished;
  const { start, end } = title.at;
  const own = textAt(title.at) === title.value && !/['"]/u.test(file.text[start - 1] ?? '');
  const named = { start, end, text: own ? quoted : wished.replace(/["'\\]/gu, '’') };
  const head = file.text.slice(0, file.text.indexOf('\n---', 3) + 1);
  const dated = [...head.matchAll(/^(?=(?:session|was):)/gmu)];
  return [named, ...dated.map(({ index }) => ({ start: index, end: index, text: '# ' }))];
}

/** What it holds: in place of what it held, else before its pieces. */
function holdsEdits({ file, unit, holds }: Project, wish: Wish): readonly Edit[] {
  const size = wish.item.map((side) => sayNumber(side, unit)).join(' x ');
  if (!holds) {
    const pieces = /^([ \t]+)pieces:/mu.exec(file.text);
    const [index, indent] = [pieces?.index ?? 0, pieces?.[1] ?? ''];
    const line = `${indent}holds: { item: treat, size: ${size}, count: ${wish.count ?? 1} }\n`;
    return [{ start: index, end: index, text: line }];
  }
  const count = wish.count ?? holds.count.value;
  const sized = holds.size
    ? holds.size.flatMap((side, way) => renumber(side, wish.item[way as 0 | 1 | 2], unit))
    : [addBeside(holds.at, 'size', size)];
  const { start, end } = holds.count.at;
  if (/^\d+$/u.test(textAt(holds.count.at).trim())) return [...sized, { start, end, text: `${count}` }];
  return count === holds.count.value ? sized : [...sized, addBeside(holds.at, 'count', `${count}`)];
}
