import { Length, type Unit } from '../../measure/length.ts';
import type { Finding } from '../../project/finding.ts';
import type { Piece } from '../../project/model.ts';
import { EDGES } from '../../project/net-as-written.ts';
import type { OpeningAsWritten, PopUpCut } from '../../project/opening.ts';
import type { Fold, Net, PopUp } from '../net.ts';
import type { Sheet } from '../sheets.ts';
import { isFlatOn, isOneLine, lineOf, reachFrom } from '../tube.ts';
import { endsAlong, type StripPlace, withPopUp } from './pop-up.ts';

type WrittenPopUp = OpeningAsWritten & { readonly cut: PopUpCut };

/** The sheets of a piece with its pop-ups cut in them, one after another; and what of these cannot be. */
export function cutPopUps(
  piece: Piece,
  sheets: readonly Sheet[],
  unit: Unit,
): { readonly sheets: readonly Sheet[]; readonly findings: readonly Finding[] } {
  const findings: Finding[] = [];
  let cut = sheets;
  for (const opening of piece.openings) {
    if (opening.cut.kind !== 'pop-up') continue;
    const written = { ...opening, cut: opening.cut };
    const found = foldFor(written, piece, cut, findings);
    if (!found) continue;
    const popped = cutPopUp(found.net, found.fold, { written, piece, unit }, findings);
    if (popped) cut = cut.map((sheet) => (sheet.net === found.net ? { ...sheet, net: popped } : sheet));
  }
  return { sheets: cut, findings };
}

type SheetFold = { readonly net: Net; readonly fold: Fold };

/** The fold that a pop-up lies across: the one between the panels it names, or the only one that closes flat. */
function foldFor(
  { name, at, cut: { across } }: WrittenPopUp,
  { id: { value: piece } }: Piece,
  sheets: readonly Sheet[],
  findings: Finding[],
): SheetFold | undefined {
  const flat = sheets.flatMap(({ net }) =>
    net.strips ? [] : cardFolds(net).map((fold): SheetFold => ({ net, fold })),
  );
  const among = [...new Set(flat.map(({ fold }) => fold.panels.join('|')))];
  if (!across && among.length === 1) return flat[0];
  if (across) {
    const found = flat.find(({ fold: { panels } }) => across.value.every((panel) => panels.includes(panel)));
    if (found) return found;
    const facts = { what: 'fold of 180°', name: across.value.join('|'), of: piece, among };
    findings.push({ rule: 'unknown-reference', at: across.at, facts });
  } else if (among.length === 0) {
    const facts = { piece, opening: name.value, found: { kind: 'no fold' as const } };
    findings.push({ rule: 'popup-at-edge', at: name.at, facts });
  } else {
    const where = ['pieces', piece, 'openings', name.value];
    findings.push({ rule: 'missing-value', at, facts: { key: 'across', where, isWritten: false } });
  }
  return undefined;
}

/** The straight folds of a sheet that close flat, but for those of its pop-ups. */
function cardFolds({ folds, popUps = [] }: Net): readonly Fold[] {
  const strips = popUps.flatMap(({ parts }) => parts);
  return folds.filter(
    (fold) =>
      isFlatOn(fold) && lineOf(fold) !== 'slanted' && !fold.panels.some((panel) => strips.includes(panel)),
  );
}

type Request = { readonly written: WrittenPopUp; readonly piece: Piece; readonly unit: Unit };

function cutPopUp(net: Net, fold: Fold, request: Request, findings: Finding[]): Net | undefined {
  const { written, piece, unit } = request;
  const { name, cut } = written;
  const of = { piece: piece.id.value, opening: name.value, unit };
  const isUpright = lineOf(fold) === 'upright';
  const ends = placeAlong(net, fold, written, findings);
  const panels = cut.across?.value ?? fold.panels;
  const depths = [cut.depths[0].value, cut.depths[1].value] as const;
  for (const [side, panel] of panels.entries()) {
    const [depth, room] = [cut.depths[side], reachFrom(lineOf(fold), net, panel)];
    if (!depth || depth.value.lessThan(room)) continue;
    const found = { kind: 'too deep' as const, depth: depth.value, panel, room };
    findings.push({ rule: 'popup-at-edge', at: depth.at, facts: { ...of, found } });
    return undefined;
  }
  const stretch = stretchFor(net, fold, ends);
  if (!stretch) {
    const given = endsAlong(isUpright).flatMap((edge) => written.placement[edge] ?? [])[0];
    const [start, end] = ends.left;
    const found = {
      kind: 'past' as const,
      width: cut.width.value,
      room: ends.room,
      left: Length.min(start, end),
    };
    findings.push({ rule: 'popup-at-edge', at: given?.at ?? cut.width.at, facts: { ...of, found } });
    return undefined;
  }
  const popUp: PopUp = {
    name: name.value,
    panels,
    parts: [`${name.value}-${panels[0]}`, `${name.value}-${panels[1]}`],
    width: cut.width.value,
    depths,
    isUpright,
    ends: ends.left,
    isCentered: ends.isCentered,
  };
  return withPopUp(net, popUp, { fold: stretch, isUpright, from: ends.from, to: ends.to });
}

type Along = Pick<StripPlace, 'from' | 'to'> & {
  /** How long the fold is, and what of it is left on either side. */
  readonly room: Length;
  readonly left: readonly [Length, Length];
  readonly isCentered: boolean;
};

/** Where a strip begins and ends on its fold: as far from an end of that as is said, else in its middle. */
function placeAlong(net: Net, fold: Fold, { cut, placement }: WrittenPopUp, findings: Finding[]): Along {
  const isUpright = lineOf(fold) === 'upright';
  const own = endsAlong(isUpright);
  for (const edge of EDGES) {
    const stray = own.includes(edge) ? undefined : placement[edge];
    const facts = { misfit: 'no word of a pop-up', actual: edge } as const;
    if (stray) findings.push({ rule: 'unexpected-value', at: stray.at, facts });
  }
  const points = pieces(net, fold).flatMap(({ from, to }) => [from, to]);
  const places = points.map(({ x, y }) => (isUpright ? y : x)).sort((a, b) => a.compare(b));
  const [first = Length.zero, last = first] = [places[0], places.at(-1)];
  const room = last.minus(first);
  const width = cut.width.value;
  const [near, far] = own.map((edge) => placement[edge]?.value);
  const spare = room.minus(width);
  const start = near ?? (far ? spare.minus(far) : spare.half());
  const from = first.plus(start);
  return {
    from,
    to: from.plus(width),
    room,
    left: [start, spare.minus(start)],
    isCentered: !near && !far,
  };
}

/** The stretches of one fold, which other pop-ups may part. */
function pieces({ folds }: Net, fold: Fold): readonly Fold[] {
  return folds.filter(
    (each) => isOneLine(each, fold) && each.panels.every((panel) => fold.panels.includes(panel)),
  );
}

/** The stretch of a fold in which a strip lies, short of both its ends. */
function stretchFor(net: Net, fold: Fold, { from, to }: Along): Fold | undefined {
  const isUpright = lineOf(fold) === 'upright';
  return pieces(net, fold).find((each) => {
    const [one, other] = isUpright ? [each.from.y, each.to.y] : [each.from.x, each.to.x];
    return Length.min(one, other).lessThan(from) && to.lessThan(Length.max(one, other));
  });
}
