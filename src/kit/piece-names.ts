import type { PieceKind } from './demand.ts';
import type { PlacedPiece } from './sheet-tree.ts';

/** For so many of a layout's sheets, which of the pieces of its kind each placed piece is. */
export type PieceNames = { readonly count: number; readonly names: readonly string[] };

/** So many sheets that give the same pieces, without or with their names. */
type Placed = { readonly count: number; readonly pieces: readonly PlacedPiece[] };

/** Sheets of a layout named alike: how many of each name every one gives, and how many have no name yet. */
type AlikeSheets = {
  readonly layout: number;
  readonly sheets: number;
  readonly counts: readonly number[];
  readonly left: number;
};

/**
 * Says which of the pieces of one size is which, so that exactly so many of each name are cut. Sheets of a layout are
 * named alike where that comes out; else as few as need be are named apart.
 * @returns for each layout the names of its pieces, in one way for all its sheets, or in several for some each.
 */
export function namePieces(
  layouts: readonly Placed[],
  kinds: readonly PieceKind[],
  kits: number,
): readonly (readonly PieceNames[])[] {
  const byKind = kinds.map(({ pieces }, kind) => {
    const groups = layouts.map(({ pieces: placed, count }, layout) => {
      const left = placed.filter(({ blank }) => blank === kind).length;
      return { layout, sheets: count, counts: [], left };
    });
    return nameAll(
      groups.filter(({ left }) => left > 0),
      pieces.map(({ perKit }) => perKit * kits),
    );
  });
  return layouts.map((layout, index) =>
    merge(
      layout,
      kinds,
      byKind.map((groups) => groups.filter((group) => group.layout === index)),
    ),
  );
}

/** Cuts the sheets of a layout into stretches within which the names of every kind stay the same. */
function merge(
  { count, pieces: placed }: Placed,
  kinds: readonly PieceKind[],
  named: readonly (readonly AlikeSheets[])[],
): readonly PieceNames[] {
  const ends = [...new Set([count, ...named.flatMap(endsOf)])].sort((a, b) => a - b);
  return ends.map((end, index) => {
    const names = kinds.map(({ pieces }, kind) => {
      const groups = named[kind] ?? [];
      const group = groups[endsOf(groups).findIndex((each) => each >= end)];
      return pieces.flatMap(({ name }, piece) => Array<string>(group?.counts[piece] ?? 0).fill(name));
    });
    return {
      count: end - (ends[index - 1] ?? 0),
      names: placed.map(({ blank }) => names[blank]?.shift() ?? ''),
    };
  });
}

function endsOf(groups: readonly AlikeSheets[]): readonly number[] {
  let end = 0;
  return groups.map(({ sheets }) => {
    end += sheets;
    return end;
  });
}

/** @param wanted how many of each name; together as many as there are pieces. */
function nameAll(groups: readonly AlikeSheets[], wanted: readonly number[]): readonly AlikeSheets[] {
  const named = wanted.slice(0, -1).reduce(nameNext, groups);
  return named.map((group) => ({ ...group, counts: [...group.counts, group.left] }));
}

/** Gives the next name to so many pieces; the largest group gives up a sheet of its own where it does not come out. */
function nameNext(groups: readonly AlikeSheets[], count: number): readonly AlikeSheets[] {
  const shares = sharesOf(groups, count);
  if (shares) {
    return groups.map((group, index) => {
      const share = shares[index] ?? 0;
      return { ...group, counts: [...group.counts, share], left: group.left - share };
    });
  }
  const largest = groups.reduce((most, each) => (each.sheets > most.sheets ? each : most));
  if (largest.sheets === 1) throw new Error('more pieces of a name than there are pieces');
  const apart = groups.flatMap((group) =>
    group === largest
      ? [
          { ...group, sheets: group.sheets - 1 },
          { ...group, sheets: 1 },
        ]
      : [group],
  );
  return nameNext(apart, count);
}

/**
 * How many of a name each sheet of each group gives, `count` in all; as even a share of each as can be is tried first.
 * Undefined when it cannot come out.
 */
function sharesOf(groups: readonly AlikeSheets[], count: number): readonly number[] | undefined {
  const total = groups.reduce((sum, { sheets, left }) => sum + sheets * left, 0);
  const dead = new Set<string>();
  const visit = (index: number, rest: number): number[] | undefined => {
    const group = groups[index];
    if (!group) return rest === 0 ? [] : undefined;
    const key = `${index} ${rest}`;
    if (dead.has(key)) return undefined;
    const fair = Math.round((group.left * count) / Math.max(1, total));
    const choices = Array.from({ length: group.left + 1 }, (_, share) => share);
    choices.sort((a, b) => Math.abs(a - fair) - Math.abs(b - fair) || a - b);
    for (const share of choices) {
      if (share * group.sheets > rest) continue;
      const others = visit(index + 1, rest - share * group.sheets);
      if (others) return [share, ...others];
    }
    dead.add(key);
    return undefined;
  };
  return visit(0, count);
}
