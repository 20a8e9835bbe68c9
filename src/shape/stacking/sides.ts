import type { FoldedPanel } from '../folded-shape.ts';
import { dot } from '../space.ts';

/** 1 when one of two panels that lie on one another is on the other's outer side, -1 when it is on the inner one. */
export type Side = 1 | -1;

/** Of every two panels that lie on one another: on which side of each the other one is. */
export class Sides {
  readonly #sides: ReadonlyMap<string, ReadonlyMap<string, Side>>;

  constructor(sides: ReadonlyMap<string, ReadonlyMap<string, Side>> = new Map()) {
    this.#sides = sides;
  }

  /** On which side of a panel another one lies; undefined when the two don't lie on one another. */
  of(panel: string, other: string): Side | undefined {
    return this.#sides.get(panel)?.get(other);
  }

  /** What lies on a panel, on either side. */
  on(panel: string): readonly string[] {
    return [...(this.#sides.get(panel)?.keys() ?? [])];
  }

  /** Whether a panel lies between two others that lie on one another. */
  isBetween(panel: string, first: string, second: string): boolean {
    const [up, down] = [this.of(first, second), this.of(second, first)];
    if (up === undefined || panel === first || panel === second) return false;
    return this.of(first, panel) === up && this.of(second, panel) === down;
  }

  /** The same with one pair that lies otherwise; undefined takes it apart. */
  with(first: FoldedPanel, second: FoldedPanel, side: Side | undefined): Sides {
    const [a, b] = [first.panel.id, second.panel.id];
    const sides = new Map(this.#sides);
    set(sides, a, b, side);
    set(sides, b, a, side && seenBack(first, second, side));
    return new Sides(sides);
  }
}

function set(
  sides: Map<string, ReadonlyMap<string, Side>>,
  panel: string,
  other: string,
  side: Side | undefined,
): void {
  const own = new Map(sides.get(panel));
  if (side === undefined) own.delete(other);
  else own.set(other, side);
  sides.set(panel, own);
}

/** On which side of the second panel the first lies, when the second lies on that side of the first. */
export function seenBack(first: FoldedPanel, second: FoldedPanel, side: Side): Side {
  // On the outer side of a panel that faces the other way is on one's own outer side too.
  const alike = dot(first.plane.normal, second.plane.normal) > 0;
  return alike === (side === 1) ? -1 : 1;
}
