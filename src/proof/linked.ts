import { Length } from '../measure/length.ts';
import type { Piece } from '../project/model.ts';
import type { Place } from '../project/source.ts';
import { closedSize } from '../shape/closed-size.ts';
import type { Link } from '../shape/links.ts';
import { ownNet } from '../shape/sheets.ts';
import type { Load } from './holding.ts';
import type { ProofContext } from './rule.ts';

/** What belongs together in one piece: a link, or all that name a set of pieces which one holds or goes round. */
type LinkedSet = readonly [Link, ...Link[]];

/** Every piece that is to take others, or to go round them, with all of these. */
export function linkedSets(links: readonly Link[]): readonly LinkedSet[] {
  return links.flatMap((link): readonly LinkedSet[] => {
    const isOfSet = ({ way, holder }: Link): boolean => way === link.way && holder === link.holder;
    const [first, ...others] = links.filter(isOfSet);
    return first === link ? [[first, ...others]] : [];
  });
}

/**
 * What a piece is to take, or to go round: others closed, their layers on them and what lies in them too. A set lies one
 * on another, the long sides together.
 */
export function loadOf(context: ProofContext, set: LinkedSet, all: readonly Link[]): Load | undefined {
  const [{ holder, count }] = set;
  const items = set.flatMap(({ held, count: number }) => {
    const size = closedSize(context, held);
    if (!size) return [];
    const [width, height, depth] = size;
    const seen = [holder, ...set.map((link) => link.held)];
    return [{ width, height, depth: depth.plus(insideOf(context, held, all, seen)), number }];
  });
  const [item] = items;
  if (!item || items.length < set.length) return undefined;
  const into = holder.id.value;
  if (items.length === 1) return { item: [item.width, item.height, item.depth], count, into };
  const long = items.map(({ width, height }) => Length.max(width, height));
  const short = items.map(({ width, height }) => Length.min(width, height));
  const thick = Length.sum(items.map(({ depth, number }) => depth.times(number)));
  return {
    item: [Length.max(Length.zero, ...long), Length.max(Length.zero, ...short), thick],
    count: 1,
    into,
  };
}

/** What the things in a flat piece add to its thickness; a box is no thicker for what is in it. */
function insideOf(
  context: ProofContext,
  { id }: Piece,
  links: readonly Link[],
  seen: readonly Piece[],
): Length {
  const net = ownNet(context.shapes.nets, id.value);
  const isFlat = net?.folds.every(({ angle }) => angle === 0 || angle === 180);
  if (!isFlat) return Length.zero;
  const inside = links.filter(
    ({ way, holder, held }) => way === 'holds' && holder.id.value === id.value && !seen.includes(held),
  );
  return Length.sum(
    inside.map(({ held, count }) => {
      const depth = closedSize(context, held)?.[2] ?? Length.zero;
      return depth.plus(insideOf(context, held, links, [...seen, held])).times(count);
    }),
  );
}

/** Where to point for a link: at the words that say it, else at the size of what is to take the other. */
export function linkPlace({ said, holder: { id, body } }: Link): Place {
  if (said) return said;
  if (body.kind !== 'form') return body.cut.at;
  const sized = [...body.settings.values()].find(({ kind }) => kind === 'lengths');
  return sized?.at ?? id.at;
}
