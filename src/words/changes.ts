import type { Length } from '../measure/length.ts';
import { printDecimal, printInches, printMillimetres, rulerInches } from '../measure/print.ts';
import type { PieceChange, PublishedValue, Revision, StepChange } from '../project/ledger.ts';
import type { Say } from './labels.ts';
import type { Leading } from './measures.ts';
import { nameOf, partNamed, sheetNamed } from './names.ts';

/** What changed with a revision, in sentences, and the names of the pieces to cut again. */
export type RevisionWords = { readonly changes: readonly string[]; readonly recut: readonly string[] };

/** Says what changed, in the lengths of the edition that leads, or of the other where it changed there alone. */
export function revisionWords(
  { changes, recut, own = 'inch' }: Revision,
  say: Say,
  leading: Leading = own,
): RevisionWords {
  const pieces = changes.filter((change) => typeof change !== 'string' && 'piece' in change);
  return {
    changes: changes.map((change) => {
      if (typeof change === 'string') return change;
      return 'piece' in change ? pieceWords(change, say, leading) : stepWords(change, say);
    }),
    recut: recut ?? [...new Set(pieces.filter(isRecut).map((change) => pieceName(change, say)))],
  };
}

/** Whether the paper is cut or scored otherwise; one that is gone is no longer cut. */
function isRecut({ what, after }: PieceChange): boolean {
  if (what === 'size') return after !== undefined;
  return what !== 'place' && what !== 'pieces';
}

function stepWords({ steps, before = '', after = before }: StepChange, say: Say): string {
  if (steps === 'reordered') return say('change-steps-order');
  return say(`change-step-${steps}`, { step: after, before, after });
}

function pieceWords(change: PieceChange, say: Say, leading: Leading): string {
  const { what, from, before, after } = change;
  const piece = pieceName(change, say);
  if (what === 'cuts') return say('change-cuts', { piece });
  const edition = editionOf(change, leading);
  const tell = (value: PublishedValue | undefined): string =>
    value ? valueWords(value, what, edition, say) : '';
  const was = what === 'scores' || what === 'corners' || what === 'pieces' ? 'change-were' : 'change-was';
  return say(before ? (after ? was : 'change-gone') : 'change-new', {
    what: what === 'size' ? piece : say(`change-of-${what}${from ? `-from-${from}` : ''}`, { piece }),
    before: tell(before),
    after: tell(after),
  });
}

function pieceName({ piece, sheet }: PieceChange, say: Say): string {
  if (sheet === undefined) return nameOf(piece);
  return say('drawing-part', { piece: nameOf(piece), part: partNamed(sheet, say) });
}

/** The edition whose lengths are told: the leading one, unless only the other has changed or is known. */
function editionOf({ before, after }: PieceChange, leading: Leading): Leading {
  const differs = (edition: Leading): boolean => {
    const [was, is] = [before, after].map((value) => value?.[edition]);
    if (before && after && !(was && is)) return false;
    return (
      was?.length !== is?.length || !!was?.some((length, index) => !length.equals(is?.[index] ?? length))
    );
  };
  const other = leading === 'inch' ? 'metric' : 'inch';
  return !differs(leading) && differs(other) ? other : leading;
}

function valueWords(value: PublishedValue, what: PieceChange['what'], edition: Leading, say: Say): string {
  const unit = edition === 'inch' ? 'in' : 'mm';
  const figures = (value[edition] ?? []).map((length) => say.figure(print(length, unit)));
  const lengths = figures.map((figure) => `${figure} ${unit}`);
  const { word = '', turn } = value;
  if (what === 'scores') return lengths.join(', ');
  if (what !== 'place') return word || `${figures.join(' × ')} ${unit}`;
  const [left = '', top = ''] = lengths;
  const place = { base: sheetNamed(word, say), left, top };
  return turn === undefined
    ? say('change-place', place)
    : say('change-place-turned', { ...place, turn: say.figure(String(turn)) });
}

/** Exact enough, whatever the length: two lengths that differ must never read the same. */
function print(length: Length, unit: 'in' | 'mm'): string {
  const isPrintable = unit === 'in' ? rulerInches(length).exact : 2n % length.in('mm').denominator === 0n;
  if (!isPrintable) return printDecimal(length, unit, 4);
  return unit === 'in' ? printInches(length, 'set') : printMillimetres(length);
}
