import type { Length } from '../../measure/length.ts';
import { foldedLength } from '../../measure/round.ts';
import { seamFit } from '../../shape/closure/seam.ts';
import type { Fold } from '../../shape/net.ts';
import { cornersOf, signedAngle, type Tube, tubesOf } from '../../shape/tube.ts';
import {
  type Better,
  type FoldedSheet,
  foldedSheets,
  type OfPiece,
  sayRefold,
  type WrittenFold,
  writtenFold,
} from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

type Facts = OfPiece & {
  readonly tab: string;
  readonly wall: string;
  /** How far the folds turn between them, or how far the tab lands from the wall's edge. */
  readonly wrong: { readonly degrees: number; readonly better?: BetterTurn } | { readonly by: Length };
};

const FULL_CIRCLE = 360;

export const doesNotClose: Rule<Facts> = {
  severity: 'error',
  summary: 'The walls of a box come full circle, and its tab meets the edge it closes on.',
  why: 'Walls that turn by less or more than a full circle, or a tab that ends up beside the edge it belongs to, leave a body that cannot be glued without force.',
  fails: { box: { folds: '1|2: valley 90, C|D: mountain 60' }, blames: 'C|D: mountain 60' },
  passes: { box: {} },
  *check(context) {
    for (const sheet of foldedSheets(context)) {
      if (sheet.soundness === 'no net') continue;
      for (const tube of tubesOf(sheet.net)) {
        const fit = seamFit(sheet.shape, tube, sheet.caliper);
        if (fit.kind !== 'turn' && fit.kind !== 'misses') continue;
        const { tab, mate } = tube;
        const at = mate.at ?? sheet.at;
        const facts = { ...sheet.of, tab, wall: mate.to };
        if (fit.kind === 'misses') yield { at, facts: { ...facts, wrong: { by: foldedLength(fit.by) } } };
        else {
          const line = oddLine(sheet, tube);
          const better = betterTurn(tube, line);
          const wrong = { degrees: fit.degrees, ...(better && { better }) };
          yield { at: line?.at ?? at, facts: { ...facts, wrong } };
        }
      }
    }
  },
  say: ({ piece, tab, wall, wrong, unit }) =>
    'degrees' in wrong
      ? {
          message: `the folds from ${piece}.${wall} around to ${piece}.${tab} turn by ${wrong.degrees}°, not by a full circle of 360°`,
          remedy: sayTurn(wrong.better),
        }
      : {
          message: `${piece}.${tab} lands ${sayLength(wrong.by, unit)} from the edge of ${piece}.${wall} that it closes on`,
          remedy: 'move the score lines so that the walls reach that edge',
        },
};

/** How walls come full circle: the one line that is unlike the rest folded as they are, or all by one angle. */
type BetterTurn = { readonly line: string; readonly better: Better } | { readonly each: number };

function betterTurn(tube: Tube, line: ReturnType<typeof oddLine>): BetterTurn | undefined {
  if (line) return { line: line.name, better: line.better };
  const [first, ...others] = cornersOf(tube).map(({ fold }) => signedAngle(fold));
  const each = FULL_CIRCLE / (others.length + 1);
  return others.every((angle) => angle === first) && Number.isInteger(each) ? { each } : undefined;
}

/** The only line between walls that is folded otherwise than all others, if they would come round with it like them. */
function oddLine(sheet: FoldedSheet, tube: Tube): (WrittenFold & { readonly better: Better }) | undefined {
  const folds = tube.joints.map(({ fold }) => fold);
  const alike = (fold: Fold): number =>
    folds.filter((other) => signedAngle(other) === signedAngle(fold)).length;
  const odd = folds.find((fold) => alike(fold) === 1);
  const usual = folds.find((fold) => alike(fold) === folds.length - 1 && fold !== odd);
  const written = odd && writtenFold(sheet, odd);
  if (!written || !usual || usual.angle * folds.length !== FULL_CIRCLE) return undefined;
  return { ...written, better: { direction: usual.direction, angle: usual.angle } };
}

function sayTurn(better: BetterTurn | undefined): string {
  if (better && 'line' in better) return sayRefold(better.line, better.better);
  const all = 'change the angles under "folds:" so that they add up to 360°';
  return better ? `${all}: ${better.each}° each` : all;
}
