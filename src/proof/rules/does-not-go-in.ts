import { Length, type Unit } from '../../measure/length.ts';
import { printNear } from '../../measure/print.ts';
import { nextMark } from '../../measure/round.ts';
import { rulerUnit } from '../../measure/ruler-unit.ts';
import type { Place } from '../../project/source.ts';
import { type Link, linksOf } from '../../shape/links.ts';
import { ownNet } from '../../shape/sheets.ts';
import { leftOf, sayBand, sayBetterBand } from '../band-size.ts';
import { bestFit, type Fit, isRoomless, sayPrism, topples } from '../holding.ts';
import { linkedSets, linkPlace, loadOf } from '../linked.ts';
import type { Rule } from '../rule.ts';
import type { Words } from '../told.ts';
import { sayLengths, sayList } from '../words.ts';

type Facts = Linked & (Omit<Fit, 'spare'> | { readonly isRoomless: true });

/** What is to go into what, or what is to go round it. */
type Linked = {
  readonly holder: string;
  readonly held: string;
  readonly way: Link['way'];
  readonly count: number;
  /** Whether the one is folded up to go in. */
  readonly closed: boolean;
  /** Whether several pieces lie together. */
  readonly isSet: boolean;
  readonly unit: Unit;
  /** Where the other piece stands. */
  readonly other: Place;
  /** Nothing says that they belong together, but that they are of about one size. */
  readonly isGuessed: boolean;
};

/** What is left over where a thing goes in easily. Common practice, no source. */
const PLAY: Length = Length.of(1, 8, 'in');

export const doesNotGoIn: Rule<Facts> = {
  severity: 'error',
  summary:
    'A piece goes into the envelope, box, bag or pocket that is made for it, and a band goes around it.',
  why: 'A card that is a hair larger than its envelope is noticed only when all the cards are made. A piece is measured closed, with its layers on and whatever is in it. `holds: card` and `around: card` say what belongs together. A project’s only card belongs to its only envelope without being told, and so does a drawer to a sleeve of about its size if both are given by score lines; that is only a warning.',
  fails: {
    stock: 'cream: { name: Cream cardstock, sheet: 8 1/2 x 11 }',
    pieces:
      'card: { stock: cream, form: single-fold card, size: 5 1/2 x 4 1/4 }\nenvelope: { stock: cream, form: envelope, card: 5 1/2 x 4, holds: card }',
    blames: 'card',
  },
  passes: { with: 'card: 5 1/2 x 4 1/4', insteadOf: 'card: 5 1/2 x 4' },
  *check(context) {
    const links = linksOf(context);
    const { unit } = context.project;
    for (const set of linkedSets(links)) {
      const [link, second] = set;
      const { holder, held, way } = link;
      const into = holder.id.value;
      const name = sayList(set.map((each) => each.held.id.value));
      const count = second ? 1 : link.count;
      const closed = !second && (ownNet(context.shapes.nets, name)?.folds.length ?? 0) > 0;
      const isGuessed = !link.said && holder.body.kind === 'net';
      const linked = {
        holder: into,
        held: name,
        way,
        count,
        closed,
        isSet: second !== undefined,
        unit,
        other: held.id.at,
        isGuessed,
      };
      const load = loadOf(context, set, links);
      const best = load && bestFit(context, load);
      if (load && !best && link.said && isRoomless(context, into)) {
        yield { at: link.said, facts: { ...linked, isRoomless: true } };
      }
      if (!best || best.spare.sign >= 0) continue;
      const { spare: _, ...fit } = best;
      yield { at: linkPlace(link), facts: { ...linked, ...fit } };
    }
  },
  say: (facts) => {
    const { held, other, isGuessed, isSet } = facts;
    const notes = isSet ? [] : [{ message: `${held} is here`, at: other }];
    const guess = isGuessed ? ({ severity: 'warning' } as const) : {};
    return { notes, ...guess, ...('isRoomless' in facts ? sayRoomless(facts) : sayFit(facts)) };
  },
};

function sayRoomless({ holder, held, way }: Linked): Words {
  return way === 'holds'
    ? {
        message: `${holder} is to hold ${held}, but nothing in it makes a space to hold it`,
        remedy: `put ${held} on it with "on:", give ${holder} a pocket that is glued at its sides, or take "holds" out`,
      }
    : {
        message: `${holder} is to go around ${held}, but nothing in it goes all the way around`,
        remedy: `score it in panels and glue the last to the first, or take "around" out`,
      };
}

