import type { Unit } from '../../measure/length.ts';
import { printNear } from '../../measure/print.ts';
import { nextMark } from '../../measure/round.ts';
import { rulerUnit } from '../../measure/ruler-unit.ts';
import { leftOf, sayBand, sayBetterBand } from '../band-size.ts';
import { bestFit, type Fit, isRoomless, sayPrism, topples } from '../holding.ts';
import type { Rule } from '../rule.ts';
import type { Words } from '../told.ts';
import { sayLength, sayLengths } from '../words.ts';

type Facts = Held & (Fit | Roomless);

/** What is to go in. */
type Held = { readonly item: string; readonly count: number; readonly unit: Unit };

/** The piece that `in:` names, which has no room for anything. */
type Roomless = { readonly in: string };

export const holdsTooBig: Rule<Facts> = {
  severity: 'error',
  summary: 'What goes in the box, bag, band or envelope fits, in the number given and some way round.',
  why: 'A box is made for something. If that does not go in, the box is wrong, however well it folds. If there are several boxes, one of them must take it, or the one that `in:` names. In an envelope or a pillow box, thickness takes up width as well. Between six walls, something square takes more room than something round.',
  fails: {
    box: {},
    more: 'holds: { item: seed packet, size: 3 1/4 x 4 1/2 x 1/16, count: 6 }',
    blames: '3 1/4 x 4 1/2 x 1/16',
  },
  passes: { with: '2 1/4 x 4 x', insteadOf: '3 1/4 x 4 1/2 x' },
  *check(context) {
    const { holds, unit } = context.project;
    if (!holds?.size) return;
    const [a, b, c] = holds.size;
    const count = holds.count.value;
    const held = { item: holds.item, count, unit };
    const into = holds.in && { into: holds.in.value };
    const best = bestFit(context, { item: [a.value, b.value, c.value], count, ...into });
    if (!best && holds.in && isRoomless(context, holds.in.value)) {
      yield { at: holds.in.at, facts: { ...held, in: holds.in.value } };
    }
    if (!best || best.spare.sign >= 0) return;
    yield { at: { ...a.at, end: Math.max(a.at.end, c.at.end) }, facts: { ...held, ...best } };
  },
  say: (facts) =>
    'in' in facts
      ? {
          message: `${facts.in} is to hold ${facts.count} × ${facts.item}, but nothing in it makes a space to hold it`,
          remedy: 'name the box, the bag or the envelope that it goes in, or delete "in"',
        }
      : sayFit(facts),
};

function sayFit(fit: Held & Fit): Words {
  const { sheet, direction, left, spare, but, unit } = fit;
  const sizes = saySizes(fit);
  const lack = printNear((fit.band ? leftOf(fit.band, fit) : left).abs(), unit);
  const larger = (['wider', 'higher', 'deeper'] as const)[direction];
  const remedy = fit.band
    ? sayBetterBand(fit.band, fit.takes, 'at least', unit)
    : `make ${sheet} ${sayLength(nextMark(spare.abs(), rulerUnit(unit)), unit)} ${larger}`;
  if (but === 'bulges') {
    return {
      message: `${sizes}; pressed open it bulges less than that, by ${lack}`,
      remedy: `make ${sheet} wider, or deeper by "depth:"`,
      severity: 'warning',
    };
  }
  if (but === 'stands out') {
    return {
      message: `${sizes}: it stands out by ${lack}${topples(fit) ? ', most of its length' : ''}`,
      remedy: `leave it if you meant it, or make ${sheet} ${larger}`,
      severity: topples(fit) ? 'warning' : 'note',
    };
  }
  if (but === 'is round') {
    return {
      message: `${sizes}: it goes in only if it is round`,
      remedy: `leave it if it is; otherwise make ${sheet} ${larger}`,
      severity: 'note',
    };
  }
  if (but === 'lies anyhow') {
    return {
      message: `${sizes}: side by side in rows they are ${lack} too large`,
      remedy: `try how they fit, or make ${sheet} ${larger}`,
      severity: 'warning',
    };
  }
  if (left.sign >= 0) {
    return {
      message: `${sizes}: too tight for the thickness of the paper`,
      remedy,
      severity: 'warning',
    };
  }
  return { message: `${sizes}: ${lack} too small`, remedy };
}

function saySizes(fit: Held & Fit): string {
  const { item, count, sheet, takes, room, open, round, unit } = fit;
  const all = `${count} × ${item} takes ${sayLengths(takes, unit, printNear)} (width × height × depth)`;
  if (fit.prism) return `${all}, and ${sheet} ${sayPrism(room, fit.prism, unit)}`;
  if (fit.band) return `${all}, and ${sheet} goes around ${sayBand(fit.band, unit)} (width × depth)`;
  const inside = `${sayLengths(room, unit, printNear)} inside`;
  if (!round) return `${all}, and ${sheet} has ${inside}${open ? `, its ${open} open at both ends` : ''}`;
  return `${all}, and ${sheet}, lying flat, has ${inside}${open ? `, its ${open} open` : ''}, where depth comes off the ${round}`;
}
