import type { Length } from '../../measure/length.ts';
import type { Edge } from '../../project/net-as-written.ts';
import type { Place } from '../../project/source.ts';
import { unequalRims } from '../../shape/closure/rims.ts';
import { seamFit } from '../../shape/closure/seam.ts';
import { suspectLines } from '../../shape/closure/suspects.ts';
import { type Tube, tubesOf } from '../../shape/tube.ts';
import { type FoldedSheet, foldedSheets, type OfPiece, writtenScore } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';
import type { Words } from '../told.ts';
import { sayLength, sayList } from '../words.ts';

type Facts = (FacingWalls | UnequalCorner) & OfPiece;

export const wallsUnequal: Rule<Facts> = {
  severity: 'error',
  summary: 'Walls that face each other, or meet at a corner of a tray, are equal.',
  why: 'With a front an eighth wider than its back, the tab lands an eighth off and the box stands askew. It is the commonest slip in a score list: one position off by one groove.',
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
      for (const { mate, walls, heights } of unequalRims(net, caliper)) {
        yield { at: mate.at ?? sheet.at, facts: { ...of, walls, heights } };
      }
    }
  },
  say: (facts) => ('pairs' in facts ? sayFacing(facts, facts) : sayCorner(facts, facts)),
};

/** Walls of a tube that face each other and differ, each side made of one wall or more. */
type FacingWalls = {
  readonly pairs: readonly {
    readonly first: readonly string[];
    readonly second: readonly string[];
    readonly widths: readonly [Length, Length];
  }[];
  readonly wallsAre: 'wide' | 'high';
  readonly moves: readonly Move[];
};

/** A score line whose moving would make the walls equal: what it is measured from, where it is, where it should be. */
type Move = { readonly from: Edge; readonly now: Length; readonly better: Length };

/** Two walls of a tray that meet at a corner and differ. */
type UnequalCorner = {
  readonly walls: readonly [string, string];
  readonly heights: readonly [Length, Length];
};

function movesFor(sheet: FoldedSheet, tube: Tube): { readonly at: Place; readonly move: Move }[] {
  return suspectLines(sheet.net, tube, sheet.caliper).flatMap(({ lines, position, better }) => {
    const written = writtenScore(sheet, lines, position);
    if (!written) return [];
    const { from } = written;
    const now = written.position.value;
    const by = better.minus(position);
    const isFar = from === 'right' || from === 'bottom';
    return [{ at: written.position.at, move: { from, now, better: isFar ? now.minus(by) : now.plus(by) } }];
  });
}

function sayFacing({ piece, unit }: OfPiece, { pairs, wallsAre, moves }: FacingWalls): Words {
  const say = (length: Length): string => sayLength(length, unit);
  const said = pairs.map(({ first, second, widths: [a, b] }) => {
    const names = [first, second].map((side) => sayList(side.map((wall) => `${piece}.${wall}`)));
    return `${names[0]} ${first.length > 1 ? 'are' : 'is'} ${say(a)} ${wallsAre}, and ${names[1]} on the facing side ${say(b)}: ${say(a.minus(b).abs())} apart`;
  });
  const remedies = moves.map(
    ({ from, now, better }) => `score from the ${from} at ${say(better)} instead of ${say(now)}`,
  );
  return {
    message: said.join('; '),
    remedy: sayList(remedies, 'or') || 'move the score lines so that facing walls are equal',
  };
}

function sayCorner({ piece, unit }: OfPiece, { walls, heights: [a, b] }: UnequalCorner): Words {
  const [first, second] = walls.map((wall) => `${piece}.${wall}`);
  const [one, other, apart] = [a, b, a.minus(b).abs()].map((each) => sayLength(each, unit));
  return {
    message: `${first} is ${one} high and ${second}, which it meets at a corner, ${other}: ${apart} apart`,
    remedy: 'move the score line of one of them so that both are equally high',
  };
}
