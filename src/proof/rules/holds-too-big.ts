import type { Length, Unit } from '../../measure/length.ts';
import type { Volume } from '../../measure/size.ts';
import { bestPacking, type Packing, type Triple, tightest } from '../../shape/closure/packing.ts';
import { bodyOf, openWay } from '../../shape/closure/room.ts';
import { boxWith } from '../example-box.ts';
import { closedSheets, type FoldedSheet } from '../folded-sheets.ts';
import type { ProofContext, Rule, Statement } from '../rule.ts';
import { sayLength, sayLengths } from '../words.ts';

export const holdsTooBig: Rule<'holds-too-big'> = {
  id: 'holds-too-big',
  severity: 'error',
  summary: 'What the box is to hold fits inside, in some orientation and with its count.',
  why: 'The box is made for something. If that does not go in, the box is wrong, however well it folds.',
  fails: {
    sheet: boxWith({ more: 'holds: { item: seed packet, size: 3 1/4 x 4 1/2 x 1/16, count: 6 }' }),
    blames: '3 1/4 x 4 1/2 x 1/16',
  },
  passes: { sheet: boxWith({ more: 'holds: { item: seed packet, size: 2 1/4 x 4 x 1/16, count: 6 }' }) },
  check: ({ project, shapes, report }: ProofContext) => {
    const { holds } = project;
    if (!holds?.size) return;
    const [a, b, c] = holds.size;
    const item: Triple = [a.value, b.value, c.value];
    const fits = closedSheets(project, shapes).flatMap((sheet) => fitIn(sheet, item, holds.count.value));
    const closed = fits.filter(({ open }) => open === undefined);
    const asked = closed.length > 0 ? closed : fits;
    const [best] = asked.toSorted((first, second) => second.spare.compare(first.spare));
    if (!best || best.spare.sign >= 0) return;
    const at = { ...a.at, end: Math.max(a.at.end, c.at.end) };
    report({ ...words(best, `${holds.count.value} × ${holds.item}`, project.unit), at });
  },
};

/** The best way to put everything into one sheet, and what it leaves beyond the thickness of the paper. */
type Fit = {
  readonly sheet: FoldedSheet;
  readonly room: Triple;
  /** The way it is open at both ends: a band holds things of any length, where there is no box for them. */
  readonly open: keyof Volume | undefined;
  readonly packing: Packing;
  readonly spare: Length;
};

function fitIn(sheet: FoldedSheet, item: Triple, count: number): Fit[] {
  const body = bodyOf(sheet.net);
  if (!body || count < 1) return [];
  const room: Triple = [body.width, body.height, body.depth];
  const open = openWay(sheet.net);
  const ends = (way: keyof Volume): Length | undefined => (way === open ? undefined : body[way]);
  const packing = bestPacking(item, count, [ends('width'), ends('height'), ends('depth')]);
  return [{ sheet, room, open, packing, spare: tightest(packing).minus(sheet.caliper) }];
}

function words({ sheet, room, open, packing }: Fit, things: string, unit: Unit): Statement {
  const least = tightest(packing);
  const direction = packing.clearance.findIndex((each) => each?.equals(least)) as 0 | 1 | 2;
  const say = (length: Length): string => sayLength(length, unit);
  const takes = ([0, 1, 2] as const).map((index) => packing.item[index].times(packing.rows[index]));
  const sizes = `${things} takes ${sayLengths(takes, unit)} (width × height × depth), and ${sheet.name} has ${sayLengths(room, unit)} inside${open === undefined ? '' : `, its ${open} open at both ends`}`;
  const remedy = (['wider', 'higher', 'deeper'] as const)[direction];
  if (least.sign >= 0) {
    return {
      message: `${sizes}: too tight for the thickness of the paper`,
      remedy: `make ${sheet.name} a little ${remedy}`,
      severity: 'warning',
    };
  }
  return {
    message: `${sizes}: ${say(least.abs())} too little`,
    remedy: `make ${sheet.name} more than ${say(least.abs())} ${remedy}`,
  };
}
