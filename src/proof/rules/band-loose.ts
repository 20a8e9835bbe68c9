import { Length, type Unit } from '../../measure/length.ts';
import { printNear } from '../../measure/print.ts';
import { rulerMark } from '../../measure/round.ts';
import { rulerUnit } from '../../measure/ruler-unit.ts';
import { type Cavity, snuggest, type Triple } from '../../shape/closure/packing.ts';
import { roomsOf } from '../../shape/closure/rooms.ts';
import { tolerance } from '../../shape/closure/tolerance.ts';
import { linksOf } from '../../shape/links.ts';
import { type BandSize, bandSizeOf, sayBetterBand } from '../band-size.ts';
import { closedSheets } from '../folded-sheets.ts';
import type { Load } from '../holding.ts';
import { linkedSets, linkPlace, loadOf } from '../linked.ts';
import type { ProofContext, Rule } from '../rule.ts';
import { sayLength, sayList } from '../words.ts';

type Facts = {
  readonly band: string;
  readonly held: string;
  /** How much longer it is, all the way round, than what it goes round. */
  readonly slack: Length;
  readonly better: BetterBand;
  readonly unit: Unit;
};

/** The size to give a band by its form; of any other, by how much it is too wide, too high or too deep. */
type BetterBand = { readonly band: BandSize; readonly takes: Triple } | { readonly clearance: Cavity };

/** A band that is an inch longer than what it goes round falls off. Common practice, no source. */
const MOST: Length = Length.of(1, 1, 'in');

/** What it needs to slide on easily. Common practice, no source. */
const PLAY: Length = Length.of(1, 8, 'in');

export const bandLoose: Rule<Facts> = {
  severity: 'warning',
  summary: 'A band that goes around a piece is not so long that it falls off.',
  why: 'What slides on easily slides off just as easily. A band has an eighth of an inch to spare on each side; with much more, it drops when the card is stood up.',
  fails: {
    stock: 'cream: { name: Cream cardstock, sheet: 8 1/2 x 11 }',
    pieces:
      'card: { stock: cream, form: single-fold card, size: 5 1/2 x 4 1/4 }\nband: { stock: cream, form: belly band, inside: 6 1/4 x 1/16, around: card }',
    blames: 'card',
  },
  passes: { with: 'inside: 4 3/8 x 1/16', insteadOf: 'inside: 6 1/4 x 1/16' },
  *check(context) {
    const links = linksOf(context);
    for (const set of linkedSets(links)) {
      const [link] = set;
      const load = link.said && link.way === 'around' ? loadOf(context, set, links) : undefined;
      const loose = load && looseRound(context, load);
      if (!loose) continue;
      const [band, held] = [link.holder.id.value, sayList(set.map((each) => each.held.id.value))];
      yield { at: linkPlace(link), facts: { band, held, ...loose, unit: context.project.unit } };
    }
  },
  say: ({ band, held, slack, better, unit }) => ({
    message: `${band} is ${printNear(slack, unit)} too long for ${held}: it would slide off`,
    remedy: sayBetter(better, unit),
  }),
};

function sayBetter(better: BetterBand, unit: Unit): string {
  if ('band' in better) return sayBetterBand(better.band, better.takes, 'at most', unit);
  const cut = better.clearance.flatMap((left, way) => {
    const mark = left && rulerMark(left.minus(PLAY), rulerUnit(unit));
    return mark && mark.sign > 0 ? [`${sayLength(mark, unit)} ${NARROWER[way]}`] : [];
  });
  return `make it ${sayList(cut)}`;
}

const NARROWER = ['narrower', 'lower', 'less deep'] as const;

/** A band that is open at both ends and too long for what it goes round; undefined where it is not. */
function looseRound(
  context: ProofContext,
  { item: [width, height, depth], count, into }: Load,
): Pick<Facts, 'slack' | 'better'> | undefined {
  for (const sheet of closedSheets(context)) {
    if (sheet.of.piece !== into) continue;
    for (const { open, cavity, leave } of roomsOf(sheet.net)) {
      const snug = open && snuggest([width, height, depth.times(count)], cavity, leave);
      const slack = snug?.left.times(2);
      if (!snug || !slack?.greaterThan(MOST.plus(tolerance(sheet.caliper)))) continue;
      const band = bandSizeOf(sheet);
      return { slack, better: band ? { band, takes: snug.block } : { clearance: snug.clearance } };
    }
  }
  return undefined;
}
