import { Length } from '../measure/length.ts';
import type { Piece } from '../project/model.ts';
import type { Place } from '../project/source.ts';
import { closedSize } from '../shape/closed-size.ts';
import type { Link } from '../shape/links.ts';
import { ownNet } from '../shape/shapes.ts';
import type { Load } from './holding.ts';
import type { ProofContext } from './rule.ts';

/** What a piece is to take, or to go round: another closed, its layers on it and what lies in it too. */
export function loadOf(
  context: ProofContext,
  { holder, held, count }: Link,
  all: readonly Link[],
): Load | undefined {
  const size = closedSize(context, held);
  if (!size) return undefined;
  const [width, height, depth] = size;
  const item = [width, height, depth.plus(insideOf(context, held, all, [holder, held]))] as const;
  return { item, count, into: holder.id.value };
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
