/** A point on a grid: both are whole numbers. */
export type GridPoint = { readonly x: number; readonly y: number };

type Stretch = readonly [GridPoint, GridPoint];

/**
 * Where two stretches of a closed line meet that should not; undefined where none do.
 *
 * No point may be the same as the next. On a grid of up to 2 ** 25 a side the products below stay under 2 ** 53, so that
 * floating point reckons them exactly, and a point lies on a line or does not: nothing has to be allowed for.
 */
export function crossingIn(points: readonly GridPoint[]): GridPoint | undefined {
  const stretches = points.map((from, index): Stretch => [from, points[(index + 1) % points.length] ?? from]);
  for (const [index, one] of stretches.entries()) {
    const next = stretches[(index + 1) % stretches.length];
    if (next && turnsBack(one, next)) return one[1];
    const last = index === 0 ? stretches.length - 1 : stretches.length;
    for (let far = index + 2; far < last; far += 1) {
      const other = stretches[far];
      if (other && areMeeting(one, other)) return meetingOf(one, other);
    }
  }
  return undefined;
}

/** Whether the second of two neighbors goes back over the first. */
function turnsBack([a, b]: Stretch, [, c]: Stretch): boolean {
  return side([a, b], c) === 0 && (b.x - a.x) * (c.x - b.x) + (b.y - a.y) * (c.y - b.y) < 0;
}

function areMeeting(one: Stretch, other: Stretch): boolean {
  return (
    areBeside(one, other, 'x') &&
    areBeside(one, other, 'y') &&
    side(one, other[0]) * side(one, other[1]) <= 0 &&
    side(other, one[0]) * side(other, one[1]) <= 0
  );
}

function areBeside([a, b]: Stretch, [c, d]: Stretch, axis: 'x' | 'y'): boolean {
  return (
    Math.max(a[axis], b[axis]) >= Math.min(c[axis], d[axis]) &&
    Math.max(c[axis], d[axis]) >= Math.min(a[axis], b[axis])
  );
}

/** On which side of a line a point lies: -1 or 1; 0 on it. */
function side([a, b]: Stretch, p: GridPoint): number {
  return Math.sign((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x));
}

/** Where two stretches meet: where they lie on one line, at one of their ends. */
function meetingOf(one: Stretch, other: Stretch): GridPoint {
  const [[a, b], [c, d]] = [one, other];
  const [way, cross] = [
    { x: b.x - a.x, y: b.y - a.y },
    { x: d.x - c.x, y: d.y - c.y },
  ];
  const breadth = way.x * cross.y - way.y * cross.x;
  if (breadth === 0) return [c, d].find((end) => areMeeting(one, [end, end])) ?? a;
  const share = ((c.x - a.x) * cross.y - (c.y - a.y) * cross.x) / breadth;
  return { x: a.x + way.x * share, y: a.y + way.y * share };
}
