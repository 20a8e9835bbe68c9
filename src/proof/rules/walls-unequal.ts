import type { Length } from '../../measure/length.ts';
import type { Place } from '../../project/source.ts';
import { type UnequalRim, unequalRims } from '../../shape/closure/rims.ts';
import { seamFit, type UnequalWalls } from '../../shape/closure/seam.ts';
import { suspectLines } from '../../shape/closure/suspects.ts';
import { type Tube, tubesOf } from '../../shape/tube.ts';
import { type FoldedSheet, foldedSheets, type LineMove, moveScore, type OfPiece } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';
import type { Words } from '../told.ts';
import { sayLength, sayList, sayPanels } from '../words.ts';

type Facts = (FacingWalls | UnequalCorner) & OfPiece;

export const wallsUnequal: Rule<Facts> = {
  severity: 'error',
  summary: 'Walls that face each other, or meet at a corner of a tray, are equal.',
  why: 'With a front an eighth wider than its back, the tab lands an eighth off and the box sits crooked. It is the most common slip in a score list: one position off by one groove.',
  fails: { box: { left: '1 1/4, 3 3/4, 5, 7 5/8' }, blames: '7 5/8' },
  passes: { box: {} },
  *check(context) {
    for (const sheet of foldedSheets(context)) {
      if (sheet.soundness === 'no net') continue;
      const { net, caliper, of } = sheet;
      for (const tube of tubesOf(net)) {
        const fit = seamFit(sheet.shape, tube, caliper);
        if (fit.kind !== 'unequal') continue;
        const moves = movesFor(sheet, tube);
        const wallsAre = tube.lines === 'upright' ? 'wide' : 'high';
        const facts = { ...of, pairs: fit.walls, wallsAre, moves: moves.map(({ move }) => move) } as const;
        yield { at: moves[0]?.at ?? sheet.at, facts };
      }
      for (const { mate, ...rim } of unequalRims(net, caliper)) {
        yield { at: mate?.at ?? sheet.at, facts: { ...of, ...rim } };
      }
    }
  },
  say: (facts) => ('pairs' in facts ? sayFacing(facts, facts) : sayCorner(facts, facts)),
};

/** Walls of a tube that face each other and differ, each side made of one wall or more. */
type FacingWalls = {
  readonly pairs: readonly UnequalWalls[];
  readonly wallsAre: 'wide' | 'high';
  readonly moves: readonly LineMove[];
};

/** A wall of a tray that differs from those it meets at its corners. */
type UnequalCorner = Omit<UnequalRim, 'mate'>;

function movesFor(sheet: FoldedSheet, tube: Tube): { readonly at: Place; readonly move: LineMove }[] {
  return suspectLines(sheet.net, tube, sheet.caliper).flatMap(
    ({ lines, position, better }) => moveScore(sheet, lines, position, better.minus(position)) ?? [],
  );
}

function sayFacing({ piece, unit }: OfPiece, { pairs, wallsAre, moves }: FacingWalls): Words {
  const say = (length: Length): string => sayLength(length, unit);
  const said = pairs.map(({ first, second, widths: [a, b] }) => {
    const names = [first, second].map((side) => sayPanels(piece, side));
    return `${names[0]} ${first.length > 1 ? 'are' : 'is'} ${say(a)} ${wallsAre}, but the facing ${names[1]} ${second.length > 1 ? 'are' : 'is'} ${say(b)}: a difference of ${say(a.minus(b).abs())}`;
  });
  const remedies = moves.map(
    ({ from, now, better }) => `score from the ${from} at ${say(better)} instead of ${say(now)}`,
  );
  return {
    message: said.join('; '),
    remedy:
      sayList(remedies, 'or') || `move the score lines so that facing walls are equal${sayBoth(pairs, unit)}`,
  };
}

/** `: both 3 in or both 3 1/8 in`; of several pairs nothing. */
function sayBoth([pair, ...others]: readonly UnequalWalls[], unit: OfPiece['unit']): string {
  if (!pair || others.length > 0) return '';
  const [one, other] = pair.widths.map((width) => `both ${sayLength(width, unit)}`);
  return `: ${one} or ${other}`;
}

function sayCorner({ piece, unit }: OfPiece, corner: UnequalCorner): Words {
  const { wall, others, sticksOut, mayBeMeant } = corner;
  const [a, b] = corner.heights;
  const [one, other, apart] = [a, b, a.minus(b).abs()].map((each) => sayLength(each, unit));
  const second = sayPanels(piece, others);
  const where = others.length > 1 ? 'its corners' : 'a corner';
  const move = `move the score line of ${wall} so that it is ${other} high, or those of the others`;
  return {
    message: `${piece}.${wall} is ${one} high and ${second}, which it meets at ${where}, ${other}: a difference of ${apart}`,
    remedy: sticksOut ? move : `${move}; leave it if one wall is meant to be lower`,
    ...(!sticksOut && { severity: mayBeMeant ? 'note' : 'warning' }),
  };
}
