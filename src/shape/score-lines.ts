import type { Length, Unit } from '../measure/length.ts';
import type { Finding } from '../project/finding.ts';
import type { Edge, ScoreGroup } from '../project/net-as-written.ts';
import type { At } from '../project/source.ts';

/** The score lines of one direction, from the left (or the top) edge, rising; and what is wrong with them. */
type ScoreLines = { readonly lines: readonly Length[]; readonly findings: readonly Finding[] };

/** One score line, with the number it was written as and its distance from the left or top edge. */
type Line = { readonly written: At<Length>; readonly from: Edge; readonly position: Length };

/** What a finding tells of one score line: its piece (or sheet of one), the edge it is measured from and how far. */
export type ScoredAt = {
  readonly piece: string;
  readonly from: Edge;
  readonly position: Length;
  readonly unit: Unit;
};

type Direction = {
  readonly piece: string;
  readonly unit: Unit;
  /** The sheet's width (for lines from left and right) or height, with where it is written. */
  readonly extent: At<Length>;
  readonly between: 'columns' | 'rows';
};

/**
 * Gathers the score lines of one direction out of groups measured from either edge. A line outside the piece and
 * the second of two on one place are left out and reported; lines out of order are sorted and reported.
 */
export function gatherScoreLines(groups: readonly ScoreGroup[], direction: Direction): ScoreLines {
  const [near, far] = direction.between === 'columns' ? ['left', 'right'] : ['top', 'bottom'];
  const own = groups.filter(({ from }) => from.value === near || from.value === far);
  const findings = own.flatMap((group) => outOfOrder(group, direction));
  const lines: Line[] = [];
  for (const group of own) {
    for (const written of group.at) {
      const position =
        group.from.value === near ? written.value : direction.extent.value.minus(written.value);
      const line = { written, from: group.from.value, position };
      const wrong = outside(line, direction) ?? doubled(line, lines, direction);
      if (wrong) findings.push(wrong);
      else lines.push(line);
    }
  }
  const sorted = lines.map(({ position }) => position).sort((a, b) => a.compare(b));
  return { lines: sorted, findings };
}

function outOfOrder({ from, at }: ScoreGroup, { piece, unit }: Direction): Finding[] {
  return at.flatMap((position, index) => {
    const before = at[index - 1];
    if (!before?.value.greaterThan(position.value)) return [];
    const facts = { piece, from: from.value, position: position.value, before: before.value, unit };
    return [{ rule: 'score-order', at: position.at, facts }];
  });
}

function outside({ written, from }: Line, { piece, unit, extent, between }: Direction): Finding | undefined {
  if (written.value.lessThan(extent.value)) return undefined;
  const pieceIs = between === 'columns' ? 'wide' : 'high';
  const facts = { piece, from, position: written.value, extent, pieceIs, unit } as const;
  return { rule: 'score-outside', at: written.at, facts };
}

function doubled(line: Line, others: readonly Line[], { piece, unit }: Direction): Finding | undefined {
  const first = others.find(({ position }) => position.equals(line.position));
  if (!first) return undefined;
  const { written, from } = line;
  const before = { from: first.from, position: first.written };
  const facts = { piece, from, position: written.value, first: before, unit };
  return { rule: 'score-doubled', at: written.at, facts };
}
