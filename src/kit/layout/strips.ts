import type { CutEdge, CutTree, Rect } from '../guillotine/blank.ts';
import { effortOfPart } from './effort.ts';
import { gridsOf } from './grids.ts';
import { along, type Part, partOf, type Strips, shapeOf, stretched, wasteLike } from './part.ts';
import { commonWaste, sinkWaste } from './waste.ts';

/**
 * A cut tree as strips, cut the easiest way that is found: the pieces stay the same, but change places. No strip is
 * itself cut from the edge its part is cut from; equal ones follow one another, at one setting of the trimmer; waste is
 * the last.
 * @param longest no cut is made longer than this that was not as long before.
 */
export function stripsOf(tree: CutTree, sheet: Rect, longest: number = Number.POSITIVE_INFINITY): Part {
  return new Arranger(longest).arranged(partOf(tree, sheet));
}

/** Waste cut off twice before the strips, right and below, is the most there is. */
const MOST_SINKS = 2;

class Arranger {
  readonly #longest: number;
  readonly #known = new Map<string, Part>();

  constructor(longest: number) {
    this.#longest = longest;
  }

  /** From the smallest parts up. Every way that is tried has smaller parts, so that this comes to an end. */
  arranged(part: Part): Part {
    if (part.kind !== 'strips') return part;
    const key = shapeOf(part);
    const known = this.#known.get(key) ?? this.#arrange(part);
    this.#known.set(key, known);
    return known;
  }

  #arrange(part: Strips): Part {
    const plain = inOneRow(
      part,
      part.parts.map((each) => this.arranged(each)),
    );
    if (plain.kind !== 'strips') return plain;
    const others = [
      ...this.#withCommonWaste(plain),
      ...this.#withWasteWithin(plain),
      ...gridsOf(plain, this.#longest),
    ];
    return others.reduce((least, each) => (effortOfPart(each) < effortOfPart(least) ? each : least), plain);
  }

  #withCommonWaste(part: Strips): readonly Part[] {
    const apart = commonWaste(part, this.#longest);
    if (!apart) return [];
    return [inOneRow({ ...part, from: apart.from }, [this.arranged(apart.inner), apart.waste])];
  }

  #withWasteWithin(part: Strips): readonly Part[] {
    const ways: Part[] = [];
    let sunk = sinkWaste(part, this.#longest);
    for (let sinks = 0; sunk && sinks < MOST_SINKS; sinks += 1) {
      const { parts } = sunk;
      ways.push(
        inOneRow(
          sunk,
          parts.map((each) => this.arranged(each)),
        ),
      );
      sunk = sinkWaste(sunk, this.#longest);
    }
    return ways;
  }
}

/** Strips of strips from the same edge become one row: equal ones together, the longest first, waste as one at the end. */
function inOneRow({ width, height, from }: Strips, parts: readonly Part[]): Part {
  const flat = parts.flatMap((each) => (each.kind === 'strips' && each.from === from ? each.parts : [each]));
  const useful = flat.filter(({ kind }) => kind !== 'waste');
  if (useful.length === 0) return wasteLike({ width, height });
  const lost = flat.filter(({ kind }) => kind === 'waste');
  const rest = lost.reduce((sum, each) => sum + along(each, from), 0);
  const waste = rest > 0 ? [stretched(wasteLike({ width, height }), from, rest)] : [];
  const all = [...ordered(useful, from), ...waste];
  const [only] = all;
  return only && all.length === 1 ? only : { width, height, kind: 'strips', from, parts: all };
}

function ordered(parts: readonly Part[], from: CutEdge): readonly Part[] {
  return parts
    .map((part) => ({ part, size: along(part, from), shape: shapeOf(part) }))
    .sort((a, b) => b.size - a.size || (a.shape < b.shape ? -1 : a.shape > b.shape ? 1 : 0))
    .map(({ part }) => part);
}
