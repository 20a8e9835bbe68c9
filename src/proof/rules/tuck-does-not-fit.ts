import type { Length } from '../../measure/length.ts';
import { type EndFlap, longFlaps, type TubeEnd, tubeEnds } from '../../shape/closure/ends.ts';
import { tuckBoxWith } from '../example-box.ts';
import { closedSheets, type FoldedSheet, panelName } from '../folded-sheets.ts';
import type { ProofContext, Rule, Statement } from '../rule.ts';
import { foldPlace } from '../score-place.ts';
import { sayLength } from '../words.ts';

export const tuckDoesNotFit: Rule<'tuck-does-not-fit'> = {
  id: 'tuck-does-not-fit',
  severity: 'error',
  summary: 'A lid that is tucked in reaches the wall it goes behind, and its flap is shorter than the box.',
  why: 'A lid that is too deep brings its tuck flap outside the wall instead of behind it, and one longer than the box stands on the bottom before the lid is down.',
  fails: { sheet: tuckBoxWith('1 1/2, 4 1/2, 6 1/8', '7 1/2 x 6 3/4'), blames: '6 1/8' },
  passes: { sheet: tuckBoxWith() },
  check: ({ project, shapes, report }: ProofContext) => {
    for (const sheet of closedSheets(project, shapes)) {
      for (const end of tubeEnds(sheet.net)) {
        for (const statement of misfits(sheet, end, (length) => sayLength(length, project.unit))) {
          report(statement);
        }
      }
    }
  },
};

function misfits(sheet: FoldedSheet, end: TubeEnd, say: (length: Length) => string): Statement[] {
  const long = longFlaps(end, sheet.caliper);
  return end.flaps.flatMap((flap) => {
    const { panel, tuck, depth, across } = flap;
    if (!tuck) return [];
    const lid = panelName(sheet, panel);
    if (long.includes(flap)) {
      return [
        {
          message: `${lid} is ${say(depth)} deep, ${say(depth.minus(across))} more than the ${say(across)} to the facing wall, so that ${tuck.panel} comes outside it`,
          remedy: `make ${panel} ${say(across)} deep: move the score line of ${tuck.panel}`,
          at: foldPlace(sheet, tuck.fold),
        },
      ];
    }
    return tooTall(sheet, tuck, end.length, say);
  });
}

function tooTall(
  sheet: FoldedSheet,
  tuck: NonNullable<EndFlap['tuck']>,
  length: Length,
  say: (length: Length) => string,
): Statement[] {
  if (!tuck.depth.greaterThan(length.minus(sheet.caliper))) return [];
  return [
    {
      message: `${panelName(sheet, tuck.panel)} is ${say(tuck.depth)} long and the box only ${say(length)} high`,
      remedy: `trim ${tuck.panel} to less than ${say(length)}`,
      at: foldPlace(sheet, tuck.fold),
    },
  ];
}
