import type { Length, Unit } from '../../measure/length.ts';
import type { Volume } from '../../measure/size.ts';
import { bestPacking, type Packing, type Triple, tightest } from '../../shape/closure/packing.ts';
import { bodyOf, openWay } from '../../shape/closure/room.ts';
import { closedSheets, type FoldedSheet } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';
import { sayLength, sayLengths } from '../words.ts';

type Facts = {
  readonly item: string;
  readonly count: number;
  /** The sheet it does not fit in. */
  readonly sheet: string;
  /** What everything takes, and what there is inside, each as width, height and depth. */
  readonly takes: Triple;
  readonly room: Triple;
  /** The way it is open at both ends: a band holds things of any length, where there is no box for them. */
  readonly open?: keyof Volume;
  /** Which of the three is tightest, and what is left there: less than nothing, or less than the paper takes. */
  readonly direction: 0 | 1 | 2;
  readonly left: Length;
  readonly unit: Unit;
};

export const holdsTooBig: Rule<Facts> = {
  severity: 'error',
  summary: 'What the box is to hold fits inside, in some orientation and with its count.',
  why: 'The box is made for something. If that does not go in, the box is wrong, however well it folds.',
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
    const size: Triple = [a.value, b.value, c.value];
    const fits = closedSheets(context).flatMap((sheet) => fitIn(sheet, size, count));
    const closed = fits.filter(({ open }) => open === undefined);
    const asked = closed.length > 0 ? closed : fits;
    const [best] = asked.toSorted((first, second) => second.spare.compare(first.spare));
    if (!best || best.spare.sign >= 0) return;
    const { spare: _, ...fit } = best;
    const at = { ...a.at, end: Math.max(a.at.end, c.at.end) };
    yield { at, facts: { item: holds.item, count, ...fit, unit } };
  },
  say: ({ item, count, sheet, takes, room, open, direction, left, unit }) => {
    const ends = open === undefined ? '' : `, its ${open} open at both ends`;
    const sizes = `${count} × ${item} takes ${sayLengths(takes, unit)} (width × height × depth), and ${sheet} has ${sayLengths(room, unit)} inside${ends}`;
    const larger = (['wider', 'higher', 'deeper'] as const)[direction];
    if (left.sign >= 0) {
      return {
        message: `${sizes}: too tight for the thickness of the paper`,
        remedy: `make ${sheet} a little ${larger}`,
        severity: 'warning',
      };
    }
    const lack = sayLength(left.abs(), unit);
    return { message: `${sizes}: ${lack} too little`, remedy: `make ${sheet} more than ${lack} ${larger}` };
  },
};

/** The best way to put everything into one sheet, and what it leaves beyond the thickness of the paper. */
type Fit = Omit<Facts, 'item' | 'count' | 'unit'> & { readonly spare: Length };

function fitIn(sheet: FoldedSheet, item: Triple, count: number): Fit[] {
  const body = bodyOf(sheet.net);
  if (!body || count < 1) return [];
  const room: Triple = [body.width, body.height, body.depth];
  const open = openWay(sheet.net);
  const ends = (way: keyof Volume): Length | undefined => (way === open ? undefined : body[way]);
  const packing = bestPacking(item, count, [ends('width'), ends('height'), ends('depth')]);
  const left = tightest(packing);
  const fit = {
    sheet: sheet.name,
    takes: [taken(packing, 0), taken(packing, 1), taken(packing, 2)] as const,
    room,
    direction: packing.clearance.findIndex((each) => each?.equals(left)) as 0 | 1 | 2,
    left,
    spare: left.minus(sheet.caliper),
  };
  return [open ? { ...fit, open } : fit];
}

/** What everything takes along one of the three ways. */
function taken({ item, rows }: Packing, way: 0 | 1 | 2): Length {
  return item[way].times(rows[way]);
}
