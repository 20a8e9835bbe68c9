import type { FlatBox, Mate, Net } from './net.ts';
import { gather } from './pairs.ts';

/** What hangs beside a row of walls, on one of them. */
type Flap = { readonly panel: string; readonly wall: string };

/**
 * Whether tabs beside a row hold it together: the floor, the back and the lid of a tray are a row, and no tube. Tabs are
 * stuck to a wall of the row, or at both its ends to what else hangs there; then the lid is what those leave free.
 */
export function isBracketed(net: Net, row: readonly string[]): boolean {
  if (net.glue.some(({ from, to }) => row.includes(from) !== row.includes(to))) return true;
  const isStuck = (panel: string): boolean => net.glue.some(({ from, to }) => from === panel || to === panel);
  const [first, lid] = [row[0], row.at(-2)];
  return flapsBeside(net, row).every((end) => {
    const joined = wallsJoined(net.glue, end);
    const isLidFree = end.every(({ panel, wall }) => wall !== lid || isStuck(panel));
    const isLidJoined = joined.some((walls) => [first, lid].every((wall) => walls.includes(`${wall}`)));
    return joined.length > 0 && isLidFree && !isLidJoined;
  });
}

/** The flaps on either side of a row. */
function flapsBeside(net: Net, row: readonly string[]): readonly [readonly Flap[], readonly Flap[]] {
  const flaps = net.folds.flatMap(({ panels: [one, other] }): Flap[] => {
    if (row.includes(one) === row.includes(other)) return [];
    return row.includes(one) ? [{ panel: other, wall: one }] : [{ panel: one, wall: other }];
  });
  const boxOf = (panel: string): FlatBox | undefined => net.panels.find(({ id }) => id === panel)?.box;
  const isBefore = ({ panel, wall }: Flap): boolean => {
    const [own, other] = [boxOf(panel), boxOf(wall)];
    return !!own && !!other && (own.left.lessThan(other.left) || own.top.lessThan(other.top));
  };
  return [flaps.filter(isBefore), flaps.filter((flap) => !isBefore(flap))];
}

/** The walls whose flaps are stuck to each other, those that hang together in one group. */
function wallsJoined(glue: readonly Mate[], flaps: readonly Flap[]): readonly (readonly string[])[] {
  const pairs = glue.flatMap(({ from, to }) => {
    const walls = [from, to].flatMap((each) => flaps.find(({ panel }) => panel === each)?.wall ?? []);
    return walls.length === 2 ? [walls] : [];
  });
  return gather(pairs, (one, other) => one.some((wall) => other.includes(wall)));
}
