import { type Shown, shownEditions } from '../edition/editions.ts';
import type { Length, Unit } from '../measure/length.ts';
import { printDecimal, printInches, printMetric, roundedSign } from '../measure/print.ts';
import { type EditionName, rulerUnit } from '../measure/ruler-unit.ts';
import type { Ledger, PieceChange, PublishedValue, Revision, StepChange } from '../project/ledger/ledger.ts';
import { cornersKey } from './corners.ts';
import { unitIn } from './figures.ts';
import type { Say } from './labels.ts';
import { nameOf, refNamed, sheetNamed } from './names.ts';
import { outlineKey, parametersOf } from './outlines.ts';
import type { SafeHtml } from './safe-html.ts';
import { semicolon } from './typographic.ts';
import type { Voice } from './voice.ts';

/** What changed with a revision, in sentences, and the names of the pieces to cut again. */
export type RevisionWords = { readonly changes: readonly string[]; readonly recut: readonly string[] };

/**
 * Says what changed, in the lengths of the first of the editions shown in which it did. What changed only in one that
 * isn't shown is no change to whoever reads it.
 */
export function revisionWords(
  { changes, recut, own = 'inch' }: Revision,
  say: Say,
  shown: Shown = shownEditions({ own, printed: 'both' }),
): RevisionWords {
  const told = changes.filter((change) => !isOfPiece(change) || editionOf(change, shown));
  return {
    changes: told.map((change) => {
      if (typeof change === 'string') return change;
      return isOfPiece(change) ? pieceWords(change, say, shown) : stepWords(change, say);
    }),
    recut: recut ?? recutNames(told.filter(isOfPiece).filter(isRecut), say, shown),
  };
}

/** The pieces to cut again, each once: `box`, or `front (mm)` where only the numbers of that edition changed. */
function recutNames(changes: readonly PieceChange[], say: Say, shown: Shown): readonly string[] {
  const editions = new Map<string, Set<EditionName>>();
  for (const change of changes) {
    const name = pieceName(change, say);
    const { before, after } = change;
    // Of an edition that was not recorded nobody knows.
    const changed = shown.filter(
      (edition) => differsIn(change, edition) || [before, after].some((value) => value && !value[edition]),
    );
    editions.set(name, new Set([...(editions.get(name) ?? []), ...changed]));
  }
  return [...editions].map(([name, changed]) => {
    const [only] = changed;
    return only && changed.size < shown.length ? `${name} (${unitIn(only, say)})` : name;
  });
}

function isOfPiece(change: Revision['changes'][number]): change is PieceChange {
  return typeof change !== 'string' && 'piece' in change;
}

/** Whether the paper is cut or scored otherwise; one that is gone is no longer cut. */
function isRecut({ what, after }: PieceChange): boolean {
  if (what === 'size') return after !== undefined;
  return what !== 'place' && what !== 'pieces' && what !== 'impressions';
}

function stepWords({ steps, before = '', after = before }: StepChange, say: Say): string {
  if (steps === 'reordered') return say('change-steps-order');
  return say(`change-step-${steps}`, { step: after, before, after });
}

/** What is said of in the plural. */
const ARE_SEVERAL: readonly PieceChange['what'][] = ['scores', 'corners', 'pieces', 'edge', 'impressions'];

/** Nobody could tell from their lengths which of them is meant. */
const TOLD_AS_A_WHOLE: readonly PieceChange['what'][] = ['cuts', 'openings', 'runs', 'slants'];

function pieceWords(change: PieceChange, say: Say, shown: Shown): string {
  const { what, from, before, after } = change;
  const piece = pieceName(change, say);
  if (TOLD_AS_A_WHOLE.includes(what)) return say(`change-${what}`, { piece });
  const edition = editionOf(change, shown) ?? shown[0];
  const tell = (value: PublishedValue | undefined): string =>
    value ? valueWords(value, what, edition, say) : '';
  const number = ARE_SEVERAL.includes(what) ? 'other' : 'one';
  return say(`change-${before ? (after ? 'was' : 'gone') : 'new'}-${number}`, {
    what: what === 'size' ? piece : say(`change-of-${what}${from ? `-from-${from}` : ''}`, { piece }),
    before: tell(before),
    after: tell(after),
  });
}

function pieceName({ piece, sheet, variant }: PieceChange, say: Say): string {
  const name = refNamed({ piece, ...(sheet !== undefined && { part: sheet }), face: 'outside' }, say);
  return variant === undefined ? name : say('piece-variant', { piece: name, variant: nameOf(variant) });
}

