import type { Length } from '../../measure/length.ts';
import { foldedLength } from '../../measure/round.ts';
import { allMeet, type GlueFit, glueFits } from '../../shape/closure/glue.ts';
import { overlapOf } from '../../shape/closure/overlap.ts';
import { tolerance } from '../../shape/closure/tolerance.ts';
import { touchOf } from '../../shape/closure/touch.ts';
import { foldedPanelOf } from '../../shape/folded-shape.ts';
import type { Mate } from '../../shape/net.ts';
import { foldBetween } from '../../shape/panel-tree.ts';
import {
  type Better,
  closedSheets,
  type FoldedSheet,
  type OfPiece,
  refoldedLine,
  sayRefold,
} from '../folded-sheets.ts';
import type { Evidence, Rule } from '../rule.ts';
import type { Words } from '../told.ts';
import { sayLength, sayList, sayPanels } from '../words.ts';

type Facts = OfPiece & (Missed | Misfolded);

/** One glue area that ends up at another place. */
type Missed = Pairing & {
  readonly verdict: Exclude<GlueFit['verdict'], 'meets'>;
  /** How far it lies off what it is to stick to. */
  readonly distance: Length;
  /** What it does lie on, if it lies on anything. */
  readonly lies?: string;
};

/** All that miss because of one score line, and how that would have to be folded. */
type Misfolded = {
  readonly pairs: readonly Pairing[];
  /** As `folds:` names it: `3|4`. */
  readonly fold: string;
  readonly better: Better;
};

type Pairing = Pick<Mate, 'from' | 'to'>;

export const glueMisses: Rule<Facts> = {
  severity: 'error',
  summary: 'Once folded, every glue area lies on what it is stuck to.',
  why: 'A flap that ends up at another place, or stands at an angle to what it should be stuck to, cannot be glued there. Usually a fold goes the wrong way or the glue names the wrong panel.',
  fails: { box: { glue: 'tab: A3, A4: D4, C4: D4, B4: C3' }, blames: 'B4: C3' },
  passes: { box: {} },
  *check(context) {
    for (const sheet of closedSheets(context)) {
      const missed = glueFits(sheet.shape, sheet.caliper).filter(({ verdict }) => verdict !== 'meets');
      if (missed.length === 0) continue;
      const marks = missed.flatMap((fit) => missedMark(sheet, fit, missed));
      // Where all lie on something else, the names are wrong, and other folds would only bring the wrong panels together.
      const areMisnamed = marks.every(({ facts }) => 'lies' in facts);
      const misfolded = areMisnamed ? undefined : findMisfold(sheet, missed);
      if (misfolded) yield misfolded;
      else yield* marks;
    }
  },
  say: (facts) => ('pairs' in facts ? sayMisfolded(facts) : sayMissed(facts)),
};

/** Where everything lands once one score line is folded otherwise. */
function findMisfold(sheet: FoldedSheet, missed: readonly GlueFit[]): Evidence<Facts> | undefined {
  const pairs = missed.map(({ mate: { from, to } }) => ({ from, to }));
  const panels = pairs.flatMap(({ from, to }) => [from, to]);
  const line = refoldedLine(sheet, panels, (shape) => allMeet(shape, sheet.caliper));
  if (!line) return undefined;
  const { name: fold, better, at = missed[0]?.mate.at ?? sheet.at } = line;
  return { at, facts: { ...sheet.of, pairs, fold, better } };
}

function missedMark(
  sheet: FoldedSheet,
  { mate, verdict, distance }: GlueFit,
  missed: readonly GlueFit[],
): Evidence<Facts>[] {
  if (verdict === 'meets') return [];
  const { from, to, at = sheet.at } = mate;
  const lies = liesOn(sheet, mate, missed);
  const facts = { ...sheet.of, from, to, verdict, distance: foldedLength(distance), ...(lies && { lies }) };
  return [{ at, facts }];
}

/** What most of a glue area lies on; what it hangs on counts only where another names that by mistake. */
function liesOn(
  { net, shape, caliper }: FoldedSheet,
  { from }: Mate,
  missed: readonly GlueFit[],
): string | undefined {
  const areaShared = (id: string): number =>
    overlapOf(foldedPanelOf(shape, from), foldedPanelOf(shape, id)).area;
  const others = missed.map(({ mate }) => mate).filter((mate) => mate.from !== from);
  const under = net.panels.flatMap(({ id }) => {
    const isFace = id !== from && touchOf(shape, [from, id], tolerance(caliper).mm) === 'face';
    const mayHold = !foldBetween(net, from, id) || others.some(({ to }) => to === id);
    return isFace && mayHold ? [{ id, area: areaShared(id) }] : [];
  });
  const [largest] = under.toSorted((a, b) => b.area - a.area);
  return largest && largest.area > areaShared(from) / 2 ? largest.id : undefined;
}

function sayMisfolded({ piece, pairs, fold, better }: OfPiece & Misfolded): Words {
  const walls = [...new Set(pairs.map(({ to }) => to))];
  const said = walls.map((wall) => {
    const tabs = pairs.filter(({ to }) => to === wall).map(({ from }) => from);
    return `${sayPanels(piece, tabs)} ${tabs.length > 1 ? 'do' : 'does'} not land on ${piece}.${wall}`;
  });
  return {
    message: `as ${fold} is folded, ${sayList(said)}`,
    remedy: sayRefold(fold, better),
  };
}

function sayMissed({ piece, from, to, verdict, distance, lies, unit }: OfPiece & Missed): Words {
  const how = {
    askew: 'the two stand at an angle',
    apart: `it lies ${sayLength(distance, unit)} away from it`,
    beside: 'it lies beside it',
  };
  return {
    message: `${piece}.${from} is to stick to ${piece}.${to}, but once folded ${how[verdict]}`,
    remedy: `${lies === undefined ? 'name the panel it lies on' : `stick ${from} to ${lies}, which it lies on`}, or change how ${from} folds`,
  };
}
