import type { Layout, Naming, PieceKind } from '../plan.ts';
import { type Named, nameAlike } from './naming.ts';

type Unnamed = Omit<Layout, 'namings'>;

/** For each layout which pieces its placements are: in one way for all its sheets, or in several for some each. */
export function namingsOf(
  layouts: readonly Unnamed[],
  kinds: readonly PieceKind[],
  kits: number,
): readonly (readonly Naming[])[] {
  const byKind = kinds.map(({ pieces }, kind) => {
    const groups = layouts.flatMap(({ placements, count }, layout) => {
      const each = placements.filter((placement) => placement.kind === kind).length;
      return each > 0 ? [{ layout, sheets: count, each }] : [];
    });
    return nameAlike(
      groups,
      pieces.map(({ perKit }) => perKit * kits),
    );
  });
  return layouts.map((layout, index) => {
    const named = byKind.map((groups) => groups.filter((group) => group.layout === index));
    return together(layout, kinds, named);
  });
}

/** Cuts the sheets of a layout into stretches within which the names of every kind stay the same. */
function together(
  { count, placements }: Unnamed,
  kinds: readonly PieceKind[],
  named: readonly (readonly Named[])[],
): readonly Naming[] {
  const ends = new Set([count]);
  for (const groups of named) for (const end of endsOf(groups)) ends.add(end);
  let before = 0;
  return [...ends]
    .sort((a, b) => a - b)
    .map((end) => {
      const names = kinds.map(({ pieces }, kind) => {
        const groups = named[kind] ?? [];
        const group = groups[endsOf(groups).findIndex((each) => each >= end)];
        return pieces.flatMap(({ name }, piece) => Array<string>(group?.counts[piece] ?? 0).fill(name));
      });
      const naming = { count: end - before, names: placements.map(({ kind }) => names[kind]?.shift() ?? '') };
      before = end;
      return naming;
    });
}

function endsOf(groups: readonly Named[]): readonly number[] {
  let end = 0;
  return groups.map(({ sheets }) => {
    end += sheets;
    return end;
  });
}