/** Whether the lengths of an edition changed. */
function differsIn({ before, after }: PieceChange, edition: EditionName): boolean {
  const [was, is] = [before, after].map((value) => value?.[edition]);
  if (before && after && !(was && is)) return false;
  return was?.length !== is?.length || !!was?.some((length, index) => !length.equals(is?.[index] ?? length));
}

/** The first edition shown in which a thing changed; undefined where only one that isn't shown changed. */
function editionOf(change: PieceChange, shown: Shown): EditionName | undefined {
  const { before, after } = change;
  const found = shown.find((edition) => differsIn(change, edition));
  const isElsewhere = before?.word === after?.word && before?.turn === after?.turn;
  const differs = (['inch', 'metric'] as const).some((edition) => differsIn(change, edition));
  return found ?? (isElsewhere && differs ? undefined : shown[0]);
}

function valueWords(
  value: PublishedValue,
  what: PieceChange['what'],
  edition: EditionName,
  say: Say,
): string {
  const unit = unitIn(edition, say);
  const figures = (value[edition] ?? []).map((length) => say.figure(print(length, unit)));
  const lengths = figures.map((figure) => `${figure} ${unit}`);
  const { word = '', turn } = value;
  if (what === 'outline') return outlineWords(value, lengths, say);
  if (what === 'corners' && word) return cornersWords(word, lengths, say);
  if (what === 'impressions') return `${word}: ${lengths.join(', ')}`;
  if (what === 'edge') return `${sidesWords(word, say)}: ${lengths.join(', ')}`;
  if (what === 'scores') return lengths.join(', ');
  if (what !== 'place') return word || `${figures.join(' × ')} ${unit}`;
  const [left = '', top = ''] = lengths;
  const place = { base: sheetNamed(word, say), left, top };
  return turn === undefined
    ? say('change-place', place)
    : say('change-place-turned', { ...place, turn: say.figure(String(turn)) });
}

/** An outline as it is called, its lengths and its number in the order of its settings. */
function outlineWords(
  { word = '', count = 0 }: PublishedValue,
  lengths: readonly string[],
  say: Say,
): string {
  const left = [...lengths];
  const values = parametersOf(word).map(({ key, kind }) => [
    key,
    kind === 'count' ? count : (left.shift() ?? ''),
  ]);
  return say(outlineKey(word), Object.fromEntries(values));
}

/** Corners as they are recorded, `top, bottom left`, each with its radius. */
function cornersWords(corners: string, lengths: readonly string[], say: Say): string {
  const told = corners.split(', ').map((name, index) => {
    const radius = lengths[index] ?? '';
    return say.has(cornersKey(name)) ? say(cornersKey(name), { radius }) : `${name} ${radius}`;
  });
  return told.join(semicolon(say));
}

/** Sides as they are recorded, `left, right`, in words. */
function sidesWords(sides: string, say: Say): string {
  const named = sides.split(', ').map((side) => (say.has(`edge-${side}`) ? say(`edge-${side}`) : side));
  return named.join(', ');
}

/** Exact enough, whatever the length: two lengths that differ must never read the same. */
function print(length: Length, unit: Unit): string {
  if (roundedSign(length, rulerUnit(unit))) return printDecimal(length, unit, 4);
  return unit === 'in' ? printInches(length, 'set') : printMetric(length, unit);
}

/** What a sheet says of its revisions, the latest first; undefined before the first. `all` is for a page. */
export function revisionsView(
  { revisions }: Ledger,
  voice: Voice,
  shown: Shown,
  all: boolean,
): object | undefined {
  const [latest, ...earlier] = revisions.toReversed().map((revision) => viewOf(revision, voice, shown));
  return latest && { ...latest, earlier: all ? earlier : [] };
}

export function revisionTitle({ number, date }: Revision, voice: Voice): string {
  return voice.say('revision', { number, date: voice.date(date) });
}

function viewOf(revision: Revision, voice: Voice, shown: Shown): object {
  const { changes, recut } = revisionWords(revision, voice.say, shown);
  return {
    title: revisionTitle(revision, voice),
    changes: revision.changes.length > 0 ? changes : [voice.say('first-published')],
    recut: recutWords(revision, recut, voice),
  };
}

/** Which pieces whoever printed the revision before cuts again; undefined where there are none. */
export function recutWords(
  { number }: Revision,
  recut: readonly string[],
  voice: Voice,
): SafeHtml | undefined {
  const pieces = voice.list(recut);
  return recut.length > 0 ? voice.phrase('cut-again', { before: number - 1, pieces }) : undefined;
}