const WAYS = ['width', 'height', 'depth'] as const;

function sayFit(fit: Linked & Omit<Fit, 'spare'>): Words {
  const { holder, held, way, but, band, unit, direction } = fit;
  const left = band ? leftOf(band, fit) : fit.left;
  const sizes = saySizes(fit);
  const lack = printNear(left.abs(), unit);
  const larger = band
    ? sayBetterBand(band, fit.takes, 'at least', unit)
    : `make ${way === 'around' && fit.round ? holder : fit.sheet} at least ${sayNeeded(fit)} inside`;
  if (but === 'stands out') {
    const message = `${sizes}: it stands out by ${lack}${topples(fit) ? ', most of its length' : ''}`;
    const severity = topples(fit) ? 'warning' : 'note';
    return { message, remedy: `leave it if you meant it, or ${larger}`, severity };
  }
  if (but === 'bulges') {
    const message = `${sizes}; pressed open it bulges less than that, by ${lack}`;
    return { message, remedy: `make ${holder} wider, or deeper by "depth:"`, severity: 'warning' };
  }
  if (but === 'is round') {
    const message = `${sizes}: it goes in only if it is round`;
    return { message, remedy: `leave it so if it is; else ${larger}`, severity: 'note' };
  }
  if (but === 'lies anyhow') {
    const message = `${sizes}: side by side in rows they are ${lack} too large`;
    return { message, remedy: `try how they go in, or ${larger}`, severity: 'warning' };
  }
  if (fit.left.sign >= 0) {
    const message = `${sizes}: with the thickness of the paper that is too tight in ${WAYS[direction]}`;
    return { message, remedy: larger, severity: 'warning' };
  }
  return {
    message: `${sizes}: ${lack} too small`,
    remedy: `${larger}, or ${band ? 'make ' : ''}${held} smaller`,
  };
}

/** `envelope has 5 1/4 × 4 1/2 in inside, and card, closed, is 5 1/2 × 4 1/4 in and ≈1/32 in thick`. */
function saySizes({
  sheet,
  held,
  count,
  closed,
  isSet,
  takes,
  room,
  round,
  open,
  way,
  unit,
  prism,
  band,
}: Linked & Omit<Fit, 'spare'>): string {
  const does = way === 'around' ? 'goes around' : 'has';
  const inside = way === 'around' ? '' : ' inside';
  const closes = (size: readonly Length[]): readonly Length[] =>
    size.filter((_, index) => way !== 'around' || WAYS[index] !== open);
  const one = isSet ? `${held} together are` : `${held}${closed ? ', closed,' : ''} is`;
  const things = count > 1 ? `${count} × ${held} take` : one;
  if (band) {
    const [across, , deep] = takes;
    return `${sheet} goes around ${sayBand(band, unit)}, and ${things} ${sayLengths([across, deep], unit, printNear)}`;
  }
  const size = sayLengths(closes(round ? takes.slice(0, 2) : takes), unit, printNear);
  const thick = round ? `${size} and ${printNear(takes[2], unit)} thick` : size;
  if (prism) return `${sheet} ${sayPrism(room, prism, unit)}, and ${things} ${thick}`;
  return `${sheet} ${does} ${sayLengths(closes(room), unit, printNear)}${inside}, and ${things} ${thick}`;
}

/** `5 5/8 in wide`, in the directions where it has too little, on the ruler's marks. */
function sayNeeded({ takes, room, round, open, unit }: Omit<Fit, 'spare'> & { readonly unit: Unit }): string {
  const adjectives = ['wide', 'high', 'deep'];
  const needed = room.flatMap((has, index) => {
    const way = WAYS[index];
    if (way === undefined || way === open) return [];
    const thing = takes[index as 0 | 1 | 2].plus(way === round ? takes[2] : Length.zero);
    const least = nextMark(thing.plus(PLAY), rulerUnit(unit));
    return has.lessThan(least) ? [`${printNear(least, unit)} ${adjectives[index]}`] : [];
  });
  return sayList(needed);
}
