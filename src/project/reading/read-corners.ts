import type { Length } from '../../measure/length.ts';
import { CORNERS, CORNERS_OF, type Corner, type CornerName, type RoundedCorners } from '../corners.ts';
import { made, mapOf, orShort, type Value } from '../grammar/grammar.ts';
import { optional } from '../grammar/keys.ts';
import { type Reader, refuse } from '../grammar/reader.ts';
import { asLength } from '../grammar/values.ts';
import { type At, byPlace } from '../source.ts';
import { entriesOf } from '../yaml/yaml-node.ts';

const FORM = 'a radius, such as 1/4, or one of some corners, such as { top: 1/4 }';

/** What each name says in the docs. */
const SAYS: Readonly<Record<CornerName, string>> = {
  top: 'The radius of its two upper corners.',
  bottom: 'The radius of its two lower corners.',
  left: 'The radius of the two on its left.',
  right: 'The radius of the two on its right.',
  'top left': 'The radius of its upper left corner.',
  'top right': 'The radius of its upper right corner.',
  'bottom right': 'The radius of its lower right corner.',
  'bottom left': 'The radius of its lower left corner.',
};

/** A radius under the name of its corners. */
type NamedRadius = {
  readonly name: string;
  readonly corners: readonly Corner[];
  readonly radius: At<Length>;
};

const KEYS = Object.fromEntries(
  Object.entries(CORNERS_OF).map(([name, corners]) => {
    const value = made(asLength, (radius): NamedRadius => ({ name, corners, radius }));
    return [name, optional(value, SAYS[name as CornerName])];
  }),
);

/** `1/4`, which is of all corners, or `{ top: 1/4 }`. */
export const asCorners: Value<RoundedCorners> = orShort(
  made(asLength, (radius): RoundedCorners => [{ radius, corners: CORNERS }]),
  made(mapOf(FORM, KEYS), (read, { node, spot, reader }) => {
    const named = Object.values(read).flatMap((each) => each ?? []);
    if (entriesOf(node).length === 0) return refuse(node, spot.key, FORM, reader);
    return gather(
      named.toSorted((a, b) => byPlace(a.radius, b.radius)),
      reader,
    );
  }),
);

/** Each radius once, with all its corners. What is said of a corner that has its radius already is reported. */
function gather(named: readonly NamedRadius[], { report }: Reader): RoundedCorners | undefined {
  const given = new Map<Corner, NamedRadius>();
  for (const each of named) {
    const earlier = each.corners.map((corner) => given.get(corner)).find((other) => other !== undefined);
    if (earlier) {
      const facts = { misfit: 'corner rounded twice', actual: each.name, other: earlier.name } as const;
      report({ rule: 'unexpected-value', at: each.radius.at, facts });
    }
    for (const corner of each.corners) if (!given.has(corner)) given.set(corner, each);
  }
  const radii = named.filter(
    ({ radius }, index) => named.findIndex((each) => each.radius.value.equals(radius.value)) === index,
  );
  const rounded = radii.map(({ radius }) => ({
    radius,
    corners: CORNERS.filter((corner) => given.get(corner)?.radius.value.equals(radius.value)),
  }));
  const isAny = rounded.filter(({ corners }) => corners.length > 0);
  return isAny.length > 0 ? isAny : undefined;
}
