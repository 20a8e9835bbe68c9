import { Length, type Unit } from '../../measure/length.ts';
import { printNear } from '../../measure/print.ts';
import { rulerMark } from '../../measure/round.ts';
import { rulerUnit } from '../../measure/ruler-unit.ts';
import { snuggest } from '../../shape/closure/packing.ts';
import { roomsOf } from '../../shape/closure/rooms.ts';
import { tolerance } from '../../shape/closure/tolerance.ts';
import { linksOf } from '../../shape/links.ts';
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
  readonly unit: Unit;
};

/** A band that is an inch longer than what it goes round falls off. Common practice, no source. */
const MOST: Length = Length.of(1, 1, 'in');

/** What it needs to slide on easily. Common practice, no source. */
const PLAY: Length = Length.of(1, 8, 'in');

export const bandLoose: Rule<Facts> = {
  severity: 'warning',
  summary: 'A band that goes round a piece is not so much longer that it falls off.',
  why: 'What slides on easily slides off as easily. A band has an eighth of an inch to spare at each side; much more, and it drops when the card is stood up.',
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
      const slack = load && slackRound(context, load);
      if (!slack) continue;
      const [band, held] = [link.holder.id.value, sayList(set.map((each) => each.held.id.value))];
      yield { at: linkPlace(link), facts: { band, held, slack, unit: context.project.unit } };
    }
  },
  say: ({ band, held, slack, unit }) => ({
    message: `${band} is ${printNear(slack, unit)} longer all the way round than ${held}: it would slide off`,
    remedy: `make it ${sayLength(rulerMark(slack.half().minus(PLAY), rulerUnit(unit)), unit)} narrower`,
  }),
};

/** By how much a band that is open at both ends is too long for what it goes round; undefined where it is not. */
function slackRound(
  context: ProofContext,
  { item: [width, height, depth], count, into }: Load,
): Length | undefined {
  for (const { of, net, caliper } of closedSheets(context)) {
    if (of.piece !== into) continue;
    for (const { open, cavity, leave } of roomsOf(net)) {
      const slack = open && snuggest([width, height, depth.times(count)], cavity, leave)?.times(2);
      if (slack?.greaterThan(MOST.plus(tolerance(caliper)))) return slack;
    }
  }
  return undefined;
}
