import type { Length } from '../../measure/length.ts';
import type { Project } from '../../project/model.ts';
import { type UnequalRim, unequalRims } from '../../shape/closure/rims.ts';
import { seamFit, type UnequalWalls } from '../../shape/closure/seam.ts';
import { type Suspect, suspectLines } from '../../shape/closure/suspects.ts';
import { type Tube, tubesOf } from '../../shape/tube.ts';
import { boxWith } from '../example-box.ts';
import { type FoldedSheet, foldedSheets, panelName, shapePlace } from '../folded-sheets.ts';
import type { ProofContext, Rule, Statement } from '../rule.ts';
import { fromEdge, writtenScore } from '../score-place.ts';
import { sayLength, sayList } from '../words.ts';

export const wallsUnequal: Rule<'walls-unequal'> = {
  id: 'walls-unequal',
  severity: 'error',
  summary: 'Walls that face each other, or meet at a corner of a tray, are equal.',
  why: 'With a front an eighth wider than its back, the tab lands an eighth off and the box stands askew. It is the commonest slip in a score list: one position off by one groove.',
  fails: { sheet: boxWith({ left: '1 1/4, 3 3/4, 5, 7 5/8' }), blames: '7 5/8' },
  passes: { sheet: boxWith() },
  check: ({ project, shapes, report }: ProofContext) => {
    for (const sheet of foldedSheets(project, shapes)) {
      if (sheet.soundness === 'no net') continue;
      for (const tube of tubesOf(sheet.net)) {
        const fit = seamFit(sheet.shape, tube, sheet.caliper);
        if (fit.kind === 'unequal') report(tubeWords(sheet, tube, fit.walls, project));
      }
      for (const rim of unequalRims(sheet.net, sheet.caliper)) report(rimWords(sheet, rim, project));
    }
  },
};

function tubeWords(
  sheet: FoldedSheet,
  tube: Tube,
  walls: readonly UnequalWalls[],
  { unit }: Project,
): Statement {
  const say = (length: Length): string => sayLength(length, unit);
  const measure = tube.lines === 'upright' ? 'wide' : 'high';
  const pairs = walls.map(({ first, second, widths: [a, b] }) => {
    const names = [first, second].map((side) => sayList(side.map((wall) => panelName(sheet, wall))));
    return `${names[0]} ${first.length > 1 ? 'are' : 'is'} ${say(a)} ${measure}, and ${names[1]} on the facing side ${say(b)}: ${say(a.minus(b).abs())} apart`;
  });
  const suspects = suspectLines(sheet.net, tube, sheet.caliper);
  const remedies = suspects.flatMap((suspect) => remedyFor(sheet, suspect, say) ?? []);
  const [first] = remedies;
  return {
    message: pairs.join('; '),
    remedy: first
      ? sayList(
          remedies.map(({ remedy }) => remedy),
          'or',
        )
      : 'move the score lines so that facing walls are equal',
    at: first?.at ?? shapePlace(sheet),
  };
}

function remedyFor(
  sheet: FoldedSheet,
  { lines, position, better }: Suspect,
  say: (length: Length) => string,
): { remedy: string; at: NonNullable<Statement['at']> } | undefined {
  const written = writtenScore(sheet, lines, position);
  if (!written) return undefined;
  const [now, then] = [position, better].map((each) => say(fromEdge(sheet, written.from, each)));
  return { remedy: `score from the ${written.from} at ${then} instead of ${now}`, at: written.position.at };
}

function rimWords(sheet: FoldedSheet, { mate, walls, heights }: UnequalRim, { unit }: Project): Statement {
  const [first, second] = walls.map((wall) => panelName(sheet, wall));
  const [one, other] = heights.map((height) => sayLength(height, unit));
  const difference = sayLength(heights[0].minus(heights[1]).abs(), unit);
  return {
    message: `${first} is ${one} high and ${second}, which it meets at a corner, ${other}: ${difference} apart`,
    remedy: 'move the score line of one of them so that both are equally high',
    at: mate.at ?? shapePlace(sheet),
  };
}
