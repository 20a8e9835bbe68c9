import {
  along,
  type CutEdge,
  type CutTree,
  leavesOf,
  padded,
  type Rect,
  type Strips,
  shapeOf,
  sideBySide,
  waste,
} from './cut-tree.ts';
import { effortOf } from './effort.ts';
import { evenRows } from './even-rows.ts';
import { commonWaste, sinkWaste } from './waste.ts';

/**
 * The same blanks cut the easiest way that is found: they may change places. No strip is itself cut from the edge its
 * part is cut from; equal ones follow one another, at one setting of the trimmer; waste is the last.
 * @param longest no cut is made longer than this that was not as long before.
 */
export function arrange(tree: CutTree, longest: number = Number.POSITIVE_INFINITY): CutTree {
  return new Arranger(longest).arranged(tree);
}

/** Waste cut off twice before the strips, right and below, is the most there is. */
const MOST_SINKS = 2;

class Arranger {
  readonly #longest: number;
  readonly #known = new Map<string, CutTree>();

  constructor(longest: number) {
    this.#longest = longest;
  }

  /** From the smallest parts up. Every way that is tried has smaller parts, so that this comes to an end. */
  arranged(tree: CutTree): CutTree {
    if (tree.kind !== 'strips') return tree;
    const key = shapeOf(tree);
    const known = this.#known.get(key) ?? this.#arrange(tree);
    this.#known.set(key, known);
    return known;
  }

  #arrange(tree: Strips): CutTree {
    const plain = this.#inOneRow(tree);
    if (plain.kind !== 'strips') return plain;
    const others = [
      ...this.#withCommonWaste(plain),
      ...this.#withWasteWithin(plain),
      ...evenRows(plain, this.#longest),
    ];
    return others.reduce((least, each) => (laborOf(each) < laborOf(least) ? each : least), plain);
  }

  #withCommonWaste(tree: Strips): readonly CutTree[] {
    const apart = commonWaste(tree, this.#longest);
    return apart ? [inOneRow(tree, apart.from, [this.arranged(apart.inner), apart.rest])] : [];
  }

  #withWasteWithin(tree: Strips): readonly CutTree[] {
    const ways: CutTree[] = [];
    let sunk = sinkWaste(tree, this.#longest);
    for (let sinks = 0; sunk && sinks < MOST_SINKS; sinks += 1) {
      ways.push(this.#inOneRow(sunk));
      sunk = sinkWaste(sunk, this.#longest);
    }
    return ways;
  }

  #inOneRow(tree: Strips): CutTree {
    return inOneRow(
      tree,
      tree.from,
      tree.parts.map((each) => this.arranged(each)),
    );
  }
}

/** Among ways that are as easy, the one with the waste in fewer parts, which are larger, counts a little less. */
function laborOf(tree: CutTree): number {
  const { once, perSheet } = effortOf(tree);
  return once + perSheet + leavesOf(tree).filter(({ kind }) => kind === 'waste').length / 100;
}

/** Strips of strips from the same edge become one row: equal ones together, the longest first, waste as one at the end. */
function inOneRow(rect: Rect, from: CutEdge, parts: readonly CutTree[]): CutTree {
  const flat = parts.flatMap((each) => (each.kind === 'strips' && each.from === from ? each.parts : [each]));
  const useful = flat.filter(({ kind }) => kind !== 'waste');
  if (useful.length === 0) return waste(rect);
  return padded(sideBySide(ordered(useful, from), from), from, along(rect, from));
}

function ordered(parts: readonly CutTree[], from: CutEdge): readonly CutTree[] {
  return parts
    .map((part) => ({ part, size: along(part, from), shape: shapeOf(part) }))
    .sort((a, b) => b.size - a.size || (a.shape < b.shape ? -1 : a.shape > b.shape ? 1 : 0))
    .map(({ part }) => part);
}
