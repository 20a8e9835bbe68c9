import type { Length } from '../measure/length.ts';
import type { Size } from '../measure/size.ts';
import type { Edge, ScoreGroup } from '../project/net-as-written.ts';
import type { BoardScores } from './net.ts';
import type { GridLines, Seam } from './patches.ts';

/** Where a line begins and ends, and whether anything of that is scored. */
type ScoreRun = { readonly run: NonNullable<BoardScores['run']>; readonly isCut: boolean };

/** Whether a seam is a line, slit or not, and whether it is slit. */
type SeamState = Readonly<Record<'isThere' | 'isSlit', (seam: Seam) => boolean>>;

/** How a row of scores runs: which way its lines lie, and the edge at the top of the board, which runs are measured from. */
const WAYS: Readonly<
  Record<Edge, { readonly upright: boolean; readonly isFar: boolean; readonly fromFar: boolean }>
> = {
  left: { upright: true, isFar: false, fromFar: false },
  right: { upright: true, isFar: true, fromFar: true },
  bottom: { upright: false, isFar: true, fromFar: false },
  top: { upright: false, isFar: false, fromFar: true },
};

/**
 * The scores of a grid as said at the board. A line that isn't there in some cells is said by itself, with where it begins
 * and ends; one of which nothing is left, not at all; and one that is only cut, after all that is scored.
 */
export function partScores(
  score: readonly ScoreGroup[],
  { size, across, down }: GridLines,
  seams: readonly Seam[],
  { isThere, isSlit }: SeamState,
): readonly BoardScores[] {
  const rows = score.flatMap(({ from, at }): BoardScores[] => {
    const { upright, isFar, fromFar } = WAYS[from.value];
    const extent = upright ? size.width : size.height;
    const lines = upright ? across : down;
    const whole: Length[] = [];
    const inParts: BoardScores[] = [];
    for (const { value } of at) {
      const position = isFar ? extent.minus(value) : value;
      const line = lines.findIndex((each) => each.equals(position));
      const own = seams.filter(
        ({ stretch }) => stretch?.line === line && stretch.between === (upright ? 'columns' : 'rows'),
      );
      if (own.every(isThere)) whole.push(value);
      else
        for (const { run, isCut } of runsOf(own.filter(isThere), upright, isSlit))
          add(inParts, {
            from: from.value,
            at: [value],
            run: fromFar ? turned(run, size, upright) : run,
            ...(isCut && { isCut }),
          });
    }
    return [...(whole.length > 0 ? [{ from: from.value, at: whole }] : []), ...inParts];
  });
  return [...rows.filter(({ isCut }) => !isCut), ...rows.filter(({ isCut }) => isCut)];
}

/** Adds a line to those that run as it does, which are said together. */
function add(rows: BoardScores[], line: BoardScores & Pick<ScoreRun, 'run'>): void {
  const { run, isCut } = line;
  const index = rows.findIndex(
    (row) => row.run?.from.equals(run.from) && row.run.to.equals(run.to) && row.isCut === isCut,
  );
  const alike = rows[index];
  if (alike) rows[index] = { ...alike, at: [...alike.at, ...line.at] };
  else rows.push(line);
}

/** The stretches of a line from one end of it to the other, those that follow one another as one. */
function runsOf(seams: readonly Seam[], upright: boolean, isSlit: SeamState['isSlit']): readonly ScoreRun[] {
  const runs: ScoreRun[] = [];
  for (const seam of seams) {
    const [from, to] = upright ? [seam.from.y, seam.to.y] : [seam.from.x, seam.to.x];
    const last = runs.at(-1);
    const isCut = isSlit(seam);
    if (last?.run.to.equals(from))
      runs[runs.length - 1] = { run: { from: last.run.from, to }, isCut: last.isCut && isCut };
    else runs.push({ run: { from, to }, isCut });
  }
  return runs;
}

function turned({ from, to }: ScoreRun['run'], { width, height }: Size, upright: boolean): ScoreRun['run'] {
  const extent = upright ? height : width;
  return { from: extent.minus(to), to: extent.minus(from) };
}
