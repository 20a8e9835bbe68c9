import { Length } from '../../measure/length.ts';
import type { Piece, Project, Workspace } from '../../project/model.ts';
import { textAt } from '../../project/source.ts';
import { proofProject } from '../../proof/proof.ts';
import { mergeFindings } from '../../proof/tell.ts';
import { buildShapes } from '../../shape/build.ts';
import type { Made } from '../../shape/closed-size.ts';
import { addBeside, applyEdits, type Edit, pieceEdits, renumber, sayNumber, writtenIn } from './edits.ts';
import { remake } from './resize.ts';
import { growthFor, type Holder, holderOf, type Wish } from './room.ts';

/** A sheet made of another, so that its box holds something else. */
export type Redrafted = {
  readonly text: string;
  /** The pieces that became another size, the box first, as they were and as they are. */
  readonly changed: readonly (readonly [Piece, Piece])[];
  /** Whether there is less to spare than there was, so that the paper goes round. */
  readonly isCloser: boolean;
};

/** With no more than this to spare each way a thing still goes in easily. Common practice, no source. */
const CLOSE: Length = Length.of(1, 4, 'in');

/**
 * Makes a sheet of another one: its box holds what is wished, the layers follow with the same borders, and every other
 * word stays.
 *
 * @returns The sheet, or why there is none.
 */
export function redraft(
  workspace: Workspace,
  project: Project,
  wish: Wish,
  title: string,
): Redrafted | { readonly why: string } {
  if (project.others.length > 0) {
    return { why: 'its variants have sizes of their own, and nobody knows which of them is to change' };
  }
  const made = { project, shapes: buildShapes(project) };
  const holder = holderOf(made);
  if (!holder)
    return { why: `nothing in ${project.slug} is a box, a tray or a bag with a width, a height and a depth` };
  const best = bestOf(workspace, made, holder, wish);
  if ('why' in best) return best;
  const { made: now, isCloser } = best;
  const pairs = [...project.pieces.values()].flatMap((piece) => {
    const other = now.project.pieces.get(piece.id.value);
    return other && other !== piece ? [[piece, other] as const] : [];
  });
  const isHolder = ([piece]: (typeof pairs)[number]): boolean => piece === holder.piece;
  const changed = pairs.toSorted((a, b) => Number(isHolder(b)) - Number(isHolder(a)));
  const edits = changed.flatMap(([piece, other]) => pieceEdits(project, piece, other));
  const all = [...headEdits(project, title), ...edits, ...holdsEdits(project, wish)];
  return { text: applyEdits(project.file.text, all), changed, isCloser };
}

type Tried = { readonly made: Made; readonly isCloser: boolean; readonly faults: readonly number[] };

/**
 * The box in which least is found: as roomy as the other, else an eighth deeper, so that half of its depth is on a groove
 * of the board, else closer, so that it can be cut from its paper.
 */
function bestOf(
  workspace: Workspace,
  made: Made,
  holder: Holder,
  wish: Wish,
): Tried | { readonly why: string } {
  const deeper = made.project.unit === 'in' ? Length.of(1, 8, 'in') : Length.of(1, 1, 'mm');
  const growths = [undefined, CLOSE].flatMap((most) => {
    const [wide, high, deep] = growthFor(made, holder, wish, most);
    return [deep, deep.plus(deeper)].map((each) => ({ growth: [wide, high, each] as const, most }));
  });
  const tried: Tried[] = [];
  let why = '';
  for (const { growth, most } of growths) {
    if (tried.at(-1)?.faults.every((each) => each === 0)) break;
    const remade = remake(made, holder, growth);
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
function holding(project: Project, { item, count }: Wish): Project {
  const { holds } = project;
  if (!holds?.size) return project;
  const [a, b, c] = holds.size;
  const size = [
    { ...a, value: item[0] },
    { ...b, value: item[1] },
    { ...c, value: item[2] },
  ] as const;
  return { ...project, holds: { ...holds, size, count: { ...holds.count, value: count } } };
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
  const named = own
    ? [{ start, end, text: quoted }]
    : [{ start, end, text: wished.replace(/["'\\]/gu, '’') }];
  const head = file.text.slice(0, file.text.indexOf('\n---', 3) + 1);
  const dated = [...head.matchAll(/^(?=(?:session|was):)/gmu)];
  return [...named, ...dated.map(({ index }) => ({ start: index, end: index, text: '# ' }))];
}

/** What it holds: in place of what it held, else before its pieces. */
function holdsEdits({ file, unit, holds }: Project, { item, count }: Wish): readonly Edit[] {
  const size = item.map((side) => sayNumber(side, unit)).join(' x ');
  if (!holds) {
    const pieces = /^([ \t]+)pieces:/mu.exec(file.text);
    const [index, indent] = [pieces?.index ?? 0, pieces?.[1] ?? ''];
    const line = `${indent}holds: { item: treat, size: ${size}, count: ${count} }\n`;
    return [{ start: index, end: index, text: line }];
  }
  const sized = holds.size
    ? holds.size.flatMap((side, way) => renumber(side, item[way as 0 | 1 | 2], unit))
    : [addBeside(holds.at, 'size', size)];
  if (holds.count.value === count) return sized;
  const { start, end } = holds.count.at;
  const isWritten = /^\d+$/u.test(textAt(holds.count.at).trim());
  return [...sized, isWritten ? { start, end, text: `${count}` } : addBeside(holds.at, 'count', `${count}`)];
}

/** What became of a piece: `front: 3 1/4 × 4 1/2, now 4 × 5 in`; of a box by its score lines its sheet. */
export function tellChange(old: Piece, now: Piece, { unit }: Project): string {
  const [was, is] = [old, now].map(({ body }) => {
    const changed = writtenIn(body).find(({ key }) => ['inside', 'outside', 'cut'].includes(key));
    return (
      changed && {
        key: changed.key,
        size: changed.lengths.map(({ value }) => sayNumber(value, unit)).join(' × '),
      }
    );
  });
  const key = was?.key === 'cut' ? '' : `${was?.key} `;
  return `${old.id.value}: ${key}${was?.size}, now ${is?.size} ${unit}`;
}
