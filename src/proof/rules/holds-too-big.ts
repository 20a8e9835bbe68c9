import { Length, type Unit } from '../../measure/length.ts';
import type { Size, Volume } from '../../measure/size.ts';
import type { Holds } from '../../project/model.ts';
import { bestPacking, type Packing, type Triple, tightest } from '../../shape/closure/packing.ts';
import { type Room, roomsOf } from '../../shape/closure/rooms.ts';
import { tolerance } from '../../shape/closure/tolerance.ts';
import { closedSheets, type FoldedSheet } from '../folded-sheets.ts';
import type { ProofContext, Rule } from '../rule.ts';
import { sayLength, sayLengths } from '../words.ts';

type Facts = {
  readonly item: string;
  readonly count: number;
  /** The sheet it does not fit in. */
  readonly sheet: string;
  /** What everything takes, as width, height and depth; and what there is inside, without a depth where it lies flat. */
  readonly takes: Triple;
  readonly room: readonly Length[];
  /** The way it is open: a band holds things of any length, where there is no box for them. */
  readonly open?: keyof Volume;
  /** What the depth of things comes off, where it lies flat. */
  readonly round?: keyof Size;
  /** Which of the three is tightest, and what is left there: less than nothing, or less than the paper takes. */
  readonly direction: 0 | 1 | 2;
  readonly left: Length;
  /** It goes in, but a pillow box does not bulge enough for it. */
  readonly isTight?: true;
  readonly unit: Unit;
};

export const holdsTooBig: Rule<Facts> = {
  severity: 'error',
  summary:
    'What a project is to hold fits in its box, bag, band or envelope, in some orientation and with its count.',
  why: 'The box is made for something. If that does not go in, the box is wrong, however well it folds. Of several boxes one has to take it, or the one that `in:` names. In flat paper, an envelope or a pillow box, what is thick takes of the width as well.',
  fails: {
    box: {},
    more: 'holds: { item: seed packet, size: 3 1/4 x 4 1/2 x 1/16, count: 6 }',
    blames: '3 1/4 x 4 1/2 x 1/16',
  },
  passes: { with: '2 1/4 x 4 x', insteadOf: '3 1/4 x 4 1/2 x' },
  *check(context) {
    const { holds, unit } = context.project;
    if (!holds?.size) return;
    const [a, , c] = holds.size;
    const fits = fitsOf(context, holds);
    const [best] = fits.toSorted((first, second) => second.spare.compare(first.spare));
    if (!best || best.spare.sign >= 0) return;
    const { spare: _, ...fit } = best;
    const at = { ...a.at, end: Math.max(a.at.end, c.at.end) };
    yield { at, facts: { item: holds.item, count: holds.count.value, ...fit, unit } };
  },
  say: (facts) => {
    const { sheet, direction, left, isTight, unit } = facts;
    const sizes = saySizes(facts);
    const lack = sayLength(left.abs(), unit);
    if (isTight) {
      return {
        message: `${sizes}; pressed open it bulges less than that, by ${lack}`,
        remedy: `make ${sheet} wider, or deeper by "depth:"`,
        severity: 'warning',
      };
    }
    const larger = (['wider', 'higher', 'deeper'] as const)[direction];
    if (left.sign >= 0) {
      return {
        message: `${sizes}: too tight for the thickness of the paper`,
        remedy: `make ${sheet} a little ${larger}`,
        severity: 'warning',
      };
    }
    const by = /^\d/u.test(lack) ? `more than ${lack} ` : '';
    return { message: `${sizes}: ${lack} too little`, remedy: `make ${sheet} ${by}${larger}` };
  },
};

function saySizes({ item, count, sheet, takes, room, open, round, unit }: Facts): string {
  const all = `${count} × ${item} takes ${sayLengths(takes, unit)} (width × height × depth)`;
  const inside = `${sayLengths(room, unit)} inside`;
  if (!round) return `${all}, and ${sheet} has ${inside}${open ? `, its ${open} open at both ends` : ''}`;
  return `${all}, and ${sheet}, lying flat, has ${inside}${open ? `, its ${open} open` : ''}, where depth comes off the ${round}`;
}

/** The best way to put everything into one sheet, and what it leaves beyond the thickness of the paper. */
type Fit = Omit<Facts, 'item' | 'count' | 'unit'> & { readonly spare: Length };

/** How everything fits in each piece, or in the one that is named: in what of it is closed, if anything is. */
function fitsOf(context: ProofContext, holds: Holds): readonly Fit[] {
  const all = closedSheets(context).filter(({ of }) => !holds.in || of.piece === holds.in.value);
  const pieces = [...new Set(all.map(({ of }) => of.piece))];
  return pieces.flatMap((piece) => {
    const fits = all.filter(({ of }) => of.piece === piece).flatMap((sheet) => fitsIn(sheet, holds));
    const closed = fits.filter(({ open }) => open === undefined);
    return closed.length > 0 ? closed : fits;
  });
}

function fitsIn(sheet: FoldedSheet, { size, count }: Holds): readonly Fit[] {
  const [a, b, c] = size ?? [];
  if (!a || !b || !c) return [];
  const item: Triple = [a.value, b.value, c.value];
  return roomsOf(sheet.net).map((room) => {
    const fit = fitIn(sheet, room, bestPacking(item, count.value, room.cavity, room.leave));
    const snug = room.snugly && fitIn(sheet, room, bestPacking(item, count.value, room.cavity, room.snugly));
    return snug && snug.left.sign < 0 && fit.left.sign >= 0 ? { ...snug, isTight: true } : fit;
  });
}

function fitIn(sheet: FoldedSheet, { size, open, round }: Room, packing: Packing): Fit {
  const exact = tightest(packing);
  // A pocket gives a little: what is as wide as it goes in, but only just.
  const isJust = round !== undefined && exact.sign < 0 && !exact.abs().greaterThan(tolerance(sheet.caliper));
  const left = isJust ? Length.zero : exact;
  return {
    sheet: sheet.name,
    takes: [taken(packing, 0), taken(packing, 1), taken(packing, 2)] as const,
    room: size,
    ...(open && { open }),
    ...(round && { round }),
    direction: packing.clearance.findIndex((each) => each?.equals(exact)) as 0 | 1 | 2,
    left,
    spare: left.minus(sheet.caliper),
  };
}

/** What everything takes along one of the three ways. */
function taken({ item, rows }: Packing, way: 0 | 1 | 2): Length {
  return item[way].times(rows[way]);
}
