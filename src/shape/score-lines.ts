import type { Length, Unit } from '../measure/length.ts';
import type { ScoreGroup } from '../project/model.ts';
import type { At } from '../project/source.ts';
import { rulerOf, say } from './forming/ruler.ts';
import type { ShapeProblem } from './shapes.ts';

/** The score lines of one direction, from the left (or the top) edge, rising; and what is wrong with them. */
export type ScoreLines = { readonly lines: readonly Length[]; readonly problems: readonly ShapeProblem[] };

/** One score line, with the number it was written as and its distance from the left or top edge. */
type Line = { readonly written: At<Length>; readonly from: string; readonly position: Length };

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
  const problems = own.flatMap((group) => outOfOrder(group, direction));
  const lines: Line[] = [];
  for (const group of own) {
    for (const written of group.at) {
      const position =
        group.from.value === near ? written.value : direction.extent.value.minus(written.value);
      const line = { written, from: group.from.value, position };
      const problem = outside(line, direction) ?? doubled(line, lines, direction);
      if (problem) problems.push(problem);
      else lines.push(line);
    }
  }
  const sorted = lines.map(({ position }) => position).sort((a, b) => a.compare(b));
  return { lines: sorted, problems };
}

function outOfOrder(group: ScoreGroup, { piece, unit }: Direction): ShapeProblem[] {
  return group.at.flatMap((position, index) => {
    const before = group.at[index - 1];
    if (!before?.value.greaterThan(position.value)) return [];
    const [here, there] = [position, before].map(({ value }) => say(rulerOf(unit), value));
    return [
      {
        rule: 'score-order',
        message: `${piece} is scored from the ${group.from.value} at ${there} and only then at ${here}`,
        remedy: 'give the positions in rising order, as they are scored along the board',
        at: position.at,
      },
    ];
  });
}

function outside(
  { written, from }: Line,
  { piece, unit, extent, between }: Direction,
): ShapeProblem | undefined {
  if (written.value.lessThan(extent.value)) return undefined;
  const measure = between === 'columns' ? 'wide' : 'high';
  const [position, size] = [written, extent].map(({ value }) => say(rulerOf(unit), value));
  const excess = written.value.minus(extent.value);
  const message =
    excess.sign === 0
      ? `the score line at ${position} from the ${from} is the edge of ${piece}, which is ${size} ${measure}`
      : `the score line at ${position} from the ${from} lies ${say(rulerOf(unit), excess)} outside ${piece}, which is ${size} ${measure}`;
  return {
    rule: 'score-outside',
    message,
    remedy: `score it at less than ${size}, or cut the piece larger`,
    at: written.at,
    notes: [{ message: `${piece} is ${size} ${measure}`, at: extent.at }],
  };
}

function doubled(line: Line, others: readonly Line[], { piece, unit }: Direction): ShapeProblem | undefined {
  const first = others.find(({ position }) => position.equals(line.position));
  if (!first) return undefined;
  const words = ({ written, from }: Line): string => `${say(rulerOf(unit), written.value)} from the ${from}`;
  const same = words(first) === words(line);
  return {
    rule: 'score-doubled',
    message: same
      ? `${piece} is scored twice at ${words(line)}`
      : `${piece} is scored twice on one line: ${words(line)} is ${words(first)}`,
    remedy: 'take one of the two out',
    at: line.written.at,
    notes: [{ message: `the first is ${words(first)}`, at: first.written.at }],
  };
}
