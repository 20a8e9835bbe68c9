import { Length } from '../../measure/length.ts';
import type { DrawingProblem } from '../drawn/drawing-problem.ts';
import { readSvgOutline } from '../drawn/svg-outline.ts';
import { findMistake } from '../finding.ts';
import { made, type Value } from '../grammar/grammar.ts';
import type { DrawnOutline, FileProblem, OutlinePoints, ReadDrawing } from '../grammar/outline-grammar.ts';
import { asText } from '../grammar/values.ts';
import type { PieceBody } from '../model.ts';
import { pathWithin } from '../prose/pictures.ts';
import type { AtSize } from '../sizes-as-written.ts';
import type { At } from '../source.ts';

/** `shapes/leaf.svg`: the outline that is drawn in a file of the project's folder. */
export const asDrawn: Value<DrawnOutline> = made(asText, (written: At<string>, { reader }) => {
  const { value: name, at } = written;
  // A shared file is in no project's folder: what it names is read where it is used.
  if (!reader.drawing) return undefined;
  try {
    const points = pointsOf(name, reader.drawing);
    if (!('kind' in points)) return { kind: 'drawn', path: written, points };
    reader.report({ rule: 'unreadable-outline', at, facts: { path: name, problem: points } });
  } catch (error) {
    reader.report(findMistake('reading the drawing', error, at));
  }
  return undefined;
});

function pointsOf(name: string, read: ReadDrawing): OutlinePoints | DrawingProblem | FileProblem {
  const path = pathWithin(name);
  if (path === undefined) return { kind: 'outside' };
  const found = read(path);
  return 'text' in found ? readSvgOutline(found.text) : found;
}

/** The body of a piece that is drawn: its size is that of the drawing. */
export function drawnBody(drawn: DrawnOutline): PieceBody {
  return { kind: 'flat', cut: drawnSize(drawn), outline: drawn };
}

/** How large a drawing is. */
export function drawnSize(drawn: DrawnOutline): AtSize {
  const { at } = drawn.path;
  const most = (lengths: readonly Length[]): Length => Length.max(Length.zero, ...lengths);
  const width = { value: most(drawn.points.map(({ x }) => x)), at };
  const height = { value: most(drawn.points.map(({ y }) => y)), at };
  return { width, height, at };
}
