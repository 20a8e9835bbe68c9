import { type CutEdge, type CutTree, type Rect, WASTE } from '../guillotine/blank.ts';

/**
 * A part of a sheet as it is cut at the trimmer: a piece, waste, or strips that are cut off one after another from the
 * same edge. In `strips` no strip is itself cut from that edge, and waste, if any, is the last.
 */
export type Part = Rect & Content;

type Strips = Extract<Part, { kind: 'strips' }>;

export type Content =
  | { readonly kind: 'piece'; readonly blank: number; readonly turned: boolean }
  | { readonly kind: 'waste' }
  | { readonly kind: 'strips'; readonly from: CutEdge; readonly parts: readonly Part[] };

/**
 * A cut tree as strips. The pieces stay the same; the strips of a part change places so that equal ones follow one
 * another at one setting of the trimmer, and waste at the ends of neighbouring strips is cut off as one.
 * @param longest no cut is made longer than this that was not as long before.
 */
export function stripsOf(tree: CutTree, sheet: Rect, longest: number = Number.POSITIVE_INFINITY): Part {
  return gathered(partOf(tree, sheet), longest);
}

/** The same part as a tree of cuts. */
export function treeOfPart(part: Part): CutTree {
  if (part.kind === 'piece') return { kind: 'blank', blank: part.blank, turned: part.turned };
  if (part.kind === 'waste') return WASTE;
  const [first, ...rest] = part.parts;
  if (!first) return WASTE;
  if (rest.length === 0) return treeOfPart(first);
  const beyond = { ...part, parts: rest };
  return {
    kind: 'cut',
    from: part.from,
    at: along(first, part.from),
    near: treeOfPart(first),
    far: treeOfPart(beyond),
  };
}

/** What two parts have in common when they are cut in the same way. */
export function shapeOf(part: Part): string {
  const size = `${part.width}x${part.height}`;
  if (part.kind === 'piece') return `${size} piece ${part.blank}`;
  if (part.kind === 'waste') return `${size} waste`;
  return `${size} ${part.from} [${part.parts.map(shapeOf).join(', ')}]`;
}

/** A part's length away from the edge it is cut from. */
export function along({ width, height }: Rect, from: CutEdge): number {
  return from === 'left' ? width : height;
}

/** How many times the trimmer is set for a part and all that is cut from it, equal parts cut together. */
export function countSettings(part: Part): number {
  const settings = new Set<string>();
  const visit = (each: Part): void => {
    if (each.kind !== 'strips') return;
    const cut = each.parts.slice(0, -1);
    for (const strip of cut) settings.add(`${shapeOf(each)} at ${along(strip, each.from)}`);
    for (const strip of each.parts) visit(strip);
  };
  visit(part);
  return settings.size;
}

/** How many cuts a part takes, each part by itself. */
export function countCuts(part: Part): number {
  if (part.kind !== 'strips') return 0;
  return part.parts.reduce((cuts, each) => cuts + countCuts(each), part.parts.length - 1);
}

function partOf(tree: CutTree, { width, height }: Rect): Part {
  if (tree.kind === 'blank') return { width, height, kind: 'piece', blank: tree.blank, turned: tree.turned };
  if (tree.kind === 'waste') return { width, height, kind: 'waste' };
  const { from, at } = tree;
  const near = partOf(tree.near, from === 'left' ? { width: at, height } : { width, height: at });
  const far = partOf(
    tree.far,
    from === 'left' ? { width: width - at, height } : { width, height: height - at },
  );
  return { width, height, kind: 'strips', from, parts: [near, far] };
}

/** From the smallest parts up: flatten, gather the waste, put equal strips together. */
function gathered(part: Part, longest: number): Part {
  if (part.kind !== 'strips') return part;
  const { from, width, height } = part;
  const flat = part.parts
    .map((each) => gathered(each, longest))
    .flatMap((each) => (each.kind === 'strips' && each.from === from ? each.parts : [each]));
  const useful = flat.filter(({ kind }) => kind !== 'waste');
  if (useful.length === 0) return { width, height, kind: 'waste' };
  const rest = flat.filter(({ kind }) => kind === 'waste').reduce((sum, each) => sum + along(each, from), 0);
  const waste: readonly Part[] = rest > 0 ? [stretched({ width, height, kind: 'waste' }, from, rest)] : [];
  const strips: Strips = { width, height, kind: 'strips', from, parts: [...ordered(useful, from), ...waste] };
  return withCommonWaste(strips, longest);
}

/** Equal strips together, those of the greatest length first. */
function ordered(parts: readonly Part[], from: CutEdge): readonly Part[] {
  return parts
    .map((part) => ({ part, size: along(part, from), shape: shapeOf(part) }))
    .sort((a, b) => b.size - a.size || (a.shape < b.shape ? -1 : a.shape > b.shape ? 1 : 0))
    .map(({ part }) => part);
}

/**
 * When every strip ends in waste, the least of it is cut off all of them at once, as one piece that is worth keeping,
 * before the strips are cut apart.
 */
function withCommonWaste(part: Strips, longest: number): Part {
  const { width, height, from, parts } = part;
  const across: CutEdge = from === 'left' ? 'top' : 'left';
  const tooLong = along(part, from) > longest;
  const common = tooLong ? 0 : Math.min(...parts.map((each) => wasteAtEnd(each, across)));
  if (common === 0) return parts.length === 1 && parts[0] ? parts[0] : part;
  const shorter = parts.map((each) => withoutEnd(each, across, common));
  const rest = along(part, across) - common;
  const inner = gathered(
    stretched({ width, height, kind: 'strips', from, parts: shorter }, across, rest),
    longest,
  );
  const waste = stretched({ width, height, kind: 'waste' }, across, common);
  const outer = inner.kind === 'strips' && inner.from === across ? inner.parts : [inner];
  return { width, height, kind: 'strips', from: across, parts: [...outer, waste] };
}

/** How much waste a part ends in, away from an edge. Waste alone ends in as much as one likes, up to itself. */
function wasteAtEnd(part: Part, from: CutEdge): number {
  if (part.kind === 'waste') return along(part, from);
  if (part.kind === 'piece' || part.from !== from) return 0;
  const last = part.parts.at(-1);
  return last?.kind === 'waste' ? along(last, from) : 0;
}

function withoutEnd(part: Part, from: CutEdge, end: number): Part {
  const rest = along(part, from) - end;
  if (part.kind !== 'strips') return stretched(part, from, rest);
  const last = part.parts.at(-1);
  const left = last ? along(last, from) - end : 0;
  const kept = part.parts.slice(0, -1);
  const ending = last && left > 0 ? [stretched(last, from, left)] : [];
  const [only, ...more] = [...kept, ...ending];
  if (only && more.length === 0) return only;
  return stretched({ ...part, parts: [...kept, ...ending] }, from, rest);
}

function stretched(part: Part, from: CutEdge, length: number): Part {
  return from === 'left' ? { ...part, width: length } : { ...part, height: length };
}
