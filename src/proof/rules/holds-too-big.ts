import type { Length, Unit } from '../../measure/length.ts';
import { bestPacking, type Packing, type Triple, tightest } from '../../shape/closure/packing.ts';
import { roomOf } from '../../shape/closure/room.ts';
import { boxWith } from '../example-box.ts';
import { closedSheets, type FoldedSheet } from '../folded-sheets.ts';
import type { ProofContext, Rule, Statement } from '../rule.ts';
import { sayLength, sayLengths } from '../words.ts';

export const holdsTooBig: Rule = {
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
    const [best] = fits.toSorted((first, second) =>
      tightest(second.packing).compare(tightest(first.packing)),
    );
    if (!best || tightest(best.packing).sign >= 0) return;
    const at = { ...a.at, end: Math.max(a.at.end, c.at.end) };
    report({ ...words(best, holds.item, holds.count.value, project.unit), at });
  },
};

type Fit = { readonly sheet: FoldedSheet; readonly room: Triple; readonly packing: Packing };

function fitIn(sheet: FoldedSheet, item: Triple, count: number): Fit[] {
  const room = roomOf(sheet.net, sheet.caliper);
  if (!room || count < 1) return [];
  const triple: Triple = [room.width, room.height, room.depth];
  return [{ sheet, room: triple, packing: bestPacking(item, count, triple) }];
}

function words({ sheet, room, packing }: Fit, item: string, count: number, unit: Unit): Statement {
  const least = tightest(packing);
  const direction = packing.clearance.findIndex((each) => each.equals(least)) as 0 | 1 | 2;
  const needed = room[direction].minus(least);
  const word = (['wide', 'high', 'deep'] as const)[direction];
  const say = (length: Length): string => sayLength(length, unit);
  const isTight = !least.abs().greaterThan(sheet.caliper);
  const things = count === 1 ? `one ${item}` : `${count} × ${item}, packed ${packing.rows.join(' × ')},`;
  return {
    message: `${things} need${count === 1 ? 's' : ''} ${say(needed)}, but inside ${sheet.name} is ${say(room[direction])} ${word} (${sayLengths(room, unit)}): ${say(least.abs())} too little`,
    remedy: `make ${sheet.name} at least ${say(least.abs())} ${{ wide: 'wider', high: 'higher', deep: 'deeper' }[word]}`,
    ...(isTight && { severity: 'warning' as const }),
  };
}
